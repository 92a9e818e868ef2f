/** The two series of the model: numbers by week and by day, from the first day of the winter. */
import type { Series } from './engine/walk.ts';

/** Weeks in a year from the first day of the winter; the last one has a day or two. */
export const WEEKS = 53;
/** Days in the longest year. */
export const DAYS = 366;

interface WeekSeries<Reads extends string> extends Series<Reads> {
  readonly onDemand?: never;
}
interface DaySeries<Reads extends string> extends Series<Reads> {
  readonly onDemand: true;
}

/** A weekly result: `WEEKS` numbers a row, NaN after the last week it exists in. */
export const week = <const Reads extends string = never>(
  label: string,
  unit: string,
  formula: string,
  more: Partial<Pick<Series<Reads>, 'from' | 'when' | 'source'>> = {},
): WeekSeries<Reads> => ({ label, unit, formula, width: WEEKS, ...more });

/** A daily result: `DAYS` numbers a row, NaN after the last day; worked out only for few rows and when asked for. */
export const day = <const Reads extends string = never>(
  label: string,
  unit: string,
  formula: string,
  more: Partial<Pick<Series<Reads>, 'from' | 'when' | 'source'>> = {},
): DaySeries<Reads> => ({ label, unit, formula, width: DAYS, onDemand: true, ...more });

/** Days of week `week` that lie inside a winter of `winterDays`: 7, fewer in the last week, 0 after it. */
export function winterDaysInWeek(week: number, winterDays: number): number {
  return Math.max(0, Math.min(7, winterDays - week * 7));
}
