/** The stress table of an evaluation: its scenarios run again, each with its own changes. */
import type { CaseInput } from '../model/case.ts';
import { toTable } from '../model/bind.ts';
import { type Run, valuesAt } from '../model/evaluate.ts';
import { runPipeline } from '../model/pipeline.ts';
import { type Changes, type StressRow, type StressRun, stressTable } from '../model/stress.ts';

/** Runs every scenario of `run`, each with its own columns changed. */
export function stressRunOf({ bound, weather, weatherIndex }: Run): StressRun {
  return (changes: readonly Changes[]): CaseInput[] => {
    const rows = bound.map((each, k) => ({ bound: each, weatherIndex: weatherIndex[k], changes: changes[k] }));
    const result = runPipeline(toTable(rows), { weather });
    return bound.map(({ scenario, bindings }, k) => ({
      name: scenario.name,
      values: valuesAt(result, k),
      column: (name) => changes[k].get(name) ?? bindings.get(name)?.value,
      ...(scenario.finance.baseline === undefined ? {} : { baseline: scenario.finance.baseline }),
    }));
  };
}

/** A row for each stress of the tables, with the level at which each scenario is even with its baseline. */
export function stressRows(run: Run): StressRow[] {
  const again = stressRunOf(run);
  return stressTable(again(run.bound.map(() => new Map())), again, run.tables.coefficients);
}
