/** What to measure first: which uncertain numbers move the difference that decides, and what knowing one is worth. */

import type { Better } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import { byMean } from './decide.ts';
import { type Draws, sample, type Uncertain } from './monteCarlo.ts';
import { differencesOf, drawsOf } from './percentiles.ts';
import { chanceGain, gainIn } from './valueOfInformation.ts';
import {
  type Groups,
  groupsAlong,
  rankCorrelation,
  sharesTogether,
  varianceShareIn,
} from './varianceShares.ts';

export interface Ranked {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly central: number;
  readonly high: number;
  /** How to find it out, as an instruction; absent where nobody can on a farm. */
  readonly measureBy?: string;
  /** Share of the variance of the difference that this number explains alone. */
  readonly share: number;
  /** Share that all listed numbers explain together which the same measurement finds out, where there are several. */
  readonly together?: number;
  /** Rank correlation with the difference: above 0, more of it favours the first scenario's figure. */
  readonly rank: number;
  /**
   * What knowing it before choosing gains on average, in the unit of the measure; 0 where it would not change
   * the choice more than chance does, null where the measure has no better side.
   */
  readonly worth: number | null;
}

export interface Ranking {
  readonly measure: ResultName;
  readonly first: number;
  readonly second: number;
  /** By falling share. */
  readonly ranked: readonly Ranked[];
  /** Share of the variance that the first three explain together. */
  readonly firstThree: number;
  /** Share that the listed numbers together do not explain: that of all others, and what acts only jointly. */
  readonly rest: number;
  /** Share of the draws in which the first is the better one, a tie half; null where neither side is better. */
  readonly ahead: number | null;
}

export interface RankOptions {
  readonly measure: ResultName;
  readonly better?: Better;
  readonly first: number;
  readonly second: number;
  /** How many to list. */
  readonly top: number;
}

/** Numbers looked at between two signs of life. */
const SLICE = 8;

/** The two scenarios a ranking is about when none are named: the best two on average, else the first two. */
export function closestTwo(draws: Draws, measure: ResultName, better: Better | undefined): [number, number] {
  const order = byMean(draws, { name: measure, better: better ?? 'more' });
  return order.length < 2 ? [0, Math.min(1, draws.scenarios - 1)] : [order[0], order[1]];
}

/** Ranks in slices: yields the share done. Null when either scenario lacks the measure in some draw. */
export function* rank(
  draws: Draws,
  { measure, better, first, second, top }: RankOptions,
): Generator<number, Ranking | null> {
  const difference = differencesOf(draws, measure, first, second);
  if (!difference.every(Number.isFinite)) return null;
  const sign = better === 'less' ? -1 : 1;
  const benefits =
    better === undefined
      ? null
      : // What is ranked stands between two: a third that might be chosen is no part of what knowing is worth here.
        [first, second].map((k) => drawsOf(draws, measure, k).map((v) => sign * v));
  const found = yield* rankDifference(draws, difference, benefits, top);
  const ahead =
    better === undefined
      ? null
      : difference.reduce((n, d) => n + (Math.sign(sign * d) + 1) / 2, 0) / draws.count;
  return { measure, first, second, ahead, ...found };
}

/**
 * Which numbers move a difference, in slices. `benefits` has what each choice gains, draw by draw; null where no
 * choice is the better one, and knowing is worth nothing that could be said.
 */
export function* rankDifference(
  draws: Draws,
  difference: Float64Array,
  benefits: readonly Float64Array[] | null,
  top: number,
): Generator<number, Pick<Ranking, 'ranked' | 'firstThree' | 'rest'>> {
  const chance = benefits === null ? 0 : chanceGain(benefits);
  const found: { uncertain: Uncertain; share: number; worth: number | null }[] = [];
  for (const [k, uncertain] of draws.uncertain.entries()) {
    const groups = groupsOf(uncertain, draws);
    const gain = benefits === null ? null : gainIn(groups, benefits);
    found.push({
      uncertain,
      share: varianceShareIn(groups, difference),
      worth: gain === null ? null : gain > chance ? gain : 0,
    });
    if (k % SLICE === SLICE - 1) yield (k + 1) / draws.uncertain.length;
  }
  found.sort((a, b) => b.share - a.share);
  const listed = found.slice(0, top).filter(({ share }) => share > 0);
  const along = listed.map(({ uncertain }) => sample(uncertain, draws.count, draws.seed));
  const groups = listed.map(({ uncertain }) => groupsOf(uncertain, draws));
  const together = (of: readonly Groups[]) => sharesTogether(of, difference);
  return {
    ranked: listed.map(({ uncertain, share, worth }, k) => {
      const { id, label, unit, low, central, high, measureBy } = uncertain;
      const rank = rankCorrelation(along[k], difference);
      const same = groups.filter(
        (_, other) => measureBy !== undefined && listed[other].uncertain.measureBy === measureBy,
      );
      return {
        id, label, unit, low, central, high, measureBy, share, worth, rank,
        ...(same.length > 1 ? { together: together(same) } : {}),
      }; // biome-ignore format: one number
    }),
    firstThree: together(groups.slice(0, 3)),
    rest: Math.max(0, 1 - together(groups)),
  };
}

const groupsMade = new WeakMap<Uncertain, { readonly of: string; readonly groups: Groups }>();

/** The draws in groups along one number, made once: several figures are ranked by the same draws. */
function groupsOf(uncertain: Uncertain, { count, seed }: Draws): Groups {
  const of = `${count} ${seed}`;
  const made = groupsMade.get(uncertain);
  if (made?.of === of) return made.groups;
  const groups = groupsAlong(sample(uncertain, count, seed));
  groupsMade.set(uncertain, { of, groups });
  return groups;
}

export interface Advice {
  readonly ids: readonly string[];
  readonly share: number;
  readonly worth: number | null;
  /** What to do, as an instruction: "Weigh three bales of barley straw". */
  readonly words: string;
}

/** Below this share of the variance a measurement is not worth the walk. */
const WORTH_A_WALK = 0.02;

/**
 * The measurements that would settle most, at most `most` of them. Numbers that one measurement settles together
 * stand as one; numbers that nobody can measure on a farm are left out.
 */
export function adviceFrom({ ranked }: Ranking | Pick<Ranking, 'ranked'>, most = 3): Advice[] {
  const byWords = new Map<string, Advice>();
  for (const { id, share, together, worth, measureBy: words } of ranked) {
    if (words === undefined) continue;
    const before = byWords.get(words);
    byWords.set(words, {
      ids: [...(before?.ids ?? []), id],
      share: together ?? (before?.share ?? 0) + share,
      // Knowing two numbers is worth at least the better of the two.
      worth: worth === null ? null : Math.max(before?.worth ?? 0, worth),
      words,
    });
  }
  return [...byWords.values()]
    .filter(({ share }) => share >= WORTH_A_WALK)
    .sort((a, b) => b.share - a.share)
    .slice(0, most);
}
