// Verdicts, sums, classes and spreads against sums worked by hand.

import { readFileSync } from 'node:fs';
import { variance } from 'd3-array';
import { describe, expect, it } from 'vitest';
import { type Case, caseOf } from '../../src/calibrate/case.ts';
import { scoreCase, tally, verdictOf } from '../../src/calibrate/score.ts';
import {
  headlinesOf,
  momentsOf,
  placeOfCentre,
  spreadByBasis,
  varianceAlone,
} from '../../src/calibrate/spread.ts';
import { sumOf, termsOf } from '../../src/calibrate/terms.ts';
import { openNotebook } from '../../src/cli/open.ts';
import { readMeasurements } from '../../src/notebook/measurements.ts';
import { resultIn } from '../../src/study/rows.ts';
import { FORM } from '../../src/tables/coefficient.ts';
import { drawAll, sample } from '../../src/uncertainty/monteCarlo.ts';
import { formatProblem } from '../../src/units/problem.ts';

describe('a verdict', () => {
  it.each([
    ['inside the band', 0.2, 'pass'],
    ['on its edge', 0.4, 'pass'],
    ['a quarter of its width beyond', 0.45, 'near'],
    ['farther than that', 0.4501, 'fail'],
    ['below, by a quarter', 0.15, 'near'],
    ['below, by more', 0.1499, 'fail'],
    ['of a figure that is not there', null, 'fail'],
  ])('%s', (_, model, verdict) => expect(verdictOf(model, 0.3, 0.2, 0.4)).toBe(verdict));

  it('is near within a fifth of the value where the band is narrow', () => {
    expect(verdictOf(1.2, 1, 0.99, 1.01)).toBe('near');
    expect(verdictOf(1.21, 1, 0.99, 1.01)).toBe('fail');
  });
});

describe('a sum of results', () => {
  const at = (values: Record<string, number>) => (name: string) => values[name] ?? Number.NaN;
  const of = (text: string, values: Record<string, number>) => sumOf(termsOf(text) ?? [], at(values));

  it('adds, takes off and multiplies', () => {
    expect(of('a - b * c + d', { a: 10, b: 2, c: 3, d: 1 })).toBe(5);
  });
  it('leaves out what is not there, and is nothing when none of it is', () => {
    expect(of('a + b', { a: 4 })).toBe(4);
    expect(of('a * b + c', { a: 4, c: 1 })).toBe(1);
    expect(of('a + b', {})).toBeNaN();
  });
  it.each(['', 'a +', '+ a', '2 * a', 'a / b', 'a (b)'])('is refused when written %j', (text) => {
    expect(termsOf(text)).toBeUndefined();
  });
});

const NOTEBOOK = 'data/cases/eghball-1997-windrows.md';
const WRITTEN = readFileSync('data/cases/eghball-1997-windrows.yaml', 'utf8');

async function joined(text: string) {
  const { run, notebook } = await openNotebook(NOTEBOOK);
  const { measurements } = readMeasurements(text, 'case.yaml');
  if (!measurements) throw new Error('the measurements cannot be read');
  return caseOf('eghball', notebook.title, measurements, run);
}

describe('a case', () => {
  it.each([
    ['source: eghball1997', 'source: eghball', /case\.yaml:1 source: no source.*nearest eghball/],
    ['scenario: Windrow', 'scenario: Row', /scenario: no scenario of this name.*found Row; allowed Windrow/],
    [
      'of: heapCarbonLostKg',
      'of: heapCarbonKg',
      /of: no result of this name; found heapCarbonKg; allowed nearest/,
    ],
    ['per: packCarbonKg', 'per: 2 * packCarbonKg', /per: not a sum of results/],
    ['    known: read', '    calibrates: [noSuchRow]\n    known: read', /calibrates: no row of this id/],
  ])('is refused with %s turned to %s', async (from, to, message) => {
    const { problems, case: one } = await joined(WRITTEN.replace(from, to));
    expect(one).toBeUndefined();
    expect(problems.map(formatProblem).join('\n')).toMatch(message);
  });

  it('is calibration where a row of its source moves the output, or where it says so', async () => {
    const { case: one } = await joined(
      WRITTEN.replace('    known: read', '    calibrates: [packDryDensityKgPerM3]\n    known: read'),
    );
    const run = (one as Case).run;
    const rows = scoreCase(one as Case, { count: 50, seed: 1 });
    expect(rows[0]).toMatchObject({ class: 'calibration', fittedBy: ['packDryDensityKgPerM3'] });
    // The one put in here, and the one the case names for its potassium.
    const named = ['packDryDensityKgPerM3', 'heapBypassFraction'];
    for (const row of rows)
      for (const id of row.fittedBy.filter((id) => !named.includes(id)))
        expect(run.tables.coefficients.get(id)?.source).toBe('eghball1997');
    const fitted = rows.filter((row) => row.fittedBy.length > 0).length;
    expect(tally(rows, 'calibration').outputs).toBe(fitted);
    expect(tally(rows, 'independent').outputs).toBe(rows.length - fitted);
  });

  it('holds the figure of the evaluation and the percentiles of its draws', async () => {
    const { case: one } = await joined(WRITTEN);
    const { values } = (one as Case).run.results[0];
    const [row] = scoreCase(one as Case, { count: 400, seed: 3 });
    const lost = (values.packNitrogenKg as number) - (values.compostNitrogenKg as number);
    expect(row.model).toBeCloseTo(lost / (values.packNitrogenKg as number), 12);
    const { results } = drawAll((one as Case).run, {
      count: 400,
      seed: 3,
      keep: ['packNitrogenKg', 'compostNitrogenKg'],
    });
    const drawn = Array.from(results.packNitrogenKg, (n, k) => (n - results.compostNitrogenKg[k]) / n);
    const below = drawn.filter((x) => x < (row.p10 as number)).length / drawn.length;
    expect(below).toBeGreaterThan(0.09);
    expect(below).toBeLessThan(0.11);
  });
});

describe('what a spread rests on', () => {
  it.each([
    [1, 2, 5],
    [1, 1, 5],
    [1, 5, 5],
  ])(
    'takes the variance of its draws for a number of %d, %d, %d that is the figure itself',
    (low, central, high) => {
      const number = { id: 'any', label: '', unit: 'kg', low, central, high, at: [] };
      const drawn = sample(number, 40_000, 1);
      expect(
        varianceAlone(low - central, high - central, momentsOf(number)) / (variance(drawn) ?? 0),
      ).toBeCloseTo(1, 1);
    },
  );

  it('takes the variance of two forms by their weight', () => {
    const form = { unit: FORM, low: 0, central: 0.3, high: 1 };
    // Two values 10 apart, in 3 of 10 draws the second: 0.3 × 0.7 × 10².
    expect(varianceAlone(-3, 7, momentsOf(form))).toBeCloseTo(21, 9);
  });

  it('shares each headline out whole, and finds the centre among the draws', async () => {
    const { run } = await openNotebook('notebooks/hill-farm-choice.md');
    const headlines = headlinesOf(run, ['nitrogenKeptKg', 'compostTonnes'], ['netCost']);
    // Three scenarios keep nitrogen, one makes compost, three pairs differ in net cost.
    expect(headlines).toHaveLength(7);
    for (const shares of spreadByBasis(run, headlines))
      expect(Object.values(shares).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    const draws = drawAll(run, { count: 200, seed: 1, keep: ['nitrogenKeptKg', 'compostTonnes', 'netCost'] });
    for (const headline of headlines) {
      const at = placeOfCentre(run, draws, headline);
      expect(at).toBeGreaterThanOrEqual(0);
      expect(at).toBeLessThanOrEqual(1);
    }
    const { name, scenario } = headlines[0];
    const centre = run.results[scenario].values[name] as number;
    const own = Array.from(
      { length: 200 },
      (_, k) => resultIn(draws.results, name)[k * draws.scenarios + scenario],
    );
    expect(placeOfCentre(run, draws, headlines[0])).toBeCloseTo(
      own.filter((x) => x < centre).length / 200,
      9,
    );
  });
});
