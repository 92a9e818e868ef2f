/** What a crop uses where soil differs from spot to spot: the lesser of supply and need, taken at each spot. */
import { exponential } from '../../units/exponential.ts';

/** Coefficients of formula 26.2.17 of Abramowitz and Stegun (1964). */
const P = 0.2316419;
const B1 = 0.31938153;
const B2 = -0.356563782;
const B3 = 1.781477937;
const B4 = -1.821255978;
const B5 = 1.330274429;
const PER_ROOT_TWO_PI = 0.3989422804014327;

/** Share of a standard normal distribution that lies below `z`, to 8 in 10^8 (Abramowitz and Stegun, 26.2.17). */
function normalShareBelow(z: number): number {
  const t = 1 / (1 + P * Math.abs(z));
  const tail =
    PER_ROOT_TWO_PI * exponential((-z * z) / 2) * t * (B1 + t * (B2 + t * (B3 + t * (B4 + t * B5))));
  return z > 0 ? 1 - tail : tail;
}

/**
 * Mean over the ground of the lesser of supply and need, in the unit of both, never above the lesser of their means.
 * Need, against what there is, varies from spot to spot with the coefficient of variation `cv` about its mean and is
 * lognormal, as soil tests within a field are; so this is the limited expected value of a lognormal distribution.
 * @param supply mean of what there is, not below 0
 * @param need mean of what can be used, not below 0
 * @param cv standard deviation ÷ mean, 0 for ground that is alike everywhere
 */
export function lesserOverGround(supply: number, need: number, cv: number): number {
  const most = Math.min(supply, need);
  if (!(most > 0 && cv > 0)) return most;
  const variance = Math.log(1 + cv * cv);
  const sigma = Math.sqrt(variance);
  const apart = Math.log(need / supply);
  const mean =
    supply * normalShareBelow((apart - variance / 2) / sigma) +
    need * normalShareBelow((-apart - variance / 2) / sigma);
  return Math.min(most, mean);
}
