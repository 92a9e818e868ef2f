import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import { RESULTS } from '../../src/model/dictionary.ts';
import { evaluateBound, type Run } from '../../src/study/evaluate.ts';
import { spanOf, stepsBetween, stepsOf, sweep, sweepTwo } from '../../src/whatif/sweep.ts';
import { turnNames, turnOf } from '../../src/whatif/turn.ts';
import { farm } from '../farm.ts';

const ALL = RESULTS.map((r) => r.name);
/** Taken from the cash flow against a baseline after the pipeline, which looks at one row at a time. */
const CASE = new Set(['netPresentValue', 'internalRateOfReturn', 'paybackYears', 'debtServiceCover']);
const OF_ROWS = ALL.filter((name) => !CASE.has(name));
let run: Run;
beforeAll(() => {
  run = farm(readDataFiles());
});
const turn = (name: string) => {
  const found = turnOf(run, name);
  if (!found) throw new Error(name);
  return found;
};
const plain = (changes: ReadonlyMap<string, number>) =>
  evaluateBound(run.bound, run.tables, run.weather, run.weatherIndex, changes).results;

describe('sweep', () => {
  it.each([
    ['rainFactor', 0.2, 2.2],
    ['winterDays', 90, 200],
    ['labourPricePerHour', 0, 40],
    ['bedTopAirFraction', 0.1, 0.5],
  ])('ends of %s are plain runs, to the last bit', (name, from, to) => {
    const { results } = sweep(run, turn(name), stepsBetween(from, to, 7), ALL);
    for (const [step, value] of [
      [0, from],
      [6, to],
    ])
      plain(new Map([[name, value]])).forEach(({ values }, s) => {
        for (const quantity of OF_ROWS) {
          const swept = results[quantity][step * 3 + s];
          expect(Number.isNaN(swept) ? null : swept, quantity).toBe(values[quantity]);
        }
      });
  });

  it('turns the whole herd by heads', () => {
    const { results } = sweep(run, turn('headCount'), [1, 18, 40], ['headCount', 'netCost']);
    expect([...results.headCount].map((h) => Math.round(h * 1e9) / 1e9)).toEqual([
      1, 1, 1, 18, 18, 18, 40, 40, 40,
    ]);
    expect(results.netCost[3]).toBeCloseTo(run.results[0].values.netCost as number, 6);
  });

  it('finds a number that only one scenario has, by its id and in its own column', () => {
    const straw = turn('materialPricePerTonne.barleyStraw');
    expect(straw.at).toEqual([{ scenario: 2, column: 'material1PricePerTonne' }]);
    const { results } = sweep(run, straw, [0, 200], ['netCost']);
    expect(results.netCost[0]).toBe(results.netCost[3]);
    expect(results.netCost[5]).toBeGreaterThan(results.netCost[2]);
  });

  it('knows no input that no scenario has', () => {
    expect(turnOf(run, 'rainfactor')).toBeUndefined();
    expect(turnNames(run)).toContain('rainFactor');
  });

  it('looks at whole heads and at any rain', () => {
    expect(stepsOf(turn('headCount'), 1, 4, 9)).toEqual([1, 2, 3, 4]);
    expect(stepsOf(turn('rainFactor'), 0, 1, 3)).toEqual([0, 0.5, 1]);
    expect(spanOf(turn('rainFactor'))).toEqual([0, 2.5]);
    expect(spanOf(turn('rainFactor'), 1, undefined)).toEqual([1, 2.5]);
  });

  it('over two inputs agrees with turning both', () => {
    const grid = sweepTwo(
      run,
      [turn('rainFactor'), [0.5, 1.5]],
      [turn('winterDays'), [120, 180]],
      ['nitrogenLeachedKg'],
    );
    const [row, column] = [1, 0];
    const expected = plain(
      new Map([
        ['rainFactor', 0.5],
        ['winterDays', 180],
      ]),
    );
    expect(grid.results.nitrogenLeachedKg[(row * 2 + column) * 3]).toBe(expected[0].values.nitrogenLeachedKg);
  });
});
