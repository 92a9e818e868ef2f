/** Rows for exploring: every scenario repeated, a block of rows for each draw, sweep step or winter. */
import { table } from 'arquero';
import type { BoundScenario, RowChanges } from '../model/bind.ts';
import { RESULTS, ROUTE_SHARE } from '../model/dictionary.ts';
import { runPipeline } from '../model/pipeline.ts';
import type { PreparedWeather } from '../model/weather.ts';

/** What is explored: bound scenarios and the winters they stand in. An evaluation's `Run` is one. */
export interface Setting {
  readonly bound: readonly BoundScenario[];
  readonly weather: readonly PreparedWeather[];
  readonly weatherIndex: readonly number[];
}

/** The same setting with inputs turned in every scenario that has them; a turned number has no range any more. */
export function withChanges(setting: Setting, changes: RowChanges): Setting {
  if (changes.size === 0) return setting;
  const bound = setting.bound.map(({ scenario, bindings }) => {
    const turned = new Map(bindings);
    for (const [column, value] of changes) {
      const binding = turned.get(column);
      if (binding) turned.set(column, { ...binding, value, low: value, high: value });
    }
    return { scenario, bindings: turned };
  });
  return { bound, weather: setting.weather, weatherIndex: setting.weatherIndex };
}

/** Columns of `repeats` blocks of one row a scenario: row `block × scenarios + scenario`. */
export interface Block {
  readonly scenarios: number;
  readonly repeats: number;
  readonly columns: Record<string, Float64Array>;
}

/** Every row at the scenario's own value; callers then overwrite the columns they turn. */
export function repeatScenarios({ bound, weatherIndex }: Setting, repeats: number): Block {
  const scenarios = bound.length;
  const columns: Record<string, Float64Array> = {};
  const fill = (name: string, scenario: number, value: number) => {
    columns[name] ??= new Float64Array(scenarios * repeats);
    for (let row = scenario; row < scenarios * repeats; row += scenarios) columns[name][row] = value;
  };
  bound.forEach(({ bindings }, scenario) => {
    fill('weatherIndex', scenario, weatherIndex[scenario]);
    for (const { column, value } of bindings.values()) fill(column, scenario, value);
  });
  return { scenarios, repeats, columns };
}

const MADE = new Map(RESULTS.map((result) => [result.name, result]));
const SHARES = Object.values(ROUTE_SHARE).filter((name) => MADE.has(name));

/**
 * Runs a block and hands back the asked results, in the rows' order; NaN where a scenario has no such quantity or
 * a price was missing. Throws on a name the model does not make.
 */
export function runBlock(
  block: Block,
  weather: readonly PreparedWeather[],
  names: readonly string[],
): Record<string, Float64Array> {
  for (const name of names) if (!MADE.has(name)) throw new Error(`unknown quantity: ${name}`);
  const result = runPipeline(table(block.columns), { weather, keep: [...names, ...SHARES] }).table;
  const column = (name: string) => result.column(name) as unknown as Float64Array;
  const out: Record<string, Float64Array> = {};
  for (const name of names) {
    // A share of a route is itself a result and must not be marked before the others have read it.
    const values = SHARES.includes(name) ? column(name).slice() : column(name);
    const route = MADE.get(name)?.route;
    const share = route && column(ROUTE_SHARE[route]);
    for (let row = 0; row < values.length; row++)
      if (!Number.isFinite(values[row]) || (share && !(share[row] > 0))) values[row] = Number.NaN;
    out[name] = values;
  }
  return out;
}
