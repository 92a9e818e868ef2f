/** A child of the bench: memory of many draws over what was there before, looked at after every chunk; prints one line of JSON. */
import { draw } from '../../src/uncertainty/monteCarlo.ts';
import { CHIEF } from './chief.ts';
import { sumOf } from './measure.ts';
import { threeWays } from './rows.ts';

const count = Number(process.argv[2]);
const run = threeWays();
globalThis.gc?.();
const before = process.memoryUsage().rss;
const steps = draw(run, { count, seed: 1, keep: CHIEF });
let peak = before;
let step = steps.next();
while (!step.done) {
  peak = Math.max(peak, process.memoryUsage().rss);
  step = steps.next();
}
peak = Math.max(peak, process.memoryUsage().rss);
const megabytes = (peak - before) / 1e6;
const kept = (count * run.bound.length * CHIEF.length * 8) / 1e6;
console.log(JSON.stringify({ count, megabytes, kept, sum: sumOf(step.value.results) }));
