/** One figure to reproduce: what, its source, how that is known, how we get it, what it is and within what. */
import { expect, it } from 'vitest';
import type { Basis } from '../../src/tables/coefficient.ts';
import { figure, recalled, sum } from './labels.ts';

export type Check = readonly [
  what: string,
  source: string,
  basis: Basis | 'common practice',
  got: () => number | null,
  want: number,
  within: number,
];

const labelOf = (basis: Check[2]) => (basis === 'derived' ? sum : basis === 'published' ? figure : recalled);

/** A test for each; what we derived ourselves is a sum, and only what was read is a published figure. */
export function eachCheck(checks: readonly Check[]): void {
  for (const [what, source, basis, got, want, within] of checks)
    it(labelOf(basis)(`${what}: ${want} ± ${within} (${source}; ${basis})`), () => {
      const value = got() ?? Number.NaN;
      expect(Math.abs(value - want), `${value} against ${want}`).toBeLessThanOrEqual(within);
    });
}
