/** Calendar days as ISO dates, in UTC so that no clock change moves one. */
const DAY_MS = 86_400_000;

/** The date `days` after an ISO date, before it when negative; part days are rounded. */
export function dayAfter(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + Math.round(days) * DAY_MS).toISOString().slice(0, 10);
}

/** Whole days from one ISO date to another; negative when the second is earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY_MS);
}
