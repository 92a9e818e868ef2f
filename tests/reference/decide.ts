/** Who wins, how surely, put together from what the page shows in parts. */
import { byMean, measuresOf } from '../../src/uncertainty/decide.ts';
import type { Draws } from '../../src/uncertainty/monteCarlo.ts';
import { type Measure, shareBest, shareBestWeighted } from '../../src/uncertainty/percentiles.ts';

export interface Decision {
  /** By falling weight. */
  readonly measures: readonly (Measure & { readonly shareBest: readonly number[] })[];
  /** Share of the draws in which each scenario is best by all the weights together. */
  readonly shareBest: readonly number[];
  /** The heaviest measure; `best` and `second` are the two best on average in it, null where too few have it. */
  readonly deciding: Measure;
  readonly best: number | null;
  readonly second: number | null;
}

/** Weighs the draws, which must hold every measure of `measuresOf(weights)`. */
export function decide(draws: Draws, weights: Readonly<Record<string, number>>): Decision {
  const measures = measuresOf(weights);
  const [deciding] = measures;
  const order = byMean(draws, deciding);
  return {
    measures: measures.map((m) => ({ ...m, shareBest: shareBest(draws, m.name, m.better) })),
    shareBest: shareBestWeighted(draws, measures),
    deciding,
    best: order[0] ?? null,
    second: order[1] ?? null,
  };
}
