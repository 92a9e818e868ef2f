/** The level of the bed week by week with its range, and the words for a week. */

import type { Scenario } from '../../notebook/schema.ts';
import { dayAfter } from '../../units/days.ts';
import type { CheckInput } from './check.ts';

export interface BedSeries {
  /** Weeks of the winter with a bed level. */
  readonly weeks: number;
  /** Top of the bed above the floor at the end of each week, m. */
  readonly depthM: readonly number[];
  readonly lowM: readonly number[];
  readonly highM: readonly number[];
  /** Last value of each. */
  readonly end: { readonly central: number; readonly low: number; readonly high: number };
  /** Before the first animal: the starting layer. */
  readonly startM: number;
  /** The range is that of draws. */
  readonly drawn: boolean;
}

/**
 * The bed levels of one scenario; null when the track is missing or empty. Where draws were run the range ends at
 * their P10 and P90 of the last week and is as wide, in proportion, in every week before; without draws it is that of
 * a row of the tables.
 */
export function bedSeries({ scenario, tracks, coefficients, bands }: CheckInput): BedSeries | null {
  const track = tracks.weekPackDepthM;
  if (!track) return null;
  const depthM: number[] = [];
  for (const depth of track) {
    if (!Number.isFinite(depth)) break;
    depthM.push(Math.max(0, depth));
  }
  if (depthM.length === 0) return null;
  const spread = coefficients.get('bedDepthSpreadFactor');
  const last = depthM.length - 1;
  const drawn = bands && ratios(bands.p10.packDepthM, bands.p90.packDepthM, depthM[last]);
  const [low, high] = drawn ?? [spread?.low ?? 1, spread?.high ?? 1];
  const at = (factor: number) => depthM.map((depth) => depth * factor);
  const lowM = at(low);
  const highM = at(high);
  return {
    weeks: depthM.length,
    depthM,
    lowM,
    highM,
    end: { central: depthM[last], low: lowM[last], high: highM[last] },
    startM: scenario.bed.startDepthM,
    drawn: drawn !== undefined,
  };
}

type Known = number | null | undefined;

/** The level of the last week in one of ten draws against the best guess, at each end. */
function ratios(p10: Known, p90: Known, endM: number): [number, number] | undefined {
  return p10 != null && p90 != null && endM > 0 ? [p10 / endM, p90 / endM] : undefined;
}

/** First week (from 1) in which `fails` holds, or undefined. */
export function firstWeek(levels: readonly number[], fails: (level: number) => boolean): number | undefined {
  const at = levels.findIndex(fails);
  return at < 0 ? undefined : at + 1;
}

/** ISO day on which week `week` (from 1) of the winter begins. */
export function weekStart(scenario: Scenario, week: number): string {
  return dayAfter(scenario.farm.winter.start, (week - 1) * 7);
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `3 Feb 2026`, the same in every locale. */
export function sayDay(isoDay: string): string {
  const [year, month, day] = isoDay.split('-').map(Number);
  return `${day} ${MONTHS[month - 1]} ${year}`;
}

/** `week 14 (from 31 Jan 2026)`. */
export function sayWeek(scenario: Scenario, week: number): string {
  return `week ${week} (from ${sayDay(weekStart(scenario, week))})`;
}
