import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inBrowser } from './inBrowser.ts';

const held = inBrowser(180_000);

describe('the built page', () => {
  it('names no host and runs no script but its own files', () => {
    const html = readFileSync(join(held.built.outDir, 'index.html'), 'utf8');
    expect(html).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>/);
    for (const file of ['index.html', 'sw.js', 'registerSW.js', 'manifest.webmanifest'])
      expect(readFileSync(join(held.built.outDir, file), 'utf8'), file).not.toMatch(/https?:\/\//);
    const { icons } = JSON.parse(readFileSync(join(held.built.outDir, 'manifest.webmanifest'), 'utf8'));
    for (const { src } of icons) expect(readdirSync(held.built.outDir)).toContain(src);
  });

  it('fetches the text editor when the text is opened, and draws it under the page’s own policy', async () => {
    const page = await held.browser.newPage();
    const faults: string[] = [];
    const fetched: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(message.text());
    });
    page.on('request', (request) => fetched.push(request.url()));
    await page.goto(`${held.built.url}#example=hill-farm-choice`);
    await page
      .getByRole('button', { name: /^Nitrogen kept, / })
      .first()
      .waitFor({ timeout: 30_000 });
    const editors = () => fetched.filter((url) => /wk-text-[\w-]+\.js$/.test(url)).length;
    // The service worker keeps all files; what the page itself asks for is counted.
    expect(await page.evaluate(() => document.querySelectorAll('link[href*="wk-text"]').length)).toBe(0);
    const before = editors();
    await page.getByRole('button', { name: 'Edit the text' }).click();
    const area = page.getByRole('textbox', { name: /plain text/ });
    await area.waitFor();
    expect(editors()).toBeGreaterThan(before);
    const styles = await area.evaluate((element) => {
      const gutter = (element.getRootNode() as ShadowRoot).querySelector('.cm-gutters') as HTMLElement;
      return [getComputedStyle(element).whiteSpace, getComputedStyle(gutter).display];
    });
    expect(styles).toEqual(['break-spaces', 'flex']);
    expect(faults).toEqual([]);
    await page.close();
  }, 60_000);

  it('opens again, list and notebook and weather, once the server is gone', async () => {
    const page = await held.browser.newPage();
    const faults: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(message.text());
    });
    await page.goto(held.built.url);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
      // Ready says it is active; it serves this page from the next load on.
      if (!navigator.serviceWorker.controller)
        await new Promise((resume) => {
          navigator.serviceWorker.addEventListener('controllerchange', resume, { once: true });
        });
    });
    expect(faults).toEqual([]);
    await held.built.cut();
    await expect(fetch(held.built.url)).rejects.toThrow();

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
