/**
 * How deep the ground freezes: the modified Berggren formula of UFC 3-130-06 with the coefficient of Aldrich and Paynter
 * (1953, equation 2-33), in SI units. Bare ground, one soil, no snow on it. The local code decides, never this figure.
 */

/** One season of frost at a place. Degree days of the air below freezing, °C·d; days it lasts; mean of the year, °C. */
export interface FrostSeason {
  readonly freezingIndexCD: number;
  readonly days: number;
  readonly meanYearC: number;
}

/** What the ground is: see the rows of the same names. */
export interface FrostSoil {
  /** Surface over air. */
  readonly surfaceFactor: number;
  /** W/(m·K), mean of frozen and unfrozen. */
  readonly conductivityWPerMK: number;
  readonly dryDensityKgPerM3: number;
  /** Water over dry soil. */
  readonly waterFraction: number;
}

const SECONDS_A_DAY = 86_400;
/** Heat of fusion of water; specific heat of dry soil (0.17 of that of water, as the manual takes it) and of water, J/kg. */
const FUSION_J_PER_KG = 334_000;
const WATER_J_PER_KG_K = 4187;
const SOIL_SHARE = 0.17;
/** Mean of water (1) and ice (0.5), over water. */
const WATER_SHARE = 0.75;
const EULER = 0.577_215_664_9;

/** Metres; 0 where it does not freeze. */
export function frostDepthM(season: FrostSeason, soil: FrostSoil): number {
  const surfaceCD = season.freezingIndexCD * soil.surfaceFactor;
  if (!(surfaceCD > 0) || !(season.days > 0)) return 0;
  const latent = FUSION_J_PER_KG * soil.dryDensityKgPerM3 * soil.waterFraction;
  const heat = WATER_J_PER_KG_K * soil.dryDensityKgPerM3 * (SOIL_SHARE + WATER_SHARE * soil.waterFraction);
  const belowC = surfaceCD / season.days;
  const ratio = Math.max(0, season.meanYearC) / belowC;
  const fusion = (belowC * heat) / latent;
  const correction = 1 / Math.sqrt(1 + fusion * (ratio + 0.5));
  return correction * Math.sqrt((2 * soil.conductivityWPerMK * surfaceCD * SECONDS_A_DAY) / latent);
}

/** A winter's frost: where the sum of degree days is highest in autumn to where it is lowest after it (ISO 13793, A.2). */
export interface FrostOfWinter {
  readonly freezingIndexCD: number;
  readonly days: number;
}

/** Of a year of daily means from a day in summer or autumn on: the deepest fall of their running sum, and its days. */
export function frostOf(temperatureC: ArrayLike<number>): FrostOfWinter {
  let sum = 0;
  let top = 0;
  let topDay = 0;
  let freezingIndexCD = 0;
  let days = 0;
  for (let d = 0; d < temperatureC.length; d++) {
    sum += temperatureC[d];
    if (sum > top) {
      top = sum;
      topDay = d + 1;
    } else if (top - sum > freezingIndexCD) {
      freezingIndexCD = top - sum;
      days = d + 1 - topDay;
    }
  }
  return { freezingIndexCD, days };
}

/** Winters of a place: mean and standard deviation of their freezing indices, °C·d; mean days of frost; mean of the year. */
export interface FrostClimate {
  readonly indexCD: number;
  readonly spreadCD: number;
  readonly days: number;
  readonly meanYearC: number;
}

/** What the years of a place have in common; each is a year of daily means that begins in summer or autumn. */
export function frostClimateOf(years: readonly ArrayLike<number>[]): FrostClimate {
  const frosts = years.map(frostOf);
  const meanOf = (of: readonly number[]) => of.reduce((sum, each) => sum + each, 0) / Math.max(1, of.length);
  const indices = frosts.map(({ freezingIndexCD }) => freezingIndexCD);
  const indexCD = meanOf(indices);
  const off = indices.reduce((sum, each) => sum + (each - indexCD) ** 2, 0);
  return {
    indexCD,
    spreadCD: indices.length > 1 ? Math.sqrt(off / (indices.length - 1)) : 0,
    days: meanOf(frosts.map(({ days }) => days)),
    meanYearC: meanOf(years.map((year) => meanOf(Array.from(year)))),
  };
}

/**
 * The freezing index exceeded once in `years` years (Gumbel by moments, the treatment ISO 13793 A.3 asks for; without a
 * correction for few winters). From one winter alone, that winter's.
 */
export function designFreezingIndexCD({ indexCD, spreadCD }: FrostClimate, years: number): number {
  const reduced = -Math.log(-Math.log(1 - 1 / Math.max(1.01, years)));
  return Math.max(0, indexCD + (spreadCD * Math.sqrt(6) * (reduced - EULER)) / Math.PI);
}
