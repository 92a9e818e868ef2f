/** The lender's paper of an opened notebook: what was asked is checked, the run chosen, the report gathered. */

import { answerHere, gather } from '../paper/gather.ts';
import type { Report } from '../paper/report.ts';
import { evaluate } from '../study/evaluate.ts';
import { proposalOf } from '../study/moneyCase.ts';
import { CommandError } from './error.ts';
import type { Opened } from './open.ts';

export interface Asked {
  /** Name of the proposal; the first scenario that borrows when absent. */
  readonly scenario?: string;
  /** Name of the scenario all others are measured against, in place of what they name themselves. */
  readonly baseline?: string;
  /** The notebook's own when absent. */
  readonly draws?: number;
  readonly seed?: number;
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

/** Throws `CommandError` on a scenario that is not in the notebook. */
export async function paperReport(
  { notebook, tables, run: asWritten, winters }: Opened,
  { scenario, baseline, draws: count = notebook.draws.count, seed = notebook.draws.seed, day }: Asked,
): Promise<Report> {
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
    baseline === undefined ? asWritten : evaluate({ ...notebook, baseline }, tables, winters.winterOf);
  const index = proposalOf(run, scenario);
  // In this thread every question is answered.
  return (await gather({ notebook, run, index, draws: { count, seed }, day }, answerHere(run))) as Report;
}
