/** What the bench runs on: the invented farm's three scenarios, with every uncertain number drawn. */
import { readDataFiles } from '../../src/cli/readData.ts';
import type { Run } from '../../src/study/evaluate.ts';
import type { Setting } from '../../src/study/rows.ts';
import { uncertainIn, valuesOf } from '../../src/uncertainty/monteCarlo.ts';
import { stream } from '../../src/uncertainty/random.ts';
import { farm } from '../farm.ts';

export const threeWays = (): Run => farm(readDataFiles());

export type Columns = Record<string, Float64Array>;

/**
 * Columns of `draws` draws of every scenario, row `draw × scenarios + scenario`. The scenarios of one draw share
 * their weather, as in real draws; with `ownWeather` every row has a rain factor of its own.
 */
export function drawnColumns(setting: Setting, draws: number, seed: number, ownWeather = false): Columns {
  const scenarios = setting.bound.length;
  const rows = draws * scenarios;
  const columns: Columns = { weatherIndex: new Float64Array(rows) };
  setting.bound.forEach(({ bindings }, scenario) => {
    for (const { column, value } of bindings.values()) {
      columns[column] ??= new Float64Array(rows);
      for (let row = scenario; row < rows; row += scenarios) columns[column][row] = value;
    }
  });
  const values = new Float64Array(draws);
  for (const uncertain of uncertainIn(setting)) {
    valuesOf(uncertain, seed)(values, draws);
    for (const { scenario, column } of uncertain.at)
      for (let draw = 0; draw < draws; draw++) columns[column][draw * scenarios + scenario] = values[draw];
  }
  if (ownWeather) {
    const next = stream(seed, 'rain of each row');
    for (let row = 0; row < rows; row++) columns.rainFactor[row] = 0.8 + 0.4 * next();
  }
  return columns;
}
