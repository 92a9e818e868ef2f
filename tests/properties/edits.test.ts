import { describe, expect, it } from 'vitest';
import { type ReadResult, readNotebook } from '../../src/notebook/read.ts';
import { push, startHistory, undo } from '../../src/store/history.ts';
import { stream } from '../../src/units/random.ts';
import { anEdit } from '../notebook/randomEdits.ts';
import { SMALL } from '../notebook/small.ts';

const SEEDS = 100;
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

describe(`${EDITS} random edits`, () => {
  it.each(Array.from({ length: SEEDS }, (_, k) => k + 1))(
    'always read, and undone give the same bytes: seed %i',
    (seed) => {
      const next = stream(seed, 'edits');
      const start = seed % 5 === 0 ? SMALL.replace(/\n/g, '\r\n') : SMALL;
      let history = startHistory(start);
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
        history = push(history, edited);
      }
      expect(made).toBe(EDITS);
      expect(refused).toBeLessThan(EDITS * 2);
      for (let k = 0; k < EDITS; k++) history = undo(history);
      expect(history.now.text).toBe(start);
      expect(history.past).toEqual([]);
    },
  );
});
