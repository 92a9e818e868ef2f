/** Windrows: shape, water, and the nitrogen that goes with the heat. NRAES-54 (1992) gives the shapes. */

/** Cross-section of a windrow, m², by its shape; base and height in m. */
export const CROSS_SECTION_M2 = {
  parabola: (baseM: number, heightM: number) => (2 / 3) * baseM * heightM,
  triangle: (baseM: number, heightM: number) => (baseM * heightM) / 2,
  /** Sides at 45°. */
  trapezoid: (baseM: number, heightM: number) => heightM * (baseM - heightM),
} as const;

/** Ground under a parabolic windrow of a volume and height, m². */
export function windrowFootprintM2(volumeM3: number, heightM: number): number {
  return heightM > 0 ? volumeM3 / ((2 / 3) * heightM) : 0;
}

/**
 * Share of the nitrogen a turned windrow of cattle manure loses, by its C:N at the start: a straight line
 * through the two manures of Hao, Chang & Larney 2004, held inside the span of Michel et al. 2004. Derived,
 * not a published regression.
 */
export function windrowNitrogenLoss(
  carbonNitrogen: number,
  intercept: number,
  slopePerUnit: number,
  least: number,
  most: number,
): number {
  return Math.max(least, Math.min(most, intercept - slopePerUnit * carbonNitrogen));
}

/**
 * Water a heap gives off while it loses `volatileLostKg`, kg: its own heat pays for `perKg` of it, but it
 * stops where the heap is as dry as `driestMoistureFraction`, where it stalls.
 */
export function heapEvaporation(
  waterKg: number,
  dryMatterLeftKg: number,
  volatileLostKg: number,
  perKg: number,
  driestMoistureFraction: number,
): number {
  const keptKg = (dryMatterLeftKg * driestMoistureFraction) / (1 - driestMoistureFraction);
  return Math.min(perKg * volatileLostKg, Math.max(0, waterKg - keptKg));
}
