/** Ammonium to nitrate, and what of the nitrate the drainage still to come carries away; week by week. */
import { exponential } from '../../units/exponential.ts';
import { burnsFraction } from './burns.ts';

/** Rate of first order at the reference temperature, 1/week, from the share that nitrifies there in a week. */
export function nitrificationRate(fractionAtReference: number): number {
  return -Math.log1p(-Math.min(fractionAtReference, ALL_BUT_NOTHING));
}

/** A rate of first order never takes all. */
const ALL_BUT_NOTHING = 1 - Number.EPSILON;

/**
 * Share of the ammonium that turns into nitrate in a week, 0…1: of first order, the rate exponential in temperature
 * over the unfrozen part of the week; `frozenFraction` over the frozen part. With 0.22 a week at 10 °C and 0.0693 per
 * °C the half-life at 2 °C is 4.9 weeks.
 */
export function nitrifiedFraction(
  temperatureC: number,
  frozenShare: number,
  rateAtReference: number,
  perC: number,
  referenceC: number,
  frozenFraction: number,
): number {
  if (frozenShare >= 1) return Math.min(frozenFraction, 1);
  const free = 1 - exponential(-rateAtReference * exponential(perC * (temperatureC - referenceC)));
  return Math.min((1 - frozenShare) * free + frozenShare * frozenFraction, 1);
}

/**
 * Nitrogen leached, kg, of ammonium that enters the soil week by week, and by week of nitrification in `out`.
 * `leachable[w]` is the drainage (mm) that nitrate formed in week w still meets, as from `drainageToCome`.
 * Each week nitrifies its fraction of what is left; ammonium never nitrified stays. More drainage in any week
 * never gives less. `inflow`, `fraction` and `leachable` hold `weeks` numbers; kg in, kg out.
 */
export function leachedKg(
  inflow: Float64Array,
  fraction: Float64Array,
  leachable: Float64Array,
  weeks: number,
  fieldCapacityPercent: number,
  depthCm: number,
  out: Float64Array,
): number {
  let ammonium = 0;
  let total = 0;
  for (let w = 0; w < weeks; w++) {
    ammonium += inflow[w];
    const nitrate = fraction[w] * ammonium;
    ammonium -= nitrate;
    const leached =
      nitrate > 0 ? nitrate * burnsFraction(leachable[w] / 10, fieldCapacityPercent, depthCm) : 0;
    out[w] = leached;
    total += leached;
  }
  return total;
}

/**
 * Drainage that nitrate formed in each week still meets, mm, into `out`: half of its own week's and all that
 * follows, each later week weighed by the share of the nitrate no plant has taken by then. `left[w]` is that
 * share for week w alone: 1 while nothing grows.
 */
export function drainageToCome(
  drainageMm: Float64Array,
  left: Float64Array,
  weeks: number,
  out: Float64Array,
): void {
  let later = 0;
  for (let w = weeks - 1; w >= 0; w--) {
    out[w] = drainageMm[w] / 2 + later;
    later = left[w] * (drainageMm[w] + later);
  }
}
