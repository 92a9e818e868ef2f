// Every number has a span, every span a reason and a basis, and what is beyond is told both.
import { describe, expect, it } from 'vitest';
import { CATALOGUE_OF_INPUTS } from '../../src/notebook/catalogue.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { spanReason } from '../../src/notebook/spans.ts';
import { unitSpan } from '../../src/tables/unitSpans.ts';
import { formatProblem } from '../../src/units/problem.ts';
import { tables } from '../shippedTables.ts';
import { SMALL } from './small.ts';

const numbers = CATALOGUE_OF_INPUTS.filter(({ kind }) => kind === 'number' || kind === 'numbers');

describe('the spans', () => {
  it.each(numbers.map(({ pattern, limits }) => [pattern, limits] as const))(
    'of %s has two ends and a reason',
    (pattern, limits) => {
      expect(Number.isFinite(limits?.low)).toBe(true);
      expect(Number.isFinite(limits?.high)).toBe(true);
      expect(Math.abs(limits?.high as number)).toBeLessThan(3e9);
      expect(spanReason(pattern)?.because).toBeTruthy();
    },
  );

  it('hold a fraction to the whole, a day to the year, a curve number to 100, and all the tables', () => {
    expect(['fraction', 'curve number', 'day of year', 'h/d'].map((unit) => unitSpan(unit).high)).toEqual([
      1, 100, 366, 24,
    ]);
    const { coefficients, prices } = tables;
    const beyond = [coefficients, ...prices.values()].flatMap((table) =>
      [...table.values()].filter(
        ({ unit, low, high }) => low < unitSpan(unit).low || high > unitSpan(unit).high,
      ),
    );
    expect(beyond.map(({ id }) => id)).toEqual([]);
  });

  it.each([
    ['labourPerHour: 15', 'labourPerHour: 1e10', 'no number of a farm is so large (invented)'],
    ['weightKg: 620', 'weightKg: 6200', 'no bull is heavier (from memory)'],
    ['latitudeDeg: 57', 'latitudeDeg: 157', 'the poles lie there (by definition)'],
  ])('tell of %s as %s why not', (from, to, words) => {
    expect(readNotebook(SMALL.replace(from, to), 'x.md').problems.map(formatProblem).join()).toContain(words);
  });

  it.each([
    ['start: 2025-11-01, end: 2026-04-30', 'start: 1899-11-01, end: 1900-04-30'],
    ['start: 2025-11-01, end: 2026-04-30', 'start: 9998-11-01, end: 9999-04-30'],
  ])('take no date of another age: %s as %s', (from, to) => {
    expect(readNotebook(SMALL.replace(from, to), 'x.md').problems.map(formatProblem).join()).toContain(
      'outside the years 1900 to 2100',
    );
  });
});
