/**
 * Water a bedding can still take up at its own moisture, kg per kg as it lies, from a soak test at another
 * moisture. The dry matter holds a fixed total; water already there takes its place. Derived from the
 * definition of the soak test. Never below 0.
 */
export function absorbencyAtMoisture(
  soakKgPerKg: number,
  testMoistureFraction: number,
  moistureFraction: number,
): number {
  const heldPerDryKg = (soakKgPerKg + testMoistureFraction) / (1 - testMoistureFraction);
  return Math.max(0, heldPerDryKg * (1 - moistureFraction) - moistureFraction);
}
