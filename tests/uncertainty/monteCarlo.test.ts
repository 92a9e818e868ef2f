import fc from 'fast-check';
import { sampleCorrelation, sampleRankCorrelation } from 'simple-statistics';
import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import { RESULTS } from '../../src/model/dictionary.ts';
import type { ResultName } from '../../src/model/quantities.ts';
import type { Run } from '../../src/study/evaluate.ts';
import type { Setting } from '../../src/study/rows.ts';
import {
  type Draws,
  drawAll,
  sample,
  type Uncertain,
  uncertainIn,
} from '../../src/uncertainty/monteCarlo.ts';
import { bandsOf } from '../../src/uncertainty/percentiles.ts';
import { farm } from '../farm.ts';
import { plausibleShareBelow } from '../reference/plausible.ts';

const ALL = RESULTS.map((r) => r.name);
/** Taken from the cash flow against a baseline after the pipeline, which looks at one row at a time. */
const CASE = new Set(['netPresentValue', 'internalRateOfReturn', 'paybackYears', 'debtServiceCover']);
const OF_ROWS = ALL.filter((name) => !CASE.has(name));
const KEEP = ['nitrogenKeptKg', 'netCost', 'labourHours', 'compostTonnes'] as const;
let run: Run;
let all: Draws<ResultName>;
beforeAll(() => {
  run = farm(readDataFiles());
  all = drawAll(run, { count: 400, seed: 7, keep: ALL });
});

/** Every number with a range stands at its best guess. */
function central({ bound, weather, weatherIndex }: Setting): Setting {
  return {
    bound: bound.map((own) => ({
      ...own,
      bindings: new Map(
        [...own.bindings].map(([column, b]) => [
          column,
          b.low < b.high ? { ...b, low: b.value, high: b.value } : b,
        ]),
      ),
    })),
    weather,
    weatherIndex,
  };
}

describe('draws', () => {
  it('are the same twice, and others with another seed', () => {
    const [a, b, c] = [7, 7, 8].map((seed) => drawAll(run, { count: 50, seed, keep: KEEP }).results);
    expect(a).toEqual(b);
    expect(a.netCost).not.toEqual(c.netCost);
  });

  it('depend neither on how many are made nor on what is kept', () => {
    const few = drawAll(run, { count: 40, seed: 7, keep: ['netCost'] }).results.netCost;
    expect(few).toEqual(all.results.netCost.slice(0, few.length));
    // 1,100 draws of three scenarios are more than one chunk.
    const many = drawAll(run, { count: 1_100, seed: 7, keep: ['netCost'] }).results.netCost;
    expect(many.slice(0, all.results.netCost.length)).toEqual(all.results.netCost);
  });

  it('at the best guess of every number are the plain run, to the last bit', () => {
    const { results, uncertain } = drawAll(central(run), { count: 3, seed: 1, keep: ALL });
    expect(uncertain).toEqual([]);
    for (const name of OF_ROWS)
      run.results.forEach(({ values }, s) => {
        for (let draw = 0; draw < 3; draw++) {
          const value = results[name][draw * 3 + s];
          expect(Number.isNaN(value) ? null : value, name).toBe(values[name]);
        }
      });
  });

  it.each(['nitrogen', 'phosphorus', 'potassium'] as const)(
    'close the balance of %s in every draw',
    (element) => {
      const at = (name: ResultName, row: number) => {
        const value = all.results[name][row];
        return Number.isNaN(value) ? 0 : value;
      };
      const out =
        element === 'nitrogen'
          ? (
              [
                'AmmoniaKg',
                'NitrousKg',
                'DinitrogenKg',
                'LeachedKg',
                'RunoffKg',
                'KeptKg',
                'BroughtKg',
              ] as const
            ).map((way) => `nitrogen${way}` as const)
          : ([`${element}LostKg`, `${element}KeptKg`, `${element}BroughtKg`] as const);
      for (let row = 0; row < all.count * 3; row++) {
        const entered = at(`${element}ExcretedKg`, row) + at(`${element}BeddingKg`, row);
        const left = out.reduce((sum, name) => sum + at(name, row), 0);
        expect(entered).toBeGreaterThan(0);
        expect(Math.abs(left - entered) / entered).toBeLessThan(1e-9);
      }
    },
  );

  it('have P10 ≤ P50 ≤ P90 in every result, around the best guess of the cards', () => {
    run.results.forEach(({ values }, s) => {
      const { p10, p50, p90 } = bandsOf(all, s);
      for (const name of ALL) {
        const [a, b, c] = [p10[name], p50[name], p90[name]];
        if (a == null || b == null || c == null) continue;
        expect(a, name).toBeLessThanOrEqual(b);
        expect(b, name).toBeLessThanOrEqual(c);
      }
      for (const name of ['nitrogenKeptKg', 'netCost', 'labourHours'] as const) {
        expect(values[name], name).toBeGreaterThan(p10[name] as number);
        expect(values[name], name).toBeLessThan(p90[name] as number);
      }
    });
  });

  it('leave what a scenario does not have absent in every draw', () => {
    for (let draw = 0; draw < all.count; draw++) {
      expect(all.results.slurryM3[draw * 3]).toBeNaN();
      expect(all.results.slurryM3[draw * 3 + 1]).toBeGreaterThan(0);
      expect(all.results.compostTonnes[draw * 3 + 1]).toBeNaN();
    }
  });

  it('follow a turned input, which then has no range, and leave the setting as it was', () => {
    const changes = new Map([['labourPricePerHour', 0]]);
    const turned = drawAll(run, { count: 30, seed: 7, keep: ['netCost', 'labourCost'], changes });
    expect(Math.max(...turned.results.labourCost)).toBe(0);
    const price = new Map([['tractorPricePerHour', 50]]);
    expect(
      drawAll(run, { count: 3, seed: 7, keep: ['netCost'], changes: price }).uncertain.map((u) => u.id),
    ).not.toContain('tractorPricePerHour');
    const again = drawAll(run, { count: 30, seed: 7, keep: ['netCost', 'labourCost'] });
    expect(again.results.netCost).toEqual(all.results.netCost.slice(0, 90));
  });

  it('refuse a quantity that the model does not make', () => {
    // @ts-expect-error no result has this name
    expect(() => drawAll(run, { count: 3, seed: 1, keep: ['netCosts'] })).toThrow(
      'unknown quantity: netCosts',
    );
  });
});

describe('numbers that move together', () => {
  const price = (id: string): Uncertain => ({
    id,
    label: '',
    unit: '',
    low: 40,
    central: 90,
    high: 260,
    movesWith: run.tables.prices.get('EUR')?.get(id)?.movesWith,
    at: [],
  });
  const N = 20_000;

  it('keep their own distributions (Kolmogorov–Smirnov at 1 %)', () => {
    const sorted = sample(price('feedPricePerTonne.hay'), N, 4).sort();
    const worst = sorted.reduce(
      (gap, x, k) => Math.max(gap, Math.abs(plausibleShareBelow(x, 40, 90, 260) - (k + 0.5) / N)),
      0,
    );
    // Critical value 1.628/√n, large n (Massey 1951; from memory).
    expect(worst).toBeLessThan(1.628 / Math.sqrt(N));
  });

  it('are correlated by the square of their common share, and nothing else is', () => {
    const draws = (id: string) => [...sample(price(id), 4_000, 4)];
    const [hay, silage, nitrogen] = [
      'feedPricePerTonne.hay',
      'feedPricePerTonne.grassSilage',
      'nitrogenPricePerKg',
    ].map(draws);
    expect(sampleRankCorrelation(hay, silage)).toBeCloseTo(0.81, 1);
    expect(Math.abs(sampleCorrelation(hay, nitrogen))).toBeLessThan(0.05);
  });

  it('stay inside their spans, whatever the span', () => {
    fc.assert(
      fc.property(
        fc.tuple(
          fc.double({ min: -1e6, max: 1e6, noNaN: true }),
          fc.double({ min: 0, max: 1e6, noNaN: true }),
          fc.double({ min: 0, max: 1e6, noNaN: true }),
        ),
        ([low, a, b]) => {
          const u: Uncertain = {
            id: 'x',
            label: '',
            unit: '',
            low,
            central: low + a,
            high: low + a + b,
            at: [],
          };
          return sample(u, 50, 1).every((v) => v >= u.low && v <= u.high);
        },
      ),
    );
  });
});

describe('what is uncertain', () => {
  it('counts a number once, however many scenarios and columns use it', () => {
    const found = uncertainIn(run);
    expect(new Set(found.map((u) => u.id)).size).toBe(found.length);
    expect(found.find((u) => u.id === 'tractorPricePerHour')?.at.map((a) => a.scenario)).toEqual([0, 1, 2]);
  });
});
