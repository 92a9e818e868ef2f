/** Water a grass reference gives to the air, by FAO-56 Hargreaves. */
import { MM_PER_MJ } from './radiation.ts';

/**
 * The part of Hargreaves (FAO-56 eq. 52) that weather and latitude fix: (Tmean + 17.8)·√(Tmax − Tmin)·Ra, with
 * Ra in mm a day. Times 0.0023 it is ET0 in mm/d. Never below 0: colder than −17.8 °C nothing evaporates.
 */
export function hargreavesTermMm(minC: number, maxC: number, extraterrestrialMj: number): number {
  const meanC = (minC + maxC) / 2;
  return Math.max(0, meanC + 17.8) * Math.sqrt(Math.max(0, maxC - minC)) * extraterrestrialMj * MM_PER_MJ;
}
