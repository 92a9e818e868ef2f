/**
 * How warm the bed is: heat of what rots in its top, as deep as air reaches, and of the little that rots below;
 * lost to the air above by convection and by drying. Surface, top and core have a steady state; top and core go
 * towards theirs as fast as their thickness and the heat they hold allow (days for a hand's depth, months for a metre),
 * so that a deep bed does not follow every mild week. Found by damped rounds from the week before.
 *
 * Forms: temperature of decay and factor of moisture after Haug (1993); depth of air by diffusion against an even
 * demand, through pores after Millington and Quirk (1961); saturation vapour after FAO-56; wind function of drying
 * after Penman (1948); convection over a surface in light wind after McAdams (1954). Constants of those forms stand
 * here; what belongs to a bed is a row of the tables. Diffusion only: warm air that rises through loose straw is left
 * out, so a real bed may be warmer; `packDecayEvenForm` weighs an even rate of rotting against it.
 */

import { rateByTemperature } from './haug.ts';

/** Heat that a kilogram of water takes to evaporate, MJ; and W/m² in a MJ/m² and day. */
const LATENT_MJ_PER_KG = 2.45;
const MJ_PER_DAY_PER_W = 0.0864;
/** Oxygen through free air at 10 °C, m²/d, and oxygen in air, kg/m³. */
const OXYGEN_M2_PER_DAY = 1.73;
const OXYGEN_KG_PER_M3 = 0.285;

/** Vapour pressure of a wet surface, kPa. */
export function saturationKPa(temperatureC: number): number {
  return 0.6108 * Math.exp((17.27 * temperatureC) / (temperatureC + 237.3));
}

/** Oxygen through pores of which the share `air` of the volume holds air and `pores` air and water, m²/d. */
export function oxygenDiffusion(air: number, pores: number): number {
  return (OXYGEN_M2_PER_DAY * air * air * air * Math.cbrt(air)) / (pores * pores);
}

/** How deep oxygen reaches, m, by diffusion (m²/d) against a demand (kg/m³ and day); without end where nothing rots. */
export function airDepthM(diffusion: number, demand: number): number {
  return Math.sqrt((2 * diffusion * OXYGEN_KG_PER_M3) / demand);
}

/** Convection of a surface at a wind (m/s), MJ/m² and day per °C. */
export function convection(windMPerS: number): number {
  return MJ_PER_DAY_PER_W * (5.7 + 3.8 * windMPerS);
}

/** Drying of a surface, of which the share `wet` is wet, kg/m² and day per kPa. */
export function dryingPerKPa(windMPerS: number, wet: number): number {
  return 2.6 * (1 + 0.54 * windMPerS) * wet;
}

/** Slope of the vapour pressure: itself × this ÷ (T + 237.3)². */
const VAPOUR_SLOPE = 17.27 * 237.3;

/** Both curves by quarter degrees: read off in the weeks instead of worked out. */
const COLDEST = -60;
const PER_DEGREE = 4;
const POINTS = 150 * PER_DEGREE + 2;
const curve = (of: (temperatureC: number) => number) =>
  Float64Array.from({ length: POINTS }, (_, k) => of(COLDEST + k / PER_DEGREE));
const DECAY = curve(rateByTemperature);
const VAPOUR = curve(saturationKPa);

function readOff(points: Float64Array, temperatureC: number): number {
  let at = (temperatureC - COLDEST) * PER_DEGREE;
  if (at < 0) at = 0;
  else if (at > POINTS - 2) at = POINTS - 2;
  const k = at | 0;
  return points[k] + (at - k) * (points[k + 1] - points[k]);
}

/**
 * What a bed is, and what it comes to; places of `Float64Array`, since numbers handed to a function are boxed.
 * Temperatures are also where the rounds start.
 */
export const BED = {
  /** Decay of what rots at 20 °C with air, 1/d, with the factor of its moisture. */
  perDay: 0,
  /** What rots, kg/m³. */
  degradableKgPerM3: 1,
  depthM: 2,
  airC: 3,
  /** Of the air above, fraction. */
  humidity: 4,
  oxygenKgPerKg: 5,
  heatMjPerKgOxygen: 6,
  airlessRate: 7,
  airlessHeat: 8,
  conductivity: 9,
  /** MJ/m² and day per °C. */
  convection: 10,
  /** kg/m² and day per kPa. */
  dries: 11,
  /** Heat of animals that lie on it, MJ/m² and day. */
  stockMj: 12,
  /** m²/d, at rest and loosened. */
  diffusion: 13,
  looseDiffusion: 14,
  /** Share of the time it lies loosened, and how deep. */
  looseShare: 15,
  looseDepthM: 16,
  /** Drying and want of air let no bed grow hotter. */
  hottestC: 17,
  /** Heat a warmer bed holds, MJ/m³ and °C; 0 gives the steady state. */
  holds: 18,
  /** Days since the temperatures before. */
  days: 19,
  /** Found: */
  surfaceC: 20,
  topC: 21,
  coreC: 22,
  airDepthM: 23,
  heatMj: 24,
  evaporatesKg: 25,
  /** Decay of the whole bed, 1/d. */
  decayPerDay: 26,
} as const;
export const BED_PLACES = 27;

/** 4 ÷ π²: of the slowest warming of a slab cooled on one side. */
const SLAB = 4 / Math.PI ** 2;
/** Steps a round goes towards what it finds, so that rounds do not swing. */
const DAMPED = 0.6;

/** Turns the found places of `bed` towards the steady state, `rounds` times. */
export function warm(bed: Float64Array, rounds: number): void {
  const depth = bed[BED.depthM];
  const air = bed[BED.airC];
  const vapour = bed[BED.humidity] * readOff(VAPOUR, air);
  const perKelvin = bed[BED.convection];
  const dries = bed[BED.dries];
  const latent = LATENT_MJ_PER_KG * dries;
  const stock = bed[BED.stockMj];
  // Oxygen asked for at 20 °C, kg/m³ and day.
  const demand = bed[BED.oxygenKgPerKg] * bed[BED.perDay] * bed[BED.degradableKgPerM3];
  const perOxygen = bed[BED.heatMjPerKgOxygen];
  const below = bed[BED.airlessRate];
  const airless = perOxygen * bed[BED.airlessHeat] * below * demand;
  const loose = bed[BED.looseShare];
  const hottest = bed[BED.hottestC];
  // Air reaches as deep as this over the root of what is asked for.
  const reaches = airDepthM(bed[BED.diffusion], 1);
  const reachesLoose = airDepthM(bed[BED.looseDiffusion], 1);
  const looseDepth = Math.min(depth, bed[BED.looseDepthM]);
  const resistance = 1 / (bed[BED.conductivity] * MJ_PER_DAY_PER_W);
  let surface = bed[BED.surfaceC];
  let top = bed[BED.topC];
  let core = bed[BED.coreC];
  const topBefore = top;
  const coreBefore = core;
  // Slowest warming of a slab cooled on one side: e^(−t·π²/4·conductivity ÷ held heat ÷ thickness²), as an implicit step.
  const slow = (bed[BED.holds] * resistance * SLAB) / bed[BED.days];
  const coreStep = 1 / (1 + slow * depth * depth);
  let reach = 0;
  let heat = 0;
  for (let round = 0; round < rounds; round++) {
    const asks = demand * readOff(DECAY, top);
    const root = Math.sqrt(1 / asks);
    reach = Math.min(depth, reaches * root);
    if (loose > 0) reach += loose * Math.max(0, Math.min(looseDepth, reachesLoose * root) - reach);
    const inTop = perOxygen * asks * reach;
    const inCore = airless * readOff(DECAY, core) * (depth - reach);
    heat = inTop + inCore;
    // A step of Newton from the last surface a round: the balance falls with it everywhere.
    const wet = readOff(VAPOUR, surface);
    const lacks = wet - vapour;
    const gives = heat + stock - perKelvin * (surface - air);
    if (lacks > 0) {
      const square = (surface + 237.3) * (surface + 237.3);
      surface += ((gives - latent * lacks) * square) / (perKelvin * square + latent * wet * VAPOUR_SLOPE);
    } else surface += gives / perKelvin;
    const toTop = surface + ((0.75 * inTop + inCore) * reach * resistance) / 2;
    const toCore =
      surface +
      (inCore * reach + (inTop * reach) / 2) * resistance +
      (inCore * (depth - reach) * resistance) / 2;
    const warmer = (Math.min(hottest, toTop) - topBefore) / (1 + slow * reach * reach);
    top += DAMPED * (topBefore + warmer - top);
    core += DAMPED * (coreBefore + coreStep * (Math.min(hottest, toCore) - coreBefore) - core);
  }
  bed[BED.surfaceC] = surface;
  bed[BED.topC] = top;
  bed[BED.coreC] = core;
  bed[BED.airDepthM] = reach;
  bed[BED.heatMj] = heat;
  bed[BED.evaporatesKg] = dries * Math.max(0, readOff(VAPOUR, surface) - vapour);
  const withAir = depth > 0 ? reach / depth : 1;
  bed[BED.decayPerDay] =
    bed[BED.perDay] * (withAir * readOff(DECAY, top) + (1 - withAir) * below * readOff(DECAY, core));
}
