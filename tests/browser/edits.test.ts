/** Random edits of an open notebook in a real browser with its own storage, across loads of the page, undone to the start. */
import { createStore } from 'idb-keyval';
import { afterEach, describe, expect, it } from 'vitest';
import '../../src/app/styles.css';
import '../../src/app/shell.ts';
import type { WkShell } from '../../src/app/shell.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { type Base, browserBase } from '../../src/store/base.ts';
import { startHistory } from '../../src/store/history.ts';
import { openShelf } from '../../src/store/shelf.ts';
import { stream } from '../../src/units/random.ts';
import { anEdit } from '../notebook/randomEdits.ts';
import { SMALL } from '../notebook/small.ts';

const EDITS = 200;
const SOON = { timeout: 30_000 };
let base: Base;
let shell: WkShell;

afterEach(() => {
  document.body.replaceChildren();
  history.replaceState(null, '', '#');
});

/** The app as a load of the page makes it; the one before is told that it goes, as a browser does. */
async function load(): Promise<void> {
  window.dispatchEvent(new Event('pagehide'));
  document.body.replaceChildren();
  shell = document.createElement('wk-shell');
  shell.base = () => base;
  document.body.append(shell);
  await expect.poll(() => shell.open?.notebook.value, SOON).toBeTruthy();
}
const text = () => shell.open?.text.value ?? '';

describe(`${EDITS} random edits in a browser`, () => {
  it.each([1, 5])('undone give the same bytes, across loads of the page: seed %i', async (seed) => {
    const start = seed % 5 === 0 ? SMALL.replace(/\n/g, '\r\n') : SMALL;
    base = browserBase(createStore(`edits ${seed} ${Math.random()}`, 'notebooks'));
    await openShelf({ base }).put(
      'one',
      { title: 'One', history: startHistory(start) },
      { revision: 0, from: [] },
    );
    history.replaceState(null, '', '#kept=one');
    await load();
    expect(text()).toBe(start);
    const next = stream(seed, 'edits');
    const chance = stream(seed, 'loads');
    let [made, loads] = [0, 0];
    const step = async () => {
      if (chance() > 0.03) return;
      loads++;
      const stood = text();
      const past = shell.open?.history.value.past.length;
      await load();
      expect(text()).toBe(stood);
      expect(shell.open?.history.value.past.length).toBe(past);
    };
    for (let tries = 0; made < EDITS && tries < EDITS * 4; tries++) {
      const { notebook } = readNotebook(text(), 'n.md');
      if (!notebook) throw new Error('cannot be read');
      const edited = anEdit({ text: text(), file: 'n.md', read: readNotebook }, notebook, next);
      if ('refused' in edited || edited.text === text()) continue;
      made++;
      shell.open?.edit(edited.text, edited.what);
      expect(text()).toBe(edited.text);
      await step();
    }
    expect(made).toBe(EDITS);
    expect(shell.open?.history.value.past.length).toBe(EDITS);
    for (let k = 0; k < EDITS; k++) {
      shell.open?.undo();
      await step();
    }
    expect(text()).toBe(start);
    expect(loads).toBeGreaterThan(3);
    await load();
    expect(text()).toBe(start);
  });
});
