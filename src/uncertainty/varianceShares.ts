/**
 * What matters: how much of the spread of a figure comes from each uncertain number alone (first-order variance
 * index). It reads the draws already made, by grouping them along the number in question.
 */

/** Draws in groups along one number: group of each draw, and how many draws each group has. */
export interface Groups {
  readonly of: Uint16Array;
  readonly sizes: Uint32Array;
}

/** Equally filled groups along `x`; equal values always share a group, so some may be fuller or empty. */
export function groupsAlong(x: Float64Array, bins = binsFor(x.length)): Groups {
  const sorted = x.slice().sort();
  const edges = Float64Array.from(
    { length: bins - 1 },
    (_, b) => sorted[Math.floor(((b + 1) * x.length) / bins)],
  );
  const of = new Uint16Array(x.length);
  const sizes = new Uint32Array(bins);
  for (let k = 0; k < x.length; k++) {
    let low = 0;
    let high = edges.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (edges[middle] <= x[k]) low = middle + 1;
      else high = middle;
    }
    of[k] = low;
    sizes[low]++;
  }
  return { of, sizes };
}

/**
 * First-order index from given data: the variance of the means of equally filled groups along a number, less what the
 * means would scatter by chance, over the whole variance. Unlike a rank correlation it also sees effects that
 * go up and down again. Needs some thousands of draws.
 */
export function varianceShareIn({ of, sizes }: Groups, y: Float64Array): number {
  const mean = average(y);
  const sums = new Float64Array(sizes.length);
  const squares = new Float64Array(sizes.length);
  let total = 0;
  for (let k = 0; k < y.length; k++) {
    const off = y[k] - mean;
    sums[of[k]] += off;
    squares[of[k]] += off * off;
    total += off * off;
  }
  if (!(total > 0)) return 0;
  let between = 0;
  let chance = 0;
  let groups = 0;
  for (let b = 0; b < sizes.length; b++) {
    const n = sizes[b];
    if (n < 2) continue;
    groups++;
    between += sums[b] ** 2 / n;
    chance += (squares[b] - sums[b] ** 2 / n) / (n - 1);
  }
  // A figure that moves by less than its own rounding does not move.
  if (groups < 2 || total / y.length < (1e-12 * mean) ** 2) return 0;
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

/** Groups wide enough that their means are steady: half the square root of the draws, at most 50. */
function binsFor(count: number): number {
  return Math.max(2, Math.min(50, Math.floor(Math.sqrt(count) / 2)));
}

function ranks(x: Float64Array): Uint32Array {
  const out = new Uint32Array(x.length);
  Uint32Array.from(x.keys())
    .sort((a, b) => x[a] - x[b])
    .forEach((at, rank) => {
      out[at] = rank;
    });
  return out;
}

function average(x: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < x.length; k++) sum += x[k];
  return sum / x.length;
}
