/**
 * How fast a heap rots and whether it heats: published forms as plain functions, for one temperature or one week. The
 * constants that stand here are those of the named equations.
 */

import { exponential } from '../../units/exponential.ts';
import { GROWTH_PER_C, growthOfRate } from './haug.ts';

/** MJ/m²/d for 1 W/m². */
const MJ_PER_DAY = 0.0864;

/** Rate where microbes lack nitrogen, ×: the root of 30 over the available C:N, 1 below 30. */
export const rateByCarbonNitrogen = (available: number, enough: number): number =>
  available > enough ? Math.sqrt(enough / available) : 1;

/** Surface over volume of a parabolic windrow, 1/m, by its base and height in m; the ground under it apart. */
export function windrowSurfacePerVolume(baseM: number, heightM: number): number {
  if (!(baseM > 0 && heightM > 0)) return 0;
  const rise = 4 * heightM;
  const chord = Math.sqrt(baseM * baseM + rise * rise);
  const arcM = chord / 2 + (baseM * baseM * Math.log((rise + chord) / baseM)) / (2 * rise);
  return arcM / ((2 / 3) * baseM * heightM);
}

export interface HeatBalance {
  /** MJ for each kg of matter rotted. */
  readonly heatMjPerKg: number;
  /** 1/d at 20 °C, with all that slows it but temperature. */
  readonly ratePerDay: number;
  /** Degradable matter in a m³ of the heap, kg. */
  readonly degradableKgPerM3: number;
  /** Share of the heap that gets air. */
  readonly airShare: number;
  /** W/m²/K through the skin. */
  readonly lossWPerM2K: number;
  readonly surfacePerVolume: number;
  /** Heat that leaves with water and air for each part through the skin. */
  readonly evaporationShare: number;
}

/** Heat made at 20 °C over heat lost for each °C above the air, °C. */
export function heatPerLossC(b: HeatBalance): number {
  const lost = MJ_PER_DAY * b.lossWPerM2K * b.surfacePerVolume * (1 + b.evaporationShare);
  return lost > 0 ? (b.heatMjPerKg * b.ratePerDay * b.degradableKgPerM3 * b.airShare) / lost : 0;
}

/**
 * Whether a heap heats from any start, as one number: above 1 the heat it makes is more than it loses at every
 * temperature up to the hot one, below 1 it comes to rest a little above the air. The heat made grows as an
 * exponential and the loss as a straight line, so the number is e × growth per °C × heat over loss (the condition
 * under which curve and line touch). Celsius.
 */
export const heatNumber = (heatPerLoss: number, airC: number): number => heatPerLoss * heatNumberPerC(airC);

/** The same for 1 °C of heat over loss, 1/°C: of the air alone. */
const heatNumberPerC = (airC: number): number => Math.E * GROWTH_PER_C * growthOfRate(airC);

/** What a heap put up `riseC` warmer than the air multiplies its heat number by; 1 below the point of touch. */
export function warmStart(riseC: number): number {
  const steps = GROWTH_PER_C * riseC;
  return steps > 1 ? exponential(steps - 1) / steps : 1;
}

/** Root of h × e^y = y from below, h = number ÷ e: close to the touch it is 1 − √(2(1 − n)) to second order. */
function rootFromBelow(number: number): number {
  const h = number / Math.E;
  let y = Math.max(h, 1 - Math.sqrt(2 * (1 - number)));
  for (let k = 0; k < 3; k++) y = closer(h, y);
  return y;
}

/** A step of Newton, which from close by is exact in a few. */
function closer(h: number, y: number): number {
  const grown = h * exponential(y);
  return y - (y - grown) / (1 - grown);
}

/** The root at numbers up to this, read off first: from there a single step is exact. */
const READ_OFF_TO = 0.6;
const PER_NUMBER = 1000;
const ROOTS = Float64Array.from({ length: READ_OFF_TO * PER_NUMBER + 2 }, (_, k) =>
  k === 0 ? 0 : rootFromBelow(k / PER_NUMBER),
);

/**
 * °C above the air at which a heap that does not light comes to rest: the lower root of number ÷ e × e^(s·x) = s·x,
 * found from below; at a number of 1 and above the rise at the point of touch.
 */
export function restingRiseC(number: number): number {
  if (!(number > 0)) return 0;
  if (number >= 1) return 1 / GROWTH_PER_C;
  if (number >= READ_OFF_TO) return rootFromBelow(number) / GROWTH_PER_C;
  const at = number * PER_NUMBER;
  const k = at | 0;
  return closer(number / Math.E, ROOTS[k] + (at - k) * (ROOTS[k + 1] - ROOTS[k])) / GROWTH_PER_C;
}

/** How much of the heap lights, 0 to 1, by its heat number: none at 1 − spread, all at 1 + spread. */
export const litShare = (number: number, spread: number): number =>
  Math.min(1, Math.max(0, (number - 1 + spread) / (2 * spread)));

/** Carbon dioxide carbon a gram of organic matter gives off a day, mg, at a rate and a degradable share. */
export const respirationMgPerGDay = (ratePerDay: number, degradablePerOrganic: number): number =>
  ratePerDay * degradablePerOrganic * 1000;
