/** Snow by the degree-day method: what falls as snow, and how much of what lies melts in a day. */

/** Snow that falls, mm of water: all of the rain at or below the threshold, none above. */
export function snowfallMm(precipitationMm: number, temperatureC: number, thresholdC: number): number {
  return temperatureC <= thresholdC ? precipitationMm : 0;
}

/**
 * Melt of the day, mm: factor (mm per °C and day) times the warmth above the threshold, at most what lies.
 * Never falls when there is more snow, which keeps drainage from falling when there is more rain.
 */
export function meltMm(
  snowWaterMm: number,
  temperatureC: number,
  factorMmPerC: number,
  thresholdC: number,
): number {
  const warmth = temperatureC - thresholdC;
  if (!(warmth > 0) || !(snowWaterMm > 0)) return 0;
  const possible = factorMmPerC * warmth;
  return Math.min(possible, snowWaterMm);
}
