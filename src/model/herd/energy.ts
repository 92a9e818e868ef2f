/**
 * Net energy system for cattle of the 2019 Refinement to the 2006 IPCC Guidelines, volume 4, chapter 10. The
 * second method for intake, and a check on the first. Energy in MJ a day, masses in kg, digestibility in %.
 */

/** Gross energy of a kilogram of dry matter, MJ; fixed in the equations. */
const GROSS_ENERGY_MJ_PER_KG = 18.45;

/** Equation 10.2: the maintenance coefficient in the cold. `perC` is 0.0048 in the guidelines. */
export function maintenanceInCold(mjPerKg: number, temperatureC: number, perC: number): number {
  return mjPerKg + perC * Math.max(0, 20 - temperatureC);
}

/** Equation 10.3: net energy for maintenance, MJ/d. */
export function maintenanceMj(weightKg: number, mjPerKg: number): number {
  return mjPerKg * weightKg ** 0.75;
}

/** Equation 10.6: net energy for growth, MJ/d; none without gain. `sexFactor` 0.8 female, 1.0 castrate, 1.2 bull. */
export function growthMj(
  weightKg: number,
  gainKg: number,
  matureWeightKg: number,
  sexFactor: number,
): number {
  if (!(gainKg > 0) || !(matureWeightKg > 0) || !(sexFactor > 0)) return 0;
  return 22.02 * (weightKg / (sexFactor * matureWeightKg)) ** 0.75 * gainKg ** 1.097;
}

/** Equation 10.8: net energy in milk, MJ/d. */
export function milkMj(milkKg: number, fatPercent: number): number {
  return milkKg * (1.47 + 0.4 * fatPercent);
}

/** Equation 10.14: net energy for maintenance in a unit of digestible energy. */
export function maintenanceRatio(digestibilityPercent: number): number {
  const de = digestibilityPercent;
  return 1.123 - 4.092e-3 * de + 1.126e-5 * de ** 2 - 25.4 / de;
}

/** Equation 10.15: net energy for growth in a unit of digestible energy. */
export function growthRatio(digestibilityPercent: number): number {
  const de = digestibilityPercent;
  return 1.164 - 5.16e-3 * de + 1.308e-5 * de ** 2 - 37.4 / de;
}

/**
 * Equation 10.16: gross energy eaten, MJ/d, for a net energy need other than growth and one for growth. Below
 * about 40 % digestibility a ration supports no growth (its ratio is not positive) and that part is left out.
 */
export function grossEnergyMj(needMj: number, growthNeedMj: number, digestibilityPercent: number): number {
  if (!(digestibilityPercent > 0)) return 0;
  const rem = maintenanceRatio(digestibilityPercent);
  const reg = growthRatio(digestibilityPercent);
  const digestible = (rem > 0 ? needMj / rem : 0) + (reg > 0 ? growthNeedMj / reg : 0);
  return digestible / (digestibilityPercent / 100);
}

/** Dry matter that carries a gross energy, kg. */
export function dryMatterKg(grossMj: number): number {
  return grossMj / GROSS_ENERGY_MJ_PER_KG;
}

/** Equation 10.24 on dry matter: volatile solids excreted, kg, from dry matter eaten, kg. Fractions 0 to 1. */
export function volatileSolidsKg(
  dryMatterEatenKg: number,
  digestibility: number,
  urinaryEnergy: number,
  ash: number,
): number {
  return dryMatterEatenKg * (1 - digestibility + urinaryEnergy) * (1 - ash);
}

/** Equation 10.32: nitrogen eaten, kg/d, from gross energy and crude protein in % of dry matter. */
export function nitrogenEatenKg(grossMj: number, crudeProteinPercent: number): number {
  return dryMatterKg(grossMj) * (crudeProteinPercent / 100 / 6.25);
}

/** Equation 10.33: nitrogen retained in milk and gain, kg/d. */
export function nitrogenRetainedKg(
  milkKg: number,
  fatPercent: number,
  gainKg: number,
  growthNeedMj: number,
): number {
  const inMilk = (milkKg * ((1.9 + 0.4 * fatPercent) / 100)) / 6.38;
  const inGain = gainKg > 0 ? (gainKg * (268 - (7.03 * growthNeedMj) / gainKg)) / 1000 / 6.25 : 0;
  return inMilk + inGain;
}
