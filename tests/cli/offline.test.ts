import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../../src/cli/chromium.mjs';
import { type Built, builtPage } from './built.ts';

let built: Built;
let browser: Browser;

beforeAll(async () => {
  built = await builtPage();
  browser = await chromium.launch({
    executablePath: findChromium(),
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
}, 180_000);

afterAll(async () => {
  await browser?.close();
  await built?.remove();
});

describe('the built page', () => {
  it('names no host and runs no script but its own files', () => {
    const html = readFileSync(join(built.outDir, 'index.html'), 'utf8');
    expect(html).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>/);
    for (const file of ['index.html', 'sw.js', 'registerSW.js', 'manifest.webmanifest'])
      expect(readFileSync(join(built.outDir, file), 'utf8'), file).not.toMatch(/https?:\/\//);
    const { icons } = JSON.parse(readFileSync(join(built.outDir, 'manifest.webmanifest'), 'utf8'));
    for (const { src } of icons) expect(readdirSync(built.outDir)).toContain(src);
  });

  it('opens again, list and notebook and weather, once the server is gone', async () => {
    const page = await browser.newPage();
    const faults: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(message.text());
    });
    await page.goto(built.url);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
      // Ready says it is active; it serves this page from the next load on.
      if (!navigator.serviceWorker.controller)
        await new Promise((resume) => {
          navigator.serviceWorker.addEventListener('controllerchange', resume, { once: true });
        });
    });
    expect(faults).toEqual([]);
    await built.cut();
    await expect(fetch(built.url)).rejects.toThrow();

    await page.reload();
    await page.getByRole('heading', { name: 'How will the herd winter?' }).waitFor();
    const links = page.getByRole('listitem').getByRole('link');
    expect(await links.count()).toBeGreaterThan(2);
    // Nothing of a notebook, nor of its weather, was fetched before the server went.
    await links.first().click();
    await page
      .getByRole('button', { name: /^Nitrogen kept, / })
      .first()
      .waitFor({ timeout: 30_000 });
    await page
      .getByText(/of 100/)
      .first()
      .waitFor({ timeout: 30_000 });
    await page.close();
  }, 120_000);
});
