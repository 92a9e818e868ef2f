/** The season plan as an iCalendar file (RFC 5545), whole days, written by a library. */
import ical, { ICalEventBusyStatus } from 'ical-generator';
import { dayAfter, midnightMs } from '../units/days.ts';
import type { SeasonPlan } from './plan.ts';

/**
 * Text of an `.ics` file with an event for each task. `stamp` is the moment it is written. Identifiers depend
 * only on scenario and task, so that a second import replaces the first.
 */
export function calendarFile(plan: SeasonPlan, stamp: Date): string {
  const calendar = ical({
    name: `Winter plan: ${plan.name}`,
    prodId: { company: 'winterkeep', product: 'season plan', language: 'EN' },
  });
  const seen = new Map<string, number>();
  for (const { kind, day, until, title, words } of plan.tasks) {
    const count = (seen.get(kind) ?? 0) + 1;
    seen.set(kind, count);
    calendar.createEvent({
      id: `${slug(plan.name)}-${plan.from}-${kind}-${count}@winterkeep`,
      start: new Date(midnightMs(day)),
      // The end of a whole-day event is the first day it no longer takes.
      end: new Date(midnightMs(dayAfter(until ?? day, 1))),
      allDay: true,
      summary: title,
      description: words,
      stamp,
      busystatus: ICalEventBusyStatus.FREE,
    });
  }
  return calendar.toString();
}

function slug(name: string): string {
  return (
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'scenario'
  );
}
