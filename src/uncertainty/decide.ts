/** Who wins, how surely: each measure the keeper weighs, all of them together, and the two that stand closest. */

import { COMPARISONS } from '../model/measures.ts';
import type { Draws } from './monteCarlo.ts';
import { drawsOf, type Measure } from './percentiles.ts';

/** What a decision is about when the keeper has not said. */
const UNSAID: Measure = { name: 'netCost', better: 'less', weight: 1 };

/** Measures to weigh, by falling weight: the keeper's own where they have a better side, else the net cost. */
export function measuresOf(weights: Readonly<Record<string, number>>): Measure[] {
  const own = Object.entries(weights).flatMap(([said, weight]): Measure[] => {
    const known = COMPARISONS.find((c) => c.name === said);
    return known?.better && weight > 0 ? [{ name: known.name, better: known.better, weight }] : [];
  });
  return own.length > 0 ? own.sort((a, b) => b.weight - a.weight) : [UNSAID];
}

/** Scenarios that have the measure in every draw, best on average first. */
export function byMean(draws: Draws, { name, better }: Pick<Measure, 'name' | 'better'>): number[] {
  const sign = better === 'more' ? 1 : -1;
  return Array.from({ length: draws.scenarios }, (_, scenario) => ({
    scenario,
    mean: drawsOf(draws, name, scenario).reduce((sum, v) => sum + v, 0) / draws.count,
  }))
    .filter(({ mean }) => Number.isFinite(mean))
    .sort((a, b) => sign * (b.mean - a.mean))
    .map(({ scenario }) => scenario);
}
