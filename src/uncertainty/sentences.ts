/** Differences between scenarios in words: "keeps 140 kg more nitrogen than …, in 93 of 100 draws". */
import { describe } from '../model/dictionary.ts';
import { COMPARISONS, type Comparison } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import type { Evaluation } from '../study/evaluate.ts';
import { type FormatOptions, formatDifference, readsTheSame } from '../units/format.ts';
import type { Draws } from './monteCarlo.ts';
import { pairedDifference } from './percentiles.ts';

/** Measures spelt out, the ones a keeper asks about first. */
const SPELT: readonly ResultName[] = [
  'nitrogenKeptKg',
  'nitrogenAvailableKg',
  'potassiumKeptKg',
  'labourHours',
  'capitalCost',
  'netCost',
];

/** For each spelt measure, the best scenario against the next that differs from it: the two that compete. */
export function differenceSentences(evaluation: Evaluation, context: FormatOptions, draws?: Draws): string[] {
  return SPELT.flatMap((name) => {
    const comparison = COMPARISONS.find((c) => c.name === name) as Comparison;
    const ranked = evaluation.scenarios
      .map((s, k) => ({ k, value: s.values[name] }))
      .filter((s): s is { k: number; value: number } => s.value !== null)
      .sort((a, b) => (comparison.better === 'less' ? a.value - b.value : b.value - a.value));
    if (ranked.length < 2) return [];
    const [best] = ranked;
    const unit = describe(name)?.unit ?? '';
    const next = ranked.find(({ value }) => !readsTheSame(value, best.value, unit, context));
    if (!next) return [];
    const sentence = differenceSentence(evaluation, comparison, best.k, next.k, context, draws);
    return sentence === null ? [] : [sentence];
  });
}

/** One scenario against another in one measure; null where either has none of it or both read the same. */
export function differenceSentence(
  { scenarios }: Evaluation,
  { name, verb, noun }: Comparison,
  first: number,
  second: number,
  context: FormatOptions,
  draws?: Draws,
): string | null {
  const [a, b] = [scenarios[first].values[name], scenarios[second].values[name]];
  const unit = describe(name)?.unit ?? '';
  if (a === null || b === null || readsTheSame(a, b, unit, context)) return null;
  const more = a > b ? 'more' : 'less';
  const amount = formatDifference(a, b, unit, context);
  const paired = draws?.results[name] ? pairedDifference(draws, name, first, second) : null;
  const sure =
    paired && draws
      ? `, in ${hundredths(a > b ? paired.shareLarger : paired.shareSmaller)} of 100 draws`
      : '';
  // A name may hold a comma or an "and": quotes keep it one name.
  return `“${scenarios[first].name}” ${verb} ${amount} ${more} ${noun} than “${scenarios[second].name}”${sure}.`;
}

/** Never rounds a share to a certainty it is not. */
export function hundredths(share: number): string {
  if (share > 0.995 && share < 1) return 'more than 99';
  if (share < 0.005 && share > 0) return 'fewer than 1';
  return String(Math.round(share * 100));
}

/**
 * The same for shares that together are the whole: whole hundredths by largest remainder, so that what is shown sums
 * to 100; a share that is there and comes to 0 is said to be fewer than 1, one that is not the whole more than 99.
 */
export function hundredthsOf(shares: readonly number[]): string[] {
  const exact = shares.map((share) => share * 100);
  const whole = exact.map(Math.floor);
  const missing = Math.round(exact.reduce((sum, n) => sum + n, 0)) - whole.reduce((sum, n) => sum + n, 0);
  const byRemainder = exact.map((n, k) => ({ k, rest: n - whole[k] })).sort((a, b) => b.rest - a.rest);
  for (const { k } of byRemainder.slice(0, Math.max(0, missing))) whole[k]++;
  return whole.map((n, k) => {
    if (n === 0 && shares[k] > 0) return 'fewer than 1';
    return n === 100 && shares[k] < 1 ? 'more than 99' : String(n);
  });
}
