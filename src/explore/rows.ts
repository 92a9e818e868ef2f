/** Rows for exploring: every scenario repeated, a block of rows for each draw, sweep step or winter. */
import { table } from 'arquero';
import type { BoundScenario } from '../model/bind.ts';
import { RESULTS, ROUTE_SHARE } from '../model/dictionary.ts';
import type { Values } from '../model/evaluate.ts';
import { runPipeline } from '../model/pipeline.ts';
import type { PreparedWeather } from '../model/weather.ts';

/** What is explored: bound scenarios and the winters they stand in. An evaluation's `Run` is one. */
export interface Setting {
  readonly bound: readonly BoundScenario[];
  readonly weather: readonly PreparedWeather[];
  readonly weatherIndex: readonly number[];
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

/** Turns one column for all scenarios of a block. */
export function setBlock(block: Block, column: string, repeat: number, value: number): void {
  if (!block.columns[column]) throw new Error(`unknown column: ${column}`);
  block.columns[column].fill(value, repeat * block.scenarios, (repeat + 1) * block.scenarios);
}

/** Runs a block and hands back the asked results, in the rows' order; NaN where a scenario has no such quantity. */
export function runBlock(
  block: Block,
  weather: readonly PreparedWeather[],
  names: readonly string[],
): Record<string, Float64Array> {
  const shares = Object.values(ROUTE_SHARE);
  const made = new Set(RESULTS.map((r) => r.name));
  const keep = [...new Set([...names, ...shares])].filter((name) => made.has(name));
  const result = runPipeline(table(block.columns), { weather, keep }).table;
  const column = (name: string) => result.column(name) as unknown as Float64Array;
  const out: Record<string, Float64Array> = {};
  for (const name of names) {
    const values = column(name);
    if (!values) throw new Error(`unknown quantity: ${name}`);
    const route = RESULTS.find((r) => r.name === name)?.route;
    if (route) {
      const share = column(ROUTE_SHARE[route]);
      for (let row = 0; row < values.length; row++) if (!(share[row] > 0)) values[row] = Number.NaN;
    }
    out[name] = values;
  }
  return out;
}

/** One row of block results as plain values, null where absent. */
export function valuesOfRow(results: Readonly<Record<string, Float64Array>>, row: number): Values {
  return Object.fromEntries(
    Object.entries(results).map(([name, column]) => [
      name,
      Number.isFinite(column[row]) ? column[row] : null,
    ]),
  );
}
