/** How sure: percentiles, how often each scenario is best, and paired differences, read off the draws. */
import { quantileSorted } from 'd3-array';
import type { Better } from '../model/measures.ts';
import type { Bands, ResultName } from '../model/quantities.ts';
import { resultIn } from '../study/rows.ts';
import type { Draws } from './monteCarlo.ts';

/** The draws of one result in one scenario. */
export function drawsOf(
  { results, scenarios, count }: Draws,
  name: ResultName,
  scenario: number,
): Float64Array {
  const all = resultIn(results, name);
  const out = new Float64Array(count);
  for (let draw = 0; draw < count; draw++) out[draw] = all[draw * scenarios + scenario];
  return out;
}

/** Absent where it never comes, which is later than any year. */
const LATE: ResultName = 'paybackYears';

/** Percentiles of one result, linear between ranks: null where fewer than half of the draws have it, or where it never comes. */
function percentilesOf(draws: Draws, name: ResultName, scenario: number): (p: number) => number | null {
  const all = drawsOf(draws, name, scenario);
  const found = all.filter(Number.isFinite).sort();
  if (found.length * 2 < draws.count) return () => null;
  const sorted =
    name === LATE
      ? all.map((years) => (Number.isFinite(years) ? years : Number.POSITIVE_INFINITY)).sort()
      : found;
  return (p) => {
    const at = quantileSorted(sorted as ArrayLike<number> as number[], p);
    return at !== undefined && Number.isFinite(at) ? at : null;
  };
}

/**
 * P10, P50 and P90 of every kept result in one scenario (linear between ranks). Null where it has none, or has
 * it in fewer than half the draws: a payback that mostly never comes has no middle. One that never comes in some draws
 * comes last among them, so its P90 is null where that is more than one draw in ten.
 */
export function bandsOf(draws: Draws, scenario: number): Bands {
  const p10: Partial<Record<ResultName, number | null>> = {};
  const p50: Partial<Record<ResultName, number | null>> = {};
  const p90: Partial<Record<ResultName, number | null>> = {};
  for (const name of Object.keys(draws.results) as ResultName[]) {
    const at = percentilesOf(draws, name, scenario);
    p10[name] = at(0.1);
    p50[name] = at(0.5);
    p90[name] = at(0.9);
  }
  return { p10, p50, p90 };
}

/** One percentile (0 to 1) of a result's draws, as `bandsOf` gives it. */
export const percentileOf = (draws: Draws, name: ResultName, scenario: number, p: number): number | null =>
  percentilesOf(draws, name, scenario)(p);

export interface Difference {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  /** Share of the draws in which the first is larger, and in which it is smaller; the rest are ties. */
  readonly shareLarger: number;
  readonly shareSmaller: number;
}

const pairedBefore = new WeakMap<Draws, Map<string, Difference | null>>();

/** First minus second, draw by draw; null where either has no such quantity. Kept with the draws, which do not change. */
export function pairedDifference(
  draws: Draws,
  name: ResultName,
  first: number,
  second: number,
): Difference | null {
  const kept = pairedBefore.get(draws) ?? new Map<string, Difference | null>();
  pairedBefore.set(draws, kept);
  const key = `${name} ${first} ${second}`;
  let found = kept.get(key);
  if (found === undefined) {
    found = differenceOf(draws, name, first, second);
    kept.set(key, found);
  }
  return found;
}

function differenceOf(draws: Draws, name: ResultName, first: number, second: number): Difference | null {
  const sorted = differencesOf(draws, name, first, second).filter(Number.isFinite).sort();
  if (sorted.length === 0) return null;
  const share = (is: (d: number) => boolean) =>
    sorted.reduce((n, d) => n + (is(d) ? 1 : 0), 0) / sorted.length;
  const at = (p: number) => quantileSorted(sorted as ArrayLike<number> as number[], p) as number;
  return {
    p10: at(0.1),
    p50: at(0.5),
    p90: at(0.9),
    shareLarger: share((d) => d > 0),
    shareSmaller: share((d) => d < 0),
  };
}

/** First minus second in each draw; NaN where either has no such quantity. */
export function differencesOf(
  { results, scenarios, count }: Draws,
  name: ResultName,
  first: number,
  second: number,
): Float64Array {
  const all = resultIn(results, name);
  const out = new Float64Array(count);
  for (let draw = 0; draw < count; draw++)
    out[draw] = all[draw * scenarios + first] - all[draw * scenarios + second];
  return out;
}

export interface Measure {
  readonly name: ResultName;
  readonly better: Better;
  readonly weight: number;
}

/**
 * Share of the draws in which each scenario is best by one measure. A draw in which several tie for best is shared
 * among them, so that the shares sum to 1 wherever each draw has someone with the measure.
 */
export function shareBest(draws: Draws, name: ResultName, better: Better): number[] {
  const all = resultIn(draws.results, name);
  return shareWinning(draws, (draw, scenario) => {
    const value = all[draw * draws.scenarios + scenario];
    return better === 'more' ? value : -value;
  });
}

/** Share of the draws in which each scenario is best by the keeper's weights. */
export function shareBestWeighted(draws: Draws, measures: readonly Measure[]): number[] {
  const scores = weightedScores(draws, measures);
  return shareWinning(draws, (draw, scenario) => scores[draw * draws.scenarios + scenario]);
}

/** Rows of every scenario, one block after the other: draws, or the steps of an input that is turned. */
type Rows = Pick<Draws, 'scenarios' | 'results'>;

/**
 * Scores by the keeper's weights: within a block the best scenario of a measure scores 1, the worst 0, the rest
 * between in proportion; a scenario without the measure scores 0 in it. In the rows' order.
 */
export function weightedScores({ scenarios, results }: Rows, measures: readonly Measure[]): Float64Array {
  const scores = new Float64Array(measures.length === 0 ? 0 : resultIn(results, measures[0].name).length);
  for (const { name, better, weight } of measures) {
    const all = resultIn(results, name);
    for (let from = 0; from < scores.length; from += scenarios) {
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      for (let at = from; at < from + scenarios; at++) {
        if (all[at] < low) low = all[at];
        if (all[at] > high) high = all[at];
      }
      if (!(high > low)) continue;
      for (let at = from; at < from + scenarios; at++) {
        const place = (all[at] - low) / (high - low);
        if (Number.isFinite(place)) scores[at] += weight * (better === 'more' ? place : 1 - place);
      }
    }
  }
  return scores;
}

function shareWinning(
  { count, scenarios }: Draws,
  score: (draw: number, scenario: number) => number,
): number[] {
  const wins = new Array<number>(scenarios).fill(0);
  for (let draw = 0; draw < count; draw++) {
    let best = -1;
    let bestScore = Number.NEGATIVE_INFINITY;
    let level = 0;
    for (let scenario = 0; scenario < scenarios; scenario++) {
      const here = score(draw, scenario);
      if (here > bestScore) [best, bestScore, level] = [scenario, here, 1];
      else if (here === bestScore) level++;
    }
    if (best < 0) continue;
    if (level === 1) wins[best]++;
    else
      for (let scenario = best; scenario < scenarios; scenario++)
        if (score(draw, scenario) === bestScore) wins[scenario] += 1 / level;
  }
  return wins.map((n) => n / count);
}
