import { createStore } from 'idb-keyval';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import '../../src/app/shell.ts';
import type { WkShell } from '../../src/app/shell.ts';
import { type Base, browserBase } from '../../src/store/base.ts';

const SOON = { timeout: 30_000 };
const ANSWER = 'Ask the mill at Stenby before you sign.';
const WORDS = 'The bank will ask what the straw costs in a dry year.';
let base: Base;
let shell: WkShell;

beforeEach(() => {
  // A browser that was never here.
  base = browserBase(createStore(`newcomer ${Math.random()}`, 'notebooks'));
  localStorage.clear();
  sessionStorage.clear();
  history.replaceState(null, '', '#');
});
afterEach(() => {
  document.body.replaceChildren();
  localStorage.clear();
  history.replaceState(null, '', '#');
});

/** The app as a load of the page makes it, on the same storage. */
function load(): void {
  document.body.replaceChildren();
  shell = document.createElement('wk-shell');
  shell.base = () => base;
  document.body.append(shell);
}

const openPage = () => shell.shadowRoot?.querySelector('wk-page')?.shadowRoot;
const inside = (tag: string) => openPage()?.querySelector(tag)?.shadowRoot;
const notebook = () => shell.open?.notebook.value;
const names = () => notebook()?.scenarios.map(({ name }) => name);
const herd = () => notebook()?.farm.herd.reduce((sum, { head }) => sum + head, 0);
const values = () => shell.open?.run.value?.scenarios.map(({ values }) => values) ?? [];
const undo = () => page.getByRole('button', { name: 'Undo', exact: true }).first();
const said = () => inside('wk-answer')?.textContent?.replace(/\s+/g, ' ').trim() ?? '';

/** All that can be read on the page: what is closed or hidden left out, shadow roots followed. */
function readable(node: Node = document.body): string {
  if (node instanceof HTMLElement && !node.checkVisibility()) return '';
  if (node instanceof HTMLStyleElement) return '';
  if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
  const inner = node instanceof Element && node.shadowRoot ? [...node.shadowRoot.childNodes] : [];
  const typed = node instanceof HTMLTextAreaElement ? [node.value] : [];
  return [...typed, ...[...inner, ...node.childNodes].map(readable)].join(' ');
}
function noText(): void {
  const all = readable();
  expect(all.length).toBeGreaterThan(200);
  // Keys as the text writes them: a word with a capital inside, then a colon; and the fences around it.
  expect(all.match(/winterkeep: 1|^---$|```|\b[a-z]+[A-Z]\w*: /m)?.[0]).toBeUndefined();
}

async function answers(): Promise<void> {
  await page.getByRole('link', { name: 'Start with my farm' }).click();
  const next = page.getByRole('button', { name: 'Next' });
  await userEvent.selectOptions(page.getByLabelText('Country'), 'IE');
  await userEvent.fill(page.getByLabelText('Name of the place'), 'Long acre');
  await next.click();
  await userEvent.fill(page.getByLabelText('Head of row 1, suckler cows'), '22');
  for (let step = 1; step < 5; step++) {
    noText();
    await next.click();
  }
  await userEvent.fill(page.getByLabelText('Straw here, delivered'), '180');
  await page.getByRole('button', { name: 'Make my notebook' }).click();
  await expect.poll(() => location.hash, SOON).toMatch(/^#kept=/);
}

/** What stands above the cards, from the top: title, verdict, one quiet line. */
async function inOrder(width: number, height: number, linesPx = 50): Promise<void> {
  await expect.poll(said, SOON).toMatch(/first/);
  const top = (found: Element | null | undefined) => found?.getBoundingClientRect().top ?? Number.NaN;
  const [title, answer, lines, cards] = ['h1', 'wk-answer', '.lines', 'wk-cards'].map((at) =>
    openPage()?.querySelector(at),
  );
  scrollTo(0, 0);
  expect(top(title)).toBeLessThan(top(answer));
  expect(top(answer)).toBeLessThan(height / 3);
  expect(answer?.getBoundingClientRect().bottom).toBeLessThan(height);
  expect(top(lines)).toBeGreaterThan(top(answer));
  expect(top(cards)).toBeGreaterThan(top(lines));
  if (width >= 1280) {
    expect(lines?.getBoundingClientRect().height).toBeLessThan(linesPx);
    expect(top(cards)).toBeLessThan(height * 0.6);
  }
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
}

/** A number of the farm is found by its name in the panel and changed there. */
async function change(find: string, label: RegExp, value: string): Promise<void> {
  await page.getByRole('group', { name: 'Change inputs' }).getByRole('button', { name: 'The farm' }).click();
  const dialog = page.getByRole('dialog');
  await userEvent.fill(dialog.getByLabelText('Find an input'), find);
  const field = dialog.getByRole('textbox', { name: label }).first();
  await expect.element(field, SOON).toBeVisible();
  await userEvent.fill(field, value);
  await userEvent.keyboard('{Enter}');
  noText();
  await dialog.getByRole('button', { name: 'Close' }).click();
}

/** A browser that was never here, and the one before, on the same machine. */
function another(): Base {
  localStorage.clear();
  sessionStorage.clear();
  return browserBase(createStore(`partner ${Math.random()}`, 'notebooks'));
}

/** What “Copy a link” puts on the clipboard. */
async function copiedLink(): Promise<string> {
  const copied: string[] = [];
  Object.defineProperty(navigator, 'clipboard', {
    configurable: true,
    value: { writeText: async (text: string) => copied.push(text) },
  });
  await page.getByRole('button', { name: 'Copy a link' }).click();
  await expect.poll(() => copied.length, SOON).toBe(1);
  return copied[0].split('#')[1];
}

/** The link is read elsewhere, noted on, and comes back: the note is taken into the keeper's own. */
async function noteAndBack(width: number): Promise<void> {
  const [own, ownBase] = [location.hash, base];
  const sent = await copiedLink();
  await expect.poll(() => shell.saved?.state, SOON).toBe('saved');
  base = another();
  history.replaceState(null, '', `#${sent}`);
  load();
  const asked = () => page.getByRole('region', { name: 'Sent to you' });
  await expect.element(asked().getByText(/You are reading: nothing is kept/), SOON).toBeVisible();
  await expect.poll(() => inside('wk-notebook')?.querySelectorAll('.prose').length, SOON).toBeGreaterThan(2);
  noText();
  const words = [...(inside('wk-notebook')?.querySelectorAll<HTMLElement>('.prose p') ?? [])].find((p) =>
    p.textContent?.includes(WORDS),
  );
  words?.scrollIntoView({ block: 'center' });
  words?.click();
  await userEvent.fill(page.getByRole('textbox', { name: 'Your note' }), ANSWER);
  await userEvent.fill(page.getByRole('textbox', { name: /^Your name/ }), 'Neighbour');
  await page.getByRole('button', { name: 'Put the note' }).click();
  await expect.poll(() => location.hash, SOON).toMatch(/^#kept=/);
  await expect.poll(readable, SOON).toContain(ANSWER);
  noText();
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  const back = await copiedLink();
  expect(back).not.toBe(sent);

  base = ownBase;
  localStorage.clear();
  sessionStorage.clear();
  history.replaceState(null, '', `#${back}`);
  load();
  await asked().getByRole('button', { name: 'Take the note in' }).click();
  await expect.poll(() => location.hash, SOON).toBe(own);
  await expect.poll(readable, SOON).toContain(ANSWER);
  expect(notebook()?.readerNotes.map(({ by, text }) => [by, text])).toEqual([['Neighbour', ANSWER]]);
  noText();
  // The note and the id, the two steps the keeper did not make in the page.
  await undo().click();
  await expect.poll(readable, SOON).not.toContain(ANSWER);
  await undo().click();
}

describe.each([
  [390, 844],
  [1280, 800],
])('a newcomer at %i px', (width, height) => {
  it('makes a notebook of the farm, reads which way, changes it, and has it all again after a reload', async () => {
    await page.viewport(width, height);
    load();
    await expect.element(page.getByRole('link', { name: 'Start with my farm' }), SOON).toBeVisible();
    await answers();
    await expect.poll(() => values().length, SOON).toBe(3);
    await inOrder(width, height);
    noText();

    const [headBefore, costBefore] = [herd(), values()[2].netCost];
    const strawBefore = values()[2].beddingCost;
    await change('suckler', /^Head/, '30');
    await expect.poll(herd, SOON).toBe((headBefore ?? 0) + 8);
    await expect.poll(() => values()[2].netCost, SOON).not.toBe(costBefore);
    const costNow = values()[2].netCost;
    await change('straw own price', /^Own price/, '220');
    await expect.poll(() => values()[2].netCost, SOON).not.toBe(costNow);
    expect(values()[2].beddingCost).toBeGreaterThan(strawBefore as number);

    await page.getByText('Add or copy scenarios').click();
    await page.getByRole('button', { name: 'Copy: Deep bed', exact: true }).click();
    await expect.poll(names, SOON).toEqual(['Paddock', 'Slats', 'Deep bed', 'Deep bed 2']);
    await page.getByText('Add or copy scenarios').click();

    await expect
      .poll(() => inside('wk-notebook')?.querySelectorAll('.prose').length, SOON)
      .toBeGreaterThan(2);
    const prose = inside('wk-notebook')?.querySelectorAll<HTMLElement>('.prose p')[1];
    prose?.scrollIntoView({ block: 'center' });
    prose?.click();
    await expect.poll(() => inside('wk-notebook')?.querySelector('wk-words'), SOON).toBeTruthy();
    await userEvent.fill(page.getByRole('textbox', { name: /Your words/ }), WORDS);
    await page.getByRole('button', { name: 'Done' }).click();
    await expect.poll(readable, SOON).toContain(WORDS);
    noText();
    await expect.poll(() => shell.saved?.state, SOON).toBe('saved');
    const left = { text: shell.open?.text.value, past: shell.open?.history.value.past.length };

    load();
    await expect.poll(() => values().length, SOON).toBe(4);
    expect(shell.open?.text.value).toBe(left.text);
    expect(shell.open?.history.value.past).toHaveLength(left.past as number);
    expect(names()).toEqual(['Paddock', 'Slats', 'Deep bed', 'Deep bed 2']);
    expect(herd()).toBe((headBefore ?? 0) + 8);
    await expect.poll(readable, SOON).toContain(WORDS);
    // A fourth scenario's button may take a second line.
    await inOrder(width, height, 80);
    noText();

    await noteAndBack(width);

    await undo().click();
    await expect.poll(readable, SOON).not.toContain(WORDS);
    await undo().click();
    await expect.poll(names, SOON).toEqual(['Paddock', 'Slats', 'Deep bed']);
    await undo().click();
    await expect.poll(() => values()[2].netCost, SOON).toBe(costNow);
    await undo().click();
    await expect.poll(herd, SOON).toBe(headBefore);
    await expect.poll(() => values()[2].netCost, SOON).toBe(costBefore);
  }, 240_000);
});
