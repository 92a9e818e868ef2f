/** Stable carbon and what it does for the soil (Henin and Dupuis 1945; Minasny and McBratney 2018). */

/** Soil in the mixed layer, kg/ha: depth (mm) times bulk density (t/m³). */
export function soilMassKgPerHa(depthMm: number, bulkDensityTPerM3: number): number {
  return depthMm * bulkDensityTPerM3 * 10_000;
}

/**
 * Plant-available water gained, mm, from stable carbon mixed into a layer: `gainMm` (mm per 100 mm of soil for
 * each percent by mass of organic carbon) times the rise in percent.
 */
export function waterHeldMm(
  carbonKgPerHa: number,
  depthMm: number,
  bulkDensityTPerM3: number,
  gainMm: number,
): number {
  const mass = soilMassKgPerHa(depthMm, bulkDensityTPerM3);
  return mass > 0 ? gainMm * (depthMm / 100) * ((100 * carbonKgPerHa) / mass) : 0;
}

/** Thickness of what is spread, mm: m³ over hectares. 10 t/ha at 0.60 t/m³ is 1.67 mm. */
export function layerDepthMm(volumeM3: number, areaHa: number): number {
  return areaHa > 0 ? volumeM3 / (10 * areaHa) : 0;
}
