/** The chances of a case, counted by hand on few draws and held against the case itself on the shipped notebook. */

import { quantile } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { baselinesOf } from '../../src/study/baselines.ts';
import { CHANCE_RESULTS, chancesOf, chanceWords, shareOver } from '../../src/uncertainty/chances.ts';
import { type Draws, drawAll } from '../../src/uncertainty/monteCarlo.ts';

const { NaN: none, POSITIVE_INFINITY: never } = Number;

/** Two scenarios, the first the baseline of the second. */
const few = (worth: number[], cover: number[], years: number[]): Draws => {
  const beside = (own: readonly number[], base: number) =>
    Float64Array.from(own.flatMap((value) => [base, value]));
  return {
    count: worth.length,
    seed: 1,
    scenarios: 2,
    uncertain: [],
    results: {
      netPresentValue: beside(worth, -100),
      debtServiceCover: beside(cover, none),
      paybackYears: beside(years, none),
    },
  };
};

describe('chances', () => {
  const draws = few([-150, -100, -90, -40], [0.8, 1, 1.2, 1.4], [none, none, 9, 4]);

  it('count draws above the line, a tie in present value half, a payment met to the cent whole', () => {
    const { covered, pays } = chancesOf(draws, 1, 0);
    expect(covered).toBe(0.75);
    expect(pays).toBe((0.5 + 2) / 4);
  });

  it('hold the spans of the differences, and an endless payback where it never comes', () => {
    const { worth, cover, payback, gap, funded } = chancesOf(draws, 1, 0);
    expect(worth!.p50).toBeCloseTo(5, 12);
    expect(cover!.p10).toBeCloseTo(0.86, 12);
    expect(payback).toMatchObject({ p50: never, p90: never, share: 1 });
    expect(payback!.p10).toBeCloseTo(5.5, 12);
    expect([gap, funded]).toEqual([null, null]);
  });

  it('say nothing of what is not there', () => {
    expect(chancesOf(draws, 0)).toMatchObject({ worth: null, pays: null, cover: null, covered: null });
    expect(chanceWords(chancesOf(draws, 0))).toBe('');
    expect(shareOver(new Float64Array(0), 1, 1)).toBeNull();
  });

  it('are said together', () => {
    expect(chanceWords(chancesOf(draws, 1, 0))).toBe(
      'the payment is covered in 75 of 100 draws; the works pay in 63 of 100',
    );
  });
});

describe('draws of the shipped lender’s notebook', () => {
  it('hold every scenario against its own baseline, in the same draw', async () => {
    const { run } = await openNotebook('notebooks/coast-lender-case.md');
    const keep = [
      ...CHANCE_RESULTS,
      'internalRateOfReturn',
      'incomePerYear',
      'operatingCashCost',
      'loanPayment',
    ] as const;
    const draws = drawAll(run, { count: 300, seed: 3, keep });
    const of = baselinesOf(run);
    expect(of).toEqual([-1, 0, 0, 0]);
    for (const k of [1, 2, 3]) {
      const { cover, worth, rate, covered } = chancesOf(draws, k, of[k]);
      const at = (name: (typeof keep)[number], d: number, s = k) => draws.results[name]![d * 4 + s];
      const covers = Array.from(
        { length: 300 },
        (_, d) => (at('incomePerYear', d) - at('operatingCashCost', d)) / at('loanPayment', d),
      );
      expect(covered).toBeCloseTo(covers.filter((c) => c >= 1).length / 300, 12);
      expect(cover!.p50).toBeGreaterThan(quantile(covers, 0.49));
      expect(cover!.p50).toBeLessThan(quantile(covers, 0.51));
      const gains = Array.from(
        { length: 300 },
        (_, d) => at('netPresentValue', d) - at('netPresentValue', d, 0),
      );
      expect(worth!.p90).toBeGreaterThanOrEqual(quantile(gains, 0.89));
      expect(worth!.p90).toBeLessThanOrEqual(quantile(gains, 0.91));
      // A draw pays back within the years counted just where it is worth something today.
      gains.forEach((gain, d) => {
        expect(Number.isFinite(at('paybackYears', d))).toBe(gain >= 0);
      });
      // Of works that are never paid back no draw has a rate.
      expect(rate?.share ?? 0).toBeLessThan(1);
      if (k === 3) expect(rate!.share).toBeGreaterThan(0);
    }
  });
});
