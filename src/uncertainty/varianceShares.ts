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

/**
 * Share of the variance of `y` that several numbers explain together, each through the means of its groups. Numbers that
 * are drawn together, as prices of one market are, explain much of the same: their single shares may add up to more than
 * the whole, this does not. At least the largest single share, at most 1.
 */
export function sharesTogether(groups: readonly Groups[], y: Float64Array): number {
  const single = groups.map((each) => varianceShareIn(each, y));
  const most = Math.max(0, ...single);
  if (groups.length < 2 || most === 0) return most;
  const mean = average(y);
  const n = y.length;
  let total = 0;
  for (let k = 0; k < n; k++) total += (y[k] - mean) ** 2;
  const columns = groups.map((each) => groupMeans(each, y, mean));
  const sums = columns.map((a, i) => [
    ...columns.map((b) => dot(a, b)),
    columns[i].reduce((sum, v, k) => sum + v * (y[k] - mean), 0),
  ]);
  const explained =
    solved(sums).reduce((sum, factor, i) => sum + factor * sums[i][columns.length], 0) / total;
  // The means of groups follow chance as well: what so many of them would explain of nothing is taken off.
  const free =
    n - 1 - groups.reduce((sum, { sizes }) => sum + sizes.filter((size) => size > 0).length - 1, 0);
  const beyondChance = free > 0 ? 1 - ((1 - explained) * (n - 1)) / free : explained;
  return Math.min(1, Math.max(most, beyondChance));
}

/** The mean of its group for each draw, less the mean of all. */
function groupMeans({ of, sizes }: Groups, y: Float64Array, mean: number): Float64Array {
  const sums = new Float64Array(sizes.length);
  for (let k = 0; k < y.length; k++) sums[of[k]] += y[k] - mean;
  return Float64Array.from(of, (group) => sums[group] / sizes[group]);
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k] * b[k];
  return sum;
}

/** Solves the symmetric system whose rows hold the right side last; what hangs on others altogether gets 0. */
function solved(rows: readonly (readonly number[])[]): number[] {
  const work = rows.map((row) => [...row]);
  const n = work.length;
  const kept: number[] = [];
  for (let i = 0; i < n; i++) {
    if (!(work[i][i] > 1e-9 * rows[i][i])) continue;
    kept.push(i);
    for (let j = 0; j < n; j++) {
      if (j === i) continue;
      const factor = work[j][i] / work[i][i];
      if (factor !== 0) for (let c = 0; c <= n; c++) work[j][c] -= factor * work[i][c];
    }
  }
  return work.map((row, i) => (kept.includes(i) ? row[n] / row[i] : 0));
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
