import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import { startEngine } from '../../src/app/engine.ts';
import { FEW_DRAWS } from './examples.ts';
import '../../src/elements/page/below.ts';
import '../../src/elements/page/wk-page.ts';
import type { WkPage } from '../../src/elements/page/wk-page.ts';
import { type Engine, type OpenNotebook, openNotebook } from '../openNotebook.ts';
import { faults } from './look.ts';

/** The machine may be busy with other tests. */
const SOON = { timeout: 15_000 };
const WIDTHS = [390, 1280] as const;
let engine: Engine;
let open: OpenNotebook;
let element: WkPage;

beforeAll(() => {
  engine = startEngine();
});

afterEach(() => {
  open.close();
  document.body.replaceChildren();
});

async function show(width: number, text?: string): Promise<void> {
  await page.viewport(width, 844);
  const example = FEW_DRAWS.find(({ name }) => name === 'hill-farm-choice');
  if (!example) throw new Error('missing example');
  open = openNotebook(text ?? example.text, example.file, engine);
  element = document.createElement('wk-page');
  element.open = open;
  document.body.append(element);
  await expect.element(page.getByRole('heading', { level: 1 }), SOON).toBeVisible();
  await expect
    .poll(() => inside('wk-notebook')?.querySelectorAll('.part').length ?? 0, SOON)
    .toBeGreaterThan(5);
}

const inside = (tag: string) => element.shadowRoot?.querySelector(tag)?.shadowRoot;
const parts = () => [...(inside('wk-notebook')?.querySelectorAll<HTMLElement>('.part') ?? [])];
const names = () => open.notebook.value?.scenarios.map(({ name }) => name) ?? [];
const kinds = () =>
  open.notebook.value?.blocks.flatMap((block) => (block.type === 'cell' ? [block.kind] : [])) ?? [];
const focused = () => {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at as HTMLElement | null;
};
const sideways = () => document.documentElement.scrollWidth - document.documentElement.clientWidth;

const clean = async () => expect(await faults(element)).toEqual([]);

describe.each(WIDTHS)('scenarios on the page, %i px wide', (width) => {
  it('are added, copied, renamed, put in order and taken out, each one step to undo', async () => {
    await show(width);
    const start = open.text.value;
    await page.getByText('Add or copy scenarios').click();
    await page.getByRole('button', { name: 'Add it' }).click();
    await expect.poll(names, SOON).toEqual(['Paddock', 'Slats', 'Straw bed', 'Deep bed']);
    expect(open.history.value.now.what).toBe('scenario “Deep bed” added');
    await expect.element(page.getByText(/Done: .*a shed of [\d.]+ × [\d.]+ m for 17 head/)).toBeVisible();
    // Its name has the keyboard, to be written over.
    await expect.poll(() => (focused() as HTMLInputElement).value, SOON).toBe('Deep bed');
    await userEvent.fill(focused() as HTMLElement, 'Bed, of chips');
    await userEvent.keyboard('{Tab}');
    await expect.poll(names, SOON).toEqual(['Paddock', 'Slats', 'Straw bed', 'Bed, of chips']);
    await page.getByRole('button', { name: 'Copy: Slats' }).click();
    await expect.poll(() => names().at(-1), SOON).toBe('Slats 2');
    await page.getByRole('button', { name: 'Up: Slats 2' }).click();
    await expect.poll(names, SOON).toEqual(['Paddock', 'Slats', 'Straw bed', 'Slats 2', 'Bed, of chips']);
    // The same button of the same scenario has the keyboard, so that it can be pressed again.
    await expect.poll(() => focused()?.getAttribute('aria-label'), SOON).toBe('Up: Slats 2');
    await userEvent.keyboard('{Alt>}{ArrowUp}{/Alt}');
    await expect.poll(() => names()[2], SOON).toBe('Slats 2');
    await clean();
    expect(sideways()).toBe(0);
    await page.getByRole('button', { name: 'Take out: Slats 2' }).click();
    await expect.poll(names, SOON).toEqual(['Paddock', 'Slats', 'Straw bed', 'Bed, of chips']);
    expect(open.problems.value).toEqual([]);
    for (let k = 0; k < 6; k++) open.undo();
    expect(open.text.value).toBe(start);
  });

  it('are kept where sentences speak of them, and let go of elsewhere when that is asked', async () => {
    await show(width);
    await page.getByText('Add or copy scenarios').click();
    await page.getByRole('button', { name: 'Take out: Paddock' }).click();
    await expect.element(page.getByText(/is spoken of in your own words; found the words/)).toBeVisible();
    expect(names()).toHaveLength(3);
    await clean();
    await page.getByRole('button', { name: 'I see' }).click();
    await page.getByRole('combobox', { name: /^Differences in money/ }).selectOptions('Slats');
    await expect
      .poll(() => open.notebook.value?.scenarios.map(({ finance }) => finance.baseline), SOON)
      .toEqual(['Slats', undefined, 'Slats']);
    expect(open.history.value.now.what).toBe('differences against “Slats”');
  });
});

describe.each(WIDTHS)('the notebook written in place, %i px wide', (width) => {
  it('sets a paragraph that was pressed, in two where a line is empty, and refuses with a reason', async () => {
    await show(width);
    const start = open.text.value;
    const prose = parts()[1].querySelector<HTMLElement>('.prose');
    const was = prose?.textContent?.trim() ?? '';
    prose?.click();
    const field = page.getByRole('textbox', { name: /^Your words/ });
    await expect.poll(() => focused()?.id, SOON).toBe('words');
    const written = (field.element() as HTMLTextAreaElement).value;
    expect(written.replace(/\s+/g, ' ')).toBe(was.replace(/\s+/g, ' '));
    await clean();
    expect(sideways()).toBe(0);
    await field.fill('Ours: `=netCost of Nobody`.');
    await page.getByRole('button', { name: 'Done' }).click();
    await expect.element(page.getByText(/No scenario has this name; found "Nobody"/)).toBeVisible();
    expect(open.text.value).toBe(start);
    await field.fill('First of ours.\n\nSecond, `=headCount of Paddock` of them.');
    await userEvent.keyboard('{Control>}{Enter}{/Control}');
    await expect.poll(() => parts()[2].textContent, SOON).toContain('Second, 17 of them.');
    expect(open.text.value).toBe(
      start.replace(written, 'First of ours.\n\nSecond, `=headCount of Paddock` of them.'),
    );
    // And left as it is by Escape, with the keyboard where it was.
    parts()[1].querySelector<HTMLElement>('.open')?.click();
    await expect.poll(() => focused()?.id, SOON).toBe('words');
    await userEvent.keyboard('x{Escape}');
    await expect.poll(() => focused()?.getAttribute('aria-label'), SOON).toContain('First of ours');
    open.undo();
    expect(open.text.value).toBe(start);
  });

  it('does not open words when a number in them is pressed', async () => {
    await show(width);
    inside('wk-notebook')?.querySelector<HTMLElement>('.inline-value')?.click();
    expect(inside('wk-notebook')?.querySelector('wk-words')).toBeNull();
  });

  it('writes a value anew while an input is turned, and leaves the words around it standing', async () => {
    await show(width);
    const value = inside('wk-notebook')?.querySelector<HTMLElement>('[data-quantity="nitrogenExcretedKg"]');
    const before = value?.textContent;
    value?.focus();
    const slider = page.getByRole('slider', { name: /^Animals/ }).element() as HTMLInputElement;
    slider.value = '30';
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    await expect.poll(() => value?.textContent, SOON).not.toBe(before);
    expect(focused()).toBe(value);
  });

  it('adds a cell from the list, gives it options, moves it by buttons and keys, and takes it out', async () => {
    await show(width);
    const start = open.text.value;
    const before = kinds();
    const at = parts().findIndex((part) => part.querySelector('wk-ledger'));
    parts()[at].querySelector<HTMLElement>('.open')?.click();
    await page.getByRole('button', { name: 'Add below' }).click();
    await expect.poll(() => focused()?.textContent, SOON).toBe('What do you want to put here?');
    await clean();
    expect(sideways()).toBe(0);
    await page.getByRole('button', { name: /^Where one overtakes another From which/ }).click();
    await expect.poll(() => kinds().length, SOON).toBe(before.length + 1);
    const place = kinds().indexOf('ledger') + 1;
    expect(kinds()[place]).toBe('flip');
    await expect.poll(() => focused()?.textContent, SOON).toBe('Where one overtakes another');
    await page.getByRole('combobox', { name: /^Two scenarios: one/ }).selectOptions('Straw bed');
    await expect.poll(() => open.text.value, SOON).toContain('between: [Straw bed, Slats]');
    await page.getByRole('combobox', { name: /^Input that is turned/ }).selectOptions('rainFactor');
    await expect.poll(() => open.text.value, SOON).toContain('over: rainFactor\n');
    await clean();
    expect(sideways()).toBe(0);
    const order = kinds().join(' ');
    await page.getByRole('button', { name: 'Move up' }).click();
    await expect.poll(() => kinds().join(' '), SOON).not.toBe(order);
    expect(kinds()[place - 1]).toBe('flip');
    await expect.poll(() => focused()?.textContent, SOON).toBe('Move up');
    await userEvent.keyboard('{Alt>}{ArrowDown}{/Alt}');
    await expect.poll(() => kinds().join(' '), SOON).toBe(order);
    await page.getByRole('button', { name: 'Take out' }).click();
    await expect.poll(kinds, SOON).toEqual(before);
    expect(open.problems.value).toEqual([]);
    for (let k = 0; k < 6; k++) open.undo();
    expect(open.text.value).toBe(start);
  });
});

describe('eight scenarios', () => {
  it('have eight looks, and no ninth is taken', async () => {
    await show(1280);
    await page.getByText('Add or copy scenarios').click();
    for (let n = 3; n < 8; n++) {
      await page.getByRole('button', { name: 'Copy: Slats', exact: true }).click();
      await expect.poll(() => names().length, SOON).toBe(n + 1);
      await expect.poll(() => inside('wk-scenarios')?.querySelectorAll('li').length, SOON).toBe(n + 1);
    }
    const marks = [...(inside('wk-scenarios')?.querySelectorAll('li svg text') ?? [])];
    expect(new Set(marks.map((mark) => mark.textContent)).size).toBe(8);
    expect(new Set(marks.map((mark) => mark.getAttribute('fill'))).size).toBe(8);
    await expect
      .element(page.getByText('8 is as many as figures can tell apart: take one out to add another.'))
      .toBeVisible();
    await page.getByRole('button', { name: 'Copy: Slats', exact: true }).click();
    await expect.element(page.getByText(/There is no room for another scenario/)).toBeVisible();
    expect(names()).toHaveLength(8);
  });
});
