/** A daily weather series as the rest of the product sees it, whatever file it came from. */
import type { Problem } from '../units/problem.ts';

export interface WeatherDay {
  /** ISO. */
  readonly date: string;
  /** Rain and melted snow of the day. */
  readonly rainMm: number;
  readonly minC: number;
  readonly maxC: number;
  /** As measured, or half of the sum of the extremes. */
  readonly meanC: number;
}

export const MEASURES = ['rainMm', 'minC', 'maxC', 'meanC'] as const;
export type Measure = (typeof MEASURES)[number];

/** Days in a row where something was not measured. */
export interface Gap {
  readonly key: Measure;
  readonly from: string;
  readonly to: string;
  readonly days: number;
}

export interface WeatherSeries {
  readonly label: string;
  readonly station?: string;
  /** Sorted, each date once, every measure a number. Days inside a long gap are left out. */
  readonly days: readonly WeatherDay[];
  /** Short gaps that were filled. */
  readonly filled: readonly Gap[];
  /** Long gaps: their days are missing from `days`. */
  readonly gaps: readonly Gap[];
}

/** A day of a gauge that measures rain alone. */
export interface RainDay {
  readonly date: string;
  readonly rainMm: number | null;
}

/** What was read: the series, or what is wrong; notes say what was done to the data. */
export interface WeatherReading {
  readonly series: WeatherSeries | null;
  readonly problems: readonly Problem[];
  readonly notes: readonly Problem[];
  /** Days of a file that has rain and no temperature; then there is no series. */
  readonly rain?: readonly RainDay[];
  /** Whether all that is wrong is some of its days, so that the rest can be used. */
  readonly mendable?: boolean;
}

/**
 * What to do with days that cannot be right: `refuse` the file, `bridge` them as days not measured, or leave them out
 * together with the winter they stand in.
 */
export type BadDays = 'refuse' | 'bridge' | 'leaveOut';

/** A line of a file before any check of its neighbours; null is not measured. */
export interface RawDay {
  readonly line: number;
  readonly date: string;
  readonly rainMm: number | null;
  readonly minC: number | null;
  readonly maxC: number | null;
  readonly meanC: number | null;
}

/** Longest gap that is filled, days; longer ones take their winter out. */
export const LONGEST_FILLED_GAP = 5;
/** Longest series read, lines. Two hundred years of days. */
export const MOST_LINES = 73_200;
/** Most problems of one file that are told one by one. */
export const MOST_PROBLEMS = 20;
/** What a day on farmed ground can be. Outside it the column or its unit is another one. */
export const ALLOWED = {
  rainMm: { from: 0, to: 500, unit: 'mm' },
  minC: { from: -60, to: 40, unit: '°C' },
  maxC: { from: -60, to: 50, unit: '°C' },
  meanC: { from: -60, to: 45, unit: '°C' },
} as const;

/** Keeps the first problems and says how many more there are. */
export function shorten(problems: readonly Problem[]): Problem[] {
  if (problems.length <= MOST_PROBLEMS) return [...problems];
  const { file } = problems[0];
  const more = problems.length - MOST_PROBLEMS;
  return [
    ...problems.slice(0, MOST_PROBLEMS),
    { what: `and ${more} more problems of this file`, file, todo: 'mend these first' },
  ];
}
