/**
 * Puts one small fault at a time into the code or the tables and asks the tests that could notice it.
 * `npm run mutate -- --seed 1 --count 20` tries twenty in each room; `--rooms model,tables` only these; `--log FILE` keeps
 * what was tried. One line a room. Works in a copy of the tree, so that a run that is stopped leaves no fault behind.
 */
import { execFileSync } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { seeded } from '../seeded.ts';
import { type Change, changesOf } from './changes.ts';
import { Graph } from './related.ts';
import { runTests } from './runTests.ts';
import { tableChangesOf } from './tableChanges.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const ROOMS = ['model', 'uncertainty', 'whatif', 'notebook', 'store', 'tables'] as const;
type Room = (typeof ROOMS)[number];

/** Rooms whose faults may show in a page only. */
const SHOWN_IN_PAGE: readonly string[] = ['store'];
/** What others measured, through the whole model: the first to be asked of a table. */
const MEASURED = 'tests/published/cases.test.ts';
const SNAPSHOT = 'tests/snapshot/figures.test.ts';
/** How the tree is laid out is no business of these faults, and takes git. */
const NOT_ASKED = /^tests\/(house|bench|mutate)\//;
const NEAREST = 8;
const NEAREST_IN_PAGE = 10;

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    count: { type: 'string', default: '20' },
    rooms: { type: 'string', default: ROOMS.join(',') },
    log: { type: 'string' },
  },
});
const [seed, count] = [values.seed, values.count].map(Number);
const rooms = values.rooms.split(',');
if (![seed, count].every((n) => Number.isInteger(n) && n >= 1))
  throw new Error(`--seed and --count are whole numbers from 1; found ${values.seed}, ${values.count}`);
const unknown = rooms.filter((room) => !ROOMS.some((known) => known === room));
if (unknown.length > 0)
  throw new Error(`--rooms: unknown; found ${unknown.join(', ')}; allowed ${ROOMS.join(', ')}`);

const files = execFileSync('git', ['ls-files', '-co', '--exclude-standard'], { cwd: ROOT, encoding: 'utf8' })
  .split('\n')
  .filter((file) => file !== '');

function copyTree(): string {
  const copy = mkdtempSync(join(tmpdir(), 'winterkeep-mutate-'));
  for (const file of files) {
    mkdirSync(dirname(join(copy, file)), { recursive: true });
    // A file that was deleted and not yet committed is listed and not there.
    cpSync(join(ROOT, file), join(copy, file), { force: true, recursive: false });
  }
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
  return copy;
}

const inRoom = (room: Room) => (file: string) =>
  room === 'tables'
    ? /^data\/(coefficients\/.*|prices\/.*|materials)\.?.*csv$/.test(file)
    : file.startsWith(`src/${room}/`) && file.endsWith('.ts');

/** The same sample for a seed and a tree: places are drawn, each at most once. */
function sampleOf(room: Room): Change[] {
  const dice = seeded(seed);
  const all = files.filter(inRoom(room)).flatMap((file) => {
    const text = readFileSync(join(ROOT, file), 'utf8');
    return room === 'tables' ? tableChangesOf(file, text) : changesOf(file, text);
  });
  return Array.from({ length: Math.min(count, all.length) }, () =>
    all.splice(Math.floor(dice() * all.length), 1),
  ).flat();
}

const tests = files.filter((file) => file.endsWith('.test.ts') && !NOT_ASKED.test(file));
const inPage = (file: string) => file.startsWith('tests/browser/');
const graph = new Graph(ROOT, tests);

/** Tests in the order they are asked: near ones, the copy of all figures, all others, and a page where it may show. */
function asked(room: Room, file: string): string[][] {
  // Tables are read from the disk by whoever reads them.
  const related = graph.of(room === 'tables' ? 'src/tables/load.ts' : file);
  const node = related.filter((test) => !inPage(test) && test !== SNAPSHOT);
  const near = room === 'tables' ? node.filter((test) => test === MEASURED) : node.slice(0, NEAREST);
  const page = SHOWN_IN_PAGE.includes(room) ? related.filter(inPage).slice(0, NEAREST_IN_PAGE) : [];
  return [
    near,
    related.filter((test) => test === SNAPSHOT),
    node.filter((test) => !near.includes(test)),
    page,
  ];
}

const log = (line: string) => values.log && appendFileSync(values.log, `${line}\n`);

/** Test files that fail without a fault, as they may on a busy machine: they cannot notice one. */
const failing = new Set<string>();

/** The first test that noticed: it fails with the fault in, and its file passes without. */
async function noticedBy(copy: string, room: Room, change: Change): Promise<string | undefined> {
  const at = join(copy, change.file);
  const before = readFileSync(at, 'utf8');
  for (const stage of asked(room, change.file)) {
    const project = stage.some(inPage) ? 'browser' : 'node';
    for (;;) {
      const left = stage.filter((test) => !failing.has(test));
      if (left.length === 0) break;
      writeFileSync(at, change.text);
      const found = await runTests(copy, left, project);
      writeFileSync(at, before);
      if (found === undefined) break;
      const [test] = found.split(' ');
      if ((await runTests(copy, [test], project)) === undefined) return found;
      failing.add(test);
      log(`left out, since it fails without a fault: ${found}`);
    }
  }
  return undefined;
}

const copy = copyTree();
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.on(signal, () => {
    rmSync(copy, { recursive: true, force: true });
    process.exit(1);
  });
try {
  for (const room of ROOMS.filter((each) => rooms.includes(each))) {
    const sample = sampleOf(room);
    let noticed = 0;
    let byCopy = 0;
    for (const change of sample) {
      const by = await noticedBy(copy, room, change);
      if (by !== undefined) noticed++;
      if (by?.startsWith(SNAPSHOT)) byCopy++;
      log(`${room} ${change.file}:${change.line} ${change.what}: ${by ?? 'NOT NOTICED'}`);
    }
    console.log(
      `mutate ${room}: ${sample.length} tried, ${noticed} noticed (${Math.round((100 * noticed) / sample.length)} %), ${byCopy} of them first by the copy of all figures, seed ${seed}, load ${loadavg()[0].toFixed(1)}`,
    );
  }
} finally {
  rmSync(copy, { recursive: true, force: true });
}
