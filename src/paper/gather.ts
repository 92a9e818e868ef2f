/**
 * The one gathering of the lender's paper. A page and a command differ only in who answers what it asks, a worker
 * or this thread; what is asked, how many draws and of which quantities stands here.
 */

import { CASH_RESULTS } from '../model/money/cashTerms.ts';
import type { StressRow } from '../model/money/stress.ts';
import type { Bands, ResultName } from '../model/quantities.ts';
import { BILL_LINES } from '../model/works/bill.ts';
import { COST_LINES } from '../plots/costStack.ts';
import { type Run, withBands } from '../study/evaluate.ts';
import { type MoneyCase, moneyCase } from '../study/moneyCase.ts';
import { CHANCE_RESULTS } from '../uncertainty/chances.ts';
import { type DrawOptions, type Draws, drawAll } from '../uncertainty/monteCarlo.ts';
import { bandsOf } from '../uncertainty/percentiles.ts';
import { type Need, needsOf } from '../whatif/needs.ts';
import { oneAtATime, type Sensitivities } from '../whatif/oneAtATime.ts';
import { stressRows } from '../whatif/stressRun.ts';
import { type PaperNotebook, type Report, reportFrom } from './report.ts';
import { COMPARED } from './systems.ts';

/** What the spans on the paper and in its tables are of; the section shows that of the bed's height. */
export const SPANNED: readonly ResultName[] = [
  ...new Set<ResultName>([
    ...CASH_RESULTS,
    ...CHANCE_RESULTS,
    'internalRateOfReturn',
    'capitalCash',
    'capitalNonCash',
    ...BILL_LINES.map(({ cost }) => cost),
    ...COST_LINES,
    ...COMPARED,
    'packDepthM',
    'operatingCashCost',
    'annualCostPerHead',
    'netCostPerHeadDay',
    'costPerNitrogenKeptKg',
  ]),
];

/** Numbers shown beside the stresses. */
const SENSITIVITIES = 8;

/** What moves the case of one scenario: the question. */
export interface MovesQuestion {
  readonly scenario: number;
  readonly baseline?: number;
  readonly capital: number;
  readonly top: number;
}

export const movesQuestion = ({ index, baseline, result }: MoneyCase): MovesQuestion => ({
  scenario: index,
  // A given capital is that of all works, those that stand already with them.
  capital: result.values.capitalAll ?? result.values.capitalCost ?? 0,
  ...(baseline === undefined ? {} : { baseline }),
  top: SENSITIVITIES,
});

interface Moves {
  readonly stress: readonly StressRow[];
  readonly sensitivities: Sensitivities;
  readonly needs: readonly Need[];
}

/** Who answers; undefined where the same was asked anew meanwhile. */
export interface Answerer {
  readonly draws: (
    asked: DrawOptions,
  ) => Promise<{ readonly draws: Draws; readonly bands: readonly Bands[] } | undefined>;
  readonly moves: (asked: MovesQuestion) => Promise<Moves | undefined>;
}

/** Answers in this thread. */
export function answerHere(run: Run): Answerer {
  return {
    async draws(asked) {
      const draws = drawAll(run, asked);
      return { draws, bands: run.results.map((_, k) => bandsOf(draws, k)) };
    },
    async moves({ scenario, baseline, capital, top }) {
      return {
        stress: stressRows(run),
        sensitivities: oneAtATime(run, scenario, baseline, top),
        needs: baseline === undefined ? [] : needsOf(run, scenario, baseline, capital),
      };
    },
  };
}

export interface Gathering {
  readonly notebook: PaperNotebook;
  readonly run: Run;
  /** Place of the proposal in the run. */
  readonly index: number;
  /** The notebook's own when absent; a count of 0 leaves the spans out. */
  readonly draws?: { readonly count: number; readonly seed: number };
  /** As it is to be printed. */
  readonly day: string;
}

/** Asks for draws, stresses and sensitivities and makes the report of them; undefined where it was asked anew meanwhile. */
export async function gather(
  { notebook, run, index, draws: { count, seed } = notebook.draws, day }: Gathering,
  answers: Answerer,
): Promise<Report | undefined> {
  const proposal = moneyCase(run, index);
  const [drawn, moves] = await Promise.all([
    count > 0 ? answers.draws({ count, seed, keep: SPANNED }) : null,
    answers.moves(movesQuestion(proposal)),
  ]);
  if (drawn === undefined || moves === undefined) return undefined;
  return reportFrom(notebook, run, proposal, {
    ...moves,
    ...(drawn
      ? {
          draws: drawn.draws,
          results: withBands(run.results, run.bound, drawn.bands),
        }
      : {}),
    day,
  });
}
