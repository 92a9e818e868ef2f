/**
 * How an uncertain number is drawn. The streams are seeded, one for each name: that of a coefficient depends on
 * the seed and its id alone, so adding a coefficient or a scenario never moves another's draws.
 */
export { type Filler, filler, stream } from '../units/random.ts';

/**
 * Value at probability `u` of a number with a best guess and a span: as likely below `central` as above, on each
 * side a triangle that falls to nothing at the end of the span. So the best guess is the median and stays inside
 * the spread of its draws however lopsided the span is, and a fraction stays a fraction. Where the best guess
 * stands at an end, it is the triangular distribution with its mode there.
 */
export function plausible(u: number, low: number, central: number, high: number): number {
  const below = central - low;
  const above = high - central;
  if (!(below > 0)) return above > 0 ? high - above * Math.sqrt(1 - u) : central;
  if (!(above > 0)) return low + below * Math.sqrt(u);
  return u < 0.5 ? low + below * Math.sqrt(2 * u) : high - above * Math.sqrt(2 * (1 - u));
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
  for (let k = 0; k < count; k++) {
    const u = values[k];
    const side = (2 * u) | 0;
    values[k] = end[side] + span[side] * Math.sqrt(2 * Math.min(u, 1 - u));
  }
}

/** One of two forms at each of the first `count` probabilities, in place: 1 with probability `weight`, else 0. */
export function allForms(values: Float64Array, count: number, weight: number): void {
  for (let k = 0; k < count; k++) values[k] = values[k] < weight ? 1 : 0;
}

/** Its distribution function, for checking draws against it. */
export function plausibleShareBelow(x: number, low: number, central: number, high: number): number {
  if (x <= low) return 0;
  if (x >= high) return 1;
  if (central === low) return 1 - ((high - x) / (high - low)) ** 2;
  if (central === high) return ((x - low) / (high - low)) ** 2;
  return x < central ? ((x - low) / (central - low)) ** 2 / 2 : 1 - ((high - x) / (high - central)) ** 2 / 2;
}
