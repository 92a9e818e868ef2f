/**
 * A gauge gives rain and nothing else. Its rain is joined with the temperature of a climate that is shipped: of the
 * same day where the climate has it, else of the same day of the year in one of its years. The rain is measured, the
 * temperature is not, and the name of what comes out says so.
 */
import { dateOf, dayNumber } from '../units/days.ts';
import type { RainDay, WeatherDay, WeatherSeries } from './weatherSeries.ts';

export interface Climate {
  /** Name of the shipped file. */
  readonly file: string;
  readonly label: string;
  readonly latitudeDeg: number;
}

export const joinedName = (gauge: string, climate: Climate): string =>
  `${gauge.replace(/\.[^.]+$/, '')} with temperature of ${climate.file}`;

/** The days of the gauge with the climate's temperature. A day not measured, or not in the climate, is left out. */
export function joinRain(rain: readonly RainDay[], climate: WeatherSeries): WeatherDay[] {
  const byDate = new Map(climate.days.map((day) => [day.date, day]));
  const years = [...new Set(climate.days.map(({ date }) => Number(date.slice(0, 4))))].sort((a, b) => a - b);
  return rain.flatMap(({ date, rainMm }) => {
    const day = byDate.get(date) ?? byDate.get(inYearOf(date, years));
    return day && rainMm !== null ? [{ ...day, date, rainMm }] : [];
  });
}

/** The same day in a year the climate has whole; each year of the gauge keeps to one year of the climate. */
function inYearOf(date: string, years: readonly number[]): string {
  // The first and the last year of a file are rarely whole.
  const whole = years.slice(1, -1);
  if (whole.length === 0) return '';
  const year = Number(date.slice(0, 4));
  const count = whole.length;
  const other = whole[(((year - whole[0]) % count) + count) % count];
  const same = `${other}${date.slice(4)}`;
  return Number.isNaN(dayNumber(same)) ? dateOf(dayNumber(`${other}-02-28`)) : same;
}
