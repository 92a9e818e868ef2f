/** How sure: percentiles, how often each scenario is best, and paired differences, read off the draws. */
import { quantileSorted } from 'd3-array';
import type { Values } from '../model/evaluate.ts';
import type { Draws } from './draws.ts';

export interface Bands {
  readonly p10: Values;
  readonly p50: Values;
  readonly p90: Values;
}

/** The draws of one result in one scenario. */
export function drawsOf({ results, scenarios, count }: Draws, name: string, scenario: number): Float64Array {
  const all = results[name];
  const out = new Float64Array(count);
  for (let draw = 0; draw < count; draw++) out[draw] = all[draw * scenarios + scenario];
  return out;
}

/** P10, P50 and P90 of every kept result in one scenario (linear between ranks); null where it has none. */
export function bandsOf(draws: Draws, scenario: number): Bands {
  const p10: Record<string, number | null> = {};
  const p50: Record<string, number | null> = {};
  const p90: Record<string, number | null> = {};
  for (const name of Object.keys(draws.results)) {
    const sorted = drawsOf(draws, name, scenario).filter(Number.isFinite).sort();
    const at = (p: number) => quantileSorted(sorted as ArrayLike<number> as number[], p) ?? null;
    p10[name] = at(0.1);
    p50[name] = at(0.5);
    p90[name] = at(0.9);
  }
  return { p10, p50, p90 };
}

export interface Difference {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  /** Share of the draws in which the first is larger. */
  readonly shareLarger: number;
}

/** First minus second, draw by draw; null where either has no such quantity. */
export function pairedDifference(
  draws: Draws,
  name: string,
  first: number,
  second: number,
): Difference | null {
  const a = drawsOf(draws, name, first);
  const b = drawsOf(draws, name, second);
  const both = a.map((value, k) => value - b[k]).filter(Number.isFinite);
  if (both.length === 0) return null;
  const shareLarger = both.reduce((n, d) => n + (d > 0 ? 1 : 0), 0) / both.length;
  const sorted = both.sort();
  const at = (p: number) => quantileSorted(sorted as ArrayLike<number> as number[], p) as number;
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9), shareLarger };
}

/** Which way a measure is better. */
export type Better = 'more' | 'less';

export interface Measure {
  readonly name: string;
  readonly better: Better;
  readonly weight: number;
}

/** Share of the draws in which each scenario is best by one measure; ties go to neither. */
export function shareBest(draws: Draws, name: string, better: Better): number[] {
  return shareWinning(draws, (draw, scenario) => {
    const value = draws.results[name][draw * draws.scenarios + scenario];
    return better === 'more' ? value : -value;
  });
}

/**
 * Share of the draws in which each scenario is best by the keeper's weights: within a draw the best scenario of a
 * measure scores 1, the worst 0, the rest between in proportion.
 */
export function shareBestWeighted(draws: Draws, measures: readonly Measure[]): number[] {
  const { scenarios, results } = draws;
  return shareWinning(draws, (draw, scenario) => {
    let score = 0;
    for (const { name, better, weight } of measures) {
      const row = results[name].subarray(draw * scenarios, (draw + 1) * scenarios);
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      for (const value of row) {
        if (value < low) low = value;
        if (value > high) high = value;
      }
      const place = high > low ? (row[scenario] - low) / (high - low) : 0;
      if (Number.isFinite(place)) score += weight * (better === 'more' ? place : 1 - place);
    }
    return score;
  });
}

function shareWinning(
  { count, scenarios }: Draws,
  score: (draw: number, scenario: number) => number,
): number[] {
  const wins = new Array<number>(scenarios).fill(0);
  for (let draw = 0; draw < count; draw++) {
    let best = -1;
    let bestScore = Number.NEGATIVE_INFINITY;
    let tied = false;
    for (let scenario = 0; scenario < scenarios; scenario++) {
      const here = score(draw, scenario);
      if (here > bestScore) [best, bestScore, tied] = [scenario, here, false];
      else if (here === bestScore) tied = true;
    }
    if (best >= 0 && !tied) wins[best]++;
  }
  return wins.map((n) => n / count);
}
