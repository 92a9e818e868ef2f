/** Axes whose ticks are round in the unit a reader sees. Own arithmetic: conversions are those of the units' own tests. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axisIn } from '../../src/plots/axes.ts';
import { compareFigure } from '../../src/plots/compare.ts';
import { ladderFigure } from '../../src/plots/ladder.ts';
import { ledgerFigure } from '../../src/plots/ledger.ts';
import { formatQuantity } from '../../src/units/format.ts';
import { toSystem } from '../../src/units/quantities.ts';
import { evaluation, reading } from '../browser/fixtures/evaluation.ts';
import { openDocument } from './picture.ts';

const us = { ...reading, system: 'us' } as const;
const UNITS = [
  'kg',
  'mm',
  'm',
  't',
  'ha',
  'kg/ha',
  'L/head/d',
  'kN/m²',
  '°C',
  'fraction',
  'money',
  'head',
  '×',
];

/** One, two or five times a power of ten apart. */
const roundStep = (values: readonly number[]) => {
  const step = values[1] - values[0];
  const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
  return [1, 2, 5].some((each) => Math.abs(lead - each) < 1e-6);
};

describe('an axis', () => {
  it.each(UNITS)('of %s has ticks that are round as they are shown, inside its ends', (unit) => {
    const axis = axisIn(unit, us);
    for (const [from, to] of [[0, 873], [0, 0.37], [-40, 260], [12, 61.4]] as const) {
      const places = axis.places(from, to, 5);
      expect(places.length).toBeGreaterThan(1);
      const shown = places.map((value) => toSystem(value, unit, 'us').value);
      expect(roundStep(shown), `${unit}: ${shown}`).toBe(true);
      for (const value of places) {
        expect(value).toBeGreaterThanOrEqual(from - 1e-9);
        expect(value).toBeLessThanOrEqual(to + 1e-9);
      }
    } // biome-ignore format: one list
  });

  it.each(UNITS)('of %s ends at a round number at or beyond what it holds', (unit) => {
    const axis = axisIn(unit, us);
    for (const max of [0.013, 7.7, 61, 5400]) {
      expect(axis.end(max)).toBeGreaterThanOrEqual(max - 1e-9);
      const shown = toSystem(axis.end(max), unit, 'us').value;
      expect(Number(shown.toPrecision(2))).toBeCloseTo(shown, 6);
      if (unit !== '°C') expect(axis.end(-max)).toBeCloseTo(-axis.end(max), 9);
    }
  });

  it('of what is metric for the reader is left to the drawing', () => {
    expect(axisIn('kg', reading).ticks(0, 900, 5)).toBe(5);
    expect(axisIn('head', us).ticks(0, 900, 5)).toBe(5);
    expect(axisIn('kg', reading).end(873)).toBe(1000);
    expect(axisIn('kg', reading).places(0, 1000, 5)).toEqual([0, 200, 400, 600, 800, 1000]);
  });
});

describe('a drawing with US units on', () => {
  let close: () => void;
  beforeAll(() => {
    close = openDocument();
  });
  afterAll(() => close());
  const pounds = (svg: string) =>
    [...svg.matchAll(/>([\d\s\u202f]+) lb</gu)].map(([, n]) => Number(n.replace(/\s/gu, '')));
  it.each([
    ['compare', () => compareFigure(evaluation.scenarios, 'nitrogenKeptKg', us)],
    ['ladder', () => ladderFigure(evaluation.scenarios, us)],
    ['ledger', () => ledgerFigure(evaluation.scenarios, 'nitrogen', us)],
  ])('%s has its weights in whole hundreds of pounds along the axis', (_, make) => {
    const svg = make().draw?.(680).outerHTML ?? '';
    const along = pounds(svg).filter((value) => value % 50 === 0);
    expect(along.length).toBeGreaterThan(2);
    const apart = along
      .slice(1)
      .map((value, k) => value - along[k])
      .filter((step) => step > 0);
    expect(new Set(apart).size, String(along)).toBe(1);
  });
  it('says the same number at a mark as the table has', () => {
    const figure = compareFigure(evaluation.scenarios, 'nitrogenKeptKg', us);
    expect(figure.table.rows.map(([, value]) => value)).toEqual(
      evaluation.scenarios.map(({ values }) => formatQuantity(values.nitrogenKeptKg, 'kg', { system: 'us' })),
    );
  });
});
