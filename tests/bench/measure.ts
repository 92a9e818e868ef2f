/** Timing by turns: every side once a round, the least of each kept, so that a busy machine hits all sides alike. */
export interface Side {
  readonly name: string;
  /** Does the work and hands back a number that depends on it, so that none of it can be left out. */
  readonly run: () => number;
}

export interface Timed {
  readonly name: string;
  /** Least time on the clock, ms. */
  readonly leastMs: number;
  /** Least time of this process on the processors, ms: what others' work on the machine moves least. */
  readonly workMs: number;
}

let consumed = 0;

/** A measurement ends after this long with the rounds it has, so that all of them end on a busy machine too, ms. */
const LONGEST_MS = 6_000;
const LEAST_ROUNDS = 2;

/** At most `rounds`; the first tenth only warms up. The order of the sides turns round every round. */
export function byTurns(sides: readonly Side[], rounds: number): Timed[] {
  const clock = sides.map(() => Number.POSITIVE_INFINITY);
  const work = sides.map(() => Number.POSITIVE_INFINITY);
  const warm = Math.ceil(rounds / 10);
  const end = performance.now() + LONGEST_MS;
  for (let round = -warm; round < rounds; round++) {
    if (performance.now() > end) {
      if (round >= LEAST_ROUNDS) break;
      // What is left of warming up is left out.
      round = Math.max(round, 0);
    }
    const order = sides.map((_, k) => (round % 2 === 0 ? k : sides.length - 1 - k));
    for (const k of order) {
      const workBefore = process.cpuUsage();
      const before = performance.now();
      consumed += sides[k].run();
      const took = performance.now() - before;
      const { user, system } = process.cpuUsage(workBefore);
      if (round < 0) continue;
      clock[k] = Math.min(clock[k], took);
      work[k] = Math.min(work[k], (user + system) / 1000);
    }
  }
  return sides.map(({ name }, k) => ({ name, leastMs: clock[k], workMs: work[k] }));
}

/** What the runs came to; printed at the end, so that it is used. */
export const consumedSum = (): number => consumed;

/** Sum of every number of some results, as a sign that they are there; absent ones count as 0. */
export function sumOf(columns: Readonly<Record<string, Float64Array>>): number {
  let sum = 0;
  for (const column of Object.values(columns)) {
    const last = column[column.length - 1];
    sum += Number.isFinite(last) ? last : 0;
  }
  return sum;
}
