// What is fetched before the first cards are painted, by the page as it is built: each file, packed, and all together.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../../src/cli/chromium.mjs';
import { type Built, builtPage } from './built.ts';

/** Where we want to come to, kB of gzip. */
const AIM_KB = 200;
/** What has been reached; more than this fails. */
const BUDGET_KB = 456;
/** Scripts that may come before the cards; any other one fails, whatever its size. */
const BEFORE_CARDS = [
  'balticHills',
  'format',
  'frontMatter',
  'index',
  'inputWords',
  'measures',
  'notebookPage',
  'reading',
  'rolldown-runtime',
  'rows',
  'turn',
  'weather',
];

let built: Built;
let browser: Browser;
beforeAll(async () => {
  built = await builtPage();
  browser = await chromium.launch({
    executablePath: findChromium(),
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await built?.remove();
});

interface Seen {
  /** Addresses that were asked for before the cards were painted, and after. */
  readonly before: readonly string[];
  readonly after: readonly string[];
}

/** Watches from the first moment for the frame after which cards stand on the page. */
const WATCH = `(() => {
  const deep = (root, tag) => {
    for (const each of root.querySelectorAll('*')) {
      const found = each.localName === tag ? each : each.shadowRoot && deep(each.shadowRoot, tag);
      if (found) return found;
    }
  };
  const look = () => {
    const grid = deep(document, 'wk-cards')?.shadowRoot?.querySelector('.grid');
    // They are painted at the end of this frame.
    if (grid && /\\d/.test(grid.textContent)) window.cardsPaintedAt = performance.now();
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
})()`;

async function filesOf(address: string): Promise<Seen> {
  // The service worker fetches everything for the barn, after the page has what it needs.
  const context = await browser.newContext({ serviceWorkers: 'block' });
  try {
    const page = await context.newPage();
    await page.addInitScript(WATCH);
    await page.goto(`${built.url}${address}`);
    await page
      .getByText(/of 100/)
      .first()
      .waitFor({ timeout: 120_000 });
    return (await page.evaluate(`(() => {
      const all = performance.getEntriesByType('resource');
      const names = (early) => all.filter((e) => e.startTime <= window.cardsPaintedAt === early).map((e) => e.name);
      return { before: names(true), after: names(false) };
    })()`)) as Seen;
  } finally {
    await context.close();
  }
}

const fileOf = (address: string) => new URL(address).pathname.slice(1);
/** Its name without the hash of its contents. */
const nameOf = (file: string) => file.replace(/^assets\//, '').replace(/-[\w-]{8}\.js$/, '');

describe('before the first cards are painted', { timeout: 240_000 }, () => {
  it('no more is fetched than the budget, and nothing that the cards can do without', async () => {
    const { before, after } = await filesOf('#example=hill-farm-choice');
    const scripts = before.map(fileOf).filter((file) => /^assets.*\.js$/.test(file));
    const sizes = scripts
      .map((file) => ({
        file: nameOf(file),
        kB: gzipSync(readFileSync(join(built.outDir, file))).length / 1000,
      }))
      .sort((a, b) => b.kB - a.kB);
    const sum = sizes.reduce((kB, one) => kB + one.kB, 0);
    const list = sizes.map(({ file, kB }) => `${kB.toFixed(1).padStart(7)} ${file}`).join('\n');
    console.log(`${sum.toFixed(1)} kB before the first cards; aim ${AIM_KB}\n${list}`);
    expect(sizes.map(({ file }) => file).sort()).toEqual(BEFORE_CARDS);
    expect(sum, list).toBeLessThanOrEqual(BUDGET_KB);
    // The worker, the figures and what draws them come afterwards: the list above is not short for having missed them.
    expect(after.map(fileOf).map(nameOf)).toEqual(expect.arrayContaining(['below', 'worker']));
  });
});
