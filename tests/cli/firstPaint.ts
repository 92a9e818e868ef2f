/** What the built page fetches before its first cards are painted, and after. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
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

/** What the page asks for around its first cards, opened at the first notebook. */
export async function filesAround(browser: Browser, built: Built): Promise<Seen> {
  // The service worker fetches everything for the barn, after the page has what it needs.
  const context = await browser.newContext({ serviceWorkers: 'block' });
  try {
    const page = await context.newPage();
    await page.addInitScript(WATCH);
    await page.goto(`${built.url}#example=hill-farm-choice`);
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

export const fileOf = (address: string) => new URL(address).pathname.slice(1);
/** Its name without the hash of its contents. */
export const nameOf = (file: string) => file.replace(/^assets\//, '').replace(/-[\w-]{8}\.js$/, '');

/** The scripts of the build among them, packed, the largest first. */
export const packedKb = ({ outDir }: Built, addresses: readonly string[]) =>
  addresses
    .map(fileOf)
    .filter((file) => /^assets.*\.js$/.test(file))
    .map((file) => ({ file: nameOf(file), kB: gzipSync(readFileSync(join(outDir, file))).length / 1000 }))
    .sort((a, b) => b.kB - a.kB);
