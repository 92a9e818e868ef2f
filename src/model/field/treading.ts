/** Ground under hooves and under what lies on it. The forms are our own; the bounds of their numbers are published. */

/**
 * Share of the growth of the spring after that treading on wet ground takes: 1 − e^(−rate × wet cow-days a hectare
 * ÷ 100). The rate of loam is one poaching's measured loss, taken as 100 cow-days a hectare.
 */
export function treadingLossFraction(wetCowDaysPerHa: number, ratePerHundredCowDays: number): number {
  return -Math.expm1((-ratePerHundredCowDays * wetCowDaysPerHa) / 100);
}

/** Share of ground to be sown again: 0 up to the loss `from`, all of it at the loss `all`, straight between. */
export function reseedFraction(loss: number, from: number, all: number): number {
  if (!(all > from)) return loss >= all && loss > 0 ? 1 : 0;
  return Math.max(0, Math.min(1, (loss - from) / (all - from)));
}

/**
 * Share of ground that lies under more than `smotherKgPerM2`, where the mean cover is `meanKgPerM2` and cover is
 * spread so that little is common and much is rare (exponentially).
 */
export function smotheredFraction(meanKgPerM2: number, smotherKgPerM2: number): number {
  return meanKgPerM2 > 0 ? Math.exp(-smotherKgPerM2 / meanKgPerM2) : 0;
}

/** Spring grass lost by a sward kept open for `days` in which grass grew, kg/ha, less what is regained later. */
export function springGrassKgPerHa(
  days: number,
  perDay: number,
  most: number,
  regainedFraction: number,
): number {
  return Math.min(most, perDay * days) * (1 - regainedFraction);
}
