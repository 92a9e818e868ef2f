/** How far drainage carries nitrate: Burns (1975) and the continuous form of Scotter, White and Dyson (1993). */

import { exponential } from '../../units/exponential.ts';

/**
 * Share of the nitrate at the surface that has moved below a depth: (P/(P + Vm/100))^h.
 * Mind the units: drainage P and depth h in cm, field capacity Vm in percent by volume (35, not 0.35).
 */
export function burnsFraction(drainageCm: number, fieldCapacityPercent: number, depthCm: number): number {
  if (!(drainageCm > 0)) return 0;
  return exponential(-depthCm * Math.log1p(fieldCapacityPercent / (100 * drainageCm)));
}

/** The continuous form exp(−z·θ/I): depth z and drainage I in cm, field capacity θ as a fraction. */
export function scotterFraction(drainageCm: number, fieldCapacityFraction: number, depthCm: number): number {
  return drainageCm > 0 ? exponential((-depthCm * fieldCapacityFraction) / drainageCm) : 0;
}

/**
 * The same for nitrate mixed evenly into the top `mixedCm` (at most `depthCm`): the mean of the continuous form
 * over the starting depths.
 */
export function scotterMixedFraction(
  drainageCm: number,
  fieldCapacityFraction: number,
  depthCm: number,
  mixedCm: number,
): number {
  if (!(drainageCm > 0)) return 0;
  if (!(mixedCm > 0)) return scotterFraction(drainageCm, fieldCapacityFraction, depthCm);
  const per = fieldCapacityFraction / drainageCm;
  return (exponential(-per * (depthCm - mixedCm)) - exponential(-per * depthCm)) / (per * mixedCm);
}

/** Depth above which half of the surface nitrate still lies, cm: the inverse of `burnsFraction` at one half. */
export function burnsHalfDepthCm(drainageCm: number, fieldCapacityPercent: number): number {
  return Math.LN2 / Math.log1p(fieldCapacityPercent / (100 * drainageCm));
}
