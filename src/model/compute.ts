/** Columns in, the results asked for out: one scenario, a sweep and ten thousand draws are the same call. */
import type { Columns } from './engine/columns.ts';
import { keptRun } from './engine/keep.ts';
import { downstream, type Plan, planOf } from './engine/plan.ts';
import { recall } from './engine/recall.ts';
import { run } from './engine/run.ts';
import {
  BASELINE,
  BASELINE_COLUMNS,
  CATALOGUE,
  MOST_PLANS,
  planFor,
  type QuantityName,
} from './quantities.ts';
import type { PreparedWeather } from './weather/prepared.ts';

/** For each row the row its own scenario is held against; −1 for none. */
export type BaselineRows = ArrayLike<number>;

/** Names the row each one is held against, or works it out of the results that need no other row. */
export type Baselines = BaselineRows | ((made: Columns) => BaselineRows);

/**
 * The results and series called `names`, and the columns that say whether they exist, for every row of `columns`
 * (which must hold what `planFor(names).inputs` lists, `weatherIndex` among them, but for the baseline's). What holds
 * a scenario against its baseline is NaN for rows without one, and for all where `baselines` is not given; where it
 * hangs on results, `baselines` is a function of them. Throws on a missing column.
 */
export function compute<Name extends QuantityName>(
  names: readonly Name[],
  columns: Columns,
  weather: readonly PreparedWeather[],
  baselines: Baselines = [],
): Record<Name, Float64Array> {
  return computing(names, columns, weather, baselines)();
}

/**
 * The same, to be asked again while some columns change in place: the first call works out all, a later one is told
 * every column whose numbers differ from the call before and works out what hangs on them. The arrays handed back are
 * not to be written to.
 */
export function computing<Name extends QuantityName>(
  names: readonly Name[],
  columns: Columns,
  weather: readonly PreparedWeather[],
  baselines: Baselines = [],
): (changed?: readonly string[]) => Record<Name, Float64Array> {
  const rows = columns.weatherIndex.length;
  const options = { resources: { weather } };
  const { alone, against } = inTwo(names);
  const own = keptRun(alone, (name) => columns[name], rows, options);
  return (changed) => {
    const first = own(changed);
    if (!against) return first as Record<Name, Float64Array>;
    const given = (name: string) => first[name] ?? columns[name];
    const of = typeof baselines === 'function' ? baselines(first) : baselines;
    const peers: Record<string, Float64Array> = {};
    for (const { name, own } of peersOf(against)) peers[name] = taken(given(own), of, rows);
    const second = run(against, (name) => peers[name] ?? given(name), rows, options);
    return { ...first, ...second } as Record<Name, Float64Array>;
  };
}

interface TwoPlans {
  /** What a row tells by itself, and what the second plan needs of it. */
  readonly alone: Plan;
  /** What needs another row too. */
  readonly against: Plan | undefined;
}

const AGAINST = downstream(CATALOGUE, BASELINE_COLUMNS);
const ALONE = new Set([...CATALOGUE.entries.keys()].filter((name) => !AGAINST.has(name)));
const isAlone = (name: string): name is QuantityName => ALONE.has(name);
const known = new Map<string, TwoPlans>();

const inTwo = (names: readonly QuantityName[]): TwoPlans =>
  recall(known, names.join(' '), MOST_PLANS, () => twoPlans(names));

function twoPlans(names: readonly QuantityName[]): TwoPlans {
  const later = names.filter((name) => AGAINST.has(name));
  const against = later.length > 0 ? planOf(CATALOGUE, later, ALONE) : undefined;
  const needed = against
    ? [...[...against.inputs].filter((name) => ALONE.has(name)), ...peersOf(against).map(({ own }) => own)]
    : [];
  const first = [...names.filter((name) => !AGAINST.has(name)), ...needed.filter(isAlone)];
  return { alone: planFor([...new Set(first)]), against };
}

/** The baseline's columns a plan reads, with the name each has in its own row. */
const peersOf = ({ inputs }: Plan) =>
  [...inputs].flatMap((name) => {
    const match = BASELINE.exec(name);
    return match ? [{ name, own: `${match[1][0].toLowerCase()}${match[1].slice(1)}` }] : [];
  });

function taken(column: Float64Array | undefined, of: BaselineRows, rows: number): Float64Array {
  const out = new Float64Array(rows).fill(Number.NaN);
  if (column) for (let row = 0; row < rows; row++) if (of[row] >= 0) out[row] = column[of[row]];
  return out;
}
