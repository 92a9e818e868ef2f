import { describe, expect, it } from 'vitest';
import { compareFigure, compareFinding, compareRows } from '../../src/plots/compare.ts';
import { evaluation, reading } from '../browser/fixtures/evaluation.ts';

const { scenarios } = evaluation;

describe('compare', () => {
  it('leaves absent scenarios out of the drawing and names them in the sentence', () => {
    expect(compareRows(scenarios, 'compostTonnes').map((row) => row.scenario)).toEqual(['Deep bed']);
    expect(compareFinding(scenarios, 'compostTonnes', reading)).toMatch(
      /38 t in “Deep bed”\. There is none in “Paddock” and “Slats”\.$/,
    );
  });

  it('says most, least and the difference', () => {
    expect(compareFinding(scenarios, 'nitrogenKeptKg', reading)).toMatch(
      /most in “Deep bed”, 322 kg; least in “Paddock”, 260 kg, 62 kg less\. Their ranges overlap\.$/,
    );
  });

  it('warns when the ranges of most and least overlap', () => {
    expect(compareFinding(scenarios, 'netCost', reading)).toContain('Their ranges overlap.');
  });

  it('puts the range in the table, and a dash where there is none', () => {
    const { table } = compareFigure(scenarios, 'compostTonnes', reading);
    expect(table.rows[0].slice(1)).toEqual(['—', '—', '—']);
    expect(table.rows[2]).toEqual(['Deep bed', '38 t', '30.4 t', '47.5 t']);
  });

  it('says when no draws have been made', () => {
    const bare = scenarios.map(({ bands: _, ...rest }) => rest);
    expect(compareFigure(bare, 'nitrogenKeptKg', reading).caption).toContain('no draws');
  });

  it('says the currency and year of money', () => {
    expect(compareFigure(scenarios, 'netCost', reading).caption).toContain('EUR of 2024');
  });
});
