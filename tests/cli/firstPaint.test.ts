// What is fetched before the first cards are painted, by the page as it is built: each file, packed, and all together.
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../../src/cli/chromium.mjs';
import { type Built, builtPage } from './built.ts';
import { fileOf, filesAround, nameOf, packedKb } from './firstPaint.ts';

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

describe('before the first cards are painted', { timeout: 240_000 }, () => {
  it('no more is fetched than the budget, and nothing that the cards can do without', async () => {
    const { before, after } = await filesAround(browser, built);
    const sizes = packedKb(built, before);
    const sum = sizes.reduce((kB, one) => kB + one.kB, 0);
    const list = sizes.map(({ file, kB }) => `${kB.toFixed(1).padStart(7)} ${file}`).join('\n');
    console.log(`${sum.toFixed(1)} kB before the first cards; aim ${AIM_KB}\n${list}`);
    expect(sizes.map(({ file }) => file).sort()).toEqual(BEFORE_CARDS);
    expect(sum, list).toBeLessThanOrEqual(BUDGET_KB);
    // The worker, the figures and what draws them come afterwards: the list above is not short for having missed them.
    expect(after.map(fileOf).map(nameOf)).toEqual(expect.arrayContaining(['below', 'worker']));
  });
});
