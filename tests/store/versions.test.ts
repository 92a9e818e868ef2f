/** A version a day: kept, bounded, listed, and gone with its notebook. */
import { describe, expect, it } from 'vitest';
import { autosave } from '../../src/store/autosave.ts';
import { type Base, memoryBase } from '../../src/store/base.ts';
import { type History, push, startHistory } from '../../src/store/history.ts';
import { entryKey, startEntry, stepEntry } from '../../src/store/journal.ts';
import { openShelf, type Shelf } from '../../src/store/shelf.ts';
import { dayHere, MOST_DAYS } from '../../src/store/versions.ts';

const DAY = 86_400_000;
const NOON = Date.UTC(2026, 2, 1, 12);

interface Clocked {
  readonly base: Base;
  readonly shelf: Shelf;
  now: number;
}
function clocked(): Clocked {
  const base = memoryBase();
  const clock: Clocked = { base, now: NOON, shelf: openShelf({ base, now: () => clock.now }) };
  return clock;
}
const edit = (history: History, text: string) => push(history, { text, what: 'typing' });
/** Keeps a text as a tab does that has seen what is there. */
async function keep({ shelf }: Clocked, text: string): Promise<void> {
  const there = await shelf.get('one');
  await shelf.put(
    'one',
    { title: `t ${text}`, history: startHistory(text) },
    { revision: there?.revision ?? 0, from: [] },
  );
}
const kept = async ({ shelf }: Clocked) =>
  Promise.all(
    (await shelf.versions('one')).map(async ({ day }) => `${day} ${await shelf.versionText('one', day)}`),
  );

describe('a version a day', () => {
  it('is the notebook as it stood when the day was over', async () => {
    const clock = clocked();
    await keep(clock, 'a');
    await keep(clock, 'b');
    expect(await kept(clock)).toEqual([]);
    clock.now += DAY;
    await keep(clock, 'c');
    expect(await kept(clock)).toEqual(['2026-03-01 b']);
    await keep(clock, 'd');
    clock.now += 3 * DAY;
    await keep(clock, 'e');
    expect(await kept(clock)).toEqual(['2026-03-02 d', '2026-03-01 b']);
    const [newest] = await clock.shelf.versions('one');
    expect(newest).toEqual({ day: '2026-03-02', at: NOON + DAY, title: 't d', letters: 1 });
  });

  it('is not kept twice where nothing was changed', async () => {
    const clock = clocked();
    for (let day = 0; day < 5; day++) {
      await keep(clock, 'same');
      clock.now += DAY;
    }
    expect(await kept(clock)).toEqual([]);
    await keep(clock, 'other');
    expect(await kept(clock)).toEqual(['2026-03-05 same']);
    clock.now += DAY;
    await keep(clock, 'same');
    clock.now += DAY;
    await keep(clock, 'last');
    expect(await kept(clock)).toEqual(['2026-03-07 same', '2026-03-06 other', '2026-03-05 same']);
  });

  it('falls off after thirty, text and all', async () => {
    const clock = clocked();
    for (let day = 0; day < MOST_DAYS + 12; day++) {
      await keep(clock, `text ${day}`);
      clock.now += DAY;
    }
    const list = await clock.shelf.versions('one');
    expect(list).toHaveLength(MOST_DAYS);
    expect(list[0].day).toBe(dayHere(clock.now - 2 * DAY));
    const keys = await clock.base.run((t) => t.keys('version:one/'));
    expect(keys).toHaveLength(MOST_DAYS);
    expect(await clock.shelf.versionText('one', '2026-03-01')).toBeUndefined();
  });

  it('falls off sooner where texts are very long, but the newest stays', async () => {
    const clock = clocked();
    for (let day = 0; day < 6; day++) {
      await keep(clock, `${day}`.repeat(5_000_000));
      clock.now += DAY;
    }
    expect((await clock.shelf.versions('one')).map(({ day }) => day)).toEqual([
      '2026-03-05',
      '2026-03-04',
      '2026-03-03',
    ]);
  });

  it('is found in a journal that reaches over midnight, whoever folds it', async () => {
    for (const byTab of [true, false]) {
      const clock = clocked();
      await keep(clock, 'begun');
      const there = await clock.shelf.get('one');
      const basis = { revision: there?.revision ?? 0, from: [] };
      let history = startHistory('begun');
      await clock.shelf.append('one', 'tab', 0, startEntry({ title: 't', history }, basis, NOON));
      const steps = [
        [1, 'first day'],
        [DAY - 60_000, 'second morning'],
        [DAY, 'second noon'],
        [3 * DAY, 'fourth'],
      ] as const;
      for (const [k, [later, text]] of steps.entries()) {
        const before = history;
        history = edit(history, text);
        await clock.shelf.append(
          'one',
          'tab',
          k + 1,
          stepEntry(before, { title: 't', history }, NOON + later),
        );
      }
      clock.now = NOON + 3 * DAY + 10 * 60_000;
      if (byTab) await clock.shelf.put('one', { title: 't', history }, basis, { tab: 'tab' });
      else await clock.shelf.list();
      expect((await clock.shelf.get('one'))?.text).toBe('fourth');
      expect(await kept(clock)).toEqual(['2026-03-02 second noon', '2026-03-01 first day']);
      expect(await clock.base.run((t) => t.keys(entryKey('one', 'tab', 0).slice(0, 9)))).toEqual([]);
    }
  });

  it('comes about by saving as the page saves', async () => {
    const clock = clocked();
    await keep(clock, 'yesterday');
    clock.now += DAY;
    const there = await clock.shelf.get('one');
    const save = autosave(clock.shelf, {
      id: 'one',
      revision: there?.revision ?? 0,
      history: startHistory('yesterday'),
      channel: { postMessage() {}, addEventListener() {}, removeEventListener() {} },
      onState() {},
      onOther() {},
    });
    save.changed('t', edit(startHistory('yesterday'), 'today'));
    expect(await save.stop()).toBeUndefined();
    expect(await kept(clock)).toEqual(['2026-03-01 yesterday']);
  });

  it('goes with its notebook, comes back with it, and is none of a copy’s', async () => {
    const clock = clocked();
    await keep(clock, 'a');
    clock.now += DAY;
    await keep(clock, 'b');
    const before = await kept(clock);
    const copied = (await clock.shelf.copy('one')) ?? '';
    expect(await clock.shelf.versions(copied)).toEqual([]);
    const removed = await clock.shelf.remove('one');
    expect(await clock.base.run((t) => t.keys('version'))).toEqual([]);
    if (removed) await clock.shelf.restore(removed);
    expect(await kept(clock)).toEqual(before);
    expect(before).toEqual(['2026-03-01 a']);
    expect(await clock.shelf.get('one')).not.toHaveProperty('versions');
  });
});
