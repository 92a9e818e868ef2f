/**
 * Share of the volume that is air, from wet bulk density (kg/m³), moisture (fraction of wet mass) and organic
 * matter (fraction of dry matter). Water 1000, organic matter 1600 and mineral matter 2500 kg/m³ are the
 * particle densities of the published form (Agnew & Leonard 2003; van Ginkel 1999). Below 0 the given density
 * cannot be: the answer is then 0, pores full of water.
 */
export function freeAirSpace(
  bulkDensityKgPerM3: number,
  moistureFraction: number,
  organicFraction: number,
): number {
  const dry = 1 - moistureFraction;
  const solidM3PerKg =
    moistureFraction / 1000 + (dry * organicFraction) / 1600 + (dry * (1 - organicFraction)) / 2500;
  return Math.max(0, 1 - bulkDensityKgPerM3 * solidM3PerKg);
}
