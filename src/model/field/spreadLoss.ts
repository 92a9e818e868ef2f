/** Ammonia of manure on the surface, by published and by fitted regressions, and what working it in still saves. */

export function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}

/** A share moved by `step` on the logit scale; 0 and 1 stay. */
export function shifted(fraction: number, step: number): number {
  if (!(fraction > 0)) return 0;
  if (fraction >= 1) return 1;
  const odds = (fraction / (1 - fraction)) * Math.exp(step);
  return odds / (1 + odds);
}

/** Where the two-pool regression is centred: dry matter %, pH, °C, wind m/s (Hafner and others 2019, set of 2024). */
export const TWO_POOL_CENTRE = { dryMatterPercent: 6, ph: 7.5, temperatureC: 13, windMPerS: 2.7 } as const;
/** Most dry matter, %, and hours that regression holds for. */
export const TWO_POOL_MOST_PERCENT = 10;
const TWO_POOL_HOURS = 168;

/**
 * Share of TAN given off in 168 h: a fast pool `fast` that gives `rate` an hour and moves `soak` an hour into a slow
 * pool, which gives `slow` an hour and binds `bound` an hour. Rates 1/h; solved exactly.
 */
export function twoPoolLoss(fast: number, rate: number, soak: number, slow: number, bound: number): number {
  const a = rate + soak;
  // Equal rates have a solution of their own; a hair apart they give the same.
  const b = Math.abs(slow + bound - a) < 1e-7 ? a + 1e-7 : slow + bound;
  const fastGone = goneIn(a);
  const slowGone = goneIn(b);
  const through = (soak * fast * (fastGone - slowGone)) / (b - a);
  return rate * fast * fastGone + slow * ((1 - fast) * slowGone + through);
}

/** The integral of e^(−k·t) over the hours of the regression. */
function goneIn(perHour: number): number {
  return perHour > 0 ? -Math.expm1(-perHour * TWO_POOL_HOURS) / perHour : TWO_POOL_HOURS;
}

/** Hours the losses of the one-line fit are counted for. */
const LOSS_HOURS = 72;

/** Part of the loss of 72 h that is gone by `hours`: a hyperbola with half of its end at `halfHours`. */
export function goneBy(hours: number, halfHours: number): number {
  if (!(hours > 0)) return 0;
  if (hours >= LOSS_HOURS) return 1;
  return (hours * (LOSS_HOURS + halfHours)) / (LOSS_HOURS * (hours + halfHours));
}

/** What is lost of the loss on the surface when manure is worked in after `hours`, and then loses `buried` of the rest. */
export function workedInFactor(hours: number, halfHours: number, buried: number): number {
  const gone = goneBy(hours, halfHours);
  return gone + (1 - gone) * buried;
}
