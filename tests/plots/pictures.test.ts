/**
 * Every figure of an invented farm as text kept in git: a change of a picture is seen in review. To take the new
 * ones over: `UPDATE_PICTURES=1 npx vitest run --project node tests/plots/pictures.test.ts`, then read the diff.
 */

import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { cheapestMix } from '../../src/bedmix/leastCost.ts';
import { beddingQuestion } from '../../src/bedmix/question.ts';
import { readDataFiles } from '../../src/cli/readData.ts';
import { bestMapFigure } from '../../src/plots/bestMap.ts';
import { cashFlowFigure } from '../../src/plots/cashFlow.ts';
import { compareFigure } from '../../src/plots/compare.ts';
import { costStackFigure } from '../../src/plots/costStack.ts';
import { drawsFigure } from '../../src/plots/drawsDots.ts';
import type { Figure } from '../../src/plots/figure.ts';
import { ladderFigure } from '../../src/plots/ladder.ts';
import { ledgerFigure } from '../../src/plots/ledger.ts';
import { mixFigure } from '../../src/plots/mix.ts';
import { planFigure } from '../../src/plots/plan.ts';
import { rainFigure, wintersFigure } from '../../src/plots/rain.ts';
import { rankingFigure } from '../../src/plots/ranking.ts';
import { sectionFigure } from '../../src/plots/section.ts';
import { sweepFigure } from '../../src/plots/sweepLines.ts';
import { tornadoFigure } from '../../src/plots/tornado.ts';
import { WEEK_SERIES, weekFigure } from '../../src/plots/weeks.ts';
import type { ScenarioResult } from '../../src/study/evaluate.ts';
import { rank } from '../../src/uncertainty/advice.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { bandsOf } from '../../src/uncertainty/percentiles.ts';
import { weekBands } from '../../src/uncertainty/weekBands.ts';
import { breakEvens } from '../../src/whatif/breakEven.ts';
import { oneAtATime } from '../../src/whatif/oneAtATime.ts';
import { stressRows } from '../../src/whatif/stressRun.ts';
import { spanOf, stepsOf, sweep, sweepTwo } from '../../src/whatif/sweep.ts';
import { type Turn, turnOf } from '../../src/whatif/turn.ts';
import { daysOf } from '../../src/whatif/winterDays.ts';
import { runWinters } from '../../src/whatif/winters.ts';
import { farm, winterOf } from '../farm.ts';
import { finished } from '../finished.ts';
import { BED, OUTSIDE, resultsOf } from './moneyCases.ts';
import { openDocument, pictureText } from './picture.ts';

const FOLDER = fileURLToPath(new URL('./pictures/', import.meta.url));
const UPDATE = process.env.UPDATE_PICTURES === '1';
/** All pictures together stay small enough to be read. */
const MOST_BYTES = 600_000;
/** Paper, and a phone. */
const WIDTHS = [680, 340];

const reading = { currency: 'EUR', year: 2024, system: 'metric' } as const;
const [PADDOCK, SLATS, DEEP] = [0, 1, 2];
const DRAWN = ['netCost', 'annualCost', 'nitrogenKeptKg', 'packDepthM'] as const;

/** What the figures are made from, made once. */
function study() {
  const run = farm(readDataFiles());
  const names = run.results.map(({ name }) => name);
  const draws = drawAll(run, { count: 200, seed: 1, keep: DRAWN });
  const results: ScenarioResult[] = run.results.map((result, k) => ({ ...result, bands: bandsOf(draws, k) }));
  const turn = (name: string) => turnOf(run, name) as Turn;
  return { run, names, draws, results, turn, coefficients: run.tables.coefficients };
}
let made: ReturnType<typeof study>;

/** Every figure by the name of its picture. */
const FIGURES: Readonly<Record<string, () => Figure>> = {
  'best-map': () => {
    const { run, names, turn } = made;
    const [across, down] = [turn('headCount'), turn('rainFactor')];
    const grid = sweepTwo(
      run,
      [across, stepsOf(across, ...spanOf(across), 5)],
      [down, stepsOf(down, ...spanOf(down), 3)],
      ['netCost'],
    );
    return bestMapFigure(grid, { measure: 'netCost', names }, reading);
  },
  'cash-flow': () => {
    const results = resultsOf(
      [
        { name: 'Outside', values: OUTSIDE },
        { name: 'Bed', values: BED, loan: 6000 },
      ],
      'Outside',
    );
    const sums = Array.from({ length: 21 }, (_, year) => -8000 + 900 * year);
    const band = {
      p10: sums.map((v) => v - 3000),
      p50: sums.map((v) => v + 400),
      p90: sums.map((v) => v + 3000),
      count: 2000,
    };
    return cashFlowFigure(results, reading, new Map([['Bed', band]]));
  },
  compare: () => compareFigure(made.results, 'netCost', reading),
  costs: () => costStackFigure(made.results, reading),
  draws: () => drawsFigure(made.draws, { measure: 'netCost', names: made.names }, reading),
  flip: () => {
    const { run, names, turn } = made;
    const labour = turn('labourPricePerHour');
    const span = spanOf(labour);
    return sweepFigure(
      sweep(run, labour, stepsOf(labour, ...span, 7), ['netCost']),
      {
        measure: 'netCost',
        names,
        shown: [SLATS, DEEP],
        flips: breakEvens(run, labour, span, 'netCost', SLATS, DEEP),
        capital: run.results.map(({ values }) => values.capitalCost),
      },
      reading,
    );
  },
  ladder: () => ladderFigure(made.results, reading),
  ledger: () => ledgerFigure(made.results, 'nitrogen', reading),
  mix: () => {
    const question = beddingQuestion(made.run, DEEP);
    return mixFigure(question, question && cheapestMix(question), made.names[DEEP], reading);
  },
  plan: () => planFigure({ ...made.results[DEEP], coefficients: made.coefficients }),
  'plan-slats': () => planFigure({ ...made.results[SLATS], coefficients: made.coefficients }),
  rain: () => rainFigure(daysOf(made.run, PADDOCK), reading),
  ranking: () => {
    const ranking = rank(made.draws, {
      measure: 'netCost',
      better: 'less',
      first: SLATS,
      second: DEEP,
      top: 6,
    });
    for (;;) {
      const step = ranking.next();
      if (step.done) return rankingFigure(step.value, made.names, 'netCost', reading);
    }
  },
  section: () => sectionFigure({ ...made.results[DEEP], coefficients: made.coefficients }, 20),
  'section-slats': () => sectionFigure({ ...made.results[SLATS], coefficients: made.coefficients }, 20),
  sweep: () => {
    const head = made.turn('headCount');
    const steps = stepsOf(head, ...spanOf(head), 5);
    return sweepFigure(
      sweep(made.run, head, steps, ['netCost']),
      { measure: 'netCost', names: made.names },
      reading,
    );
  },
  tornado: () =>
    tornadoFigure(
      {
        scenario: made.names[DEEP],
        baseline: made.names[PADDOCK],
        sensitivities: oneAtATime(made.run, DEEP, PADDOCK, 5),
        stress: stressRows(made.run),
      },
      reading,
    ),
  /** Six beds, each a seventh drier than the one before: more lines than stand apart in one drawing. */
  panels: () => {
    const [bed] = made.results.slice(DEEP);
    const wet = bed.tracks.weekPackMoisture ?? [];
    const results = Array.from({ length: 6 }, (_, k) => ({
      ...bed,
      name: `Bed ${k + 1}`,
      tracks: { ...bed.tracks, weekPackMoisture: Float64Array.from(wet, (each) => each * (1 - k / 7)) },
    }));
    return weekFigure(results, WEEK_SERIES.weekPackMoisture, reading);
  },
  weeks: () => {
    const series = WEEK_SERIES.weekPackDepthM;
    const bands = finished(weekBands(made.run, { tracks: [series.track], count: 60, seed: 1 }));
    const of = new Map(
      bands.scenarios.flatMap(({ name, tracks }) =>
        tracks[series.track] ? [[name, tracks[series.track]] as const] : [],
      ),
    );
    return weekFigure(made.results, series, reading, { count: bands.count, of });
  },
  winters: () => {
    const winters = runWinters(
      made.run,
      [1, 2, 3, 4].map((k) => winterOf(k, 0.7 + k / 6)),
      ['netCost'],
    );
    return wintersFigure(winters, made.names, 'netCost', reading);
  },
};

let close = () => {};
beforeAll(() => {
  close = openDocument();
  made = study();
  mkdirSync(FOLDER, { recursive: true });
});
afterAll(() => close());

describe.each(Object.keys(FIGURES))('the picture of %s', (name) => {
  it.each(WIDTHS)('is the one kept, %i px wide', (width) => {
    const warned = vi.spyOn(console, 'warn');
    const failed = vi.spyOn(console, 'error');
    const { draw, finding } = FIGURES[name]();
    if (!draw) throw new Error(`${name}: nothing is drawn; “${finding}”`);
    const text = pictureText(draw(width));
    expect([...warned.mock.calls, ...failed.mock.calls]).toEqual([]);
    expect(text).not.toMatch(/NaN|undefined|Infinity|⚠/);
    const file = `${FOLDER}${name}-${width}.svg`;
    if (UPDATE) writeFileSync(file, text);
    expect(text).toBe(readFileSync(file, 'utf8'));
  });
});

it('keeps a picture of each figure and no other, small enough to be read', () => {
  const wanted = Object.keys(FIGURES).flatMap((name) => WIDTHS.map((width) => `${name}-${width}.svg`));
  const kept = readdirSync(FOLDER);
  if (UPDATE) for (const file of kept) if (!wanted.includes(file)) rmSync(FOLDER + file);
  expect(readdirSync(FOLDER).sort()).toEqual(wanted.sort());
  const bytes = readdirSync(FOLDER).reduce((sum, file) => sum + readFileSync(FOLDER + file).length, 0);
  expect(bytes).toBeLessThan(MOST_BYTES);
});

it('draws every figure of the house', () => {
  const plots = fileURLToPath(new URL('../../src/plots/', import.meta.url));
  const makers = readdirSync(plots, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) =>
      [...readFileSync(plots + file, 'utf8').matchAll(/^export function (\w+Figure)\b/gm)].map(
        ([, name]) => name,
      ),
    );
  const here = readFileSync(fileURLToPath(import.meta.url), 'utf8');
  expect(makers.filter((name) => name !== 'emptyFigure' && !here.includes(`${name}(`))).toEqual([]);
});
