/** When manure may not be spread, by country and kind. Rules differ by area: check the local rule. */

import type { Coefficient } from '../../tables/coefficient.ts';
import { dayAfter, daysBetween } from '../../units/days.ts';

export interface ClosedPeriod {
  /** First and last closed day of the year, 1 to 366. */
  readonly from: Coefficient;
  readonly to: Coefficient;
}

export type ManureKind = 'slurry' | 'solid';

type Find = (id: string) => Coefficient | undefined;

/**
 * The closed period the tables hold for a country, or null: unknown country, or (England) none for solid manure.
 */
export function closedPeriod(
  country: string | null,
  kind: ManureKind,
  nitrateZone: boolean,
  find: Find,
): ClosedPeriod | null {
  const name = periodName(country, kind, nitrateZone);
  const from = name === null ? undefined : find(`${name}ClosedStartDayOfYear`);
  const to = name === null ? undefined : find(`${name}ClosedEndDayOfYear`);
  return from && to ? { from, to } : null;
}

function periodName(country: string | null, kind: ManureKind, nitrateZone: boolean): string | null {
  switch (country) {
    case 'SE':
      return nitrateZone ? 'swedenSensitive' : 'swedenElsewhere';
    case 'NO':
      return 'norway';
    case 'IE':
      return kind === 'slurry' ? 'irelandSlurry' : 'irelandManure';
    case 'GB':
      return kind === 'slurry' && nitrateZone ? 'englandGrass' : null;
    default:
      return null;
  }
}

/** Day of the year, 1 for 1 January. */
function dayOfYear(isoDay: string): number {
  return daysBetween(`${isoDay.slice(0, 4)}-01-01`, isoDay) + 1;
}

/** True on a closed day; periods run over the new year. */
export function isClosed(period: ClosedPeriod, isoDay: string): boolean {
  const day = dayOfYear(isoDay);
  const [from, to] = [period.from.central, period.to.central];
  return from <= to ? day >= from && day <= to : day >= from || day <= to;
}

/** The first open ISO day on or after `isoDay`. */
export function firstOpenDay(period: ClosedPeriod | null, isoDay: string): string {
  let day = isoDay;
  // A closed period is shorter than a year, so this ends.
  for (let k = 0; period && k < 366 && isClosed(period, day); k++) day = dayAfter(day, 1);
  return day;
}
