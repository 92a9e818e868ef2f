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
}

/**
 * The bed levels of one scenario; null when the track is missing or empty. The range is that of the draws where
 * they were run, otherwise the spread of trodden density.
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
  const drawn = bands && ratio(bands.p10.packDepthM, bands.p50.packDepthM, bands.p90.packDepthM);
  const [low, high] = drawn ?? [spread?.low ?? 1, spread?.high ?? 1];
  const at = (factor: number) => depthM.map((depth) => depth * factor);
  const lowM = at(low);
  const highM = at(high);
  const last = depthM.length - 1;
  return {
    weeks: depthM.length,
    depthM,
    lowM,
    highM,
    end: { central: depthM[last], low: lowM[last], high: highM[last] },
    startM: scenario.bed.startDepthM,
  };
}

type Known = number | null | undefined;

function ratio(p10: Known, p50: Known, p90: Known): [number, number] | undefined {
  return p10 != null && p90 != null && p50 != null && p50 > 0 ? [p10 / p50, p90 / p50] : undefined;
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
