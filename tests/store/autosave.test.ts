import { describe, expect, it } from 'vitest';
import { autosave, type Channel, type Saved } from '../../src/store/autosave.ts';
import { type Base, memoryBase } from '../../src/store/base.ts';
import { push, startHistory, undo } from '../../src/store/history.ts';
import { historyOf, openShelf, type Shelf, type Word } from '../../src/store/shelf.ts';

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** A channel as the browser's: everyone hears it but the one who speaks. */
function room() {
  const all: { listeners: Set<(event: MessageEvent<Word>) => void> }[] = [];
  return (): Channel => {
    const mine = { listeners: new Set<(event: MessageEvent<Word>) => void>() };
    all.push(mine);
    return {
      postMessage(data) {
        for (const each of all)
          if (each !== mine) for (const hear of each.listeners) hear({ data } as MessageEvent<Word>);
      },
      addEventListener: (_, hear) => void mine.listeners.add(hear),
      removeEventListener: (_, hear) => void mine.listeners.delete(hear),
    };
  };
}

interface Opened {
  readonly save: ReturnType<typeof autosave>;
  readonly states: Saved[];
  type(text: string): void;
  readonly others: () => number;
}

async function open(shelf: Shelf, channel = room()(), delayMs = 20): Promise<Opened> {
  const kept = await shelf.get('one');
  let history = kept ? historyOf(kept) : startHistory('start');
  let others = 0;
  const states: Saved[] = [];
  const save = autosave(shelf, {
    id: 'one',
    revision: kept?.revision ?? 0,
    history,
    channel,
    delayMs,
    onOther: () => void others++,
    onState: (s) => void states.push(s),
  });
  return {
    save,
    states,
    others: () => others,
    type(text) {
      history = push(history, { text, what: 'typing' });
      save.changed('t', history);
    },
  };
}

/** What would be found after the browser was killed now. */
const found = async (base: Base) => (await openShelf({ base }).get('one'))?.text;

describe('autosave', () => {
  it('keeps the first change at once and the last of many soon', async () => {
    const base = memoryBase();
    const { type, states } = await open(openShelf({ base }));
    type('a');
    await pause(0);
    expect(await found(base)).toBe('a');
    for (const text of ['ab', 'abc', 'abcd']) type(text);
    await pause(60);
    expect(await found(base)).toBe('abcd');
    expect(states.at(-1)?.state).toBe('saved');
  });

  it('keeps up with a typist who never pauses', async () => {
    const base = memoryBase();
    const { type } = await open(openShelf({ base }));
    let text = '';
    for (let k = 0; k < 40; k++) {
      text += 'x';
      type(text);
      await pause(5);
    }
    const late = text.length - ((await found(base))?.length ?? 0);
    expect(late).toBeLessThan(30);
    expect(late).toBeGreaterThanOrEqual(0);
    await pause(60);
    expect((await found(base))?.length).toBe(40);
  });

  it('has undo steps after a reload, also after a kill in the middle', async () => {
    const base = memoryBase();
    const { type } = await open(openShelf({ base }));
    for (const text of ['a', 'ab', 'abc', 'abcd']) {
      type(text);
      await pause(25);
    }
    const kept = await openShelf({ base }).get('one');
    let history = historyOf(kept as NonNullable<typeof kept>);
    const texts = [history.now.text];
    while (history.past.length > 0) {
      history = undo(history);
      texts.push(history.now.text);
    }
    expect(texts).toEqual(['abcd', 'abc', 'ab', 'a', 'start']);
  });

  it('has the later steps where they lead back to the text a killed tab left', async () => {
    const base = memoryBase();
    const killed = await open(openShelf({ base }));
    killed.type('a');
    await pause(5);
    const shelf = openShelf({ base });
    const next = await open(shelf);
    next.type('ab');
    next.type('a');
    await pause(5);
    await next.save.stop();
    const kept = await openShelf({ base }).get('one');
    expect(kept?.text).toBe('a');
    expect(kept?.past).toHaveLength(3);
  });

  it('asks for all to be kept when the page goes, without waiting', async () => {
    const base = memoryBase();
    const { type, save } = await open(openShelf({ base }), room()(), 10_000);
    type('first');
    await pause(5);
    type('last words');
    save.hurry();
    await pause(0);
    expect(await found(base)).toBe('last words');
  });

  it('goes on after it hurried', async () => {
    const base = memoryBase();
    const { type, save } = await open(openShelf({ base }), room()(), 5);
    type('one');
    await pause(20);
    type('one two');
    save.hurry();
    type('one two three');
    await pause(20);
    type('one two three four');
    await pause(20);
    expect(await found(base)).toBe('one two three four');
  });

  it('says that it could not save, keeps the words and tries again', async () => {
    const inner = memoryBase();
    let broken = true;
    const full = Object.assign(new Error('no room'), { name: 'QuotaExceededError' });
    const base: Base = {
      run: (work) => (broken ? Promise.reject(full) : inner.run(work)),
      put: (...args) => (broken ? Promise.reject(full) : inner.put(...args)),
    };
    const shelf = openShelf({ base });
    const states: Saved[] = [];
    const save = autosave(shelf, {
      id: 'one',
      revision: 0,
      history: startHistory(''),
      channel: room()(),
      onOther() {},
      onState: (s) => void states.push(s),
    });
    save.changed('t', push(startHistory(''), { text: 'text', what: 'typing' }));
    await save.flush();
    expect(states.at(-1)).toMatchObject({
      state: 'failed',
      words: expect.stringContaining('storage is full'),
    });
    expect(save.behind).toBe(true);
    broken = false;
    await save.flush();
    expect((await shelf.get('one'))?.text).toBe('text');
    expect(save.behind).toBe(false);
  });

  it('gives back what it could not keep when it is stopped, and says nothing more', async () => {
    const base: Base = { ...memoryBase(), run: () => Promise.reject(new Error('forbidden')) };
    const states: Saved[] = [];
    const save = autosave(openShelf({ base }), {
      id: 'one',
      revision: 0,
      history: startHistory(''),
      channel: room()(),
      onOther() {},
      onState: (s) => void states.push(s),
    });
    save.changed('t', push(startHistory(''), { text: 'text', what: 'typing' }));
    expect((await save.stop())?.history.now.text).toBe('text');
    expect(states.filter(({ state }) => state === 'failed')).toEqual([]);
  });

  it('keeps both texts of two tabs, whatever the order of their steps', async () => {
    for (let round = 0; round < 30; round++) {
      const base = memoryBase();
      const channels = room();
      const shelf = openShelf({ base });
      const first = await open(shelf, channels());
      first.type('common');
      await first.save.stop();
      const [a, b] = await Promise.all([open(shelf, channels()), open(shelf, channels())]);
      a.type('from a');
      b.type('from b');
      if (round % 3 === 1) await pause(round);
      await Promise.all(round % 2 ? [a.save.stop(), b.save.stop()] : [b.save.stop(), a.save.stop()]);
      const texts = await Promise.all(
        (await shelf.list()).map(async ({ id }) => (await shelf.get(id))?.text),
      );
      expect(texts.sort()).toEqual(['from a', 'from b']);
      expect(new Set((await shelf.list()).map(({ id }) => id)).size).toBe(2);
    }
  });

  it('goes on when another tab has taken its journal in', async () => {
    const base = memoryBase();
    const channels = room();
    const shelf = openShelf({ base });
    const a = await open(shelf, channels());
    a.type('1');
    await pause(25);
    a.type('1 2');
    await pause(25);
    expect((await shelf.get('one'))?.text).toBe('1 2');
    a.type('1 2 3');
    await pause(25);
    a.type('1 2 3 4');
    await pause(25);
    expect((await shelf.get('one'))?.text).toBe('1 2 3 4');
    await a.save.stop();
    expect(await shelf.list()).toHaveLength(1);
  });

  it('loses neither text when a third tab looks at two that disagree', async () => {
    const shelf = openShelf({ base: memoryBase() });
    const first = await open(shelf);
    first.type('common');
    await first.save.stop();
    const [a, b] = [await open(shelf), await open(shelf)];
    a.type('from a');
    await pause(25);
    b.type('from b');
    await b.save.stop();
    await shelf.list();
    await shelf.list();
    a.type('from a, and more');
    await a.save.stop();
    const texts = await Promise.all((await shelf.list()).map(async ({ id }) => (await shelf.get(id))?.text));
    expect(texts).toContain('from b');
    expect(texts).toContain('from a, and more');
    expect(texts.length).toBeLessThanOrEqual(3);
  });

  it('tells a tab that another has saved', async () => {
    const channels = room();
    const shelf = openShelf({ base: memoryBase() });
    const [a, b] = [await open(shelf, channels()), await open(shelf, channels())];
    a.type('x');
    await a.save.flush();
    expect(b.others()).toBeGreaterThan(0);
    expect(a.others()).toBe(0);
  });
});
