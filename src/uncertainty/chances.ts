/** How surely a case holds: in how many draws the payment is covered and the works pay, and the spans of both. */
import { quantileSorted } from 'd3-array';
import type { ResultName } from '../model/quantities.ts';
import type { Draws } from './monteCarlo.ts';
import { differencesOf, drawsOf } from './percentiles.ts';
import { hundredths } from './sentences.ts';

/** Results the chances of a case are read from; the rate of return beside them takes the longest to find. */
export const CHANCE_RESULTS = ['netPresentValue', 'debtServiceCover', 'paybackYears', 'fundingGap'] as const;

/** P10, P50 and P90 over the draws that have the figure. */
export interface Spread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  /** Share of all draws that have it. */
  readonly share: number;
}

/** Shares are of the draws that have the figure, from 0 to 1; a draw just on the line counts half. Null: no draw has it. */
export interface Chances {
  /** Debt service cover, and the share of draws in which the payment is covered once. */
  readonly cover: Spread | null;
  readonly covered: number | null;
  /** Present value against the baseline, money, and the share of draws in which it is above 0. */
  readonly worth: Spread | null;
  readonly pays: number | null;
  /** Rate of return against the baseline, fraction a year; draws without one are left out of the span. */
  readonly rate: Spread | null;
  /** Discounted payback, years; a draw in which it never comes counts as an endless one (`Infinity`). */
  readonly payback: Spread | null;
  /** Money still missing, and the share of draws in which none is. */
  readonly gap: Spread | null;
  readonly funded: number | null;
}

const before = new WeakMap<Draws, Map<string, Chances>>();

/** Reads them off draws that kept `CHANCE_RESULTS` (what was not kept is null). Kept with the draws, which do not change. */
export function chancesOf(draws: Draws, scenario: number, baseline?: number): Chances {
  const known = before.get(draws) ?? new Map<string, Chances>();
  before.set(draws, known);
  const key = `${scenario} ${baseline}`;
  const found = known.get(key) ?? countChances(draws, scenario, baseline);
  known.set(key, found);
  return found;
}

function countChances(draws: Draws, scenario: number, baseline?: number): Chances {
  const kept = (name: ResultName) => (draws.results[name] ? drawsOf(draws, name, scenario) : NONE);
  const cover = kept('debtServiceCover').filter(Number.isFinite);
  const worth =
    baseline === undefined || !draws.results.netPresentValue
      ? NONE
      : differencesOf(draws, 'netPresentValue', scenario, baseline).filter(Number.isFinite);
  const gap = kept('fundingGap').filter(Number.isFinite);
  const rate = kept('internalRateOfReturn').filter(Number.isFinite);
  const payback =
    worth.length === 0
      ? NONE
      : kept('paybackYears').map((years) => (Number.isFinite(years) ? years : Number.POSITIVE_INFINITY));
  const spread = (values: Float64Array) => spreadOf(values, draws.count);
  return {
    cover: spread(cover),
    covered: shareOver(cover, 1, 1),
    worth: spread(worth),
    pays: shareOver(worth, 0, 0.5),
    rate: spread(rate),
    payback: spread(payback),
    gap: spread(gap),
    funded: gap.length === 0 ? null : gap.filter((missing) => missing <= 0).length / gap.length,
  };
}

const NONE = new Float64Array(0);

function spreadOf(values: Float64Array, count: number): Spread | null {
  if (values.length === 0) return null;
  const sorted = values.slice().sort() as ArrayLike<number> as number[];
  // Between an endless payback and a finite one there is no number: the longer of the two is taken.
  const at = (p: number) => {
    const value = quantileSorted(sorted, p) as number;
    return Number.isNaN(value) ? Number.POSITIVE_INFINITY : value;
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9), share: sorted.length / count };
}

/** Share of values above `line`; one just on it counts `tie`. Null where there are none. */
export function shareOver(values: Float64Array, line: number, tie: number): number | null {
  if (values.length === 0) return null;
  let over = 0;
  for (const value of values) over += value > line ? 1 : value === line ? tie : 0;
  return over / values.length;
}

/** "the payment is covered in 61 of 100 draws; the works pay in 27 of 100"; empty where neither is known. */
export function chanceWords({ covered, pays }: Chances): string {
  return [
    ...(covered === null ? [] : [`the payment is covered in ${hundredths(covered)} of 100 draws`]),
    ...(pays === null
      ? []
      : [`the works pay in ${hundredths(pays)} of 100${covered === null ? ' draws' : ''}`]),
  ].join('; ');
}
