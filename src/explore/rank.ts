/**
 * What matters: how much of the spread of a figure comes from each uncertain number alone (first-order variance
 * index), and what it would be worth to measure that number first (expected value of partial information). Both
 * read the draws already made, by grouping them along the number in question.
 */

export interface Index {
  /** Share of the variance explained by this number alone, 0…1. */
  readonly share: number;
  /** Spearman rank correlation: sign and strength of a steady effect. */
  readonly rank: number;
}

/**
 * First-order index from given data: the variance of the means of `bins` equally filled groups, less what the
 * means would scatter by chance, over the whole variance. Unlike a rank correlation it also sees effects that
 * go up and down again. Needs some thousands of draws.
 */
export function varianceShare(x: Float64Array, y: Float64Array, bins = binsFor(x.length)): number {
  const order = orderBy(x);
  const mean = average(y);
  const total = y.reduce((sum, value) => sum + (value - mean) ** 2, 0) / y.length;
  if (!(total > 0)) return 0;
  let between = 0;
  let within = 0;
  for (const [from, to] of groups(order.length, bins)) {
    let sum = 0;
    let squares = 0;
    for (let k = from; k < to; k++) {
      sum += y[order[k]];
      squares += y[order[k]] ** 2;
    }
    const size = to - from;
    between += (size / y.length) * (sum / size - mean) ** 2;
    within += squares / size - (sum / size) ** 2;
  }
  const chance = within / bins / (y.length / bins - 1);
  return Math.min(1, Math.max(0, (between - chance) / total));
}

/** Spearman rank correlation of two samples (ties broken by order). */
export function rankCorrelation(x: Float64Array, y: Float64Array): number {
  const n = x.length;
  const rx = ranks(x);
  const ry = ranks(y);
  let sum = 0;
  for (let k = 0; k < n; k++) sum += (rx[k] - ry[k]) ** 2;
  return 1 - (6 * sum) / (n * (n * n - 1));
}

/**
 * What knowing `x` before choosing would gain on average, in the unit of the benefit: the mean of the best
 * expected benefit within each group of draws along `x`, less the best expected benefit without knowing.
 * `benefits` has one array a choice; more is better.
 */
export function worthOfMeasuring(
  x: Float64Array,
  benefits: readonly Float64Array[],
  bins = binsFor(x.length),
): number {
  const order = orderBy(x);
  const unknowing = Math.max(...benefits.map(average));
  let knowing = 0;
  for (const [from, to] of groups(order.length, bins)) {
    let best = Number.NEGATIVE_INFINITY;
    for (const benefit of benefits) {
      let sum = 0;
      for (let k = from; k < to; k++) sum += benefit[order[k]];
      best = Math.max(best, sum);
    }
    knowing += best;
  }
  return Math.max(0, knowing / x.length - unknowing);
}

/** Groups wide enough that their means are steady: the square root of the draws, at most 50. */
function binsFor(count: number): number {
  return Math.max(2, Math.min(50, Math.floor(Math.sqrt(count) / 2)));
}

function* groups(count: number, bins: number): Generator<[number, number]> {
  for (let b = 0; b < bins; b++) yield [Math.floor((b * count) / bins), Math.floor(((b + 1) * count) / bins)];
}

function orderBy(x: Float64Array): Uint32Array {
  return Uint32Array.from(x.keys()).sort((a, b) => x[a] - x[b]);
}

function ranks(x: Float64Array): Uint32Array {
  const out = new Uint32Array(x.length);
  orderBy(x).forEach((at, rank) => {
    out[at] = rank;
  });
  return out;
}

function average(x: Float64Array): number {
  return x.reduce((sum, value) => sum + value, 0) / x.length;
}
