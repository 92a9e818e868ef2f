/** Calendar days as ISO dates and as days since 1970, in UTC so that no clock change moves one. */

const DAY_MS = 86_400_000;

/** Days since 1970 of an ISO date; NaN where it is no date. */
export function dayNumber(date: string): number {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return Number.NaN;
  const day = Date.parse(date) / DAY_MS;
  // The parser takes 31 February in some engines; a date must read back as itself.
  return Number.isNaN(day) || dateOf(day) !== date ? Number.NaN : day;
}

/** Dates asked for before: a run asks for each day of its winters many times, and writing one out takes long. */
const written = new Map<number, string>();
const MOST_WRITTEN = 100_000;

/** The ISO date of a day number. */
export function dateOf(day: number): string {
  const known = written.get(day);
  if (known !== undefined) return known;
  const date = new Date(day * DAY_MS).toISOString().slice(0, 10);
  if (written.size < MOST_WRITTEN) written.set(day, date);
  return date;
}

/** The date `days` after an ISO date, before it when negative; part days are rounded. */
export function dayAfter(date: string, days: number): string {
  return dateOf(dayNumber(date) + Math.round(days));
}

/** Days from one ISO date to another; negative when the second is earlier. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** Day number of a date by its parts. Months count from 0 and run on into the next year; day 0 is the month's eve. */
export function dayOf(year: number, month: number, day: number): number {
  return Date.UTC(year, month, day) / DAY_MS;
}

/** Year, month (0 for January) and day of the month of a day number. */
export function partsOf(day: number): {
  readonly year: number;
  readonly month: number;
  readonly day: number;
} {
  const date = new Date(day * DAY_MS);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth(), day: date.getUTCDate() };
}

/** Milliseconds since 1970 at the first instant of a day in UTC: what libraries of sun and calendars ask for. */
export function midnightMs(date: string | number): number {
  return (typeof date === 'number' ? date : dayNumber(date)) * DAY_MS;
}
