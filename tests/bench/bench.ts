/**
 * How fast, as ratios of two things measured by turns in this one run; no figure here is a test. Times are the
 * least of all rounds, and of this process's own work on the processors unless they say "on the clock".
 */
import { execFileSync } from 'node:child_process';
import { cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { compute } from '../../src/model/compute.ts';
import { drawAll, uncertainIn } from '../../src/uncertainty/monteCarlo.ts';
import { builtPage } from '../cli/built.ts';
import { CHIEF } from './chief.ts';
import { aloneOf, loopsOf } from './loops.ts';
import { byTurns, consumedSum, sumOf } from './measure.ts';
import { type Columns, drawnColumns, threeWays } from './rows.ts';
import { SHARED } from './sheet.ts';
import { timeEdits } from './sheetBench.ts';
import { sliderReport } from './slider.ts';
import { coldStartReport, firstPaintReport } from './start.ts';

const began = performance.now();
const run = threeWays();
const { weather } = run;
const scenarios = run.bound.length;
const ms = (time: number) => (time < 10 ? time.toFixed(2) : time.toFixed(1));
const perRow = (time: number, rows: number) => `${((1000 * time) / rows).toFixed(2)} µs/row`;
const load = () => loadavg()[0].toFixed(1);
const rounds = { 3: 400, 300: 120, 3000: 30, 30000: 12, 99999: 3 } as const;

/** Beside the loops stands only what they can work out: nothing held against a baseline. */
const ALONE = aloneOf(CHIEF);
const throughPipeline = (columns: Columns) => () => sumOf(compute(ALONE, columns, weather));
const throughLoops = (columns: Columns, rows: number) => {
  const loops = loopsOf(ALONE, columns, rows, weather);
  return () => sumOf(loops());
};

// The compiler has seen both sides at length before either is measured.
const warm = drawnColumns(run, 10_000, 1, true);
for (const side of [throughPipeline(warm), throughLoops(warm, 30_000)]) for (let k = 0; k < 3; k++) side();

console.log(`node ${process.version}, ${cpus().length} processors, load ${load()} (others' work included)\n`);

console.log('The engine beside the same declarations as bare loops over whole typed arrays:');
for (const [what, ownWeather] of [
  ['rows of a draw share their weather', false],
  ['every row has its own weather', true],
] as const)
  for (const rows of [3, 300, 30_000] as const) {
    const columns = drawnColumns(run, rows / scenarios, 1, ownWeather);
    const [pipeline, loops] = byTurns(
      [
        { name: 'pipeline', run: throughPipeline(columns) },
        { name: 'loops', run: throughLoops(columns, rows) },
      ],
      rounds[rows],
    );
    console.log(
      `  ${rows} rows, ${what}: ${(pipeline.workMs / loops.workMs).toFixed(2)} × the loops ` +
        `(${ms(pipeline.workMs)} ms, ${perRow(pipeline.workMs, rows)}; loops ${ms(loops.workMs)} ms, ` +
        `${perRow(loops.workMs, rows)}); load ${load()}`,
    );
  }

console.log(
  `\nDraws of ${uncertainIn(run).length} uncertain numbers, ${scenarios} scenarios each, ${CHIEF.length} results kept:`,
);
{
  const draws = 10_000;
  const columns = drawnColumns(run, draws, 1);
  const [whole, loops] = byTurns(
    [
      { name: 'draws', run: () => sumOf(drawAll(run, { count: draws, seed: 1, keep: ALONE }).results) },
      { name: 'loops', run: throughLoops(columns, draws * scenarios) },
    ],
    6,
  );
  console.log(
    `  ${draws} draws: ${(whole.workMs / loops.workMs).toFixed(2)} × the loops fed the same draws ready made ` +
      `(${ms(whole.workMs)} ms with the drawing, loops ${ms(loops.workMs)} ms without); load ${load()}`,
  );
  // Another seed each time, so that nothing kept helps; then the same seed, as while an input is dragged.
  let seed = 1;
  let moves = 0;
  const frame = 1000 / 60;
  const dragged = (input: string, count: number) => ({
    name: `${count} draws, ${input} dragged`,
    run: () => {
      const changes = new Map([[input, run.bound[0].bindings.get(input)?.value ?? Number.NaN]]);
      for (const [name, value] of changes) changes.set(name, value * (1 + (++moves % 50) / 100));
      return sumOf(drawAll(run, { count, seed: 1, keep: CHIEF, changes }).results);
    },
  });
  const whole1000 = {
    name: '1000 draws, fresh',
    run: () => sumOf(drawAll(run, { count: 1_000, seed: ++seed, keep: CHIEF }).results),
  };
  const all10000 = {
    name: '10000 draws, fresh',
    run: () => sumOf(drawAll(run, { count: 10_000, seed: ++seed, keep: CHIEF }).results),
  };
  const sides = [
    whole1000,
    all10000,
    ...[256, 1_000].flatMap((count) => SHARED.map((input) => dragged(input, count))),
  ];
  // One after the other: what is kept is of the input dragged last.
  for (const { name, leastMs, workMs } of sides.flatMap((side) => byTurns([side], 40)))
    console.log(
      `  ${name}: ${ms(workMs)} ms (${ms(leastMs)} on the clock), ${(workMs / frame).toFixed(1)} frames of ` +
        `${frame.toFixed(1)} ms; load ${load()}`,
    );
}

console.log('\nCost of a row by the number of rows, drawn and worked out in chunks as the page does:');
{
  const sizes = [300, 3_000, 30_000, 99_999] as const;
  let seed = 100;
  const cost = sizes.map((rows) => {
    const all = () => sumOf(drawAll(run, { count: rows / scenarios, seed: ++seed, keep: CHIEF }).results);
    const [{ workMs }] = byTurns([{ name: 'draws', run: all }], rounds[rows]);
    console.log(`  ${rows} rows: ${perRow(workMs, rows)}; load ${load()}`);
    return workMs / rows;
  });
  console.log(`  dearest over cheapest: ${(Math.max(...cost) / Math.min(...cost)).toFixed(2)}`);
}

console.log('\nMemory:');
{
  const child = fileURLToPath(new URL('memory.ts', import.meta.url));
  const out = execFileSync(process.execPath, ['--expose-gc', '--import', 'tsx', child, '30000'], {
    encoding: 'utf8',
  });
  const { count, megabytes, kept } = JSON.parse(out) as { count: number; megabytes: number; kept: number };
  console.log(
    `  ${count} draws of ${scenarios} scenarios: at most ${megabytes.toFixed(0)} MB over an idle process, ` +
      `of which the kept results are ${kept.toFixed(0)} MB`,
  );
}

console.log(
  '\nHyperFormula beside the whole pipeline, 300 rows in one weather, after one shared input changes:',
);
{
  const { cells, edits } = timeEdits(run, 100, 12);
  console.log(
    `  ${cells} formulas: water balance, herd, intake, excretion, bedding, placement, slurry, bed by week and hours ` +
      'of some tasks; not paddock, heap, soil, value, bill, most costs and finance, which the pipeline works out too',
  );
  for (const { edit, sheetMs, pipelineMs } of edits)
    console.log(
      `  ${edit}: the pipeline is ${(sheetMs / pipelineMs).toFixed(1)} × as fast (${ms(sheetMs)} against ` +
        `${ms(pipelineMs)} ms); load ${load()}`,
    );
}

console.log('\nThe page as it is built, in Chromium:');
{
  const built = await builtPage();
  try {
    console.log(await sliderReport(built));
    console.log(await firstPaintReport(built));
  } finally {
    await built.remove();
  }
  console.log(await coldStartReport());
}

console.log(`\nAll of this took ${((performance.now() - began) / 1000).toFixed(0)} s; load ${load()}`);
console.log(`(sum of all that was worked out: ${consumedSum().toExponential(3)})`);
