/** Where the answer flips: the values of an input at which two scenarios tie in a measure. */
import type { Setting } from './rows.ts';
import { stepsBetween, sweep, type Turn } from './sweep.ts';

/** Points looked at over the whole span; two ties closer together than a step can be missed. */
const SCAN = 65;
/** Points looked at inside a bracket, and how often a bracket is narrowed to one of their gaps. */
const INSIDE = 17;
const ROUNDS = 8;

export interface Flip {
  /** Value of the input at the tie. */
  readonly at: number;
  /** Scenario that has more of the measure below and above the tie. */
  readonly moreBelow: number;
  readonly moreAbove: number;
}

export interface Flips {
  readonly turn: Turn;
  readonly from: number;
  readonly to: number;
  readonly first: number;
  readonly second: number;
  readonly measure: string;
  /** Ties in rising order; none when one scenario has more all the way, or either has no such quantity. */
  readonly ties: readonly Flip[];
  /** Scenario with more at the low end, when there is no tie: the same at the high end. */
  readonly moreAtLow: number | null;
}

/** Finds the ties of two scenarios by scanning and then narrowing every bracket, all rows of a round in one run. */
export function findFlips(
  setting: Setting,
  turn: Turn,
  [from, to]: readonly [number, number],
  measure: string,
  first: number,
  second: number,
): Flips {
  const pair: Setting = {
    bound: [setting.bound[first], setting.bound[second]],
    weather: setting.weather,
    weatherIndex: [setting.weatherIndex[first], setting.weatherIndex[second]],
  };
  const difference = (at: readonly number[]): number[] => {
    const { results } = sweep(pair, turn, at, [measure]);
    return at.map((_, k) => results[measure][k * 2] - results[measure][k * 2 + 1]);
  };
  const scan = stepsBetween(from, to, SCAN);
  const d = difference(scan);
  const ties: Flip[] = [];
  for (let k = 0; k + 1 < SCAN; k++) {
    if (
      !Number.isFinite(d[k]) ||
      !Number.isFinite(d[k + 1]) ||
      d[k] === 0 ||
      Math.sign(d[k]) === Math.sign(d[k + 1])
    )
      continue;
    // A zero on a scan point is a tie only when the sign goes on to change; a touch is not a flip.
    if (d[k + 1] === 0 && (k + 2 >= SCAN || Math.sign(d[k + 2]) === Math.sign(d[k]))) continue;
    let [low, high] = [scan[k], scan[k + 1]];
    for (let round = 0; round < ROUNDS; round++) {
      const inside = stepsBetween(low, high, INSIDE);
      const values = difference(inside);
      const gap = inside.findIndex((_, j) => j + 1 < INSIDE && Math.sign(values[j + 1]) !== Math.sign(d[k]));
      if (gap < 0) break;
      [low, high] = [inside[gap], inside[gap + 1]];
    }
    const below = d[k] > 0 ? first : second;
    ties.push({ at: (low + high) / 2, moreBelow: below, moreAbove: below === first ? second : first });
  }
  const atLow = d[0];
  return {
    turn,
    from,
    to,
    first,
    second,
    measure,
    ties,
    moreAtLow: Number.isFinite(atLow) && atLow !== 0 ? (atLow > 0 ? first : second) : null,
  };
}
