// What is remembered of a kept notebook's reading, and when it is not taken.
import { signal } from '@preact/signals-core';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Notebook } from '../../src/notebook/read.ts';
import { memoryBase } from '../../src/store/base.ts';
import { startHistory } from '../../src/store/history.ts';
import { aheadKey, findAhead, keepAhead, whenStill } from '../../src/store/keptAhead.ts';
import type { OpenNotebook } from '../../src/store/opening.ts';
import { openShelf } from '../../src/store/shelf.ts';
import type { Ahead } from '../../src/study/ahead.ts';

const ahead = { winters: [], winterIndex: [0] } as unknown as Ahead;
const of = { id: 'mine', text: 'as it stands', build: 'one' };

describe('a reading that is remembered', () => {
  it('is found for the same text of the same notebook by the same build', async () => {
    const base = memoryBase();
    await keepAhead(base, of, ahead);
    expect(await findAhead(base, of)).toEqual(ahead);
  });

  it.each([
    ['another text', { text: 'as it stood' }],
    ['another notebook', { id: 'yours' }],
    ['another build', { build: 'two' }],
  ])('is nothing for %s', async (_, other) => {
    const base = memoryBase();
    await keepAhead(base, of, ahead);
    expect(await findAhead(base, { ...of, ...other })).toBeUndefined();
  });

  it('is kept of twenty notebooks: the one read longest ago falls off', async () => {
    const base = memoryBase();
    for (let k = 0; k < 20; k++) await keepAhead(base, { ...of, id: `n${k}` }, ahead);
    await keepAhead(base, { ...of, id: 'n0' }, ahead);
    await keepAhead(base, { ...of, id: 'one more' }, ahead);
    expect(await findAhead(base, { ...of, id: 'n1' })).toBeUndefined();
    expect(await findAhead(base, { ...of, id: 'n0' })).toEqual(ahead);
    expect(await base.run((t) => t.keys('ahead:'))).toHaveLength(20);
  });

  it('goes with the notebook when that is deleted', async () => {
    const base = memoryBase();
    const shelf = openShelf({ base });
    await shelf.put('mine', { title: 'Mine', history: startHistory(of.text) }, { revision: 0, from: [] });
    await keepAhead(base, of, ahead);
    await shelf.remove('mine');
    expect(await base.run((t) => t.get(aheadKey('mine')))).toBeUndefined();
  });
});

describe('a notebook that stands still', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('is read once for each text that was read soundly and stood for two seconds', () => {
    const text = signal('a');
    const notebook = signal<Notebook | undefined>(undefined);
    const read: string[] = [];
    const stop = whenStill(
      { text, notebook } as unknown as OpenNotebook,
      (each) => void read.push(each.text),
    );
    const sound = (words: string) => {
      text.value = words;
      notebook.value = { text: words } as Notebook;
    };
    vi.advanceTimersByTime(3000);
    expect(read).toEqual([]);
    sound('b');
    vi.advanceTimersByTime(1500);
    sound('c');
    vi.advanceTimersByTime(1500);
    expect(read).toEqual([]);
    vi.advanceTimersByTime(600);
    expect(read).toEqual(['c']);
    text.value = 'at fault';
    vi.advanceTimersByTime(3000);
    sound('d');
    stop();
    vi.advanceTimersByTime(3000);
    expect(read).toEqual(['c']);
  });
});
