import { quantile } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import type { ResultName } from '../../src/model/quantities.ts';
import type { Draws } from '../../src/uncertainty/monteCarlo.ts';
import {
  bandsOf,
  pairedDifference,
  shareBest,
  shareBestWeighted,
} from '../../src/uncertainty/percentiles.ts';
import { stream } from '../../src/uncertainty/random.ts';

function draws(results: Partial<Record<ResultName, number[]>>, scenarios: number): Draws {
  const columns = Object.fromEntries(
    Object.entries(results).map(([name, values]) => [name, Float64Array.from(values)]),
  );
  return {
    count: Object.values(results)[0].length / scenarios,
    seed: 1,
    scenarios,
    results: columns,
    uncertain: [],
  };
}

describe('bands', () => {
  it('agree with a statistics library within the gap between two ranks', () => {
    const next = stream(5, 'bands');
    const values = Array.from({ length: 2_001 }, () => next() ** 3 * 100);
    const { p10, p50, p90 } = bandsOf(draws({ netCost: values }, 1), 0);
    const sorted = [...values].sort((a, b) => a - b);
    for (const [p, found] of [
      [0.1, p10.netCost],
      [0.5, p50.netCost],
      [0.9, p90.netCost],
    ] as const) {
      const expected = quantile(values, p);
      const k = Math.floor(p * (values.length - 1));
      expect(Math.abs((found as number) - expected)).toBeLessThanOrEqual(sorted[k + 1] - sorted[k - 1]);
    }
  });

  it('are null where the scenario has no such quantity', () => {
    expect(bandsOf(draws({ packM3: [Number.NaN, 1, Number.NaN, 2] }, 2), 0).p50.packM3).toBeNull();
  });
});

describe('paired differences', () => {
  it('are taken draw by draw', () => {
    const d = draws({ nitrogenKeptKg: [10, 8, 20, 25, 30, 20] }, 2);
    const difference = pairedDifference(d, 'nitrogenKeptKg', 0, 1);
    expect(difference?.p10).toBeCloseTo(-3.6, 12);
    expect(difference?.p50).toBe(2);
    expect(difference?.p90).toBeCloseTo(8.4, 12);
    expect(difference?.shareLarger).toBeCloseTo(2 / 3, 12);
  });
});

describe('share best', () => {
  const d = draws({ nitrogenKeptKg: [10, 8, 20, 25, 30, 20], netCost: [5, 1, 5, 9, 5, 5] }, 2);

  it('counts the draws each scenario wins, more or less being better', () => {
    expect(shareBest(d, 'nitrogenKeptKg', 'more')).toEqual([2 / 3, 1 / 3]);
  });

  it('shares a draw among those that tie for best, so that the shares sum to 1', () => {
    // Best in turn: the second, the first, both.
    expect(shareBest(d, 'netCost', 'less')).toEqual([1.5 / 3, 1.5 / 3]);
    const three = draws({ netCost: [4, 4, 4, 7, 2, 2, 3, 9, 8, 5, 6, 5] }, 3);
    const shares = shareBest(three, 'netCost', 'less');
    [1 / 3 + 1 + 1 / 2, 1 / 3 + 1 / 2, 1 / 3 + 1 / 2 + 1 / 2].forEach((wins, k) => {
      expect(shares[k]).toBeCloseTo(wins / 4, 12);
    });
  });

  it('gives a draw in which no scenario has the measure to none', () => {
    const none = draws({ netCost: [Number.NaN, Number.NaN, Number.NaN, 3] }, 2);
    expect(shareBest(none, 'netCost', 'less')).toEqual([0, 1 / 2]);
  });

  it('shares a draw in which the weighed places are level', () => {
    const level = shareBestWeighted(d, [{ name: 'netCost', better: 'less', weight: 1 }]);
    expect(level).toEqual([1.5 / 3, 1.5 / 3]);
    expect(
      shareBestWeighted(draws({ netCost: [5, 5] }, 2), [{ name: 'netCost', better: 'less', weight: 1 }]),
    ).toEqual([0.5, 0.5]);
  });

  it('weighs several measures by the place within each draw', () => {
    const byKept = shareBestWeighted(d, [
      { name: 'nitrogenKeptKg', better: 'more', weight: 2 },
      { name: 'netCost', better: 'less', weight: 1 },
    ]);
    expect(byKept).toEqual([2 / 3, 1 / 3]);
  });
});
