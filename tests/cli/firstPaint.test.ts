// What is fetched before the first cards are painted, by the page as it is built: each file, packed, and all together.
import { describe, expect, it } from 'vitest';
import { fileOf, filesAround, nameOf, packedKb, type Way } from './firstPaint.ts';
import { inBrowser } from './inBrowser.ts';

/**
 * At most so much, kB of gzip, whatever its kind: page, style and script. What has been reached, and a kilobyte or
 * two. A text that was not read ahead brings along what reads it, and a link what unfolds it.
 */
const BUDGETS_KB: readonly (readonly [Way, number])[] = [
  ['example', 199],
  ['kept', 193],
  ['link', 365],
];
/** Parts that the first cards can do without: figures, editor, form, first steps, earlier days, words of tables, workers. */
const LATER = ['below', 'wk-text', 'wk-panel', 'begin', 'earlierDays', 'engine', 'worker'];

const held = inBrowser(240_000);

describe('before the first cards are painted', { timeout: 240_000 }, () => {
  it.each(BUDGETS_KB)('no more is fetched than the budget: %s, %i kB', async (way, mostKb) => {
    const { before, after } = await filesAround(held.browser, held.built, way);
    const sizes = packedKb(held.built, before);
    const sum = sizes.reduce((kB, one) => kB + one.kB, 0);
    const list = sizes.map(({ file, kB }) => `${kB.toFixed(1).padStart(7)} ${file}`).join('\n');
    console.log(`${way}: ${sum.toFixed(1)} kB before the first cards; at most ${mostKb}\n${list}`);
    expect(sizes.filter(({ file }) => LATER.includes(file))).toEqual([]);
    expect(sum, list).toBeLessThanOrEqual(mostKb);
    // The worker, the figures and what draws them come afterwards: the list above is not short for having missed them.
    expect(after.map(fileOf).map(nameOf)).toEqual(expect.arrayContaining(['below', 'engine', 'worker']));
  });
});
