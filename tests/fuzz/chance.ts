/** Seeded choices of the fuzz: a case is its kind and its number, and comes out the same anywhere. */
import { stream } from '../../src/units/random.ts';

export interface Chance {
  readonly upTo: (n: number) => number;
  readonly one: <T>(all: readonly T[]) => T;
  readonly maybe: (share: number) => boolean;
  readonly between: (low: number, high: number) => number;
}

export function chanceOf(seed: number, name: string): Chance {
  const next = stream(seed, name);
  const upTo = (n: number) => Math.floor(next() * n);
  return {
    upTo,
    one: (all) => all[upTo(all.length)],
    maybe: (share) => next() < share,
    between: (low, high) => low + next() * (high - low),
  };
}
