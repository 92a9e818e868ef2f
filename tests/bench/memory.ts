/** A child of the bench: peak memory of many draws over what was there before; prints one line of JSON. */
import { draw } from '../../src/explore/draws.ts';
import { CHIEF } from './chief.ts';
import { sumOf } from './measure.ts';
import { threeWays } from './rows.ts';

const count = Number(process.argv[2]);
const run = threeWays();
globalThis.gc?.();
const before = process.memoryUsage().rss;
const steps = draw(run, { count, seed: 1, keep: CHIEF });
let step = steps.next();
while (!step.done) step = steps.next();
// The highest the process ever stood, loading included: an upper bound of what the draws took.
const megabytes = (process.resourceUsage().maxRSS * 1024 - before) / 1e6;
const kept = (count * run.bound.length * CHIEF.length * 8) / 1e6;
console.log(JSON.stringify({ count, megabytes, kept, sum: sumOf(step.value.results) }));
