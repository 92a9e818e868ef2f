/**
 * Kills the browser at random while a notebook is edited, opens it again, and counts what was lost and how old it was.
 * `npm run torture -- --seed 1 --count 60`; `--load 2` adds that many busy processes. One line out.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { readNotebook } from '../../src/notebook/read.ts';
import { seeded } from '../seeded.ts';
import { launch, serve } from './browser.ts';
import { type Sent, WAYS } from './ways.ts';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    count: { type: 'string', default: '60' },
    load: { type: 'string', default: '0' },
  },
});
const [seed, count, load] = [values.seed, values.count, values.load].map(Number);
if (![seed, count, load].every((n) => Number.isInteger(n) && n >= 0))
  throw new Error('--seed, --count and --load are whole numbers');

interface Kill {
  readonly way: string;
  readonly sent: number;
  readonly lost: number;
  /** Of these, what the page had taken in. */
  readonly lostReached: number;
  /** Age of the oldest edit that was lost, at the moment of the kill. */
  readonly oldestMs: number;
}

const textIn = async (page: Page): Promise<string> => {
  await page.getByRole('slider', { name: /^Animals/ }).waitFor({ timeout: 60_000 });
  return page.evaluate(() => document.querySelector('wk-shell')?.open?.text.value ?? '');
};

/** Edits of the text that was found; undefined where it is none of the states the text went through. */
function arrived(way: string, before: string, found: string, { what }: Sent): number | undefined {
  if (found === before) return 0;
  if (way === 'slider') {
    const { notebook } = readNotebook(found, 'found.md');
    const head = notebook?.farm.herd.reduce((sum, group) => sum + group.head, 0);
    const at = what.lastIndexOf(String(head));
    return at < 0 ? undefined : at + 1;
  }
  const typed = found.slice(before.length);
  return found.startsWith(before) && what.join('').startsWith(typed) ? typed.length : undefined;
}

async function run(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'winterkeep-torture-'));
  const busy: ChildProcess[] = Array.from({ length: load }, () =>
    spawn(process.execPath, ['-e', 'for (;;) Math.sqrt(2)'], { stdio: 'ignore' }),
  );
  try {
    const dist = join(folder, 'dist');
    await build({ logLevel: 'error', build: { outDir: dist } });
    const { url, server } = await serve(dist);
    const kills = await torture(join(folder, 'profile'), url);
    server.close();
    console.log(summary(kills));
    if (kills.some(({ lost, oldestMs }) => !Number.isFinite(lost) || oldestMs > 1000)) process.exitCode = 1;
  } finally {
    for (const child of busy) child.kill('SIGKILL');
    await rm(folder, { recursive: true, force: true });
  }
}

async function torture(profile: string, url: string): Promise<Kill[]> {
  const random = seeded(seed);
  const kills: Kill[] = [];
  let { page, kill } = await launch(profile, `${url}#example=hill-farm-choice`);
  await textIn(page);
  // One edit gives the notebook its place on the shelf.
  await WAYS[0].edit(page, random, { at: [], what: [], reached: 0 }, stopAfter(1));
  await page.waitForURL(/#kept=/);
  const address = page.url();
  for (let k = 0; k < count; k++) {
    const way = WAYS[k % WAYS.length];
    const before = await textIn(page);
    const sent: Sent = { at: [], what: [], reached: 0 };
    let dead = false;
    const editing = way.edit(page, random, sent, () => dead).catch(() => {});
    while (sent.at.length === 0) await new Promise((resolve) => setTimeout(resolve, 20));
    await new Promise((resolve) => setTimeout(resolve, random() * 5000));
    dead = true;
    const at = Date.now();
    const { reached } = sent;
    await kill();
    await editing;
    ({ page, kill } = await launch(profile, address));
    const found = arrived(way.name, before, await textIn(page), sent);
    const lost = found === undefined ? Number.NaN : sent.at.length - found;
    const oldestMs = lost > 0 ? at - sent.at[sent.at.length - lost] : 0;
    const lostReached = Math.max(0, reached - (found ?? 0));
    kills.push({ way: way.name, sent: sent.at.length, lost, lostReached, oldestMs });
    if (process.env.TORTURE_TALK) console.error(k, kills.at(-1));
  }
  await kill();
  return kills;
}

function stopAfter(edits: number): () => boolean {
  let asked = 0;
  return () => asked++ >= edits;
}

function summary(kills: readonly Kill[]): string {
  const broken = kills.filter(({ lost }) => Number.isNaN(lost)).length;
  const ways = WAYS.map(({ name }) => {
    const of = kills.filter(({ way }) => way === name);
    const ages = of.map(({ oldestMs }) => oldestMs).sort((a, b) => a - b);
    const at = (share: number) => ages[Math.min(ages.length - 1, Math.floor(share * ages.length))] ?? 0;
    const most = Math.max(0, ...of.map(({ lost }) => lost || 0));
    return `${name}: ${of.filter(({ lost }) => lost === 0).length} of ${of.length} lost nothing, oldest lost edit ${at(0.5)} ms in the middle, ${at(1)} ms at worst, at most ${most} edits`;
  });
  const reached = kills.filter(({ lostReached }) => lostReached > 0).length;
  const older = kills.filter(({ oldestMs }) => oldestMs > 1000).length;
  return `torture seed ${seed}: ${kills.length} kills, ${older} lost anything older than a second, ${reached} lost an edit the page had taken in, ${broken} found a text that never was; ${ways.join('; ')}; load ${loadavg()[0].toFixed(1)}, ${load} busy processes added`;
}

await run();
