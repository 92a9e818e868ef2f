// What is fetched before the first cards are painted, by the page as it is built: each file, packed, and all together.
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../../src/cli/chromium.mjs';
import { type Built, builtPage } from './built.ts';
import { fileOf, filesAround, nameOf, packedKb } from './firstPaint.ts';

/** Where we want to come to, kB of gzip. */
const AIM_KB = 200;
/** What has been reached, to the next ten; more than this fails. */
const BUDGET_KB = 476;
/** Parts that the first cards can do without: figures, editor, form, first steps, earlier days, workers. */
const LATER = ['below', 'wk-text', 'wk-panel', 'begin', 'earlierDays', 'worker'];

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
    expect(sizes.filter(({ file }) => LATER.includes(file))).toEqual([]);
    expect(sum, list).toBeLessThanOrEqual(BUDGET_KB);
    // The worker, the figures and what draws them come afterwards: the list above is not short for having missed them.
    expect(after.map(fileOf).map(nameOf)).toEqual(expect.arrayContaining(['below', 'worker']));
  });
});
