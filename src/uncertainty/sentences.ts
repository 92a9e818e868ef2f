/** Differences between scenarios in words: "keeps 140 kg more nitrogen than …, in 93 of 100 draws". */
import { describe } from '../model/dictionary.ts';
import { COMPARISONS, type Comparison } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import type { Evaluation } from '../study/evaluate.ts';
import { type FormatOptions, formatQuantity } from '../units/format.ts';
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
    const next = ranked.find(({ value }) => value !== best.value);
    if (!next) return [];
    const sentence = differenceSentence(evaluation, comparison, best.k, next.k, context, draws);
    return sentence === null ? [] : [sentence];
  });
}

/** One scenario against another in one measure; null where either has none of it or they tie. */
export function differenceSentence(
  { scenarios }: Evaluation,
  { name, verb, noun }: Comparison,
  first: number,
  second: number,
  context: FormatOptions,
  draws?: Draws,
): string | null {
  const [a, b] = [scenarios[first].values[name], scenarios[second].values[name]];
  if (a === null || b === null || a === b) return null;
  const more = a > b ? 'more' : 'less';
  const amount = formatQuantity(Math.abs(a - b), describe(name)?.unit ?? '', context);
  const paired = draws?.results[name] ? pairedDifference(draws, name, first, second) : null;
  const sure =
    paired && draws
      ? `, in ${hundredths(a > b ? paired.shareLarger : paired.shareSmaller)} of 100 draws`
      : '';
  return `${scenarios[first].name} ${verb} ${amount} ${more} ${noun} than ${scenarios[second].name}${sure}.`;
}

/** Never rounds a share to a certainty it is not. */
export function hundredths(share: number): string {
  if (share > 0.995 && share < 1) return 'more than 99';
  if (share < 0.005 && share > 0) return 'fewer than 1';
  return String(Math.round(share * 100));
}
