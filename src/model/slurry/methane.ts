/** Methane of stored slurry by temperature: the monthly van 't Hoff form of the IPCC guidelines (2019, annex 10A). */

/** Gas constant, cal/(mol·K), and 0 °C in K, as the guidelines use them. */
const GAS_CAL = 1.987;
const ZERO_K = 273.16;
/** Days of the guidelines' month. */
export const MONTH_DAYS = 365.25 / 12;

/**
 * Share of the methane that stored solids can still give which they give in a month at `temperatureC`, not below
 * `lowestC`: e^(E·(T2 − T1) ÷ (R·T1·T2)), at most 1; E in cal/mol, T1 of `referenceC`, where the share is 1.
 */
export function monthlyMethaneFraction(
  temperatureC: number,
  activationCalPerMol: number,
  referenceC: number,
  lowestC: number,
): number {
  const t1 = referenceC + ZERO_K;
  const t2 = Math.max(temperatureC, lowestC) + ZERO_K;
  return Math.min(1, Math.exp((activationCalPerMol * (t2 - t1)) / (GAS_CAL * t1 * t2)));
}
