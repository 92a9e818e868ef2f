/**
 * The proof of a trace. For every result and weekly series of the shipped notebooks and of invented farms three
 * things agree: the figure shown, the tree that explains it, and the model run anew on the leaves of that tree alone,
 * every other number taken away. So nothing that a figure hangs on is missing from what is shown as its working.
 */
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { RESULTS } from '../../src/model/dictionary.ts';
import { type Plan, planOf } from '../../src/model/engine/plan.ts';
import { run as runPlan } from '../../src/model/engine/run.ts';
import { ALWAYS, BASELINE, CATALOGUE, planFor, WEEKLY } from '../../src/model/quantities.ts';
import { WEEKS } from '../../src/model/series.ts';
import type { Run } from '../../src/study/evaluate.ts';
import { explain, type TraceNode } from '../../src/study/trace.ts';
import { farmRun, NOTEBOOKS } from '../snapshot/figures.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const FARMS = [1, 13];
const TOLERANCE = 1e-12;

const NAMES: readonly string[] = [...RESULTS.map(({ name }) => name), ...WEEKLY];
const PLAN = planFor(ALWAYS);

const close = (a: number, b: number) => Math.abs(a - b) <= TOLERANCE * Math.max(1, Math.abs(a), Math.abs(b));

/** Every node of a tree, each before those below it. */
function nodesOf(node: TraceNode, into: TraceNode[] = []): readonly TraceNode[] {
  into.push(node);
  for (const child of node.children) nodesOf(child, into);
  return into;
}

/** What a tree ends in: bound numbers, and those of the scenario this one is held against. */
const isLeaf = ({ kind, name }: TraceNode) => (kind !== 'stage' && kind !== 'week') || BASELINE.test(name);

/** The number a leaf stands for: null is a price nobody gave. */
const numberOf = ({ value }: TraceNode) => value ?? Number.NaN;

/** One row for each tree, holding its own leaves and nothing else; columns as this scenario has them. */
function onLeavesAlone(run: Run, scenario: number, trees: readonly TraceNode[]) {
  const rows = trees.length;
  const columns: Record<string, Float64Array> = {
    weatherIndex: new Float64Array(rows).fill(run.weatherIndex[scenario]),
  };
  const empty = () => new Float64Array(rows).fill(Number.NaN);
  for (const name of [...run.bound[scenario].bindings.keys(), ...PLAN.inputs])
    if (!/[@*]/.test(name)) columns[name] ??= empty();
  trees.forEach((tree, row) => {
    for (const node of nodesOf(tree)) if (isLeaf(node)) columns[node.name][row] = numberOf(node);
  });
  return runPlan(PLAN, (name) => columns[name], rows, { resources: { weather: run.weather } });
}

/** The figure of a row as a trace shows it: a series by its last week. */
function figureIn(made: Readonly<Record<string, Float64Array>>, name: string, row: number): number {
  if (!WEEKLY.some((week) => week === name)) return made[name][row];
  return made[name].subarray(row * WEEKS, (row + 1) * WEEKS).findLast(Number.isFinite) ?? Number.NaN;
}

/** Figures that are not what their leaves give; a figure that is not shown must not exist, or have no number. */
function untrue(run: Run, scenario: number): string[] {
  const trees = NAMES.map((name) => explain(run, scenario, name));
  const made = onLeavesAlone(run, scenario, trees);
  const { values, tracks } = run.results[scenario];
  const shown: Readonly<Record<string, number | null>> = values;
  return trees.flatMap(({ name, value }, row) => {
    const figure = figureIn(made, name, row);
    const held = name in tracks ? value : shown[name];
    const when = CATALOGUE.entries.get(name)?.made.when;
    const absent = when !== undefined && !((shown[when] ?? 0) > 0);
    const true_ =
      value === held && (value === null ? absent || !Number.isFinite(figure) : close(value, figure));
    return true_ ? [] : [`${name}: shown ${held}, explained ${value}, of its leaves ${figure}`];
  });
}

const planOfOne = (() => {
  const plans = new Map<string, Plan>();
  return (name: string): Plan => {
    let plan = plans.get(name);
    if (!plan) {
      plan = planOf(
        CATALOGUE,
        [name],
        new Set([...CATALOGUE.entries.keys()].filter((other) => other !== name)),
      );
      plans.set(name, plan);
    }
    return plan;
  };
})();

/**
 * Nodes of single quantities that are not what the nodes below them give. An absent quantity is 0 inside the model,
 * and one without a price has no number.
 */
function brokenNodes(run: Run, scenario: number): string[] {
  const { values, tracks } = run.results[scenario];
  const shown: Readonly<Record<string, number | null>> = values;
  const series: Readonly<Record<string, Float64Array>> = tracks;
  const looked = new Set<string>();
  const broken: string[] = [];
  for (const name of NAMES) {
    // It stood in the tree of an earlier one, whole and with all that is below it.
    if (looked.has(name)) continue;
    for (const node of nodesOf(explain(run, scenario, name))) {
      const step = CATALOGUE.stepOf.get(node.name);
      if (node.seen || looked.has(node.name) || node.value === null || !step?.quantity) continue;
      looked.add(node.name);
      const below = new Map(
        node.children.map((child) => {
          const when = CATALOGUE.entries.get(child.name)?.made.when;
          const absent = child.value === null && when !== undefined && !((shown[when] ?? 0) > 0);
          // A tree shows of a series its last week only.
          return [child.name, series[child.name] ?? Float64Array.of(absent ? 0 : numberOf(child))];
        }),
      );
      const plan = planOfOne(node.name);
      const when = CATALOGUE.entries.get(node.name)?.made.when;
      const find = (name: string) =>
        below.get(name) ?? (name === when ? Float64Array.of(shown[name] ?? 0) : undefined);
      const figure = runPlan(plan, find, 1)[node.name][0];
      if (!close(node.value, figure))
        broken.push(`${node.name}: shown ${node.value}, of the nodes below ${figure}`);
    }
  }
  return broken;
}

const opened: [string, () => Promise<Run>][] = [
  ...NOTEBOOKS.map((name): [string, () => Promise<Run>] => [
    name,
    async () => (await openNotebook(`${ROOT}/notebooks/${name}.md`)).run,
  ]),
  ...FARMS.map((seed): [string, () => Promise<Run>] => [`invented farm ${seed}`, () => farmRun(seed)]),
];

describe('every figure', () => {
  it.each(opened)('of %s is what the leaves of its own working give', async (_, open) => {
    const run = await open();
    const found = run.results.flatMap(({ name }, k) => untrue(run, k).map((words) => `${name}: ${words}`));
    expect(found).toEqual([]);
  });

  it.each(opened.slice(0, 6))('of %s is what the nodes below it give', async (_, open) => {
    const run = await open();
    const found = run.results.flatMap(({ name }, k) =>
      brokenNodes(run, k).map((words) => `${name}: ${words}`),
    );
    expect(found).toEqual([]);
  });
});

describe('the proof', () => {
  it('sees a leaf that is missing', async () => {
    const run = await opened[0][1]();
    const tree = explain(run, 0, 'netCost');
    const without = (node: TraceNode, gone: string): TraceNode => ({
      ...node,
      children: node.children.filter(({ name }) => name !== gone).map((child) => without(child, gone)),
    });
    const whole = onLeavesAlone(run, 0, [tree]).netCost[0];
    expect(close(whole, tree.value as number)).toBe(true);
    for (const gone of ['labourPricePerHour', 'winterDays', 'nitrogenPricePerKg'])
      expect([gone, onLeavesAlone(run, 0, [without(tree, gone)]).netCost[0]]).not.toEqual([gone, whole]);
  });
});
