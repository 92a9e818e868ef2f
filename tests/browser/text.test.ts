/** The text editor, opened as a keeper opens it. */
import { EditorView } from '@codemirror/view';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import '../../src/app/shell.ts';
import type { WkShell } from '../../src/app/shell.ts';
import { memoryBase } from '../../src/store/base.ts';
import { toLink } from '../../src/store/link.ts';
import { FEW_DRAWS } from './examples.ts';
import { colours, faults, LOOKS } from './look.ts';

const SOON = { timeout: 20_000 };
const example = FEW_DRAWS.find(({ name }) => name === 'hill-farm-choice') as (typeof FEW_DRAWS)[number];
let shell: WkShell;

beforeEach(() => sessionStorage.clear());
afterEach(async () => {
  await colours('light');
  document.body.replaceChildren();
  history.replaceState(null, '', '#');
});

async function shown(text: string): Promise<void> {
  history.replaceState(null, '', `#${toLink(text)}`);
  shell = document.createElement('wk-shell');
  shell.base = memoryBase;
  document.body.append(shell);
  await expect.poll(() => shell.open, SOON).toBeTruthy();
}

async function opened(text = example.text): Promise<EditorView> {
  await shown(text);
  await expect.poll(() => shell.open?.run.value, SOON).toBeTruthy();
  await page.getByRole('button', { name: 'Edit the text' }).click();
  await expect.element(area(), SOON).toBeVisible();
  return viewOf();
}
const viewOf = () => EditorView.findFromDOM(area().element() as HTMLElement) as EditorView;
const area = () => page.getByRole('textbox', { name: /plain text/ });
const inside = () => shell.shadowRoot?.querySelector('wk-text')?.shadowRoot as ShadowRoot;
const text = () => shell.open?.text.value ?? '';
const cursorAfter = (view: EditorView, words: string) => {
  const at = view.state.doc.toString().indexOf(words) + words.length;
  view.dispatch({ selection: { anchor: at } });
  view.focus();
  return at;
};

describe('the text editor', () => {
  it('undoes by keys what was typed in it, and leaves the rest to the page', async () => {
    const view = await opened();
    shell.open?.edit(example.text.replace('head: 16', 'head: 17'), 'head to 17');
    await expect.poll(() => view.state.doc.toString(), SOON).toContain('head: 17');
    cursorAfter(view, 'title: ');
    await userEvent.keyboard('My ');
    await expect.poll(text, SOON).toContain('title: My Sixteen');
    await userEvent.keyboard('{Control>}z{/Control}');
    await expect.poll(text, SOON).toContain('title: Sixteen');
    // What the page had done is none of the editor's steps.
    await userEvent.keyboard('{Control>}z{/Control}{Control>}z{/Control}');
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(text()).toContain('head: 17');
    await userEvent.keyboard('{Control>}{Shift>}z{/Shift}{/Control}');
    await expect.poll(text, SOON).toContain('title: My Sixteen');
    // The page undoes all of it, step by step, down to what was opened; the editor follows.
    while ((shell.open?.history.value.past.length ?? 0) > 0) shell.open?.undo();
    expect(text()).toBe(example.text);
    await expect.poll(() => view.state.doc.toString(), SOON).toBe(example.text);
    shell.open?.redo();
    await expect.poll(() => view.state.doc.toString(), SOON).toContain('head: 17');
  });

  it('keeps the cursor where it stands when a slider changes the text', async () => {
    const view = await opened();
    const words = 'What we do now';
    const at = cursorAfter(view, words);
    shell.open?.commit('head', 30);
    await expect.poll(() => view.state.doc.toString() === text() && text() !== example.text, SOON).toBe(true);
    const { head } = view.state.selection.main;
    expect(view.state.doc.sliceString(head - words.length, head)).toBe(words);
    expect(view.hasFocus).toBe(true);
    expect(head - at).toBe(text().indexOf(words) + words.length - at);
    await userEvent.keyboard('!');
    await expect.poll(text, SOON).toContain('What we do now!');
  });

  it('says what is wrong, marks it, and jumps there', async () => {
    const view = await opened();
    const at = cursorAfter(view, 'texture: ');
    view.dispatch({ changes: { from: at, insert: 'x' } });
    const fault = page.getByRole('button', { name: /^Line \d+: the word is not one of those allowed/ });
    await expect.element(fault, SOON).toBeVisible();
    await expect
      .poll(() => inside().querySelector('.cm-lintRange-error')?.textContent, SOON)
      .toBe('xsandyLoam');
    view.dispatch({ selection: { anchor: view.state.doc.length } });
    await fault.click();
    const line = view.state.doc.lineAt(view.state.selection.main.head);
    expect(line.text).toContain('texture: xsandyLoam');
    expect(view.hasFocus).toBe(true);
    view.dispatch({ changes: { from: at, to: at + 1 } });
    await expect.element(page.getByText('Nothing has to be mended.'), SOON).toBeVisible();
  });

  it('opens at the line that the page names', async () => {
    await page.viewport(1280, 844);
    await shown(example.text.replace('texture: sandyLoam', 'texture: sand and loam'));
    await page.getByRole('button', { name: /^Line \d+$/ }).click();
    await expect.element(area(), SOON).toBeVisible();
    const view = viewOf();
    await expect.poll(() => view.hasFocus, SOON).toBe(true);
    expect(view.state.doc.lineAt(view.state.selection.main.head).text).toContain('sand and loam');
  });

  it('offers what may stand at the cursor, and puts it there', async () => {
    const view = await opened();
    const from = view.state.doc.toString().indexOf('sandyLoam');
    view.dispatch({ changes: { from, to: from + 9 }, selection: { anchor: from } });
    view.focus();
    await userEvent.keyboard('si');
    await expect.element(page.getByRole('option', { name: /^siltLoam/ }), SOON).toBeVisible();
    await userEvent.keyboard('{ArrowDown}');
    await expect
      .element(page.getByRole('option', { name: /^siltyClayLoam/ }))
      .toHaveAttribute('aria-selected', 'true');
    await userEvent.keyboard('{Enter}');
    await expect.poll(text, SOON).toContain('texture: siltyClayLoam,');
    // Asked for by name, keys of the map that are not there yet.
    cursorAfter(view, 'soil: { ');
    await userEvent.keyboard('{Control>} {/Control}');
    const offered = () => inside().querySelectorAll('[role=option]').length;
    await expect.poll(offered, SOON).toBeGreaterThan(1);
    await userEvent.keyboard('{Escape}');
    await expect.poll(offered, SOON).toBe(0);
    expect(view.hasFocus).toBe(true);
  });

  it('leaves by Esc and Tab, and sets a line in by Tab alone', async () => {
    const view = await opened();
    const at = cursorAfter(view, '  soil:');
    await userEvent.keyboard('{Tab}');
    expect(view.state.doc.lineAt(at).text).toMatch(/^ {4}soil:/);
    expect(view.hasFocus).toBe(true);
    await userEvent.keyboard('{Control>}z{/Control}{Escape}{Tab}');
    await expect.poll(() => view.hasFocus).toBe(false);
  });

  it('keeps the line ends of a file from another system', async () => {
    const windows = example.text.replaceAll('\n', '\r\n');
    const view = await opened(windows);
    cursorAfter(view, 'title: ');
    await userEvent.keyboard('X{Enter}');
    await expect.poll(text, SOON).not.toBe(windows);
    await userEvent.keyboard('{Backspace}{Backspace}');
    await expect.poll(text, SOON).toBe(windows);
  });

  it.each(LOOKS)('has no accessibility violation and fits at %i px in the %s', async (width, scheme) => {
    await page.viewport(width, 844);
    await colours(scheme);
    const view = await opened();
    const at = cursorAfter(view, 'texture: ');
    view.dispatch({ changes: { from: at, insert: 'x' } });
    const fault = page.getByRole('button', { name: /^Line \d+: the word/ });
    await expect.element(fault, SOON).toBeVisible();
    expect(await faults()).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    // Text and message are both on the screen, and the bar that closes the text is not covered.
    const box = fault.element().getBoundingClientRect();
    expect(box.bottom).toBeLessThanOrEqual(844);
    const bar = page.getByRole('button', { name: 'Close the text' });
    expect(bar.element().getBoundingClientRect().bottom).toBeLessThanOrEqual(
      inside().host.getBoundingClientRect().top + 1,
    );
  });
});
