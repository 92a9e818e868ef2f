/** How fast dung and straw rot by their warmth and wetness, after Haug (1993): one set of curves for bed and heap. */

import { exponential } from '../../units/exponential.ts';

/** Growth of the rate per °C, and its fall near the temperature that kills. */
const RATE = { growth: 1.066, growthFromC: 20, decline: 1.21, declineFromC: 60 } as const;
/** The moisture curve: a logistic in the moisture fraction. */
const MOISTURE = { slope: -17.684, intercept: 7.0622 } as const;
/** How many times its own rise per °C the rate grows by: ln 1.066, 1/°C. */
export const GROWTH_PER_C = Math.log(RATE.growth);
const DECLINE_PER_C = Math.log(RATE.decline);

/**
 * Rate of rotting against that at 20 °C, × (Celsius), as it would grow without an end. By the library's exponential,
 * since it is held against a threshold, where the last digits are all that is left.
 */
export const growthOfRate = (temperatureC: number): number =>
  Math.exp(GROWTH_PER_C * (temperatureC - RATE.growthFromC));

/** Rate of rotting against that at 20 °C, ×; 0 where heat has killed what rots. Celsius. */
export function rateByTemperature(temperatureC: number): number {
  const decline = exponential(DECLINE_PER_C * (temperatureC - RATE.declineFromC));
  return Math.max(0, exponential(GROWTH_PER_C * (temperatureC - RATE.growthFromC)) - decline);
}

/** Rate of rotting against that of wet matter, ×; moisture as a fraction of wet mass. */
export const rateByMoisture = (moistureFraction: number): number =>
  1 / (exponential(MOISTURE.slope * moistureFraction + MOISTURE.intercept) + 1);
