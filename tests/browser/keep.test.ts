import { EditorView } from '@codemirror/view';
import { createStore } from 'idb-keyval';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import '../../src/app/shell.ts';
import { startEngine } from '../../src/app/engine.ts';
import type { WkShell } from '../../src/app/shell.ts';
import { autosave } from '../../src/store/autosave.ts';
import { type Base, browserBase, memoryBase } from '../../src/store/base.ts';
import { push, startHistory } from '../../src/store/history.ts';
import { toLink } from '../../src/store/link.ts';
import { openShelf } from '../../src/store/shelf.ts';
import { openNotebook } from '../openNotebook.ts';
import { EXAMPLES } from './examples.ts';
import { faults } from './look.ts';

const SOON = { timeout: 20_000 };
const example = EXAMPLES.find(({ name }) => name === 'hill-farm-choice') as (typeof EXAMPLES)[number];
let database = 0;
let base: Base;

beforeEach(() => {
  // A database of its own for each test: a browser that was never here.
  const store = createStore(`keep ${++database} ${Math.random()}`, 'notebooks');
  base = browserBase(store);
  sessionStorage.clear();
});
afterEach(() => {
  document.body.replaceChildren();
  history.replaceState(null, '', '#');
});

/** Opens the app as a browser would that knows what is kept. */
async function start(hash = location.hash, change: (shell: WkShell) => void = () => {}): Promise<WkShell> {
  document.body.replaceChildren();
  history.replaceState(history.state, '', hash === '' ? '#' : hash);
  const shell = document.createElement('wk-shell');
  shell.base = () => base;
  change(shell);
  document.body.append(shell);
  await expect
    .poll(() => shell.open !== undefined || shell.shadowRoot?.querySelector('wk-home'), SOON)
    .toBeTruthy();
  return shell;
}
async function opened(hash = location.hash, change?: (shell: WkShell) => void): Promise<WkShell> {
  const shell = await start(hash, change);
  await expect.poll(() => shell.open?.notebook.value, SOON).toBeTruthy();
  return shell;
}
const edited = (text: string, what: string) => text.replace(/^title:.*$/m, `title: ${what}`);
const found = async () => {
  const shelf = openShelf({ base });
  return Promise.all((await shelf.list()).map(async ({ id }) => (await shelf.get(id))?.text ?? ''));
};

/** Opens the text, and the editor that stands in it. */
async function editor(): Promise<EditorView> {
  await page.getByRole('button', { name: 'Edit the text' }).click();
  const area = page.getByRole('textbox', { name: /plain text/ });
  await expect.element(area, SOON).toBeVisible();
  return EditorView.findFromDOM(area.element() as HTMLElement) as EditorView;
}
const put = (view: EditorView, from: number, to: number, insert: string) =>
  view.dispatch({ changes: { from, to, insert } });

describe('keeping', () => {
  it('has the last key and every undo step after a reload', async () => {
    const shell = await opened('#example=hill-farm-choice');
    const view = await editor();
    view.dispatch({ selection: { anchor: view.state.doc.length } });
    view.focus();
    await userEvent.keyboard('abc');
    // Steps of a tenth of a second come together; a page that is about to go does not wait for that.
    dispatchEvent(new Event('pagehide'));
    await expect.poll(async () => (await found())[0], { timeout: 1000 }).toContain('abc');
    const text = view.state.doc.toString();
    expect(text).toBe(`${example.text}abc`);
    await expect.poll(() => shell.open?.text.value, SOON).toBe(text);
    expect(location.hash).toMatch(/^#kept=/);
    shell.open?.edit(edited(text, 'Second'), 'title');

    const again = await opened();
    expect(again).not.toBe(shell);
    expect(again.open?.text.value).toBe(edited(text, 'Second'));
    again.open?.undo();
    expect(again.open?.text.value).toBe(text);
    again.open?.undo();
    expect(again.open?.text.value).toBe(example.text);
    expect(again.open?.history.value.future).toHaveLength(2);
  });

  it('takes a typist in who never pauses', async () => {
    const shell = await opened('#example=hill-farm-choice');
    const view = await editor();
    const began = performance.now();
    let taken: number | undefined;
    while (performance.now() - began < 2500) {
      put(view, view.state.doc.length, view.state.doc.length, 'x');
      await new Promise((resolve) => setTimeout(resolve, 40));
      if (taken === undefined && shell.open?.text.value !== example.text) taken = performance.now() - began;
    }
    expect(taken).toBeLessThan(2000);
  });

  it('leaves for an opened link with an edit on its way: address, notice and both texts are right', async () => {
    const shell = await opened('#example=hill-farm-choice');
    const view = await editor();
    put(view, 0, view.state.doc.length, edited(example.text, 'On its way'));
    const other = edited(example.text, 'The other');
    const link = `#${toLink(other)}`;
    location.hash = link;
    await expect.poll(() => shell.open?.text.value, SOON).toBe(other);
    expect(location.hash).toBe(link);
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(location.hash).toBe(link);
    expect(shell.saved).toBeUndefined();
    expect(shell.notice).not.toContain('Not kept');
    expect(await found()).toEqual([edited(example.text, 'On its way')]);
  });

  it('does not write by the places of a text that is gone', async () => {
    const open = openNotebook(example.text, 'x.md', startEngine());
    await expect.poll(() => open.run.value, SOON).toBeTruthy();
    const broken = example.text.replace(/^winterkeep:/m, 'winterkeep: [');
    open.edit(broken, 'typing');
    open.preview('head', 30);
    open.commit('head', 30);
    expect(open.text.value).toBe(broken);
    expect(open.problems.value.some(({ what }) => what.includes('nothing was changed'))).toBe(true);
    expect(open.changes.value.size).toBe(0);
    open.undo();
    expect(open.problems.value).toEqual([]);
    await expect
      .poll(() => {
        open.commit('head', 30);
        return open.text.value;
      }, SOON)
      .not.toBe(example.text);
    open.close();
  });

  it('keeps both texts of two tabs that save in one moment, thirty times', async () => {
    for (let round = 0; round < 30; round++) {
      const id = `round-${round}`;
      const shelf = openShelf({ base });
      const first = await shelf.put(
        id,
        { title: 't', history: startHistory('common') },
        { revision: 0, from: [] },
      );
      const tabs = ['a', 'b'].map((name) => {
        const save = autosave(openShelf({ base }), {
          id,
          revision: first.kept.revision,
          history: startHistory('common'),
          channel: new BroadcastChannel(`quiet ${name}`),
          onState() {},
          onOther() {},
        });
        save.changed('t', push(startHistory('common'), { text: `${name} ${round}`, what: 'typing' }));
        return save;
      });
      await Promise.all(tabs.map((save) => save.stop()));
      const texts = await found();
      expect(texts).toContain(`a ${round}`);
      expect(texts).toContain(`b ${round}`);
    }
    const ids = (await openShelf({ base }).list()).map(({ id }) => id);
    expect(new Set(ids).size).toBe(60);
  });

  it('says at once that nothing can be kept, and asks before an edit is dropped', async () => {
    const forbidden = (shell: WkShell) => {
      shell.base = () => {
        throw new Error('storage is forbidden');
      };
    };
    await start('#', forbidden);
    await expect.element(page.getByText(/keeps nothing here/).first(), SOON).toBeVisible();
    const shell = await opened('#example=hill-farm-choice', forbidden);
    await expect.element(page.getByRole('status').getByText(/keeps nothing here/)).toBeVisible();
    expect(page.getByRole('button', { name: 'Save as file' }).elements().length).toBe(2);
    const leaving = () => {
      const event = new Event('beforeunload', { cancelable: true });
      dispatchEvent(event);
      return event.defaultPrevented;
    };
    expect(leaving()).toBe(false);
    shell.open?.edit(edited(example.text, 'Mine'), 'title');
    expect(leaving()).toBe(true);
    // It is not dropped on going home either.
    location.hash = '';
    await expect.element(page.getByRole('link', { name: /Mine/ }), SOON).toBeVisible();
    expect(leaving()).toBe(true);
  });

  it('says at once that storage is full, offers the file, and takes it up again when there is room', async () => {
    const real = base;
    let full = false;
    const error = () => Promise.reject(new DOMException('no room', 'QuotaExceededError'));
    base = {
      run: (work) => (full ? error() : real.run(work)),
      put: (key, value) => (full ? error() : real.put(key, value)),
    };
    const shell = await opened('#example=hill-farm-choice');
    shell.open?.edit(edited(example.text, 'One'), 'title');
    await expect.poll(() => shell.saved?.state, SOON).toBe('saved');
    full = true;
    shell.open?.edit(edited(example.text, 'Two'), 'title');
    await expect.element(page.getByText(/storage is full/), SOON).toBeVisible();
    expect(page.getByRole('button', { name: 'Save as file' }).elements().length).toBe(2);
    full = false;
    shell.open?.edit(edited(example.text, 'Three'), 'title');
    await expect.poll(() => shell.saved?.state, SOON).toBe('saved');
    base = real;
    expect(await found()).toEqual([edited(example.text, 'Three')]);
  });

  it('offers what could not be kept when its notebook has been left', async () => {
    const real = base;
    let full = false;
    base = {
      run: (work) => (full ? Promise.reject(new Error('full')) : real.run(work)),
      put: (key, value) => (full ? Promise.reject(new Error('full')) : real.put(key, value)),
    };
    const shell = await opened('#example=hill-farm-choice');
    full = true;
    shell.open?.edit(edited(example.text, 'Nearly lost'), 'title');
    location.hash = '';
    await expect.element(page.getByRole('alert').getByText(/Nearly lost/), SOON).toBeVisible();
    expect(shell.lost?.history.now.text).toBe(edited(example.text, 'Nearly lost'));
  });

  it('says that a part of the page could not be fetched, and offers to reload', async () => {
    document.body.replaceChildren();
    history.replaceState(null, '', '#example=hill-farm-choice');
    const shell = document.createElement('wk-shell');
    shell.base = memoryBase;
    const { fetchPage } = shell;
    shell.fetchPage = () => Promise.reject(new Error('Failed to fetch'));
    document.body.append(shell);
    await expect.element(page.getByRole('alert').getByText(/could not be fetched/), SOON).toBeVisible();
    await expect.element(page.getByRole('button', { name: 'Reload' })).toBeVisible();
    // The failed promise is forgotten.
    shell.fetchPage = fetchPage;
    location.hash = '#example=coast-lender-case';
    await expect.poll(() => shell.open?.notebook.value, SOON).toBeTruthy();
  });

  it('keeps the place on the page over a reload, and begins a new page at its top', async () => {
    await page.viewport(800, 700);
    const shell = await opened('#example=hill-farm-choice');
    await expect.poll(() => document.documentElement.scrollHeight, SOON).toBeGreaterThan(3000);
    await new Promise((resolve) => setTimeout(resolve, 300));
    scrollTo(0, 1400);
    await expect.poll(() => Math.round(scrollY), SOON).toBe(1400);
    await new Promise((resolve) => setTimeout(resolve, 100));
    document.body.replaceChildren();
    scrollTo(0, 0);
    expect(shell.isConnected).toBe(false);
    await opened();
    await expect.poll(() => Math.round(scrollY), SOON).toBe(1400);
    location.hash = '#example=coast-lender-case';
    await expect.poll(() => scrollY, SOON).toBe(0);
  });
});

describe('the list of kept notebooks', () => {
  async function withNotebooks(...titles: string[]): Promise<WkShell> {
    const shelf = openShelf({ base });
    for (const title of titles)
      await shelf.put(
        title.toLowerCase(),
        { title, history: startHistory(edited(example.text, title)) },
        { revision: 0, from: [] },
      );
    return start('#');
  }
  const row = (name: string) => page.getByRole('link', { name: new RegExp(name) });

  it('renames, copies, deletes and brings back', async () => {
    await withNotebooks('Alpha', 'Beta');
    await page.getByRole('button', { name: 'Rename Alpha' }).click();
    const field = page.getByRole('textbox', { name: 'New title of Alpha' });
    await userEvent.fill(field, 'Gamma: wet');
    await userEvent.keyboard('{Enter}');
    await expect.element(row('Gamma: wet'), SOON).toBeVisible();
    expect((await found()).filter((text) => /^title: .*Gamma: wet/m.test(text))).toHaveLength(1);

    await page.getByRole('button', { name: 'Copy Beta' }).click();
    await expect.element(row('Beta \\(copy\\)'), SOON).toBeVisible();
    expect((await found()).filter((text) => /^title: .*Beta \(copy\)/m.test(text))).toHaveLength(1);
    expect(await found()).toHaveLength(3);

    await page.getByRole('button', { name: 'Delete Beta', exact: true }).click();
    await expect.element(page.getByText('Deleted “Beta”.'), SOON).toBeVisible();
    expect(await found()).toHaveLength(2);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await found()).length, SOON).toBe(3);
    await expect.element(page.getByRole('button', { name: 'Delete Beta', exact: true })).toBeVisible();
  });

  it('has a file still open after a reload, and knows it when it is opened again', async () => {
    const shell = await start('#');
    const text = edited(example.text, 'From a file');
    const file = new File([text], 'my farm.md');
    shell.dispatchEvent(new CustomEvent('wk-file', { detail: file }));
    await expect.poll(() => shell.open?.text.value, SOON).toBe(text);
    const again = await opened();
    expect(again.open?.text.value).toBe(text);
    expect(again.open?.file).toBe('my farm.md');
    again.dispatchEvent(new CustomEvent('wk-file', { detail: file }));
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(await found()).toEqual([text]);
  });

  it('takes in notebooks, and says what is wrong with what is none', async () => {
    const shell = await start('#');
    const files = [new File([example.text], 'a.md'), new File([new Uint8Array([0, 1, 2, 255])], 'b.md')];
    shell.dispatchEvent(new CustomEvent('wk-import', { detail: files }));
    await expect.element(page.getByText('1 notebook is on the list.'), SOON).toBeVisible();
    await expect.element(page.getByText(/b\.md/).first()).toBeVisible();
    expect(await found()).toEqual([example.text]);
  });

  it.each([390, 1280])('has no accessibility violation and fits at %i', async (width) => {
    await page.viewport(width, 844);
    await withNotebooks('Alpha', 'A notebook with a title that goes on for longer than a phone is wide');
    await page.getByRole('button', { name: 'Rename Alpha' }).click();
    await page.getByRole('button', { name: /^Delete A notebook/ }).click();
    await expect.element(page.getByText(/^Deleted/), SOON).toBeVisible();
    expect(await faults()).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });
});
