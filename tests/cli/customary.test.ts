/** The built page with United States units on: no metric number is left on it, but in prose, in the text and in sources. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { inBrowser, quickPage } from './inBrowser.ts';
import { NOTEBOOKS } from './run.ts';

const PATIENCE = 180_000;
const held = inBrowser(PATIENCE);

/** Every figure drawn, every fold open. */
async function whole(file: string): Promise<Page> {
  const page = await quickPage(held.browser, { viewport: { width: 1280, height: 900 } });
  await page.addInitScript(() => {
    window.print = () => {
      dispatchEvent(new Event('beforeprint'));
      document.documentElement.dataset.printed = 'yes';
    };
  });
  await page.goto(`${held.built.url}#example=${file.replace(/^.*\/|\.md$/g, '')}`);
  await page.getByRole('button', { name: 'US units' }).click();
  await page.getByRole('button', { name: 'Print', exact: true }).click();
  await page.locator('html[data-printed]').waitFor({ state: 'attached', timeout: PATIENCE });
  return page;
}

/** Words and labels that name a metric unit, with where they stand. Milligrams of nitrate in a litre are said so anywhere. */
const metricIn = (page: Page, of: string) =>
  page.evaluate((selector) => {
    const METRIC =
      /(?:^|[\d\s,(/×–\u00a0\u202f])(?:kg|t|m|mm|cm|m²|m³|ha|L|kN|kNm|km|tonnes?|metres?|hectares?|litres?|kilograms?|°C)(?![\p{L}\d²³’…])/u;
    const found: string[] = [];
    const look = (root: ParentNode, at: string) => {
      for (const each of root.querySelectorAll('*')) {
        if (
          each.closest('.prose, style, script, title') ||
          (at === 'wk-checks' && each.localName === 'small') ||
          each.localName === 'wk-sources'
        )
          continue;
        if (each.shadowRoot) look(each.shadowRoot, each.localName);
        const said = [...each.childNodes].filter(({ nodeType }) => nodeType === Node.TEXT_NODE);
        const texts = [said.map(({ textContent }) => textContent).join(' ')];
        for (const name of ['aria-valuetext', 'placeholder', 'aria-label'])
          if (!/^Change the words/.test(each.getAttribute('aria-label') ?? ''))
            texts.push(each.getAttribute(name) ?? '');
        for (const text of texts)
          if (METRIC.test(text.replace(/of nitrate in a litre|mg\/L/g, '')))
            found.push(`${at} ${each.localName}: ${text.trim()}`);
      }
    };
    const start =
      selector === ''
        ? document
        : document
            .querySelector('wk-shell')
            ?.shadowRoot?.querySelector('wk-page')
            ?.shadowRoot?.querySelector(selector)?.shadowRoot;
    if (!start) throw new Error(`nothing is ${selector}`);
    look(start, selector);
    return [...new Set(found)];
  }, of);

// The two that differ most: a shed and a loan in dollars, a wet paddock and figures of rain.
describe.each(NOTEBOOKS.filter((file) => /coast|atlantic/.test(file)))(
  '%s in United States units',
  (file) => {
    it(
      'leaves no metric number on the page, in its panel or its workings',
      async () => {
        const page = await whole(file);
        expect(await metricIn(page, '')).toEqual([]);
        await page
          .getByRole('group', { name: 'Change inputs' })
          .getByRole('button', { name: 'The farm' })
          .click();
        await page.getByRole('dialog').waitFor();
        expect(await metricIn(page, 'wk-panel')).toEqual([]);
        await page.getByRole('dialog').getByRole('button', { name: 'Close' }).first().click();
        await page
          .getByRole('button', { name: /^Nitrogen kept, / })
          .first()
          .click();
        await page.getByRole('dialog').waitFor();
        expect(await metricIn(page, 'wk-trace')).toEqual([]);
        await page.close();
      },
      PATIENCE,
    );
  },
);

describe('the strip in United States units', () => {
  it(
    'reads and writes the same straw price as in metric ones',
    async () => {
      const page = await quickPage(held.browser, { viewport: { width: 1280, height: 900 } });
      await page.goto(`${held.built.url}#example=hill-farm-choice`);
      const straw = page.getByRole('spinbutton', { name: /^Straw, / });
      await straw.fill('100');
      await straw.press('Enter');
      await page.getByRole('button', { name: 'US units' }).click();
      await page.getByRole('spinbutton', { name: 'Straw, EUR a short ton, typed' }).waitFor();
      // A short ton is 0.907 184 74 t.
      expect(await straw.inputValue()).toBe('90.7');
      await straw.fill('181.437');
      await straw.press('Enter');
      await page.getByRole('button', { name: 'Metric units' }).click();
      await page.getByRole('spinbutton', { name: 'Straw, EUR a tonne, typed' }).waitFor();
      expect(await straw.inputValue()).toBe('200');
      await page.close();
    },
    PATIENCE,
  );
});
