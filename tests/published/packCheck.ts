/** One figure to reproduce: what, its source, how that is known, how we get it, what it is and within what. */
import { expect } from 'vitest';
import type { Basis } from '../../src/tables/coefficient.ts';

export type Check = readonly [
  what: string,
  source: string,
  basis: Basis | 'common practice, no source',
  got: () => number | null,
  want: number,
  within: number,
];

export function check(...[, , , got, want, within]: Check): void {
  const value = got() ?? Number.NaN;
  expect(Math.abs(value - want), `${value} against ${want}`).toBeLessThanOrEqual(within);
}
