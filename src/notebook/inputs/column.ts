/** What a number of a scenario is that becomes a column of the model. */
import type { Scenario } from '../schema.ts';

export interface InputColumn {
  readonly column: string;
  readonly label: string;
  readonly unit: string;
  /** Where it stands in the scenario, so that it can be turned, swept and written back. */
  readonly path: string;
  readonly of: (s: Scenario) => number;
  /** Sensible span and step for a slider or a sweep. */
  readonly min?: number;
  readonly max?: number;
  readonly step?: number;
}
