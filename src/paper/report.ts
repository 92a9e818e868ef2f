/** What the lender's paper is written from: one evaluation, one proposal, and how sure its figures are. */

import type { StressRow } from '../model/money/stress.ts';
import type { Note } from '../notebook/noteSchema.ts';
import type { Reading } from '../plots/reading.ts';
import type { Run, ScenarioResult } from '../study/evaluate.ts';
import type { MoneyCase } from '../study/moneyCase.ts';
import { type CashBand, cashBandsOf } from '../uncertainty/cashBands.ts';
import { type Chances, chancesOf } from '../uncertainty/chances.ts';
import type { Draws } from '../uncertainty/monteCarlo.ts';
import type { Need } from '../whatif/needs.ts';
import type { Sensitivities } from '../whatif/oneAtATime.ts';

/** The parts of a notebook the paper speaks of. */
export interface PaperNotebook {
  readonly title: string;
  readonly invented: boolean;
  readonly units: Reading['system'];
  readonly draws: { readonly count: number; readonly seed: number };
  readonly readerNotes?: readonly Note[];
}

export interface Report {
  readonly notebook: PaperNotebook;
  readonly run: Run;
  readonly results: readonly ScenarioResult[];
  readonly reading: Reading;
  readonly proposal: MoneyCase;
  readonly stress: readonly StressRow[];
  readonly sensitivities: Sensitivities;
  /** What would make the proposal pay; empty until it is asked or without a baseline. */
  readonly needs: readonly Need[];
  /** Bands of the cash flow by scenario; worked out when first asked for. */
  readonly bands: () => ReadonlyMap<string, CashBand>;
  readonly draws?: Draws;
  /** How surely each scenario holds against its baseline, by its place in the run; null without draws. */
  readonly chances: (scenario: number) => Chances | null;
  /** Day it was written, as it is to be printed. */
  readonly day: string;
}

/** What a report needs beside the run. */
export interface ReportParts {
  readonly stress: readonly StressRow[];
  readonly sensitivities: Sensitivities;
  /** What would make the proposal pay; empty until it is asked or without a baseline. */
  readonly needs: readonly Need[];
  readonly draws?: Draws;
  /** The results with bands when `draws` were made. */
  readonly results?: readonly ScenarioResult[];
  readonly day: string;
}

/** The report of a proposal from what has been asked about it; `gather.ts` does the asking. */
export function reportFrom(
  notebook: PaperNotebook,
  run: Run,
  proposal: MoneyCase,
  parts: ReportParts,
): Report {
  const { draws, results = run.results } = parts;
  let bands: ReadonlyMap<string, CashBand> | undefined;
  return {
    ...parts,
    notebook,
    run,
    results,
    reading: {
      currency: run.currency,
      year: run.year,
      system: notebook.units,
      order: results.map(({ name }) => name),
    },
    proposal: { ...proposal, result: results[proposal.index] },
    chances(scenario) {
      const name = results[scenario].finance.difference?.baseline;
      const baseline = results.findIndex((other) => other.name === name);
      return draws ? chancesOf(draws, scenario, baseline < 0 ? undefined : baseline) : null;
    },
    bands() {
      bands ??= draws ? cashBandsOf(draws, run) : new Map();
      return bands;
    },
  };
}

/** A printed day: "10 November 2025". */
export const dayText = (iso: string) =>
  new Date(iso).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
