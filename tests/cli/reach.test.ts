/** The page for who sees it twice as large and for who has no pointer: nothing is cut, and all is done by keys. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { setInput } from '../../src/notebook/write.ts';
import { toLink } from '../../src/store/link.ts';
import { EXAMPLES } from '../browser/examples.ts';
import { inBrowser, quickPage } from './inBrowser.ts';

const PATIENCE = 180_000;
const held = inBrowser(PATIENCE);

/** A window of `width` px of which the browser shows half as many, each twice as large. */
async function zoomed(width: number, hash = ''): Promise<Page> {
  const page = await quickPage(held.browser, {
    viewport: { width: Math.round(width / 2), height: 400 },
    deviceScaleFactor: 2,
  });
  await page.goto(`${held.built.url}${hash}`);
  return page;
}

/** Words that stand beyond the window's edge where nothing scrolls to them, and how far the page scrolls sideways. */
const cutOff = (page: Page) =>
  page.evaluate(`(() => {
    const width = document.documentElement.clientWidth;
    const found = [];
    const look = (node, scrolls) => {
      if (node instanceof HTMLElement) {
        if (!node.checkVisibility({ opacityProperty: true, visibilityProperty: true })) return;
        const { overflowX, position, clipPath } = getComputedStyle(node);
        if (clipPath !== 'none' || (position === 'absolute' && node.clientWidth <= 1)) return;
        const own = [...node.childNodes].some((each) => each.nodeType === 3 && each.textContent.trim() !== '');
        const box = node.getBoundingClientRect();
        if (own && !scrolls && box.width > 0 && (box.right > width + 1 || box.left < -1))
          found.push(node.localName + ' “' + node.textContent.trim().slice(0, 40) + '” ' + Math.round(box.left) + ' to ' + Math.round(box.right));
        if (overflowX === 'hidden' && own && node.scrollWidth > node.clientWidth + 2 && getComputedStyle(node).textOverflow !== 'ellipsis')
          found.push(node.localName + ' cuts “' + node.textContent.trim().slice(0, 40) + '”');
        scrolls ||= overflowX === 'auto' || overflowX === 'scroll';
      }
      if (node instanceof SVGElement) return;
      for (const each of node.shadowRoot?.childNodes ?? []) look(each, scrolls);
      for (const each of node.childNodes) look(each, scrolls);
    };
    look(document.body, false);
    const over = document.documentElement.scrollWidth - width;
    return over > 0 ? [...found, 'scrolls ' + over + ' px sideways'] : found;
  })()`) as Promise<string[]>;

const settled = async (page: Page) => {
  await page.locator('wk-cards').first().waitFor();
  await page.locator('wk-notebook .cell').first().waitFor();
};

/** What is opened from a notebook, one after the other, each left before the next. */
const OVER: readonly (readonly [name: string, open: (page: Page) => Promise<void>])[] = [
  ['the notebook', settled],
  [
    'the inputs of the farm',
    async (page) => {
      await page.getByRole('button', { name: 'The farm', exact: true }).click();
      await page.getByRole('dialog').getByLabel('Find an input').waitFor();
    },
  ],
  [
    'a working',
    async (page) => {
      await page.locator('wk-cards button.number').first().click();
      await page.getByRole('dialog').first().waitFor();
    },
  ],
  [
    'earlier days',
    async (page) => {
      await page.getByRole('button', { name: 'Earlier days' }).click();
      await page
        .getByRole('dialog')
        .getByText(/None is kept yet/)
        .waitFor();
    },
  ],
  [
    'the text',
    async (page) => {
      await page.getByRole('button', { name: 'Edit the text' }).click();
      await page.getByRole('textbox', { name: /plain text/ }).waitFor();
    },
  ],
];

describe.each([640])('at 200 %% in a window of %i px', (width) => {
  const example = EXAMPLES[0];
  it(
    'the first screen and the first steps have nothing cut and scroll one way',
    async () => {
      const page = await zoomed(width);
      const begin = page.getByRole('link', { name: 'Start with my farm' });
      await begin.waitFor();
      expect(await cutOff(page)).toEqual([]);
      await begin.click();
      const next = page.getByRole('button', { name: 'Next' });
      await next.waitFor();
      for (let step = 1; step < 6; step++) {
        expect(await cutOff(page), `step ${step}`).toEqual([]);
        await next.click();
      }
      await page.getByRole('button', { name: 'Make my notebook' }).waitFor();
      expect(await cutOff(page), 'the last step').toEqual([]);
      await page.context().close();
    },
    PATIENCE,
  );
  it(
    'a notebook and all that opens over it have nothing cut and scroll one way',
    async () => {
      const page = await zoomed(width, `#example=${example.name}`);
      for (const [name, open] of OVER) {
        await open(page);
        expect(await cutOff(page), name).toEqual([]);
        await page.keyboard.press('Escape');
      }
      await page.context().close();
    },
    PATIENCE,
  );
  it(
    'a board that was sent has nothing cut and scrolls one way',
    async () => {
      const page = await zoomed(width, `#${toLink(setInput(example.text, 'view', 'board'))}`);
      await settled(page);
      await page
        .getByText(/^What differs from|Make it mine/)
        .first()
        .waitFor();
      expect(await cutOff(page)).toEqual([]);
      // What is beyond the edge would be found.
      await page.evaluate(
        `document.body.append(Object.assign(document.createElement('p'), { textContent: 'too far', style: 'width: 3000px' }))`,
      );
      expect((await cutOff(page)).join()).toMatch(/too far.*scrolls/);
      await page.context().close();
    },
    PATIENCE,
  );
});

/** What has the focus, through every shadow root: its role and what it is called. */
const focused = (page: Page) =>
  page.evaluate(`(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    if (!at || at === document.body) return '';
    const root = at.getRootNode();
    const by = (at.getAttribute('aria-labelledby') ?? '').split(' ').map((id) => id && root.getElementById?.(id)?.textContent).join(' ');
    const label = [...(at.labels ?? [])].map((each) => each.textContent).join(' ');
    return (at.getAttribute('aria-label') || by.trim() || label || at.textContent || '').replace(/\\s+/g, ' ').trim();
  })()`) as Promise<string>;

/** Presses Tab until what is called so has the focus. */
async function tabTo(page: Page, name: RegExp, most = 120): Promise<void> {
  const passed: string[] = [];
  for (let k = 0; k < most; k++) {
    await page.keyboard.press('Tab');
    const at = await focused(page);
    if (name.test(at)) return;
    passed.push(at);
  }
  throw new Error(`no ${name} within ${most} tabs: ${passed.join(' | ')}`);
}

describe('by keyboard alone', () => {
  it(
    'goes from the first screen to the printed page',
    async () => {
      const page = await quickPage(held.browser, { viewport: { width: 1280, height: 800 } });
      await page.addInitScript('window.prints = 0; window.print = () => { window.prints++; };');
      await page.goto(held.built.url);
      await page.getByRole('link', { name: 'Start with my farm' }).waitFor();
      await tabTo(page, /^Start with my farm/);
      await page.keyboard.press('Enter');
      await page.getByRole('button', { name: 'Next' }).waitFor();
      for (let step = 1; step < 6; step++) {
        await tabTo(page, /^Next$/);
        await page.keyboard.press('Enter');
      }
      await tabTo(page, /^Make my notebook$/);
      await page.keyboard.press('Enter');
      await settled(page);
      const cost = async () => (await page.locator('wk-answer p').allTextContents()).join(' ');
      const before = await cost();
      // An input in the strip, by its arrows.
      await tabTo(page, /^(Head|Animals|Cattle|Herd)/i);
      for (let k = 0; k < 4; k++) await page.keyboard.press('ArrowRight');
      await expect.poll(cost, { timeout: 30_000 }).not.toBe(before);
      // An input of the farm, found by its name, changed, and the panel left.
      await page.reload();
      await settled(page);
      await tabTo(page, /^The farm$/);
      await page.keyboard.press('Enter');
      const dialog = page.getByRole('dialog');
      await dialog.getByLabel('Find an input').waitFor();
      await tabTo(page, /^Find an input/);
      await page.keyboard.type('worth of an own hour');
      await tabTo(page, /hour/i);
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type('31');
      await page.keyboard.press('Enter');
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: /^Undo/ }).first().waitFor();
      // And printed, with every slow figure in it.
      await page.reload();
      await settled(page);
      await tabTo(page, /^Print$/);
      await page.keyboard.press('Enter');
      await expect.poll(() => page.evaluate('window.prints'), { timeout: PATIENCE }).toBe(1);
      await page.close();
    },
    PATIENCE,
  );
});
