/** A rising bed against a fixed height, in a verdict and in words. */
import { type BedSeries, firstWeek, sayWeek } from './bedSeries.ts';
import type { Verdict } from './check.ts';
import type { Context } from './context.ts';

interface Rising {
  /** Highest bed level that still fits, m above the floor. */
  readonly topM: number;
  readonly row: Verdict['row'];
  /** `the bed leaves too little room for horns`. */
  readonly fails: string;
  readonly fits: string;
  /** Easily mended on the day: never more than a look. */
  readonly mendable?: boolean;
}

/** A bed level against a fixed height: stop when the central forecast passes it, look when only its range does. */
export function rising(c: Context, bed: BedSeries, { topM, row, fails, fits, mendable }: Rising): Verdict {
  const week = firstWeek(bed.depthM, (depth) => depth > topM);
  const early = firstWeek(bed.highM, (depth) => depth > topM);
  const shared = { value: bed.end.central, limit: topM, unit: 'm', row };
  if (week !== undefined)
    return {
      ...shared,
      status: mendable ? 'look' : 'stop',
      week,
      words: `${fails} from ${sayWeek(c.scenario, week)}; ${lastGood(c, week)}.`,
    };
  if (early !== undefined)
    return {
      ...shared,
      status: 'look',
      week: early,
      words: `${fits} on the central forecast, but ${bed.drawn ? 'in one of ten draws the bed is too high' : 'a loosely trodden bed would be too high'} from ${sayWeek(c.scenario, early)}.`,
    };
  return {
    ...shared,
    status: 'pass',
    words: `${fits} all winter, ${bed.drawn ? 'in nine of ten draws too' : 'even if the bed lies loose'}.`,
  };
}

/** The last week that fits before `week` (from 1). */
export function lastGood(c: Context, week: number): string {
  return week > 1 ? `${sayWeek(c.scenario, week - 1)} is the latest week that still fits` : 'it never fits';
}
