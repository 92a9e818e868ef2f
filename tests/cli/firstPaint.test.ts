// What is fetched before the first cards are painted, by the page as it is built: each file, packed, and all together.
import { describe, expect, it } from 'vitest';
import { fileOf, filesAround, nameOf, packedKb } from './firstPaint.ts';
import { inBrowser } from './inBrowser.ts';

/** Where we want to come to, kB of gzip. */
const AIM_KB = 200;
/** What has been reached, and a kilobyte or two; more than this fails. */
const BUDGET_KB = 476;
/** Parts that the first cards can do without: figures, editor, form, first steps, earlier days, workers. */
const LATER = ['below', 'wk-text', 'wk-panel', 'begin', 'earlierDays', 'worker'];

const held = inBrowser(240_000);

describe('before the first cards are painted', { timeout: 240_000 }, () => {
  it('no more is fetched than the budget, and nothing that the cards can do without', async () => {
    const { before, after } = await filesAround(held.browser, held.built);
    const sizes = packedKb(held.built, before);
    const sum = sizes.reduce((kB, one) => kB + one.kB, 0);
    const list = sizes.map(({ file, kB }) => `${kB.toFixed(1).padStart(7)} ${file}`).join('\n');
    console.log(`${sum.toFixed(1)} kB before the first cards; aim ${AIM_KB}\n${list}`);
    expect(sizes.filter(({ file }) => LATER.includes(file))).toEqual([]);
    expect(sum, list).toBeLessThanOrEqual(BUDGET_KB);
    // The worker, the figures and what draws them come afterwards: the list above is not short for having missed them.
    expect(after.map(fileOf).map(nameOf)).toEqual(expect.arrayContaining(['below', 'worker']));
  });
});
