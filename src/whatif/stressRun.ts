/** The stress table of an evaluation: its scenarios run again, each with its own changes. */

import { toTable } from '../model/bind.ts';
import { compute } from '../model/compute.ts';
import type { CaseInput } from '../model/money/case.ts';
import {
  type Changes,
  STRESSES,
  type StressRow,
  type StressRun,
  stressTable,
} from '../model/money/stress.ts';
import { ALWAYS } from '../model/quantities.ts';
import { baselineRows } from '../study/baselines.ts';
import { valuesAt } from '../study/evaluate.ts';
import type { Setting } from '../study/rows.ts';

/** Runs every scenario of the setting, each with its own columns changed. */
export function stressRunOf({ bound, weather, weatherIndex }: Setting): StressRun {
  return (changes: readonly Changes[]): CaseInput[] => {
    const rows = bound.map((each, k) => ({
      bound: each,
      weatherIndex: weatherIndex[k],
      changes: changes[k],
    }));
    const input = toTable(rows);
    const made = compute(ALWAYS, input, weather, (first) => baselineRows(bound, first.capitalCost));
    const whole = { ...input, ...made };
    return bound.map(({ scenario, bindings }, k) => ({
      name: scenario.name,
      values: valuesAt(whole, k),
      column: (name) => changes[k].get(name) ?? bindings.get(name)?.value,
      ...(scenario.finance.baseline === undefined ? {} : { baseline: scenario.finance.baseline }),
    }));
  };
}

/**
 * A row for each stress of the tables, with the level at which each scenario is even with its baseline. Yields
 * the share done between stresses, so that a worker can stop or take up something else.
 */
export function* stressSteps(setting: Setting): Generator<number, StressRow[]> {
  const again = stressRunOf(setting);
  const usual = again(setting.bound.map(() => new Map()));
  const { coefficients } = setting.bound[0];
  const rows: StressRow[] = [];
  for (const { level } of STRESSES) {
    const row = coefficients.get(level);
    if (row) rows.push(...stressTable(usual, again, new Map([[level, row]])));
    yield (STRESSES.findIndex((s) => s.level === level) + 1) / STRESSES.length;
  }
  return rows;
}

/** The same without stopping. */
export function stressRows(setting: Setting): StressRow[] {
  const steps = stressSteps(setting);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
