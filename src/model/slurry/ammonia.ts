/** Steps of the nitrogen mass flow that house, store, yard and field share. TAN is total ammoniacal nitrogen. */

/**
 * How much faster ammonia leaves at `temperatureC` than at `referenceC`: exponential in temperature, fitted to
 * 102 and 430 mg/m²/h at 4 and 30 °C on a bench of cattle manure (`lithuania2013`), 0.0553 per °C.
 */
export function temperatureFactor(temperatureC: number, perC: number, referenceC: number): number {
  return Math.exp(perC * (temperatureC - referenceC));
}

/** The slope between two measured rates, per °C. */
export function temperatureSlopePerC(
  coldC: number,
  coldRate: number,
  warmC: number,
  warmRate: number,
): number {
  return Math.log(warmRate / coldRate) / (warmC - coldC);
}

/** EMEP/EEA 2019 chapter 3.B step 9: TAN after a fraction of the organic nitrogen has turned into TAN, kg. */
export function mineralisedTanKg(tanKg: number, nitrogenKg: number, fraction: number): number {
  return tanKg + fraction * Math.max(0, nitrogenKg - tanKg);
}

/** Factor that keeps the sum of loss fractions from taking more TAN than there is; 1 in all sensible cases. */
export function lossLimit(sumOfFractions: number): number {
  return sumOfFractions > 1 ? 1 / sumOfFractions : 1;
}
