/** Which figures of a run rest on a number of the keeper's own, put in place of a row of the tables. */

import type { Binding } from '../model/bind.ts';
import { describe, RESULTS } from '../model/dictionary.ts';
import { BASELINE, WEEKLY } from '../model/quantities.ts';
import { baselineRows } from './baselines.ts';
import type { Run } from './evaluate.ts';

type Resting = readonly ReadonlySet<string>[];

/** What is bound stays the same while an input is turned, and with it what rests on what. */
const kept = new WeakMap<Run['bound'], Resting>();

/** For each scenario of a run the quantities that rest on an own number; empty where none stands. */
export function restingOnOwn(run: Run): Resting {
  const known = kept.get(run.bound);
  if (known) return known;
  const found = find(run);
  kept.set(run.bound, found);
  return found;
}

const isOwn = ({ origin }: Binding) => origin === 'override';

function find({ bound, results }: Run): Resting {
  if (!bound.some(({ bindings }) => [...bindings.values()].some(isOwn))) return bound.map(() => new Set());
  const capital = Float64Array.from(results, ({ values }) => values.capitalCost ?? Number.NaN);
  const baselines = baselineRows(bound, capital);
  const found = bound.map(() => new Map<string, boolean>());
  const rests = (row: number, column: string): boolean => {
    if (row < 0) return false;
    const known = found[row].get(column);
    if (known !== undefined) return known;
    const { bindings } = bound[row];
    const binding = bindings.get(column);
    // Set before its parts are asked, so that nothing is asked twice.
    found[row].set(column, false);
    const ofBaseline = BASELINE.exec(column)?.[1];
    const own = binding
      ? isOwn(binding)
      : ofBaseline
        ? rests(baselines[row], `${ofBaseline[0].toLowerCase()}${ofBaseline.slice(1)}`)
        : (describe(column)?.from ?? [])
            .flatMap((from) => expand(from, bindings))
            .some((from) => rests(row, from));
    found[row].set(column, own);
    return own;
  };
  for (const name of [...RESULTS.map((result) => result.name), ...WEEKLY])
    for (let row = 0; row < bound.length; row++) rests(row, name);
  return found.map((columns) => new Set([...columns].flatMap(([name, own]) => (own ? [name] : []))));
}

/** What a scenario binds stays the same once it is bound: each pattern is looked for once. */
const expanded = new WeakMap<ReadonlyMap<string, Binding>, Map<string, readonly string[]>>();

/** `group*HeadCount` stands for that column of every group this scenario has. */
export function expand(pattern: string, bindings: ReadonlyMap<string, Binding>): readonly string[] {
  if (!pattern.includes('*')) return [pattern];
  const known = expanded.get(bindings) ?? new Map<string, readonly string[]>();
  expanded.set(bindings, known);
  let columns = known.get(pattern);
  if (!columns) {
    const [before, after] = pattern.split('*');
    const expression = new RegExp(`^${before}\\d+${after}$`);
    columns = [...bindings.keys()].filter((column) => expression.test(column));
    known.set(pattern, columns);
  }
  return columns;
}
