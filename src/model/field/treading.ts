/** Wet ground under hooves. The rule is our own construction, fitted to two trials; it is not a published one. */

/**
 * Share of the year's growth lost where cattle tread wet ground: loss per 100 cow-days a hectare (by soil) times
 * the wet cow-days, at most `limit`. About 700 wet cow-days/ha on clay lose 35 to 45 %.
 */
export function treadingLossFraction(
  wetCowDaysPerHa: number,
  lossPerHundredCowDays: number,
  limit: number,
): number {
  return Math.min(limit, (lossPerHundredCowDays * wetCowDaysPerHa) / 100);
}

/** Share of ground to be sown again: 0 up to the loss `from`, all of it at the loss `limit`, straight between. */
export function reseedFraction(loss: number, from: number, limit: number): number {
  if (!(limit > from)) return loss >= limit && loss > 0 ? 1 : 0;
  return Math.max(0, Math.min(1, (loss - from) / (limit - from)));
}
