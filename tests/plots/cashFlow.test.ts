import { describe, expect, it } from 'vitest';
import { cashFlowFigure, cashSeries } from '../../src/plots/cashFlow.ts';
import { BED, OUTSIDE, reading, resultsOf } from './moneyCases.ts';

const results = resultsOf([
  { name: 'Outside', values: OUTSIDE },
  { name: 'Bed', values: BED, loan: 4000 },
]);

describe('cash flow', () => {
  it('ends at the present value against the baseline and crosses 0 at the payback', () => {
    const [series, ...rest] = cashSeries(results);
    expect(rest).toEqual([]);
    const { difference } = results[1].finance;
    expect(series.sums).toHaveLength(21);
    expect(series.sums[0]).toBe(-8000);
    // 1 400 a year saved for 20 years at 5 % is worth 17 447.1 (annuity factor 12.4622): own arithmetic.
    expect(series.sums[20]).toBeCloseTo(1400 * 12.462210342 - 8000, 4);
    expect(series.sums[20]).toBeCloseTo(difference?.netPresentValue.value as number, 6);
    const payback = difference?.paybackYears.value as number;
    expect(series.sums[Math.floor(payback)]).toBeLessThan(0);
    expect(series.sums[Math.ceil(payback)]).toBeGreaterThan(0);
  });

  it('says it in a sentence', () =>
    expect(cashFlowFigure(results, reading).finding).toMatch(
      /^“Bed” is EUR 9\s450 ahead of “Outside” after 20 years, paid back after 6\.9 years\.$/u,
    ));

  it('takes a band, in the drawing and the table', () => {
    const band = {
      p10: Array.from({ length: 21 }, (_, k) => -9000 + 600 * k),
      p50: Array.from({ length: 21 }, (_, k) => -8000 + 700 * k),
      p90: Array.from({ length: 21 }, (_, k) => -7000 + 1000 * k),
      count: 2000,
    };
    const with_ = cashFlowFigure(results, reading, new Map([['Bed', band]]));
    expect(with_.table.head).toEqual(['year', 'Bed', 'Bed, low', 'Bed, middle', 'Bed, high']);
    expect(with_.table.rows[20].slice(2)).toEqual(['EUR 3\u202f000', 'EUR 6\u202f000', 'EUR 13\u202f000']);
    expect(with_.caption).toContain('8 of 10 of 2\u202f000 draws');
    expect(with_.markup?.(600)).toContain('fill-opacity="0.13"');
    expect(cashFlowFigure(results, reading).markup?.(600)).not.toContain('fill-opacity="0.13"');
  });

  it('leaves out a band of another length', () =>
    expect(
      cashSeries(results, new Map([['Bed', { p10: [1], p50: [1.5], p90: [2], count: 10 }]]))[0].band,
    ).toBeNull());

  it('shows a lone scenario alone', () => {
    const alone = resultsOf([{ name: 'Bed', values: BED }]);
    expect(cashSeries(alone)[0].baseline).toBeNull();
    expect(cashFlowFigure(alone, reading).finding).toMatch(/^“Bed” costs EUR .* over 20 years\.$/);
  });

  it('says when a price is missing', () => {
    const gap = resultsOf(
      [
        { name: 'Outside', values: OUTSIDE },
        { name: 'Bed', values: { ...BED, capitalCost: null } },
      ],
      'Outside',
    );
    expect(cashFlowFigure(gap, reading)).toMatchObject({
      draw: null,
      finding: 'No cash flow can be drawn: a price or a term is missing.',
    });
  });

  it('draws at any width without a number that is none', () => {
    for (const width of [200, 390, 900])
      expect(cashFlowFigure(results, reading).markup?.(width)).not.toMatch(/NaN|Infinity/);
  });
});
