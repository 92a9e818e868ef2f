/** What the headlines of a notebook rest on, and where each centre lies among its own draws. */

import type { DrawCount } from '../calibrate/score.ts';
import {
  type Headline,
  headlinesOf,
  placeOfCentre,
  SPREAD_BASES,
  spreadByBasis,
} from '../calibrate/spread.ts';
import type { ResultName } from '../model/quantities.ts';
import type { Run } from '../study/evaluate.ts';
import { drawAll } from '../uncertainty/monteCarlo.ts';

export interface Rest {
  readonly figure: string;
  readonly scenario: string;
  /** The scenario it is held against, for a difference. */
  readonly less?: string;
  /** Share of its spread by basis of the numbers behind it. */
  readonly shares: Readonly<Record<string, number>>;
  /** Of it, on rows that are published or derived. */
  readonly publishedOrDerived: number;
  /** Share of its draws below the figure by best guesses. */
  readonly centreAt: number;
}

export interface Rests {
  readonly notebook: string;
  readonly figures: readonly Rest[];
}

const HEADLINES: readonly ResultName[] = [
  'nitrogenKeptKg',
  'nitrogenAvailableKg',
  'potassiumKeptKg',
  'compostTonnes',
  'packDepthM',
  'labourHours',
  'capitalCost',
  'netCost',
];
const DIFFERING: readonly ResultName[] = ['nitrogenKeptKg', 'netCost'];

export function restsOf(notebook: string, run: Run, { count, seed }: DrawCount): Rests {
  const headlines = headlinesOf(run, HEADLINES, DIFFERING);
  const draws = drawAll(run, { count, seed, keep: [...HEADLINES] });
  const shares = spreadByBasis(run, headlines);
  const nameOf = (k: number) => run.results[k].name;
  const figures = headlines.map(
    (headline: Headline, k): Rest => ({
      figure: headline.name,
      scenario: nameOf(headline.scenario),
      ...(headline.less === undefined ? {} : { less: nameOf(headline.less) }),
      shares: Object.fromEntries(SPREAD_BASES.map((basis) => [basis, shares[k][basis]])),
      publishedOrDerived: shares[k].published + shares[k].derived,
      centreAt: placeOfCentre(run, draws, headline),
    }),
  );
  return { notebook, figures };
}
