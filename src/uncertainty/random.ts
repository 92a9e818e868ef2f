/**
 * How an uncertain number is drawn. The streams are seeded, one for each name: that of a coefficient depends on
 * the seed and its id alone, so adding a coefficient or a scenario never moves another's draws.
 */
import { type MeanShape, shapeAt } from '../tables/publishedMean.ts';
import { normalAt } from '../units/normal.ts';

export { type Filler, filler, stream } from '../units/random.ts';

/**
 * Value at probability `u` of a number with a best guess and a span: a triangle on each side of `central` that falls to
 * nothing at the end of the span. The longer side is the less likely, just so much that the best guess is the mean of
 * its draws. So what adds up best guesses (a bill, a year's costs) is the mean of what its draws add up to, however
 * lopsided the spans are, and a fraction stays a fraction. No side is drawn less than one time in five, however long it
 * is, so that the best guess never leaves its own range. Where the best guess stands at an end of its span, half of the
 * draws are the best guess itself and half a triangle that falls to nothing at the other end.
 */
export function plausible(u: number, low: number, central: number, high: number): number {
  const below = central - low;
  const above = high - central;
  if (!(below > 0)) return above > 0 && u > 0.5 ? high - above * Math.sqrt(2 * (1 - u)) : central;
  if (!(above > 0)) return u < 0.5 ? low + below * Math.sqrt(2 * u) : central;
  const share = shareBelow(below, above);
  return u < share
    ? low + below * Math.sqrt(u * (1 / share))
    : high - above * Math.sqrt((1 - u) * (1 / (1 - share)));
}

/** Of a hundred draws a fifth at least fall on either side of the best guess. */
const LEAST_SHARE = 0.2;

/** How often a draw falls below the best guess. */
function shareBelow(below: number, above: number): number {
  return Math.min(1 - LEAST_SHARE, Math.max(LEAST_SHARE, above / (below + above)));
}

/** `plausible` of the first `count` probabilities in an array, in place; the same numbers, without its branches. */
export function allPlausible(
  values: Float64Array,
  count: number,
  low: number,
  central: number,
  high: number,
): void {
  if (!(central > low && high > central)) {
    for (let k = 0; k < count; k++) values[k] = plausible(values[k], low, central, high);
    return;
  }
  // Whether a draw falls below or above is a toss that no processor guesses: the side is looked up, not branched on.
  const end = Float64Array.of(low, high);
  const span = Float64Array.of(central - low, central - high);
  const share = shareBelow(central - low, high - central);
  const scale = Float64Array.of(1 / share, 1 / (1 - share));
  for (let k = 0; k < count; k++) {
    const u = values[k];
    const side = Number(u >= share);
    values[k] = end[side] + span[side] * Math.sqrt(Math.abs(side - u) * scale[side]);
  }
}

/** One of two forms at each of the first `count` probabilities, in place: 1 with probability `weight`, else 0. */
export function allForms(values: Float64Array, count: number, weight: number): void {
  for (let k = 0; k < count; k++) values[k] = values[k] < weight ? 1 : 0;
}

/**
 * A number published as a mean with a 95 % range at each of the first `count` probabilities, in place: 2.5 of 100 draws
 * lie beyond either end, none beyond what its unit allows (`span`).
 */
export function allOfShape(
  values: Float64Array,
  count: number,
  shape: MeanShape,
  span: { readonly low: number; readonly high: number },
): void {
  for (let k = 0; k < count; k++)
    values[k] = Math.min(span.high, Math.max(span.low, shapeAt(shape, normalAt(values[k]))));
}
