/** What the lender's paper is written from: one evaluation, one proposal, and how sure its figures are. */
import { type CashBand, cashBand } from '../../explore/cashBands.ts';
import type { Draws } from '../../explore/draws.ts';
import { type MoneyCase, moneyCase } from '../../explore/moneyCase.ts';
import { stressRows } from '../../explore/stressRun.ts';
import { type Swings, swingsOf } from '../../explore/swings.ts';
import type { Run, ScenarioResult } from '../../model/evaluate.ts';
import type { StressRow } from '../../model/stress.ts';
import type { Reading } from '../reading.ts';

/** The parts of a notebook the paper speaks of. */
export interface PaperNotebook {
  readonly title: string;
  readonly invented: boolean;
  readonly units: Reading['system'];
}

export interface Report {
  readonly notebook: PaperNotebook;
  readonly run: Run;
  readonly results: readonly ScenarioResult[];
  readonly reading: Reading;
  readonly proposal: MoneyCase;
  readonly stress: readonly StressRow[];
  readonly swings: Swings;
  readonly bands: ReadonlyMap<string, CashBand>;
  readonly draws?: Draws;
  /** Day it was written, as it is to be printed. */
  readonly day: string;
}

/** Numbers shown beside the stresses. */
const SWINGS = 8;

/** Gathers the report of the scenario at `index`. `results` carry bands when `draws` were made. */
export function reportOf(
  notebook: PaperNotebook,
  run: Run,
  index: number,
  { draws, results = run.results, day }: { readonly draws?: Draws; readonly results?: readonly ScenarioResult[]; readonly day: string },
): Report {
  const proposal = moneyCase(run, index);
  const bands = new Map<string, CashBand>();
  if (draws)
    run.results.forEach(({ name, finance }, k) => {
      const baseline = run.results.findIndex((other) => other.name === finance.difference?.baseline);
      const band = baseline < 0 ? null : cashBand(draws, run.bound, k, baseline);
      if (band) bands.set(name, band);
    });
  return {
    notebook,
    run,
    results,
    reading: { currency: run.currency, year: run.year, system: notebook.units, order: results.map(({ name }) => name) },
    proposal: { ...proposal, result: results[index] },
    stress: stressRows(run),
    swings: swingsOf(run, index, proposal.baseline, SWINGS),
    bands,
    ...(draws ? { draws } : {}),
    day,
  };
}

/** A printed day: "10 November 2025". */
export const dayText = (iso: string) =>
  new Date(iso).toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });
