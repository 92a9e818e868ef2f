import { table } from 'arquero';
import { describe, expect, it } from 'vitest';
import { runPipeline } from '../../src/model/pipeline.ts';
import { threeWays } from './rows.ts';
import { buildSheet, IN_SHEET } from './sheet.ts';
import { oneWeather } from './sheetBench.ts';

describe('the spreadsheet of the bench', () => {
  const run = threeWays();
  const draws = 2;
  const rows = draws * run.bound.length;
  const columns = oneWeather(run, draws);
  const sheet = buildSheet(columns, rows, run.weather[0]);
  const expectEqual = () => {
    const { table: all } = runPipeline(table(columns), { weather: run.weather });
    for (const name of IN_SHEET)
      for (let row = 0; row < rows; row++) {
        const wanted = (all.column(name) as unknown as Float64Array)[row];
        const error = Math.abs(sheet.read(name, row) - wanted) / Math.max(1, Math.abs(wanted));
        expect(error, `${name} in row ${row}: ${sheet.read(name, row)}, not ${wanted}`).toBeLessThan(1e-9);
      }
  };

  it('holds what the pipeline gives', expectEqual);

  it('still does after its shared inputs change', () => {
    sheet.set('rainFactor', 1.3);
    columns.rainFactor.fill(1.3);
    sheet.set('herdFactor', 0.8);
    columns.herdFactor.fill(0.8);
    expectEqual();
  });
});
