/**
 * First-order decay of a degradable pool, and what is left of one that is fed every day. The usual form of the
 * composting literature (Haug, The Practical Handbook of Compost Engineering, 1993).
 */

/** Share of a batch left after `days` at a rate per day. */
export function remainingShare(ratePerDay: number, days: number): number {
  return Math.exp(-ratePerDay * days);
}

/**
 * Mean share left of a pool fed evenly over `days`: (1 − e^(−k·t))/(k·t). 1 where nothing decays or no time
 * has passed.
 */
export function meanRemainingShare(ratePerDay: number, days: number): number {
  const x = ratePerDay * days;
  return x === 0 ? 1 : -Math.expm1(-x) / x;
}

/** Share of a mass left when only its degradable part decays, fed evenly over `days`. */
export function fedRemainingShare(degradableFraction: number, ratePerDay: number, days: number): number {
  return 1 - degradableFraction + degradableFraction * meanRemainingShare(ratePerDay, days);
}

/** Rate per day at which `lostShare` of a batch is gone after `days`. */
export function rateFromLoss(lostShare: number, days: number): number {
  return -Math.log1p(-lostShare) / days;
}
