/**
 * Damaged notebooks, tables, weather and links through all that they go through, and what was found.
 * `npm run fuzz -- --seed 1 --count 20000`; `--kind values` takes one kind, `--show 5` prints that many faults. One line out.
 */
import { loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { type Found, KINDS, type Kind, tryCase } from './cases.ts';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    count: { type: 'string', default: '2000' },
    kind: { type: 'string' },
    show: { type: 'string', default: '20' },
  },
});
const [seed, count, show] = [values.seed, values.count, values.show].map(Number);
if (![seed, count, show].every((n) => Number.isSafeInteger(n) && n >= 0))
  throw new Error('--seed, --count and --show are whole numbers');
const kinds = values.kind === undefined ? KINDS : KINDS.filter((kind) => kind === values.kind);
if (kinds.length === 0) throw new Error(`--kind: one of ${KINDS.join(', ')}`);

const tally = new Map<string, number>();
const bad: Found[] = [];
let slowest = 0;
for (let k = 0; k < count; k++) {
  const found = await tryCase(kinds[k % kinds.length] as Kind, seed * 1_000_000 + k);
  tally.set(found.to, (tally.get(found.to) ?? 0) + 1);
  slowest = Math.max(slowest, found.ms);
  if (found.faults.length === 0) continue;
  bad.push(found);
  if (bad.length <= show)
    process.stderr.write(`${found.kind} ${found.seed}: ${found.faults.slice(0, 2).join(' // ')}\n`);
}
const ends = [...tally].map(([to, n]) => `${n} ${to}`).join(', ');
console.log(
  `fuzz seed ${seed}: ${count} cases (${kinds.join(', ')}): ${ends}; ${bad.length} with a fault; slowest ${Math.round(slowest)} ms of processor time; load ${loadavg()[0].toFixed(1)}`,
);
process.exitCode = bad.length === 0 ? 0 : 1;
