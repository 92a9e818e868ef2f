/** Every number with a range is drawn, in every scenario that has it, and a draw is the plain run with its numbers in. */
import { describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import { RESULTS } from '../../src/model/dictionary.ts';
import { ofScenario, withChanges } from '../../src/study/rows.ts';
import { drawAll, sample, startBlocks, uncertainIn } from '../../src/uncertainty/monteCarlo.ts';
import { farm } from '../farm.ts';

const ALL = RESULTS.map(({ name }) => name);
const SEED = 7;
const COUNT = 40;
const run = farm(readDataFiles());
const uncertain = uncertainIn(run);
const drawn = new Map(uncertain.map((one) => [one, sample(one, COUNT, SEED)]));

describe('every number with a range', () => {
  it('varies from draw to draw and stays inside its range', () => {
    expect(uncertain.length).toBeGreaterThan(200);
    for (const [{ id, low, high, mean }, values] of drawn) {
      expect(new Set(values).size, id).toBeGreaterThan(1);
      if (mean) continue;
      expect(Math.min(...values), id).toBeGreaterThanOrEqual(low);
      expect(Math.max(...values), id).toBeLessThanOrEqual(high);
    }
  });

  it('leaves its range in 2.5 of 100 draws at each end, where a source gives a mean and a 95 % range', () => {
    const many = 4000;
    const means = uncertain.filter(({ mean }) => mean);
    expect(means.length).toBeGreaterThan(0);
    for (const one of means) {
      const values = sample(one, many, SEED);
      const share = (beyond: (value: number) => boolean) => values.filter(beyond).length / many;
      // Four standard errors of a share of 4000 draws.
      expect(Math.abs(share((v) => v > one.high) - 0.025), one.id).toBeLessThan(0.01);
      expect(Math.abs(share((v) => v <= one.low) - 0.025), one.id).toBeLessThan(0.01);
    }
  });

  it('stands in its column of every scenario that has it, the same in all of them', () => {
    const block = startBlocks(run, COUNT, SEED, ALL).next(0, COUNT);
    let shared = 0;
    for (const [{ id, at }, values] of drawn) {
      if (at.length === block.scenarios) shared++;
      for (const { scenario, column } of at) {
        if (!block.columns[column]) continue;
        const found = Array.from(
          { length: COUNT },
          (_, k) => block.columns[column][k * block.scenarios + scenario],
        );
        expect(found, `${id} in ${column} of scenario ${scenario}`).toEqual([...values]);
      }
    }
    // Most numbers belong to all scenarios and are filled in another way than the rest.
    expect(shared).toBeGreaterThan(100);
    expect(shared).toBeLessThan(uncertain.length);
  });

  it('makes a draw what a plain run gives that has the drawn numbers in it', () => {
    const { results } = drawAll(run, {
      count: COUNT,
      seed: SEED,
      keep: ['nitrogenKeptKg', 'netCost', 'labourHours'],
    });
    for (const draw of [0, 13, COUNT - 1]) {
      const changes = new Map(
        [...drawn].flatMap(([{ at }, values]) =>
          at.map(({ scenario, column }): [string, number] => [ofScenario(column, scenario), values[draw]]),
        ),
      );
      const still = withChanges(run, changes);
      expect(uncertainIn(still)).toEqual([]);
      const plain = drawAll(still, {
        count: 1,
        seed: 1,
        keep: ['nitrogenKeptKg', 'netCost', 'labourHours'],
      }).results;
      for (const name of ['nitrogenKeptKg', 'netCost', 'labourHours'] as const)
        for (let scenario = 0; scenario < run.bound.length; scenario++)
          expect(results[name][draw * run.bound.length + scenario], `${name}, draw ${draw}`).toBeCloseTo(
            plain[name][scenario],
            8,
          );
    }
  });
});
