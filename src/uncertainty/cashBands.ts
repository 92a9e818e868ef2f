/** How sure the running worth of a scenario is, year by year, from the draws already made. */

import { quantileSorted } from 'd3-array';
import type { BoundScenario } from '../model/bind.ts';
import {
  CASH_INPUTS,
  CASH_RESULTS,
  type CashTerms,
  flowsAgainst,
  runningWorth,
} from '../model/money/cashTerms.ts';
import type { Run } from '../study/evaluate.ts';
import { resultIn } from '../study/rows.ts';
import { type Draws, sample } from './monteCarlo.ts';

/** P10, P50 and P90 of the discounted sum to date, years 0 … life. */
export interface CashBand {
  readonly p10: readonly number[];
  readonly p50: readonly number[];
  readonly p90: readonly number[];
  /** Draws it was made from. */
  readonly count: number;
}

/** More draws move the percentiles less than a line is wide. */
const MOST_DRAWS = 2000;

/**
 * The band of a scenario against its baseline, draw by draw; null where the draws do not hold what it needs or
 * fewer than half of them give a sum.
 */
export function cashBand(
  draws: Draws,
  bound: readonly BoundScenario[],
  scenario: number,
  baseline?: number,
): CashBand | null {
  if (CASH_RESULTS.some((name) => !draws.results[name])) return null;
  const count = Math.min(draws.count, MOST_DRAWS);
  const own = termsAt(draws, bound, scenario, count);
  const other = baseline === undefined ? undefined : termsAt(draws, bound, baseline, count);
  const years: number[][] = [];
  for (let draw = 0; draw < count; draw++) {
    const terms = own(draw);
    const sums = runningWorth(terms.interestRate, flowsAgainst(terms, other?.(draw)));
    if (!sums.every(Number.isFinite)) continue;
    sums.forEach((sum, year) => {
      years[year] ??= [];
      years[year].push(sum);
    });
  }
  if (years.length === 0 || years[0].length * 2 < count) return null;
  const at = (p: number) => years.map((sums) => quantileSorted(sums, p) as number);
  for (const sums of years) sums.sort((a, b) => a - b);
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9), count };
}

/** The bands of every scenario that has a baseline, by its name. */
export function cashBandsOf(draws: Draws, run: Run): Map<string, CashBand> {
  const bands = new Map<string, CashBand>();
  run.results.forEach(({ name, finance }, k) => {
    const baseline = run.results.findIndex((other) => other.name === finance.difference?.baseline);
    const band = baseline < 0 ? null : cashBand(draws, run.bound, k, baseline);
    if (band) bands.set(name, band);
  });
  return bands;
}

/** Reads one draw of one scenario: results as drawn, inputs as drawn where they have a range. */
function termsAt(draws: Draws, bound: readonly BoundScenario[], scenario: number, count: number) {
  const inputs = CASH_INPUTS.map((name) => {
    const drawn = draws.uncertain.find(({ at }) =>
      at.some((a) => a.scenario === scenario && a.column === name),
    );
    if (drawn) {
      const values = sample(drawn, count, draws.seed);
      return [name, (draw: number) => values[draw]] as const;
    }
    const value = bound[scenario].bindings.get(name)?.value ?? Number.NaN;
    return [name, () => value] as const;
  });
  return (draw: number): CashTerms => {
    const at = draw * draws.scenarios + scenario;
    const terms = Object.fromEntries([
      ...CASH_RESULTS.map((name) => [name, resultIn(draws.results, name)[at]]),
      ...inputs.map(([name, of]) => [name, of(draw)]),
    ]);
    return terms as CashTerms;
  };
}
