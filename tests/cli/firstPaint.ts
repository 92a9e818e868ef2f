/** What the built page fetches before its first cards are painted, and after. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { toLink } from '../../src/store/link.ts';
import type { Built } from './built.ts';

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

/** How a notebook is come by: one that is shipped, one of this browser's own, or a link somebody sent. */
export type Way = 'example' | 'kept' | 'link';

const EXAMPLE = '#example=hill-farm-choice';
const text = readFileSync(
  fileURLToPath(new URL('../../notebooks/hill-farm-choice.md', import.meta.url)),
  'utf8',
);

/** What the page asks for around its first cards. */
export async function filesAround(browser: Browser, { url }: Built, way: Way): Promise<Seen> {
  // The service worker fetches everything for the barn, after the page has what it needs.
  const context = await browser.newContext({ serviceWorkers: 'block' });
  try {
    const hash = way === 'kept' ? await keepOne(context, url) : way === 'link' ? `#${toLink(text)}` : EXAMPLE;
    const page = await context.newPage();
    await page.addInitScript(WATCH);
    await page.goto(`${url}${hash}`);
    await ranged(page);
    return (await page.evaluate(`(() => {
      const all = performance.getEntriesByType('resource');
      const names = (early) => all.filter((e) => e.startTime <= window.cardsPaintedAt === early).map((e) => e.name);
      return { before: [location.origin + '/index.html', ...names(true)], after: names(false) };
    })()`)) as Seen;
  } finally {
    await context.close();
  }
}

/** Ranges come from the workers, after all else. */
const ranged = (page: Page) =>
  page
    .getByText(/of 100/)
    .first()
    .waitFor({ timeout: 120_000 });

/** Whether the browser's database holds a reading of a kept notebook. */
const AHEAD_KEPT = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('winterkeep');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const keys = opening.result.transaction('notebooks').objectStore('notebooks').getAllKeys();
    keys.onsuccess = () => {
      opening.result.close();
      resolve(keys.result.some((key) => String(key).startsWith('ahead:')));
    };
  };
})`;

/** Changes an example, which makes a copy of it, and gives the address of that. */
async function keepOne(context: BrowserContext, url: string): Promise<string> {
  const page = await context.newPage();
  await page.goto(`${url}${EXAMPLE}`);
  await ranged(page);
  const rain = page
    .getByRole('textbox', { name: /^Rain/ })
    .or(page.getByRole('spinbutton', { name: /^Rain/ }));
  await rain.first().fill('1.1');
  await rain.first().press('Enter');
  await page.waitForURL(/#kept=/);
  await page.getByText('kept in this browser').first().waitFor();
  // It is read ahead for the next time once it has stood still.
  for (let tries = 0; !(await page.evaluate(AHEAD_KEPT)); tries++) {
    if (tries > 100) throw new Error('the kept notebook was not read ahead within 30 s');
    await page.waitForTimeout(300);
  }
  const { hash } = new URL(page.url());
  await page.close();
  return hash;
}

export const fileOf = (address: string) => new URL(address).pathname.slice(1);
/** Its name without the hash of its contents. */
export const nameOf = (file: string) => file.replace(/^assets\//, '').replace(/-[\w-]{8}\.js$/, '');

/** Files of the build, packed, the largest first. */
export const packedKb = ({ outDir }: Built, addresses: readonly string[]) =>
  addresses
    .map(fileOf)
    .map((file) => ({ file: nameOf(file), kB: gzipSync(readFileSync(join(outDir, file))).length / 1000 }))
    .sort((a, b) => b.kB - a.kB);
