/** A notebook that somebody sent: read, tried, noted on, sent back, and its notes taken in. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import '../../src/app/shell.ts';
import type { WkShell } from '../../src/app/shell.ts';
import { notebookIdOf, putNote } from '../../src/notebook/noteEdits.ts';
import type { Note } from '../../src/notebook/noteSchema.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { setInput } from '../../src/notebook/write.ts';
import { type Base, memoryBase } from '../../src/store/base.ts';
import { startHistory } from '../../src/store/history.ts';
import { toLink } from '../../src/store/link.ts';
import { openShelf } from '../../src/store/shelf.ts';
import { FEW_DRAWS } from './examples.ts';
import { colours, faults, LOOKS } from './look.ts';

const SOON = { timeout: 20_000 };
const example = FEW_DRAWS.find(({ name }) => name === 'hill-farm-choice') as (typeof FEW_DRAWS)[number];
const SENT = setInput(setInput(example.text, 'id', 'hill-1234'), 'by', 'The farm on the hill');
let base: Base;
let shell: WkShell;

beforeEach(() => {
  base = memoryBase();
  sessionStorage.clear();
  localStorage.clear();
});
afterEach(async () => {
  document.body.replaceChildren();
  localStorage.clear();
  history.replaceState(null, '', '#');
  await colours('light');
});

async function opened(hash: string): Promise<void> {
  document.body.replaceChildren();
  history.replaceState(null, '', hash);
  shell = document.createElement('wk-shell');
  shell.base = () => base;
  document.body.append(shell);
  await expect.poll(() => shell.open?.run.value, SOON).toBeTruthy();
}
const link = (text: string) => `#${toLink(text)}`;
const kept = () => openShelf({ base }).list();
const asked = () => page.getByRole('region', { name: 'Sent to you' });
const notes = () => shell.open?.notebook.value?.readerNotes ?? [];
const inside = (tag: string) =>
  shell.shadowRoot?.querySelector('wk-page')?.shadowRoot?.querySelector(tag)?.shadowRoot;

/** The text with a note as another program or another browser would have written it. */
function noted(text: string, note: Partial<Note>): string {
  const edited = putNote(
    { text, file: 'sent.md', read: readNotebook },
    {
      id: 'note-1',
      on: { kind: 'number', quantity: 'netCost', scenario: 'Paddock' },
      by: 'Lender',
      when: '2026-11-20T10:00:00Z',
      text: 'With the loan?',
      ...note,
    },
  );
  if ('refused' in edited) throw new Error(edited.refused.what);
  return edited.text;
}

describe('a link', () => {
  it('says who asks what, and lets everything be tried without keeping it', async () => {
    await page.viewport(1280, 844);
    await opened(link(SENT));
    await expect.element(asked().getByText('The farm on the hill'), SOON).toBeVisible();
    await expect.element(asked().getByText(/You are reading: nothing is kept/)).toBeVisible();
    await expect.element(asked().getByText(/seen no earlier version/)).toBeVisible();
    const first = readNotebook(SENT, 'x').notebook?.blocks.find(({ type }) => type === 'prose')?.text ?? '';
    const opening = first.split('\n\n').find((each) => /^\w/.test(each)) as string;
    expect(asked().element().querySelector('blockquote')?.textContent).toContain(
      opening.split(/[`\n]/)[0].trim(),
    );
    const before = shell.open?.run.value?.results[0].values.netCost;
    shell.open?.commit('head', 30);
    await expect.poll(() => shell.open?.run.value?.results[0].values.netCost, SOON).not.toBe(before);
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(await kept()).toEqual([]);
    expect(location.hash).toBe(link(SENT));
    expect(shell.saved).toBeUndefined();
    await opened(link(SENT));
    expect(shell.open?.text.value).toBe(SENT);
    // Nothing of it can be written while it is read.
    await expect.poll(() => inside('wk-notebook')?.querySelector('.prose'), SOON).toBeTruthy();
    expect(page.getByRole('button', { name: /^Change the words/ }).elements()).toEqual([]);
    expect(page.getByText('Add or copy scenarios').elements()).toEqual([]);
  });

  it('becomes the reader’s own by the button, as it then stands', async () => {
    await opened(link(SENT));
    shell.open?.commit('head', 30);
    const tried = shell.open?.text.value;
    await userEvent.click(asked().getByRole('button', { name: 'Make it mine' }));
    await expect.poll(() => location.hash, SOON).toMatch(/^#kept=/);
    expect(asked().elements()).toEqual([]);
    await expect.poll(() => shell.saved?.state, SOON).toBe('saved');
    await opened(location.hash);
    expect(shell.open?.text.value).toBe(tried);
    expect(tried).not.toBe(SENT);
    expect(page.getByRole('button', { name: /^Change the words/ }).elements().length).toBeGreaterThan(0);
  });

  it('says what differs from the version seen before, in words and figures', async () => {
    await opened(link(SENT));
    const now = setInput(setInput(SENT, ['farm', 'herd', 0, 'head'], 24), 'title', 'The hill, again');
    await opened(link(now));
    const summary = asked().getByText(/^What differs from the version you saw on .*: 2 things$/);
    await userEvent.click(summary);
    await expect.element(asked().getByText(/cows in calf: .*16.*, now 24/)).toBeVisible();
    const row = asked().getByRole('row', { name: /^Net cost a year Paddock/ });
    await expect.element(row, SOON).toBeVisible();
    // Opened once more it is still told against the version before.
    await opened(link(now));
    await expect.element(asked().getByText(/^What differs from the version you saw on/), SOON).toBeVisible();
  });

  it('that is old, without id or name, still opens and says so', async () => {
    await opened(link(example.text));
    await expect.element(asked().getByText(/somebody who does not say who they are/), SOON).toBeVisible();
  });
});

describe('notes', () => {
  it('are put on a paragraph, a figure and a number, shown there, changed, answered and taken out', async () => {
    await page.viewport(1280, 844);
    await opened(link(SENT));
    await expect.poll(() => inside('wk-notebook')?.querySelector('.cell'), SOON).toBeTruthy();
    const prose = inside('wk-notebook')?.querySelectorAll<HTMLElement>('.prose p')[1];
    prose?.click();
    await userEvent.fill(
      page.getByRole('textbox', { name: 'Your note' }),
      'Why <b>this</b>?\n# not a heading',
    );
    await userEvent.fill(page.getByRole('textbox', { name: /^Your name/ }), 'Lender');
    await userEvent.click(page.getByRole('button', { name: 'Put the note' }));
    await expect.poll(() => notes().length, SOON).toBe(1);
    // Its first change has made the notebook this reader's own.
    expect(location.hash).toMatch(/^#kept=/);
    await expect.element(page.getByText('Why <b>this</b>?'), SOON).toBeVisible();
    expect(prose?.closest('.part')?.querySelector('wk-notes')).toBeTruthy();

    await userEvent.click(page.getByRole('button', { name: /^Put a note on: .*, line/ }).first());
    await userEvent.fill(page.getByRole('textbox', { name: 'Your note' }), 'On the figure');
    await userEvent.keyboard('{Control>}{Enter}{/Control}');
    await expect
      .poll(() => notes().map(({ on, by }) => [on.kind, by]), SOON)
      .toEqual([
        ['words', 'Lender'],
        ['figure', 'Lender'],
      ]);

    await userEvent.click(page.getByRole('button', { name: /^Net cost a year, Paddock: / }).first());
    const working = page.getByRole('dialog');
    await userEvent.click(working.getByRole('button', { name: 'Put a note on this' }));
    await userEvent.fill(working.getByRole('textbox', { name: 'Your note' }), 'On the number');
    await userEvent.click(working.getByRole('button', { name: 'Put the note' }));
    await expect.poll(() => notes().length, SOON).toBe(3);
    await expect.element(working.getByText('On the number'), SOON).toBeVisible();
    await userEvent.click(working.getByRole('button', { name: 'Close' }));
    const together = page.getByRole('region', { name: 'Notes on these numbers' });
    await expect.element(together.getByText('On the number'), SOON).toBeVisible();
    const marked = page.getByRole('button', { name: /^Net cost a year, Paddock: .*, with a note\./ });
    await expect.poll(() => marked.elements().length, SOON).toBeGreaterThan(0);
    expect(marked.elements()[0].textContent).toContain('*');

    await userEvent.click(together.getByRole('button', { name: 'Answer the note of Lender' }));
    await userEvent.fill(together.getByRole('textbox', { name: 'Your answer' }), 'Yes');
    await userEvent.click(together.getByRole('button', { name: 'Put the answer' }));
    await expect
      .element(together.getByRole('list', { name: 'Answers' }).getByText('Yes'), SOON)
      .toBeVisible();
    await userEvent.click(together.getByRole('button', { name: 'Change the note of Lender' }).first());
    await userEvent.fill(together.getByRole('textbox', { name: 'Your note' }), 'On this number');
    await userEvent.click(together.getByRole('button', { name: 'Put the note' }));
    await expect.element(together.getByText('On this number'), SOON).toBeVisible();
    await userEvent.click(together.getByRole('button', { name: 'Take out the note of Lender' }).first());
    await expect.element(together.getByText(/A note of Lender, taken out/), SOON).toBeVisible();
    await userEvent.click(together.getByRole('button', { name: 'Take out the note of Lender' }).first());
    await expect.poll(() => together.elements().length, SOON).toBe(0);
    expect(notes()).toHaveLength(4);
    shell.open?.undo();
    await expect.element(together.getByText('Yes'), SOON).toBeVisible();
  });

  it('are put on the answer and on what the page puts below the text, and shown there', async () => {
    await opened(link(SENT));
    await expect.poll(() => inside('wk-answer'), SOON).toBeTruthy();
    for (const [button, text] of [
      ['Put a note on the answer', 'On what comes first'],
      ['Put a note on the cards', 'On a card'],
      ['Put a note on the cautions', 'On the gas'],
    ]) {
      await userEvent.click(page.getByRole('button', { name: button, exact: true }));
      await userEvent.fill(page.getByRole('textbox', { name: 'Your note' }), text);
      await userEvent.click(page.getByRole('button', { name: 'Put the note' }));
      await expect.element(page.getByText(text, { exact: true }), SOON).toBeVisible();
    }
    await expect
      .poll(() => notes().map(({ on }) => (on.kind === 'page' ? on.section : on.kind)), SOON)
      .toEqual(['answer', 'cards', 'cautions']);
    const answer = shell.shadowRoot?.querySelector('wk-page')?.shadowRoot?.querySelector('wk-answer');
    expect(answer?.nextElementSibling?.shadowRoot?.textContent).toContain('On what comes first');
  });

  it('that lost their place are shown at the end, with what they stood on', async () => {
    await opened(link(noted(SENT, { on: { kind: 'words', begin: 'Words that are gone' } })));
    const lost = page.getByRole('region', { name: 'Notes whose place is gone' });
    await expect.element(lost.getByText(/on the words “Words that are gone”/), SOON).toBeVisible();
  });

  it.each(['link', 'file'])(
    'that come back by %s are offered, taken in as one step, and not offered again',
    async (way) => {
      await page.viewport(1280, 844);
      await openShelf({ base }).put(
        'mine',
        { title: 'My hill', history: startHistory(setInput(SENT, ['farm', 'herd', 0, 'head'], 18)) },
        { revision: 0, from: [] },
      );
      const back = noted(SENT, {});
      if (way === 'link') await opened(link(back));
      else {
        document.body.replaceChildren();
        history.replaceState(null, '', '#');
        shell = document.createElement('wk-shell');
        shell.base = () => base;
        document.body.append(shell);
        await shell.updateComplete;
        shell.dispatchEvent(new CustomEvent('wk-file', { detail: new File([back], 'back.md') }));
      }
      await expect
        .element(asked().getByText(/You keep this notebook as “My hill”, without a note/), SOON)
        .toBeVisible();
      await expect
        .element(asked().getByText(/^What differs from the copy you keep, “My hill”/), SOON)
        .toBeVisible();
      await userEvent.click(asked().getByRole('button', { name: 'Take the note in' }));
      await expect.poll(() => location.hash, SOON).toBe('#kept=mine');
      await expect.poll(() => notes().map(({ text }) => text), SOON).toEqual(['With the loan?']);
      // The copy that was sent holds the note too: the own one is told by its herd.
      await expect.poll(() => shell.open?.notebook.value?.farm.herd[0].head, SOON).toBe(18);
      await expect.poll(() => shell.open?.history.value.now.what, SOON).toBe('1 note taken in');
      if (way === 'link') {
        await opened(link(back));
        await expect.element(asked().getByText(/You are reading/), SOON).toBeVisible();
        expect(asked().getByRole('button', { name: /^Take/ }).elements()).toEqual([]);
      }
    },
  );

  it('find back to a notebook that had no id before its first link', async () => {
    await opened('#example=hill-farm-choice');
    const copied: string[] = [];
    Object.defineProperty(navigator, 'clipboard', {
      configurable: true,
      value: { writeText: async (text: string) => copied.push(text) },
    });
    await userEvent.click(page.getByRole('button', { name: 'Copy a link' }));
    await expect.poll(() => copied.length, SOON).toBe(1);
    const id = notebookIdOf(shell.open?.text.value ?? '');
    expect(id).toBeTruthy();
    await expect.poll(() => location.hash, SOON).toMatch(/^#kept=/);
    await userEvent.click(page.getByRole('button', { name: 'Copy a link' }));
    await expect.poll(() => copied.length, SOON).toBe(2);
    expect(copied[1].split('#')[1]).toBe(copied[0].split('#')[1]);
  });
});

describe('what was sent, with notes', () => {
  const full = () =>
    noted(
      noted(noted(SENT, {}), {
        id: 'note-2',
        on: { kind: 'note', id: 'note-1' },
        text: 'Yes',
        by: 'Neighbour',
      }),
      {
        id: 'note-3',
        on: { kind: 'figure', cell: 'draws', nth: 1 },
        text: 'How many draws?',
      },
    );
  it.each(LOOKS)('has no accessibility violation and fits at %i px in the %s', async (width, scheme) => {
    await page.viewport(width, 844);
    await colours(scheme);
    await opened(link(SENT));
    await opened(link(full()));
    await userEvent.click(asked().getByText(/^What differs from/));
    await expect.element(asked().getByText('Lender noted “With the loan?”'), SOON).toBeVisible();
    await expect.element(page.getByRole('region', { name: 'Notes on these numbers' }), SOON).toBeVisible();
    await userEvent.click(page.getByRole('button', { name: 'Answer the note of Lender' }).first());
    await expect.element(page.getByRole('textbox', { name: 'Your answer' }), SOON).toBeVisible();
    await expect.poll(() => inside('wk-notebook')?.querySelector('wk-notes'), SOON).toBeTruthy();
    expect(await faults()).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });
});
