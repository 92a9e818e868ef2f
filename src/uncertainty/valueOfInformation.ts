/**
 * What it would be worth to measure a number before choosing (expected value of partial information), from the draws
 * already made, by grouping them along the number.
 */
import { stream } from './random.ts';
import { type Groups, groupsAlong } from './varianceShares.ts';

/**
 * What knowing a number before choosing would gain on average, in the unit of the benefit (expected value of partial
 * perfect information). The best choice in each group of draws along it is picked on one half of the draws and
 * its gain over choosing without knowing is taken on the other half, both ways round: picking the best of noisy
 * means and believing it would make every number look worth measuring. `benefits` has one array a choice; more
 * is better. Below 0 where the groups lead to worse choices.
 */
export function gainIn({ of, sizes }: Groups, benefits: readonly Float64Array[]): number {
  const bins = sizes.length;
  // Sums of even draws, then of odd draws, a row of groups for each choice.
  const sums = [0, 1].map((half) =>
    benefits.map((benefit) => {
      const sum = new Float64Array(bins);
      for (let k = half; k < benefit.length; k += 2) sum[of[k]] += benefit[k];
      return sum;
    }),
  );
  let gain = 0;
  for (const [picked, seen] of [
    [0, 1],
    [1, 0],
  ]) {
    const usual = bestAt(sums[picked].map((sum) => sum.reduce((a, v) => a + v, 0)));
    for (let b = 0; b < bins; b++) {
      const choice = bestAt(sums[picked].map((sum) => sum[b]));
      gain += sums[seen][choice][b] - sums[seen][usual][b];
    }
  }
  return gain / of.length;
}

function bestAt(values: readonly number[]): number {
  let best = 0;
  for (let k = 1; k < values.length; k++) if (values[k] > values[best]) best = k;
  return best;
}

/**
 * The largest gain that groups made by chance seem to have, over `rounds` shuffles: a number worth less than
 * this may be worth nothing. One figure serves every number ranked on the same draws.
 */
export function chanceGain(benefits: readonly Float64Array[], bins?: number, rounds = 20): number {
  const count = benefits[0].length;
  let most = 0;
  for (let round = 0; round < rounds; round++) {
    const next = stream(round, 'groups by chance');
    most = Math.max(most, gainIn(groupsAlong(Float64Array.from({ length: count }, next), bins), benefits));
  }
  return most;
}
