import { table } from 'arquero';
import { describe, expect, it } from 'vitest';
import { RESULTS } from '../../src/model/dictionary.ts';
import { runPipeline } from '../../src/model/pipeline.ts';
import { stream } from '../../src/uncertainty/random.ts';
import { winterOf } from '../farm.ts';
import { CHIEF } from './chief.ts';
import { runFused } from './fused.ts';
import { type Columns, drawnColumns, threeWays } from './rows.ts';

/** Winters of any length and place in the year, empty farms, mixed days, bare ground. */
function unruly(columns: Columns, rows: number): Columns {
  const next = stream(5, 'unruly');
  for (let row = 0; row < rows; row++) {
    columns.weatherIndex[row] = Math.floor(2 * next());
    columns.winterDays[row] = next() < 0.05 ? 0 : Math.floor(40 + 300 * next());
    columns.rainFactor[row] = next() < 0.05 ? 0 : 2.5 * next();
    columns.herdFactor[row] = next() < 0.05 ? 0 : 2 * next();
    columns.spreadDay[row] = Math.floor(360 * next());
    columns.startDepthM[row] = next() < 0.5 ? 0 : 0.4 * next();
    if (next() < 0.1) columns.paddockHa[row] = 0;
    if (next() < 0.1) columns.receivingHa[row] = 0;
    if (next() < 0.1) columns.capitalGiven[row] = 10_000;
    if (next() < 0.3)
      for (const share of ['bedShare', 'slatsShare', 'pastureShare', 'yardShare'])
        columns[share][row] = next();
  }
  return columns;
}

describe('the fused loop of the bench', () => {
  const run = threeWays();
  const weather = [run.weather[0], winterOf(8, 1.4)];
  for (const [what, change] of [
    ['drawn rows', (columns: Columns) => columns],
    ['unruly rows', unruly],
  ] as const)
    it(`gives what the pipeline gives on ${what} (else: npx tsx tests/bench/fuse.ts)`, () => {
      const draws = 100;
      const rows = draws * run.bound.length;
      const columns = change(drawnColumns(run, draws, 11), rows);
      const all = runPipeline(table(columns), { weather }).table;
      const column = (name: string) => all.column(name) as unknown as Float64Array;
      const fused = runFused(columns, rows, weather);
      for (const name of CHIEF) {
        const [ours, theirs] = [column(name), fused[name]];
        for (let row = 0; row < rows; row++) expectClose(theirs[row], ours[row], `${name} in row ${row}`);
      }
      const others = RESULTS.map(({ name }) => name).filter(
        (name) => !(CHIEF as readonly string[]).includes(name),
      );
      for (let row = 0; row < rows; row++) {
        const sum = others.reduce((total, name) => total + column(name)[row], 0);
        expectClose(fused.rest[row], sum, `the sum of all other results in row ${row}`);
      }
      expect(others.length).toBeGreaterThan(200);
    });
});

function expectClose(got: number, wanted: number, what: string): void {
  if (Object.is(got, wanted)) return;
  const error = Math.abs(got - wanted) / Math.max(1, Math.abs(wanted));
  if (!(error <= 1e-9)) expect(got, what).toBe(wanted);
}
