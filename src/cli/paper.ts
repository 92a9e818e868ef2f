/** The lender's paper of an opened notebook: the proposal found, draws made, the report gathered. */

import { RESULTS } from '../model/dictionary.ts';
import { CASH_RESULTS } from '../model/money/cashTerms.ts';
import { type Report, reportOf } from '../paper/report.ts';
import { COST_LINES } from '../plots/costStack.ts';
import { evaluate } from '../study/evaluate.ts';
import { againstBaseline, proposalOf } from '../study/moneyCase.ts';
import { drawAll } from '../uncertainty/monteCarlo.ts';
import { bandsOf } from '../uncertainty/percentiles.ts';
import { CommandError } from './error.ts';
import type { Opened } from './open.ts';

export interface Asked {
  /** Name of the proposal; the first scenario that borrows when absent. */
  readonly scenario?: string;
  /** Name of the scenario all others are measured against, in place of what they name themselves. */
  readonly baseline?: string;
  readonly draws: number;
  readonly seed: number;
  readonly day: string;
}

/** Amounts are never converted, so a paper holds one currency. */
function oneCurrency({ file, scenarios }: Opened['notebook']): void {
  const found = [...new Set(scenarios.map(({ farm }) => farm.money.currency))];
  if (found.length < 2) return;
  const said = scenarios.map(({ name, farm }) => `${name} in ${farm.money.currency}`);
  throw new CommandError(
    `${file} farm.money.currency: scenarios in several currencies cannot be compared; found ${said.join(', ')}; allowed one currency; give every scenario the farm’s`,
  );
}

/** What the spans on the paper are of. */
const DRAWN = [
  ...CASH_RESULTS,
  ...COST_LINES,
  'annualCost',
  'netCost',
  'netCostPerHead',
  'labourHours',
  'nitrogenKeptKg',
  'compostTonnes',
  'packDepthM',
  'operatingCashCost',
  'annualCostPerHead',
  'netCostPerHeadDay',
  'costPerNitrogenKeptKg',
];

/** Throws `CommandError` on a scenario that is not in the notebook. */
export function paperReport(
  { notebook, tables, run: asWritten, winters }: Opened,
  { scenario, baseline, draws: count, seed, day }: Asked,
): Report {
  const names = notebook.scenarios.map(({ name }) => name);
  for (const [option, name] of [['scenario', scenario], ['baseline', baseline]] as const) // biome-ignore format: one list
    if (name !== undefined && !names.includes(name))
      throw new CommandError(
        `--${option}: no scenario of that name in ${notebook.file}; found ${name}; allowed ${names.join(', ')}`,
      );
  if (scenario !== undefined && scenario === baseline)
    throw new CommandError(
      `--baseline: a scenario cannot be compared with itself; found ${baseline}; allowed ${names.filter((name) => name !== scenario).join(', ')}`,
    );
  oneCurrency(notebook);
  const run =
    baseline === undefined
      ? asWritten
      : evaluate(
          { scenarios: againstBaseline(notebook.scenarios, baseline), overrides: notebook.overrides },
          tables,
          winters.winterOf,
        );
  const made = new Set(RESULTS.map(({ name }) => name));
  const draws =
    count > 0 ? drawAll(run, { count, seed, keep: DRAWN.filter((name) => made.has(name)) }) : undefined;
  const results = draws
    ? run.results.map((result, k) => ({ ...result, bands: bandsOf(draws, k) }))
    : run.results;
  return reportOf(notebook, run, proposalOf(run, scenario), { ...(draws ? { draws } : {}), results, day });
}
