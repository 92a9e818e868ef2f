/** The built page and a browser for a file of tests: there before the first of them, gone after the last. */
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, inject } from 'vitest';
import { CHROMIUM_ARGS, findChromium } from '../../src/cli/chromium.mjs';
import { type Built, sharedPage } from './built.ts';

/** Filled before the first test; `patienceMs` is how long that may take. */
export function inBrowser(patienceMs: number): { readonly built: Built; readonly browser: Browser } {
  const held = {} as { built: Built; browser: Browser };
  beforeAll(async () => {
    held.built = await sharedPage(inject('sharedBuild'));
    held.browser = await chromium.launch({ executablePath: findChromium(), args: CHROMIUM_ARGS });
  }, patienceMs);
  afterAll(async () => {
    await held.browser?.close();
    await held.built?.remove();
  });
  return held;
}
