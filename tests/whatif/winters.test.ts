import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import type { DayName } from '../../src/model/quantities.ts';
import { evaluateBound, type Run } from '../../src/study/evaluate.ts';
import { daysOf } from '../../src/whatif/winterDays.ts';
import { runWinters } from '../../src/whatif/winters.ts';
import { farm, winterOf } from '../farm.ts';

let run: Run;
beforeAll(() => {
  run = farm(readDataFiles());
});

describe('many winters', () => {
  const winters = [0.3, 1.6, 0.8, 1.1, 0.5].map((rain, k) => ({
    ...winterOf(9, rain),
    label: `${2000 + k}`,
  }));

  it('are each the plain run of that winter', () => {
    const { results } = runWinters(run, winters, ['nitrogenLeachedKg', 'netCost']);
    winters.forEach((winter, k) => {
      const plain = evaluateBound(run.bound, run.tables, [winter], [0, 0, 0]).results;
      plain.forEach(({ values }, s) => {
        expect(results.netCost[k * 3 + s]).toBe(values.netCost);
      });
    });
  });

  it('name the driest, the middle and the wettest by their rain', () => {
    const { driest, middle, wettest, labels } = runWinters(run, winters, ['netCost']);
    expect([driest, middle, wettest].map((k) => labels[k])).toEqual(['2000', '2002', '2001']);
  });

  it('leach more from the paddock the wetter they are', () => {
    const wetter = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3].map((rain) => winterOf(9, rain));
    const { results } = runWinters(run, wetter, ['nitrogenLeachedKg']);
    const leached = wetter.map((_, k) => results.nitrogenLeachedKg[k * 3]);
    leached.forEach((kg, k) => {
      if (k > 0) expect(kg).toBeGreaterThanOrEqual(leached[k - 1]);
    });
    expect(leached[7]).toBeGreaterThan(2 * leached[2]);
  });
});

describe('the days of a winter', () => {
  it('sum to the rain and drainage of the plain run', () => {
    const { series, winterDays } = daysOf(run, 0);
    const sum = (name: DayName) => series[name].slice(0, winterDays).reduce((a, v) => a + v, 0);
    expect(sum('dayRainMm')).toBeCloseTo(run.results[0].values.rainMm as number, 9);
    expect(sum('dayDrainageMm')).toBeCloseTo(run.results[0].values.drainageWinterMm as number, 9);
  });
});
