/** The stages in the order the matter flows; each may read inputs, coefficients and what stands above it. */
import type { Stage } from '../stage.ts';

export const STAGES: readonly Stage[] = [];
