/** Where the answer flips: the values of an input at which two scenarios tie in a measure. */
import type { ResultName } from '../model/quantities.ts';
import { resultIn, type Setting } from '../study/rows.ts';
import { stepsBetween, sweep } from './sweep.ts';
import { type Turn, turnIn } from './turn.ts';

/** Points looked at over the whole span. */
const SCAN = 65;
/** Points looked at between two neighbours of the scan where the difference dips towards a tie. */
const DIP = 33;
/** Points looked at inside a bracket, and how often it is narrowed to one of their gaps: to 2⁻³² of it. */
const INSIDE = 17;
const ROUNDS = 8;
/** A difference still this share of the largest on the scan, in the narrowest bracket, is a step and no tie. */
const STEP_SHARE = 0.01;

export interface BreakEven {
  /** Value of the input at the tie. */
  readonly at: number;
  /** Scenario that has more of the measure below and above the tie. */
  readonly moreBelow: number;
  readonly moreAbove: number;
  /** The two change places in a step, as when a bay is added, without ever being equal. */
  readonly step: boolean;
}

export interface BreakEvens {
  readonly turn: Turn;
  readonly from: number;
  readonly to: number;
  readonly first: number;
  readonly second: number;
  readonly measure: ResultName;
  /** Ties in rising order; none when one scenario has more all the way, or either has no such quantity. */
  readonly ties: readonly BreakEven[];
  /** Scenario with more at the low end; null when they are equal there or either has none. */
  readonly moreAtLow: number | null;
  /** False when either scenario has no such quantity anywhere in the span. */
  readonly comparable: boolean;
}

interface Bracket {
  readonly low: number;
  readonly high: number;
  /** Sign of the difference at the low end; the high end has the other. */
  readonly sign: number;
}

/**
 * Ties of a function that is cheaper for many arguments at once: a scan, a closer look where it dips towards 0
 * without crossing, then every bracket narrowed. A touch of 0 is no tie; a plateau of 0 between two signs is one,
 * at its lower end; arguments without a value part the span. Ties closer than 1/2048 of the span can be missed.
 */
export function tiesOf(
  difference: (at: readonly number[]) => readonly number[],
  [from, to]: readonly [number, number],
): {
  readonly ties: readonly { readonly at: number; readonly sign: number; readonly step: boolean }[];
  readonly d: readonly number[];
} {
  const scan = stepsBetween(from, to, SCAN);
  const d = difference(scan);
  const scale = Math.max(...d.filter(Number.isFinite).map(Math.abs), 0);
  const dips = scan.flatMap((_, k) => (dipsAt(d, k) ? [k] : []));
  const brackets = bracketsIn(scan, d);
  for (const k of dips) {
    const near = stepsBetween(scan[k - 1], scan[k + 1], DIP);
    brackets.push(...bracketsIn(near, difference(near)));
  }
  const ties = brackets.map(({ low, high, sign }) => {
    let [a, b] = [low, high];
    let ends: readonly number[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const inside = stepsBetween(a, b, INSIDE);
      const values = difference(inside);
      const gap = inside.findIndex((_, j) => j + 1 < INSIDE && Math.sign(values[j + 1]) !== sign);
      if (gap < 0) break;
      [a, b] = [inside[gap], inside[gap + 1]];
      ends = [values[gap], values[gap + 1]];
    }
    return {
      at: (a + b) / 2,
      sign,
      step: ends.length === 2 && Math.min(...ends.map(Math.abs)) > STEP_SHARE * scale,
    };
  });
  return { ties: ties.sort((x, y) => x.at - y.at), d };
}

/** A point nearer to 0 than both its neighbours, all on one side of it. */
function dipsAt(d: readonly number[], k: number): boolean {
  if (k === 0 || k === d.length - 1) return false;
  const [a, b, c] = [d[k - 1], d[k], d[k + 1]];
  const side = Math.sign(b);
  return (
    side !== 0 &&
    Math.sign(a) === side &&
    Math.sign(c) === side &&
    Math.abs(b) < Math.abs(a) &&
    Math.abs(b) <= Math.abs(c)
  );
}

/** Neighbours with opposite signs; zeros between them are part of the bracket, missing values end it. */
function bracketsIn(at: readonly number[], d: readonly number[]): Bracket[] {
  const out: Bracket[] = [];
  let last = -1;
  d.forEach((value, k) => {
    if (!Number.isFinite(value)) last = -1;
    else if (value !== 0) {
      if (last >= 0 && Math.sign(d[last]) !== Math.sign(value))
        out.push({ low: at[last], high: at[k], sign: Math.sign(d[last]) });
      last = k;
    }
  });
  return out;
}

/** Finds the ties of two scenarios, all points of a round in one run of the model. */
export function breakEvens(
  setting: Setting,
  turn: Turn,
  [from, to]: readonly [number, number],
  measure: ResultName,
  first: number,
  second: number,
): BreakEvens {
  const both = [first, second];
  const pair: Setting = {
    bound: both.map((k) => setting.bound[k]),
    weather: setting.weather,
    weatherIndex: both.map((k) => setting.weatherIndex[k]),
  };
  const ofPair = turnIn(turn, both);
  const { ties, d } = tiesOf(
    (values) => {
      const at = resultIn(sweep(pair, ofPair, values, [measure]).results, measure);
      return values.map((_, k) => at[k * 2] - at[k * 2 + 1]);
    },
    [from, to],
  );
  const more = (sign: number) => (sign > 0 ? first : second);
  return {
    turn,
    from,
    to,
    first,
    second,
    measure,
    ties: ties.map(({ at: value, sign, step }) => ({
      at: value,
      moreBelow: more(sign),
      moreAbove: more(-sign),
      step,
    })),
    moreAtLow: Number.isFinite(d[0]) && d[0] !== 0 ? more(d[0]) : null,
    comparable: d.some(Number.isFinite),
  };
}
