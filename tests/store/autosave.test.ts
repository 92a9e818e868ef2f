import { describe, expect, it } from 'vitest';
import { autosave, type Saved } from '../../src/store/autosave.ts';
import { memoryShelf, type Shelf } from '../../src/store/shelf.ts';

/** A channel that goes nowhere: node's own would keep the test process alive. */
const quiet = () => ({ postMessage() {}, close() {}, onmessage: null }) as unknown as BroadcastChannel;

const open = (shelf: Shelf, states: Saved[] = []) =>
  autosave(shelf, {
    id: 'one',
    revision: 0,
    delayMs: 5,
    channel: quiet(),
    onOther() {},
    onState: (s) => states.push(s),
  });

describe('autosave', () => {
  it('saves only the last of many changes', async () => {
    const shelf = memoryShelf();
    const save = open(shelf);
    for (const text of ['a', 'ab', 'abc']) save.changed('t', text);
    await save.flush();
    expect(await shelf.get('one')).toMatchObject({ text: 'abc', revision: 1 });
  });

  it('keeps what could not be saved and tries again', async () => {
    const inner = memoryShelf();
    let broken = true;
    const shelf: Shelf = {
      ...inner,
      put: (...args) => (broken ? Promise.reject(new Error('full')) : inner.put(...args)),
    };
    const states: Saved[] = [];
    const save = open(shelf, states);
    save.changed('t', 'text');
    await save.flush();
    expect(states.at(-1)).toMatchObject({ state: 'failed', words: expect.stringContaining('full') });
    broken = false;
    await save.flush();
    expect((await shelf.get('one'))?.text).toBe('text');
  });
});
