/** Rows for exploring: every scenario repeated, a block of rows for each draw, sweep step or winter. */
import type { BoundScenario, RowChanges } from '../model/bind.ts';
import { computing } from '../model/compute.ts';
import { CATALOGUE, planFor, type QuantityName, type ResultName } from '../model/quantities.ts';
import type { PreparedWeather } from '../model/weather/prepared.ts';

/** What is explored: bound scenarios and the winters they stand in. An evaluation's `Run` is one. */
export interface Setting {
  readonly bound: readonly BoundScenario[];
  readonly weather: readonly PreparedWeather[];
  readonly weatherIndex: readonly number[];
}

/** The name under which changes hold a column that is turned in one scenario only. */
export const ofScenario = (column: string, scenario: number) => `${column}@${scenario}`;

/** What the changes mean to one scenario: what is turned for all, and what is turned for it alone. */
export function changesFor(changes: RowChanges, scenario: number): RowChanges {
  const [shared, own]: [string, number][][] = [[], []];
  for (const [name, value] of changes) {
    const [column, only] = name.split('@');
    if (only === undefined) shared.push([column, value]);
    else if (Number(only) === scenario) own.push([column, value]);
  }
  return new Map([...shared, ...own]);
}

/** The same setting with inputs turned in every scenario that has them; a turned number has no range any more. */
export function withChanges(setting: Setting, changes: RowChanges): Setting {
  if (changes.size === 0) return setting;
  const bound = setting.bound.map((own, scenario) => {
    const turned = new Map(own.bindings);
    for (const [column, value] of changesFor(changes, scenario)) {
      const binding = turned.get(column);
      if (binding) turned.set(column, { ...binding, value, low: value, high: value });
    }
    return { ...own, bindings: turned };
  });
  return { bound, weather: setting.weather, weatherIndex: setting.weatherIndex };
}

/** Columns of `repeats` blocks of one row a scenario: row `block × scenarios + scenario`. */
export interface Block<Name extends QuantityName = QuantityName> {
  readonly scenarios: number;
  readonly repeats: number;
  /** Results the columns are enough for. */
  readonly names: readonly Name[];
  readonly columns: Record<string, Float64Array>;
}

const ownValuesOf = new WeakMap<Setting['bound'], WeakMap<object, ReadonlyMap<string, Float64Array>>>();

/** What each scenario has of the columns that `names` need; kept, since a search asks for the same many times. */
function ownValues(
  bound: Setting['bound'],
  names: readonly QuantityName[],
): ReadonlyMap<string, Float64Array> {
  const plan = planFor(names);
  const kept = ownValuesOf.get(bound) ?? new WeakMap<object, ReadonlyMap<string, Float64Array>>();
  ownValuesOf.set(bound, kept);
  const before = kept.get(plan);
  if (before) return before;
  const values = new Map<string, Float64Array>();
  bound.forEach(({ bindings }, scenario) => {
    for (const { column, value } of bindings.values()) {
      if (!plan.reads(column)) continue;
      const own = values.get(column) ?? new Float64Array(bound.length);
      own[scenario] = value;
      values.set(column, own);
    }
  });
  kept.set(plan, values);
  return values;
}

/** Every row at the scenario's own value, for the columns that `names` need; callers overwrite what they turn. */
export function repeatScenarios<Name extends QuantityName>(
  { bound, weatherIndex }: Setting,
  repeats: number,
  names: readonly Name[],
): Block<Name> {
  const scenarios = bound.length;
  const rows = scenarios * repeats;
  const values = new Map([...ownValues(bound, names), ['weatherIndex', Float64Array.from(weatherIndex)]]);
  const columns: Record<string, Float64Array> = {};
  for (const [name, own] of values) {
    const column = new Float64Array(rows);
    if (own.every((value) => Object.is(value, own[0]))) column.fill(own[0]);
    else
      for (let row = 0, s = 0; row < rows; row++, s = s + 1 === scenarios ? 0 : s + 1) column[row] = own[s];
    columns[name] = column;
  }
  return { scenarios, repeats, names, columns };
}

/**
 * Runs a block and hands back its results, in the rows' order; NaN where a scenario has no such quantity or a
 * price was missing. Throws on a name the model does not make. `baselines` gives the scenario each one is held against
 * (−1 for none), asked only where a result needs it; without it such results are NaN.
 */
export function runBlock<Name extends ResultName>(
  block: Block<Name>,
  weather: readonly PreparedWeather[],
  baselines?: () => readonly number[],
): Record<Name, Float64Array> {
  return runningBlock(block, weather, baselines)();
}

/**
 * The same, to be asked again while some of the block's columns change in place: a later call is told every column
 * whose numbers differ from the call before. Arrays are shared between calls: they are not to be written to.
 */
export function runningBlock<Name extends ResultName>(
  { columns, names, scenarios, repeats }: Block<Name>,
  weather: readonly PreparedWeather[],
  baselines?: () => readonly number[],
): (changed?: readonly string[]) => Record<Name, Float64Array> {
  const rows = () => (baselines ? repeated(baselines(), scenarios, repeats) : []);
  const run = computing(names, columns, weather, rows);
  const marked = new Map<
    Name,
    { readonly of: readonly (Float64Array | undefined)[]; values: Float64Array }
  >();
  return (changed) => {
    const made: Readonly<Record<string, Float64Array>> = run(changed);
    const out: Partial<Record<Name, Float64Array>> = {};
    for (const name of names) {
      const when = CATALOGUE.entries.get(name)?.made.when;
      const exists = when === undefined ? undefined : made[when];
      const of = [made[name], exists];
      const before = marked.get(name);
      const values =
        before && of.every((column, k) => column === before.of[k])
          ? before.values
          : markAbsent(made[name], exists);
      marked.set(name, { of, values });
      out[name] = values;
    }
    return out as Record<Name, Float64Array>;
  };
}

/** A copy with NaN for what is no number, or does not exist. */
function markAbsent(made: Float64Array, exists: Float64Array | undefined): Float64Array {
  const values = made.slice();
  for (let row = 0; row < values.length; row++)
    if (!Number.isFinite(values[row]) || (exists && !(exists[row] > 0))) values[row] = Number.NaN;
  return values;
}

/** The rows of each block's own baselines. */
function repeated(of: readonly number[], scenarios: number, repeats: number): Int32Array {
  return Int32Array.from({ length: scenarios * repeats }, (_, row) => {
    const scenario = row % scenarios;
    return of[scenario] < 0 ? -1 : row - scenario + of[scenario];
  });
}

/** Results by name, in the rows' order: those that were asked for, and for certain those called `Name`. */
export type Results<Name extends ResultName = never> = Readonly<Partial<Record<ResultName, Float64Array>>> &
  Readonly<Record<Name, Float64Array>>;

/** One of them; throws where it was not asked for. */
export function resultIn(results: Results, name: ResultName): Float64Array {
  const found = results[name];
  if (!found) throw new Error(`${name} was not asked for; asked for: ${Object.keys(results).join(', ')}`);
  return found;
}
