/** The built page and a browser for a file of tests: there before the first of them, gone after the last. */
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, inject } from 'vitest';
import { findChromium, TEST_CHROMIUM_ARGS } from '../../src/cli/chromium.mjs';
import { fewDraws } from '../fewDraws.ts';
import { type Built, sharedPage } from './built.ts';

/** Filled before the first test; `patienceMs` is how long that may take. */
export function inBrowser(patienceMs: number): { readonly built: Built; readonly browser: Browser } {
  const held = {} as { built: Built; browser: Browser };
  beforeAll(async () => {
    held.built = await sharedPage(inject('sharedBuild'));
    held.browser = await chromium.launch({ executablePath: findChromium(), args: TEST_CHROMIUM_ARGS });
  }, patienceMs);
  afterAll(async () => {
    await held.browser?.close();
    await held.built?.remove();
  });
  return held;
}

const EXAMPLE = /\/assets\/(atlantic-rain|coast-lender|hill-farm)-[^/]*\.js$/;

/**
 * A page of its own, without the worker that keeps the page for later, and with few draws: each takes seconds of the
 * machine's time, and neither is what is tried.
 */
export async function quickPage(browser: Browser, options: BrowserContextOptions = {}): Promise<Page> {
  const page = await browser.newPage({ serviceWorkers: 'block', ...options });
  await page.route(EXAMPLE, async (route) => {
    const response = await route.fetch();
    const text = await response.text();
    const body = fewDraws(text);
    if (body === text) throw new Error(`no notebook in ${route.request().url()}`);
    await route.fulfill({ response, body });
  });
  return page;
}
