import { describe, expect, it } from 'vitest';
import { type TornadoOf, tornadoBars, tornadoFigure } from '../../src/plots/tornado.ts';
import { reading } from './moneyCases.ts';

const outcome = (gain: number | null) => ({
  name: 'Bed',
  netCost: 9000,
  netCostChange: 300,
  lacks: null,
  netPresentValue: -90_000,
  gain,
  debtServiceCover: 1.1,
  breakEven: null,
  words: '',
});
const of: TornadoOf = {
  scenario: 'Bed',
  baseline: 'Outside',
  sensitivities: {
    central: 9000,
    rows: [
      {
        id: 'straw',
        label: 'price of straw',
        unit: 'EUR/t',
        low: 60,
        high: 180,
        atLow: 14_000,
        atHigh: -2000,
      },
      {
        id: 'insurance',
        label: 'insurance',
        unit: 'fraction/yr',
        low: 0.002,
        high: 0.03,
        atLow: 9500,
        atHigh: 7000,
      },
    ],
  },
  stress: [
    { id: 'bedding', label: 'bedding dearer', level: 0.5, unit: '%', outcomes: [outcome(4000)] },
    { id: 'rate', label: 'interest higher', level: 0.03, unit: 'points', outcomes: [outcome(null)] },
  ],
};

describe('tornado', () => {
  it('puts what moves most first and gives a stress one end', () => {
    const bars = tornadoBars({ ...of, stress: of.stress.slice(0, 1) }, reading);
    expect(bars.map(({ label }) => label)).toEqual(['price of straw', 'bedding dearer', 'insurance']);
    expect(bars[0]).toMatchObject({ from: -2000, to: 14_000, highAt: 'from', span: 'EUR 60/t to EUR 180/t' });
    expect(bars[1]).toMatchObject({ from: 9000, to: 4000, span: '50 %' });
    expect(bars[2].span).toBe('0.2 to 3 % a year');
  });

  it('falls back on the present value alone where nothing is compared', () =>
    expect(tornadoBars(of, reading).find(({ label }) => label === 'interest higher')?.to).toBe(-90_000));

  it('says which number moves it most and whether 0 is crossed', () =>
    expect(tornadoFigure({ ...of, stress: [] }, reading).finding.replace(/\u202f/g, ' ')).toBe(
      'The present value of “Bed” against “Outside” is EUR 9 000; it moves most with price of straw, from EUR −2 000 to EUR 14 000. 1 of the changes shown carry it across 0.',
    ));

  it('says why there is nothing to draw', () => {
    const figure = tornadoFigure({ ...of, sensitivities: { central: Number.NaN, rows: [] } }, reading);
    expect(figure.markup).toBeNull();
    expect(figure.finding).toContain('a price or a term is missing');
  });

  it('keeps bars inside the drawing at any width', () => {
    for (const width of [300, 390, 680]) {
      const svg = tornadoFigure(of, reading).markup?.(width) ?? '';
      for (const [, x, w] of svg.matchAll(/<rect x="([-\d.]+)" y="[-\d.]+" width="([\d.]+)" height="18"/g)) {
        expect(Number(x)).toBeGreaterThanOrEqual(0);
        expect(Number(x) + Number(w)).toBeLessThanOrEqual(width);
      }
    }
  });
});
