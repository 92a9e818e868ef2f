/** Any figure can explain itself: the tree from a result down to inputs, coefficients and their sources. */

import type { Binding } from '../model/bind.ts';
import { describe, isValue, isWeekly, resultNamed } from '../model/dictionary.ts';
import { BASELINE } from '../model/quantities.ts';
import { WEEKS } from '../model/series.ts';
import type { Source } from '../tables/coefficient.ts';
import { meanWords } from '../tables/publishedMean.ts';
import { baselineRows } from './baselines.ts';
import type { Run, ScenarioResult } from './evaluate.ts';
import { expand, restingOnOwn } from './own.ts';

export interface TraceNode {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  /** Null where the scenario has no such quantity. */
  readonly value: number | null;
  readonly kind: 'stage' | 'week' | 'input' | 'coefficient' | 'price' | 'override' | 'missing';
  /** In words, for results. */
  readonly formula?: string;
  /** Row of a table, or place in the notebook. */
  readonly id?: string;
  readonly low?: number;
  readonly high?: number;
  readonly basis?: string;
  readonly where?: string;
  readonly note?: string;
  readonly because?: string;
  readonly sources: readonly Source[];
  /** Rests on a number the keeper has put in place of the tables. */
  readonly own?: boolean;
  /** True when the branch already stands elsewhere in the tree and is not repeated. */
  readonly seen?: boolean;
  readonly children: readonly TraceNode[];
}

/**
 * The working of `name` in one scenario of a run. A branch is written out the first time it is met and marked
 * `seen` afterwards, so the tree stays as small as the calculation. Throws on a name the model does not know.
 */
export function explain(run: Run, scenario: number, name: string): TraceNode {
  const expanded = new Set<string>();
  const bindings = run.bound[scenario].bindings;
  const resting = restingOnOwn(run)[scenario];

  const visit = (column: string): TraceNode => {
    const binding = bindings.get(column);
    if (binding) return leaf(binding, run);
    const description = describe(column);
    if (!description) throw new Error(`unknown quantity: ${column}`);
    const { label, unit, formula } = description;
    const own = BASELINE.exec(column)?.[1];
    if (own) {
      const value = ofBaseline(run, scenario, `${own[0].toLowerCase()}${own.slice(1)}`);
      const mark = resting.has(column) ? { own: true } : {};
      return { name: column, label, unit, value, kind: 'stage', ...mark, sources: [], children: [] };
    }
    const seen = expanded.has(column);
    expanded.add(column);
    return {
      name: column,
      label,
      unit,
      formula,
      value: shownOf(run.results[scenario], column),
      kind: description.kind === 'week' ? 'week' : 'stage',
      sources: sourcesOf(description.source ?? [], run),
      ...(resting.has(column) ? { own: true } : {}),
      ...(seen ? { seen } : {}),
      children: seen ? [] : (description.from ?? []).flatMap((from) => expand(from, bindings)).map(visit),
    };
  };
  return visit(name);
}

/** A number of the scenario this one is held against: its result or its input; null where there is none. */
function ofBaseline({ bound, results }: Run, scenario: number, name: string): number | null {
  const capital = Float64Array.from(results, ({ values }) => values.capitalCost ?? Number.NaN);
  const row = baselineRows(bound, capital)[scenario];
  if (row < 0) return null;
  const value = (isValue(name) ? results[row].values[name] : null) ?? bound[row].bindings.get(name)?.value;
  return value === undefined || !Number.isFinite(value) ? null : value;
}

function leaf(binding: Binding, run: Run): TraceNode {
  const { column, label, unit, value, low, high, origin, id, coefficient, because } = binding;
  return {
    name: column,
    label,
    unit,
    value: Number.isFinite(value) ? value : null,
    kind: origin,
    id,
    ...(low < high ? { low, high } : {}),
    ...(coefficient ? { basis: coefficient.basis, where: placeOf(binding), note: coefficient.note } : {}),
    because,
    ...(origin === 'override' ? { own: true } : {}),
    sources: coefficient ? sourcesOf([coefficient.source], run) : [],
    children: [],
  };
}

/** Place in the source, and what was done to a price of another year. */
function placeOf({ origin, coefficient }: Binding): string {
  const { where = '', indexed, year, mean, unit = '' } = coefficient ?? {};
  if (origin === 'coefficient' && mean) return `${where}; ${meanWords(mean.value, unit)}`;
  if (origin !== 'price' || !indexed) return where;
  return `${where}${where === '' ? '' : '; '}price of ${year}, times ${indexed.factor.toFixed(3)} to ${indexed.year} by the ${indexed.by}`;
}

function sourcesOf(ids: readonly string[], run: Run): Source[] {
  return ids.map((id) => run.tables.sources.get(id) ?? { id, author: '', title: id, year: '' });
}

/** A result, or the last week of a weekly series. Throws on any other name. */
function shownOf({ values, tracks }: ScenarioResult, name: string): number | null {
  return isWeekly(name) ? lastWeek(tracks[name]) : values[resultNamed(name)];
}

function lastWeek(track: Float64Array | undefined): number | null {
  for (let week = WEEKS - 1; track && week >= 0; week--) if (Number.isFinite(track[week])) return track[week];
  return null;
}
