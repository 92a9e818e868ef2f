/** What the spread of a headline rests on, by the basis of the numbers behind it, and where its centre lies in it. */
import type { ResultName } from '../model/quantities.ts';
import type { Run } from '../study/evaluate.ts';
import { runBlock } from '../study/rows.ts';
import { BASES, type Basis, FORM } from '../tables/coefficient.ts';
import { type Draws, type Uncertain, uncertainIn } from '../uncertainty/monteCarlo.ts';
import { differencesOf, drawsOf } from '../uncertainty/percentiles.ts';
import { plausible } from '../uncertainty/random.ts';
import { turnedToEnds } from '../whatif/oneAtATime.ts';

/** The notebook's own numbers have no basis of the tables. */
export const SPREAD_BASES = [...BASES, 'own number'] as const;
type SpreadBasis = Basis | 'own number';

export interface Headline {
  readonly name: ResultName;
  readonly scenario: number;
  /** Taken off it; absent for a figure by itself. */
  readonly less?: number;
}

/** Each figure of every scenario that has it, and for `differing` ones the differences of every pair. */
export function headlinesOf(
  run: Run,
  names: readonly ResultName[],
  differing: readonly ResultName[],
): Headline[] {
  const has = (name: ResultName, scenario: number) =>
    Number.isFinite(run.results[scenario].values[name] ?? Number.NaN);
  const all = run.results.map((_, k) => k);
  return [
    ...names.flatMap((name) => all.filter((s) => has(name, s)).map((scenario) => ({ name, scenario }))),
    ...differing.flatMap((name) =>
      all.flatMap((scenario) =>
        all
          .filter((less) => less > scenario && has(name, scenario) && has(name, less))
          .map((less) => ({ name, scenario, less })),
      ),
    ),
  ];
}

/**
 * Share of the spread of each headline by basis. Each number is turned to its low and to its high end alone; its
 * variance is that of its draws, with the figure taken as straight on either side of the best guess. Numbers that move
 * together in the draws count as if they did not.
 */
export function spreadByBasis(run: Run, headlines: readonly Headline[]): Record<SpreadBasis, number>[] {
  const uncertain = uncertainIn(run);
  const names = [...new Set(headlines.map(({ name }) => name))];
  const block = turnedToEnds(run, uncertain, names);
  const made = runBlock(block, run.weather);
  const bases = uncertain.map(({ at }): SpreadBasis => {
    const binding = run.bound[at[0].scenario].bindings.get(at[0].column);
    return binding?.origin === 'override' ? 'own number' : (binding?.coefficient?.basis ?? 'own number');
  });
  const moments = uncertain.map(momentsOf);
  return headlines.map(({ name, scenario, less }) => {
    const value = (repeat: number) => {
      const row = (s: number) => made[name][repeat * block.scenarios + s];
      return less === undefined ? row(scenario) : row(scenario) - row(less);
    };
    const centre = value(0);
    const sums = Object.fromEntries(SPREAD_BASES.map((basis) => [basis, 0])) as Record<SpreadBasis, number>;
    let all = 0;
    uncertain.forEach((_, k) => {
      const alone = varianceAlone(value(2 * k + 1) - centre, value(2 * k + 2) - centre, moments[k]);
      if (!Number.isFinite(alone)) return;
      sums[bases[k]] += alone;
      all += alone;
    });
    for (const basis of SPREAD_BASES) sums[basis] = all > 0 ? sums[basis] / all : 0;
    return sums;
  });
}

/** Mean and mean square of how far the draws of a number reach towards its low (1 at the end) and its high end. */
interface Moments {
  readonly down: readonly [mean: number, square: number];
  readonly up: readonly [mean: number, square: number];
}

const POINTS = 400;

/** By the law the draws have, at evenly spaced probabilities. */
export function momentsOf({
  unit,
  low,
  central,
  high,
}: Pick<Uncertain, 'unit' | 'low' | 'central' | 'high'>): Moments {
  // A draw takes the one form or the other, by the weight that stands as the best guess.
  if (unit === FORM) return { down: [1 - central, 1 - central], up: [central, central] };
  const [down, up] = [[0, 0] as [number, number], [0, 0] as [number, number]];
  for (let k = 0; k < POINTS; k++) {
    const x = plausible((k + 0.5) / POINTS, low, central, high);
    const [side, reach] =
      x < central ? [down, (central - x) / (central - low)] : [up, (x - central) / (high - central)];
    if (!Number.isFinite(reach)) continue;
    side[0] += reach / POINTS;
    side[1] += reach ** 2 / POINTS;
  }
  return { down, up };
}

/** Variance of a figure that moves by `low` and `high` at the ends of one number. */
export const varianceAlone = (low: number, high: number, { down, up }: Moments): number =>
  low ** 2 * down[1] + high ** 2 * up[1] - (low * down[0] + high * up[0]) ** 2;

/** Share of the draws that lie below the figure by best guesses; half of those that equal it. */
export function placeOfCentre(run: Run, draws: Draws, { name, scenario, less }: Headline): number {
  const drawn =
    less === undefined ? drawsOf(draws, name, scenario) : differencesOf(draws, name, scenario, less);
  const of = (s: number) => run.results[s].values[name] ?? Number.NaN;
  const centre = less === undefined ? of(scenario) : of(scenario) - of(less);
  let below = 0;
  let counted = 0;
  for (const value of drawn) {
    if (!Number.isFinite(value)) continue;
    counted++;
    below += value < centre ? 1 : value === centre ? 0.5 : 0;
  }
  return counted > 0 ? below / counted : Number.NaN;
}
