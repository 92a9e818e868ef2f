/** When the winter turns and when grass starts to grow, for a year of weather that may start on any day. */
import { dayNumber, dayOf, partsOf } from '../../units/days.ts';
import { type FrostClimate, frostClimateOf } from './frostDepth.ts';
import type { PreparedWeather } from './prepared.ts';

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

const frosts = new WeakMap<PreparedWeather, FrostClimate>();

/** What is known of frost at the place, worked out the first time it is asked for. */
export function frostClimate(weather: PreparedWeather): FrostClimate {
  const known = frosts.get(weather);
  if (known) return known;
  const climate = weather.frost ?? frostClimateOf([weather.temperatureC]);
  frosts.set(weather, climate);
  return climate;
}

/**
 * Day index of the shortest day (21 December, 21 June in the south) nearest to `start`, an ISO date; negative where
 * it lies before the first day, so that a winter counted from January has no second midwinter.
 */
export function midwinterDay(start: string, latitudeDeg: number): number {
  const begin = dayNumber(start);
  const { year } = partsOf(begin);
  const solstice = (y: number) => dayOf(y, latitudeDeg < 0 ? 5 : 11, 21) - begin;
  const next = solstice(year) >= 0 ? solstice(year) : solstice(year + 1);
  return next > 183 ? solstice(solstice(year) >= 0 ? year - 1 : year) : next;
}

/**
 * Days from the shortest day until daylight lasts `hours`: the daylight and declination of FAO-56 eq. 24, 25 and 34
 * turned round. 0 where the shortest day is longer, 182 (the longest day) where no day is long enough.
 */
export function daysToDaylight(latitudeDeg: number, hours: number): number {
  const tangent = Math.tan((Math.abs(latitudeDeg) * Math.PI) / 180);
  const declination = Math.atan(-Math.cos((hours * Math.PI) / 24) / Math.max(tangent, 1e-9));
  const sine = declination / 0.409;
  if (sine <= -1) return 0;
  if (sine >= 1) return 182;
  // Day of the year, and ten days from the solstice to the end of December.
  return Math.max(0, (365 / (2 * Math.PI)) * (1.39 + Math.asin(sine)) + 10);
}

/**
 * First day from `earliest` on from which the mean over `runDays` days is at least `baseC`; `days` where none is.
 * Depends on temperature and light alone: rain moves no date, so more rain never leaches less.
 */
export function growthDayOf(
  temperatureSum: Float64Array,
  days: number,
  earliest: number,
  runDays: number,
  baseC: number,
): number {
  const run = runDays < 1 ? 1 : Math.floor(runDays);
  const needed = baseC * run;
  for (let d = Math.max(0, Math.ceil(earliest)); d + run <= days; d++)
    if (temperatureSum[d + run] - temperatureSum[d] >= needed) return d;
  return days;
}
