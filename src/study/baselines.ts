/** Which row each scenario is held against, for one row a scenario and for blocks of them. */
import { type BoundScenario, type RowChanges, toTable } from '../model/bind.ts';
import { compute } from '../model/compute.ts';
import { baselineOf } from '../model/money/baseline.ts';
import { changesFor, type Setting } from './rows.ts';

/**
 * Where each scenario's baseline stands among them: the one it names, or else the one with the least capital; −1 for
 * a scenario that is held against nothing.
 */
export function baselineRows(bound: readonly BoundScenario[], capitalCost: Float64Array): number[] {
  const candidates = bound.map(({ scenario }, row) => ({
    name: scenario.name,
    values: { capitalCost: Number.isFinite(capitalCost[row]) ? capitalCost[row] : null },
    baseline: scenario.finance.baseline,
  }));
  return baselineOf(candidates).map((baseline, row) => (baseline === row ? -1 : baseline));
}

/** The same by the capital as it stands without draws: one baseline for every draw or step, so that they are paired. */
export function baselinesOf(
  { bound, weather, weatherIndex }: Setting,
  changes: RowChanges = new Map(),
): number[] {
  const input = toTable(
    bound.map((own, k) => ({ bound: own, weatherIndex: weatherIndex[k], changes: changesFor(changes, k) })),
  );
  return baselineRows(bound, compute(['capitalCost'], input, weather).capitalCost);
}
