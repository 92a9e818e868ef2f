import { describe, expect, it } from 'vitest';
import { type ReadResult, readNotebook } from '../../src/notebook/read.ts';
import { type Autosave, autosave, type Channel } from '../../src/store/autosave.ts';
import { memoryBase } from '../../src/store/base.ts';
import { type History, push, startHistory, undo } from '../../src/store/history.ts';
import { historyOf, openShelf } from '../../src/store/shelf.ts';
import { stream } from '../../src/units/random.ts';
import { anEdit } from '../notebook/randomEdits.ts';
import { SMALL } from '../notebook/small.ts';

/** The last of them once lost steps of the undo: an edit and its reverse lead to a text that an earlier load of the page left. */
const SEEDS = [...Array.from({ length: 19 }, (_, k) => k + 1), 98];
const EDITS = 200;

/** The same text is read again and again: by the edit before and by the one after it. */
const known = new Map<string, ReadResult>();
function read(text: string, file: string): ReadResult {
  const found = known.get(text) ?? readNotebook(text, file);
  if (known.size > 8) known.clear();
  known.set(text, found);
  return found;
}

/** What the operations never say, since it would be their own fault and not the keeper's. */
const OUR_FAULT = /could not be written|cannot be read as it stands/;

/** Nobody else has the notebook open. */
const ALONE: Channel = { postMessage() {}, addEventListener() {}, removeEventListener() {} };

/** A browser that keeps one notebook: a step is told to it, and a reload gives back what the shelf then holds. */
function browser(first: History) {
  const base = memoryBase();
  let save: Autosave | undefined;
  const start = (history: History, revision: number) => {
    save = autosave(openShelf({ base }), {
      id: 'one', revision, history, channel: ALONE, delayMs: 1, onState() {}, onOther() {},
    }); // biome-ignore format: one opening
  };
  start(first, 0);
  return {
    step: (now: History) => save?.changed('t', now),
    /** The page goes as it does when it is closed, or after it has folded all, and another takes its place. */
    async reload(folded: boolean): Promise<History> {
      if (folded) await save?.stop();
      else save?.hurry();
      await new Promise((resolve) => setTimeout(resolve, 0));
      const kept = await openShelf({ base }).get('one');
      if (!kept) throw new Error('nothing is kept');
      const history = historyOf(kept);
      start(history, kept.revision);
      return history;
    },
  };
}

describe(`${EDITS} random edits`, () => {
  it.each(SEEDS)('always read, and undone give the same bytes, across reloads: seed %i', async (seed) => {
    const next = stream(seed, 'edits');
    const start = seed % 5 === 0 ? SMALL.replace(/\n/g, '\r\n') : SMALL;
    let history = startHistory(start);
    const page = browser(history);
    let reloads = 0;
    const chance = stream(seed, 'reloads');
    const step = async (later: History) => {
      page.step(later);
      if (chance() > 0.05) return later;
      reloads++;
      const again = await page.reload(chance() < 0.5);
      expect(again.now.text).toBe(later.now.text);
      expect(again.past.length).toBe(later.past.length);
      return again;
    };
    let [made, refused] = [0, 0];
    for (let tries = 0; made < EDITS && tries < EDITS * 4; tries++) {
      const { text } = history.now;
      const { notebook } = read(text, 'n.md');
      if (!notebook) throw new Error('cannot be read');
      const edited = anEdit({ text, file: 'n.md', read }, notebook, next);
      if ('refused' in edited) {
        refused++;
        expect(`${edited.refused.what}: ${edited.refused.found}`).not.toMatch(OUR_FAULT);
        continue;
      }
      expect(edited.what).not.toBe('');
      if (edited.text === text) continue;
      made++;
      expect(read(edited.text, 'n.md').problems).toEqual([]);
      expect(edited.text).toContain("invented: true # nobody's");
      expect(edited.text).toContain('# counted in October');
      history = await step(push(history, edited));
    }
    expect(made).toBe(EDITS);
    expect(refused).toBeLessThan(EDITS * 2);
    for (let k = 0; k < EDITS; k++) history = await step(undo(history));
    expect(reloads).toBeGreaterThan(3);
    expect(history.now.text).toBe(start);
    expect(history.past).toEqual([]);
  });
});
