/** Days of weather as the pipeline's loops take them. */
import type { WeatherDay } from '../../tables/weatherSeries.ts';
import { dayNumber } from '../../units/days.ts';
import { DAYS } from '../series.ts';
import { hargreavesTermMm } from './evapotranspiration.ts';
import type { PreparedWeather } from './prepared.ts';
import { extraterrestrialRadiationMj } from './radiation.ts';

/** Prepares days that follow each other without a break; at most a leap year of them. */
export function prepare(
  label: string,
  start: string,
  days: readonly WeatherDay[],
  latitudeDeg: number,
): PreparedWeather {
  const count = Math.min(DAYS, days.length);
  const rainMm = new Float64Array(count);
  const temperatureC = new Float64Array(count);
  const term = new Float64Array(count);
  for (let d = 0; d < count; d++) {
    const { date, minC, maxC } = days[d];
    rainMm[d] = days[d].rainMm;
    temperatureC[d] = days[d].meanC;
    term[d] = hargreavesTermMm(minC, maxC, extraterrestrialRadiationMj(latitudeDeg, dayOfYear(date)));
  }
  return { label, start, days: count, rainMm, temperatureC, hargreavesTermMm: term };
}

function dayOfYear(date: string): number {
  return dayNumber(date) - dayNumber(`${date.slice(0, 4)}-01-01`) + 1;
}
