/** What makes the answer doubtful: the number, or what one measurement settles, that moves the lead most. */
import { adviceFrom, rankDifference } from './advice.ts';
import type { Draws } from './monteCarlo.ts';
import { drawsOf, type Measure, weightedScores } from './percentiles.ts';

export interface Doubt {
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  /** Share of the spread (variance) of the lead that this number makes alone. */
  readonly share: number;
  /** What knowing it before choosing gains on average, in the unit of the measure; null where several are weighed. */
  readonly worth: number | null;
  /** The measurement on the farm that settles most, an instruction; absent where nobody can measure what matters. */
  readonly measure?: string;
  readonly measureShare?: number;
}

/** Numbers looked through for a measurement: what one measurement settles together may stand further down. */
const TOP = 12;

/** In slices: yields the share done. Null where either lacks a measure, or nothing moves the lead. */
export function* doubtOf(
  draws: Draws,
  measures: readonly Measure[],
  first: number,
  second: number,
): Generator<number, Doubt | null> {
  const single = measures.length === 1 ? measures[0] : undefined;
  const gains = Array.from({ length: draws.scenarios }, (_, k) => gainOf(draws, measures, k));
  const lead = gains[first].map((gain, draw) => gain - gains[second][draw]);
  if (!lead.every(Number.isFinite)) return null;
  const known = gains.filter((gain) => gain.every(Number.isFinite));
  const ranking = yield* rankDifference(draws, lead, single ? known : null, TOP);
  const [top] = ranking.ranked;
  if (!top) return null;
  const [advice] = adviceFrom(ranking, 1);
  const { label, unit, low, high, share, worth } = top;
  return {
    label,
    unit,
    low,
    high,
    share,
    worth,
    ...(advice ? { measure: advice.words, measureShare: advice.share } : {}),
  };
}

/** What a scenario gains draw by draw: the one measure, turned so that more is better, or its score by weights. */
function gainOf(draws: Draws, measures: readonly Measure[], scenario: number): Float64Array {
  if (measures.length === 1) {
    const [{ name, better }] = measures;
    const sign = better === 'less' ? -1 : 1;
    return drawsOf(draws, name, scenario).map((value) => sign * value);
  }
  const scores = weightedScores(draws, measures);
  return Float64Array.from({ length: draws.count }, (_, draw) => scores[draw * draws.scenarios + scenario]);
}
