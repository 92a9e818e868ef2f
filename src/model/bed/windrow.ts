/** Windrows: shape, and the water they hold and give off. NRAES-54 (1992) gives the shapes. */

/** Ground under a parabolic windrow of a volume and height, m². */
export function windrowFootprintM2(volumeM3: number, heightM: number): number {
  return heightM > 0 ? volumeM3 / ((2 / 3) * heightM) : 0;
}

/** Water that dry matter can hold before it drains, kg, by the moisture at which it is full. */
export const waterHeldKg = (dryMatterKg: number, wettestMoistureFraction: number): number =>
  (dryMatterKg * wettestMoistureFraction) / (1 - wettestMoistureFraction);

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
