/** When the winter turns and when grass starts to grow, for a year of weather that may start on any day. */
import type { PreparedWeather } from '../weather.ts';

const DAY_MS = 86_400_000;

/** What a year of weather gives once, whatever the coefficients of a row. */
export interface Season {
  /** temperatureSum[d] is the sum of the mean temperatures of the days before day d, °C·d. */
  readonly temperatureSum: Float64Array;
  /** The same for rain, mm. */
  readonly rainSum: Float64Array;
  readonly midwinterNorth: number;
  readonly midwinterSouth: number;
}

const seasons = new WeakMap<PreparedWeather, Season>();

/** The season of a weather year, worked out the first time it is asked for. */
export function seasonOf(weather: PreparedWeather): Season {
  const known = seasons.get(weather);
  if (known) return known;
  const temperatureSum = new Float64Array(weather.days + 1);
  const rainSum = new Float64Array(weather.days + 1);
  for (let d = 0; d < weather.days; d++) {
    temperatureSum[d + 1] = temperatureSum[d] + weather.temperatureC[d];
    rainSum[d + 1] = rainSum[d] + weather.rainMm[d];
  }
  const season = {
    temperatureSum,
    rainSum,
    midwinterNorth: midwinterDay(weather.start, 90),
    midwinterSouth: midwinterDay(weather.start, -90),
  };
  seasons.set(weather, season);
  return season;
}

/**
 * Day index of the shortest day (21 December, 21 June in the south) after `start`, an ISO date; 0 where it
 * lies in the half year before, so that a winter counted from January has no second midwinter.
 */
export function midwinterDay(start: string, latitudeDeg: number): number {
  const begin = Date.parse(start);
  const year = new Date(begin).getUTCFullYear();
  const solstice = (y: number) => Date.UTC(y, latitudeDeg < 0 ? 5 : 11, 21);
  const next = solstice(year) >= begin ? solstice(year) : solstice(year + 1);
  const days = Math.round((next - begin) / DAY_MS);
  return days > 183 ? 0 : days;
}

/**
 * First day after midwinter from which the mean over `runDays` days is at least `baseC`; `days` where none is.
 * Depends on temperature alone: rain moves no date, which keeps leaching from falling when there is more rain.
 */
export function growthDayOf(
  temperatureSum: Float64Array,
  days: number,
  midwinter: number,
  runDays: number,
  baseC: number,
): number {
  const run = runDays < 1 ? 1 : Math.floor(runDays);
  const needed = baseC * run;
  for (let d = midwinter + 1; d + run <= days; d++)
    if (temperatureSum[d + run] - temperatureSum[d] >= needed) return d;
  return days;
}
