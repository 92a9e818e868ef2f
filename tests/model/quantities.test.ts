import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import { contextOf } from '../../src/model/checks/context.ts';
import { compute } from '../../src/model/compute.ts';
import { isResult, RESULTS } from '../../src/model/dictionary.ts';
import { DAILY, type ResultName, WEEKLY } from '../../src/model/quantities.ts';
import type { Run } from '../../src/study/evaluate.ts';
import { repeatScenarios, resultIn, runBlock } from '../../src/study/rows.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { bandsOf } from '../../src/uncertainty/percentiles.ts';
import { farm } from '../farm.ts';

/** Each `@ts-expect-error` is held by `tsc`: it complains where the line below it compiles. */
describe('a misspelt name does not compile', () => {
  let run: Run;
  beforeAll(() => {
    run = farm(readDataFiles());
  });

  it('among the values and the series of a scenario', () => {
    const { values, tracks } = run.results[2];
    expect(values.compostTonnes).toBeGreaterThan(0);
    expect(tracks.weekPackDepthM.length).toBe(53);
    // @ts-expect-error the result is called compostTonnes
    expect(values.compostTonne).toBeUndefined();
    // @ts-expect-error a weekly series is no single number
    expect(values.weekPackDepthM).toBeUndefined();
    // @ts-expect-error the series is called weekPackDepthM
    expect(tracks.weekPackDepth).toBeUndefined();
  });

  it('among bands, draws and exploring runs', () => {
    const draws = drawAll(run, { count: 5, seed: 1, keep: ['netCost'] });
    expect(draws.results.netCost.length).toBe(15);
    expect(bandsOf(draws, 0).p50.netCost).toBeGreaterThan(0);
    // @ts-expect-error the result is called netCost
    expect(bandsOf(draws, 0).p50.netCosts).toBeUndefined();
    // @ts-expect-error what was not kept may be missing
    expect(() => draws.results.capitalCost.length).toThrow(TypeError);
    expect(() => resultIn(draws.results, 'capitalCost')).toThrow('capitalCost was not asked for');
    // @ts-expect-error the result is called netCost
    expect(() => runBlock(repeatScenarios(run, 1, ['netCosts']), run.weather)).toThrow('unknown quantity');
    // @ts-expect-error the result is called netCost
    expect(() => compute(['netCosts'], { weatherIndex: new Float64Array(1) }, run.weather)).toThrow(
      'unknown quantity',
    );
  });

  it('in a check', () => {
    const [{ scenario, values, tracks }] = run.results;
    const context = contextOf({ scenario, values, tracks, coefficients: run.bound[0].coefficients });
    expect(context.value('annualCost')).toBeGreaterThan(0);
    // @ts-expect-error the result is called annualCost
    expect(context.value('annualCosts')).toBeNull();
  });

  it('and names from outside are looked at before they count as results', () => {
    const said: string = 'compostTonnes';
    const known: ResultName | null = isResult(said) ? said : null;
    expect(known).toBe('compostTonnes');
    expect(isResult('compostTonne')).toBe(false);
    expect(isResult('weekPackDepthM')).toBe(false);
  });
});

describe('names by kind', () => {
  it('are those the declarations make, each of one kind', () => {
    const all = [...RESULTS.map((r) => r.name), ...WEEKLY, ...DAILY];
    expect(new Set(all).size).toBe(all.length);
    expect(WEEKLY.every((name) => name.startsWith('week'))).toBe(true);
    expect(DAILY.every((name) => name.startsWith('day'))).toBe(true);
  });
});
