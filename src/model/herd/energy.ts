/**
 * Net energy system for cattle of the 2019 Refinement to the 2006 IPCC Guidelines, volume 4, chapter 10, and the
 * gestation equation of the US National Research Council. Energy in MJ a day, masses in kg, digestibility in %.
 */

/** Gross energy of a kilogram of dry matter, MJ; fixed in the equations. */
const GROSS_ENERGY_MJ_PER_KG = 18.45;

/** Equation 10.2: the maintenance coefficient in the cold. `perC` is 0.0048 in the guidelines. */
export function maintenanceInCold(mjPerKg: number, temperatureC: number, perC: number): number {
  return mjPerKg + perC * Math.max(0, 20 - temperatureC);
}

/** Metabolic weight and the like: `x` to the power of ¾, by two roots, which cost less than a power. */
export const threeQuarters = (x: number): number => Math.sqrt(x * Math.sqrt(x));

/** Equation 10.3: net energy for maintenance, MJ/d. */
export function maintenanceMj(weightKg: number, mjPerKg: number): number {
  return mjPerKg * threeQuarters(weightKg);
}

/** Equation 10.6: net energy for growth, MJ/d; none without gain. `sexFactor` 0.8 female, 1.0 castrate, 1.2 bull. */
export function growthMj(
  weightKg: number,
  gainKg: number,
  matureWeightKg: number,
  sexFactor: number,
): number {
  if (!(gainKg > 0) || !(matureWeightKg > 0) || !(sexFactor > 0)) return 0;
  return 22.02 * threeQuarters(weightKg / (sexFactor * matureWeightKg)) * gainKg ** 1.097;
}

/** Equation 10.8: net energy in milk, MJ/d. */
export function milkMj(milkKg: number, fatPercent: number): number {
  return milkKg * (1.47 + 0.4 * fatPercent);
}

/** Days a calf is carried. */
export const GESTATION_DAYS = 283;
const MJ_PER_MCAL = 4.184;

/**
 * Net energy a calf asks of its dam on a day of gestation, MJ for each kg of the calf's weight at birth: 0.576 ×
 * (0.4504 − 0.000766 t) × e^((0.03233 − 0.0000275 t) t) ÷ 1000 Mcal.
 */
function gestationMjPerKg(day: number): number {
  const shape = 0.4504 - 0.000766 * day;
  return ((0.576 * shape * Math.exp((0.03233 - 0.0000275 * day) * day)) / 1000) * MJ_PER_MCAL;
}

/** Of the days of gestation before each day, summed once: a mean over any days is then two look-ups. */
const gestationSum = new Float64Array(GESTATION_DAYS + 1);
for (let day = 0; day < GESTATION_DAYS; day++)
  gestationSum[day + 1] = gestationSum[day] + gestationMjPerKg(day + 0.5);

/** MJ for each kg of calf from conception to a day of gestation, which need not be whole. */
function gestationUntil(day: number): number {
  if (!(day > 0)) return 0;
  if (day >= GESTATION_DAYS) return gestationSum[GESTATION_DAYS];
  const whole = Math.floor(day);
  return gestationSum[whole] + (day - whole) * (gestationSum[whole + 1] - gestationSum[whole]);
}

/**
 * Net energy for a calf of `calfKg` at birth, mean over the first `days` days, MJ/d, when it is born on day
 * `calvingDay`; days before conception and after birth count as nothing.
 */
export function gestationMj(calfKg: number, calvingDay: number, days: number): number {
  if (!(days > 0)) return 0;
  const first = GESTATION_DAYS - calvingDay;
  return (calfKg * (gestationUntil(first + days) - gestationUntil(first))) / days;
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
 * The ratio for growth runs to nothing at about 40 % digestibility, where no finite ration would do; it is held at
 * this part of the ratio for maintenance (our own: a straw ration then asks more than an animal can eat, and says so).
 */
const LEAST_GROWTH_PART = 0.25;
/** Below this digestibility, in %, the ratio for maintenance leaves what was measured; it is held there (our own). */
const LEAST_DIGESTIBILITY = 30;

/** Equation 10.16: gross energy eaten, MJ/d, for a net energy need other than growth and one for growth. */
export function grossEnergyMj(needMj: number, growthNeedMj: number, digestibilityPercent: number): number {
  if (!(digestibilityPercent > 0)) return 0;
  const de = Math.max(LEAST_DIGESTIBILITY, digestibilityPercent);
  const rem = maintenanceRatio(de);
  const reg = Math.max(growthRatio(de), rem * LEAST_GROWTH_PART);
  return (needMj / rem + growthNeedMj / reg) / (digestibilityPercent / 100);
}

/** Net energy for maintenance in a kilogram of dry matter, MJ/kg: equation 10.16 turned round. */
export function netEnergyMjPerKg(digestibilityPercent: number): number {
  if (!(digestibilityPercent > 0)) return 0;
  const rem = maintenanceRatio(Math.max(LEAST_DIGESTIBILITY, digestibilityPercent));
  return GROSS_ENERGY_MJ_PER_KG * (digestibilityPercent / 100) * rem;
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
