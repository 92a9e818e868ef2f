/** Contents, board, dark colours, full screen, and what takes figures along: each where it is used. */
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import { startEngine } from '../../src/app/engine.ts';
import { FEW_DRAWS } from './examples.ts';
import '../../src/elements/page/below.ts';
import '../../src/elements/page/wk-page.ts';
import type { WkPage } from '../../src/elements/page/wk-page.ts';
import { type Engine, type OpenNotebook, openNotebook } from '../openNotebook.ts';
import { colours, faults } from './look.ts';

const SOON = { timeout: 15_000 };
let engine: Engine;
let open: OpenNotebook | undefined;

beforeAll(() => {
  engine = startEngine();
});

afterEach(async () => {
  open?.close();
  document.body.replaceChildren();
  await colours('light');
});

async function show(width: number, height = 800, change = (text: string) => text): Promise<WkPage> {
  await page.viewport(width, height);
  const example = FEW_DRAWS.find(({ name }) => name === 'hill-farm-choice');
  open = openNotebook(change(example?.text ?? ''), 'views.md', engine);
  const element = document.createElement('wk-page');
  element.open = open;
  document.body.append(element);
  await expect.element(page.getByRole('heading', { level: 1 }), SOON).toBeVisible();
  await expect
    .poll(() => element.shadowRoot?.querySelector('wk-notebook')?.shadowRoot?.querySelector('.cell'), SOON)
    .toBeTruthy();
  return element;
}

const inPage = (element: WkPage, what: string) => element.shadowRoot?.querySelector<HTMLElement>(what);
const figureIn = (element: WkPage) => {
  const ledger = inPage(element, 'wk-notebook')?.shadowRoot?.querySelector<HTMLElement>('wk-ledger');
  ledger?.scrollIntoView();
  return ledger?.shadowRoot?.querySelector('wk-figure')?.shadowRoot;
};

describe('contents', () => {
  it('lead to their place, which then has the focus, and mark where the reader is', async () => {
    const element = await show(1280);
    const contents = inPage(element, 'wk-contents');
    expect(contents?.getBoundingClientRect().width).toBeGreaterThan(100);
    const line = page
      .getByRole('navigation', { name: 'Contents' })
      .getByRole('button', { name: 'How sure', exact: true });
    await userEvent.click(line);
    const target = inPage(element, 'wk-notebook')?.shadowRoot?.activeElement;
    expect(target?.textContent).toContain('How sure');
    await expect
      .poll(() => target?.getBoundingClientRect().top ?? Number.NaN, SOON)
      .toBeLessThan(innerHeight / 2);
    await expect
      .poll(() => contents?.shadowRoot?.querySelectorAll('[aria-current=location]').length, SOON)
      .toBe(1);
  });

  it('leave a phone its width', async () => {
    const element = await show(390, 844);
    expect(inPage(element, 'wk-contents')?.getBoundingClientRect().width ?? 0).toBe(0);
  });
});

describe('the board', () => {
  it('is written into the text, shows cards and figures without prose, and gives the words back', async () => {
    const element = await show(1600);
    await userEvent.click(page.getByRole('button', { name: 'Show as a board' }));
    await expect.poll(() => open?.text.value, SOON).toMatch(/^view: board$/m);
    const inside = () => inPage(element, 'wk-notebook')?.shadowRoot;
    await expect.poll(() => inside()?.querySelector('.board'), SOON).toBeTruthy();
    expect(inside()?.querySelector('.prose')).toBeNull();
    const cells = [...(inside()?.querySelectorAll('.board > .cell') ?? [])];
    expect(cells.length).toBeGreaterThan(3);
    const [first, second] = cells.map((cell) => cell.getBoundingClientRect());
    expect(Math.round(first.top)).toBe(Math.round(second.top));
    expect(second.left).toBeGreaterThan(first.right - 1);
    await userEvent.click(page.getByRole('button', { name: 'Show the words again' }));
    await expect.poll(() => inside()?.querySelector('.prose'), SOON).toBeTruthy();
  });
});

describe('dark colours', () => {
  it.each([390, 1280])('have no fault that axe finds at %i px, with the lists open', async (width) => {
    await colours('dark');
    const element = await show(width, 844);
    await userEvent.click(page.getByText('Take the figures along'));
    expect(getComputedStyle(document.documentElement).getPropertyValue('--paper').trim()).toBe('#141411');
    await expect.poll(() => figureIn(element)?.querySelector('.drawing svg'), SOON).toBeTruthy();
    figureIn(element)?.querySelector('wk-take')?.shadowRoot?.querySelector<HTMLElement>('button')?.click();
    await new Promise((resume) => requestAnimationFrame(resume));
    expect(await faults()).toEqual([]);
  });
});

describe('light colours', () => {
  it.each([390, 1280])('have no fault that axe finds at %i px, with the lists open', async (width) => {
    const element = await show(width, 844);
    await userEvent.click(page.getByText('Take the figures along'));
    await expect.poll(() => figureIn(element)?.querySelector('.drawing svg'), SOON).toBeTruthy();
    figureIn(element)?.querySelector('wk-take')?.shadowRoot?.querySelector<HTMLElement>('button')?.click();
    await new Promise((resume) => requestAnimationFrame(resume));
    expect(await faults()).toEqual([]);
  });
});

describe('a figure over the whole window', () => {
  it('is drawn there, closes by Esc and gives the focus back', async () => {
    const element = await show(1280);
    await expect.poll(() => figureIn(element)?.querySelector('.drawing svg'), SOON).toBeTruthy();
    const root = figureIn(element);
    root?.querySelector<HTMLElement>('button.full')?.click();
    await expect.poll(() => root?.querySelector('dialog[open] .drawing svg'), SOON).toBeTruthy();
    const box = root?.querySelector('dialog')?.getBoundingClientRect();
    expect(box?.width).toBeGreaterThan(innerWidth - 20);
    expect(root?.querySelector('dialog .finding')?.textContent).toBe(
      root?.querySelector('figure > .finding')?.textContent,
    );
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => root?.querySelector('dialog'), SOON).toBeNull();
    await expect.poll(() => root?.activeElement?.className, SOON).toContain('full');
  });
});

describe('printing', () => {
  it('says how far it is, prints once nothing is missing, and not when stopped', async () => {
    const element = await show(1280);
    const before = window.print;
    let printed = 0;
    let missing = -1;
    window.print = () => {
      printed++;
      missing = open?.explorer?.waiting.value ?? -1;
    };
    try {
      element.printWhole();
      await expect.element(page.getByRole('button', { name: 'Do not print' }), SOON).toBeVisible();
      await userEvent.click(page.getByRole('button', { name: 'Do not print' }));
      await expect
        .poll(() => inPage(element, 'wk-print')?.shadowRoot?.querySelector('.bar'), SOON)
        .toBeNull();
      expect(printed).toBe(0);
      element.printWhole();
      await expect.poll(() => printed, { timeout: 50_000 }).toBe(1);
      expect(missing).toBe(0);
    } finally {
      window.print = before;
    }
  });
});
