import { describe, expect, it } from 'vitest';
import {
  addCell,
  addProse,
  movePart,
  removePart,
  setOptions,
  setProse,
} from '../../src/notebook/bodyEdits.ts';
import { fieldsOf } from '../../src/notebook/cellForm.ts';
import { CELL_KINDS, CELL_OPTIONS } from '../../src/notebook/cells.ts';
import { CELL_WORDS } from '../../src/notebook/cellWords.ts';
import type { Edited, Editing } from '../../src/notebook/edit.ts';
import { partsOf } from '../../src/notebook/parts.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { shipped } from './shipped.ts';
import { SMALL } from './small.ts';

const at = (text: string): Editing => ({ text, file: 'n.md', read: readNotebook });
const done = (edited: Edited): string => {
  if ('refused' in edited) throw new Error(`${edited.refused.what}: ${edited.refused.found}`);
  return edited.text;
};
const refusal = (edited: Edited) => {
  if ('text' in edited) throw new Error(`was not refused: ${edited.what}`);
  return edited.refused;
};
const parts = (text: string) => {
  const { notebook, problems } = readNotebook(text, 'n.md');
  expect(problems).toEqual([]);
  return partsOf(notebook?.blocks ?? []);
};
const words = (text: string) => parts(text).map(({ from, to }) => text.slice(from, to));
const FRONT = SMALL.slice(0, SMALL.indexOf('# Words'));
const body = (text: string) => `${FRONT}${text}`;

describe('parts of the body', () => {
  it('are its paragraphs, lists and cells, exactly as they are written', () => {
    expect(words(SMALL)).toEqual([
      '# Words',
      'The bed keeps `=nitrogenKeptKg of Deep bed`,\nof `=nitrogenExcretedKg` dropped; `code` is code.',
      '```ledger\nelement: nitrogen\n```',
      '```js\nnotACell()\n```',
      '- a list with a fence that is no cell\n\n  ```cards\n  ```',
      '```sweep with a word after it\nover: rainFactor\nmeasure: netCost\n```',
    ]);
  });

  it('leave nothing of a shipped notebook but empty lines between them', () => {
    for (const { text } of shipped) {
      let end = -1;
      for (const { from, to } of parts(text)) {
        if (end >= 0) expect(text.slice(end, from).trim()).toBe('');
        end = to;
      }
      expect(text.slice(end).trim()).toBe('');
    }
  });
});

describe('cells', () => {
  it.each(CELL_KINDS)('adds a %s that reads, behind every part of a notebook and before all', (kind) => {
    for (let behind = -1; behind < parts(SMALL).length; behind++) {
      const next = done(addCell(at(SMALL), behind, kind, CELL_WORDS[kind].start));
      const added = parts(next)[behind + 1];
      expect(added.block).toMatchObject({ type: 'cell', kind });
      // Nothing but the cell and empty lines has come, and taking it out leaves what was there.
      const without = next.slice(0, added.from) + next.slice(added.to);
      expect(without.replace(/\n+/g, '\n').trimEnd()).toBe(SMALL.replace(/\n+/g, '\n').trimEnd());
      expect(next.slice(0, added.from)).toMatch(/\n\n$/);
      expect(next.slice(added.to)).toMatch(/^(\n\n|\n$)/);
    }
  });

  it('changes one option of a cell and leaves comments and the rest', () => {
    const text = `${SMALL}\n\`\`\`compare\n# which way\nmeasure: netCost # a year\nscenarios: [Paddock]\n\`\`\`\n`;
    const place = parts(text).length - 1;
    const next = done(setOptions(at(text), place, { measure: 'labourHours', caption: 'Hours: all' }));
    expect(next).toContain(
      '# which way\nmeasure: labourHours # a year\nscenarios: [Paddock]\ncaption: "Hours: all"\n',
    );
    const fewer = done(setOptions(at(next), place, { scenarios: undefined, caption: undefined }));
    expect(fewer).toBe(text.replace('netCost #', 'labourHours #').replace('scenarios: [Paddock]\n', ''));
  });

  it('takes the last option out, and writes the first', () => {
    const none = done(setOptions(at(SMALL), 2, { element: undefined }));
    expect(none).toBe(SMALL.replace('element: nitrogen\n', ''));
    expect(done(setOptions(at(none), 2, { element: 'nitrogen' }))).toBe(SMALL);
  });

  it('refuses an option the cell does not know, in words of the reader', () => {
    expect(refusal(setOptions(at(SMALL), 2, { element: 'gold' }))).toMatchObject({
      allowed: 'one of nitrogen, phosphorus, potassium',
    });
  });

  it('moves past the paragraph before it and back', () => {
    const up = done(movePart(at(SMALL), 2, -1));
    expect(words(up)[1]).toContain('```ledger');
    expect(up.length).toBe(SMALL.length);
    expect(done(movePart(at(up), 1, 1))).toBe(SMALL);
    expect(done(movePart(at(SMALL), 0, -1))).toBe(SMALL);
  });

  it('is taken out with the empty line behind it', () => {
    expect(done(removePart(at(SMALL), 2))).toBe(SMALL.replace('```ledger\nelement: nitrogen\n```\n\n', ''));
  });

  it('refuses a place where a cell would be swallowed', () => {
    const text = body('# A\n\n```bed\n```\n\nWords\n\n```plain\nnever closed');
    expect(refusal(addCell(at(text), parts(text).length - 1, 'ledger', {})).what).toContain('part of them');
    expect(refusal(movePart(at(text), 2, 1)).what).toContain('part of them');
  });

  it('can be taken out where it cannot be read', () => {
    const text = body('# A\n\n```bed\nshow: nothing\n```\n');
    const { notebook } = readNotebook(text, 'n.md');
    expect(notebook?.blocks.map(({ type }) => type)).toEqual(['prose', 'broken']);
    expect(done(removePart(at(text), 1))).toBe(body('# A\n'));
  });
});

describe('prose', () => {
  it('sets a paragraph and nothing else; an empty line makes two', () => {
    const next = done(setProse(at(SMALL), 1, '\n\nFirst.\n\nSecond, `=netCost of Paddock`.\n'));
    const [start, end] = [SMALL.indexOf('The bed keeps'), SMALL.indexOf('\n\n```ledger')];
    expect(next).toBe(
      `${SMALL.slice(0, start)}First.\n\nSecond, \`=netCost of Paddock\`.${SMALL.slice(end)}`,
    );
    expect(words(next)).toHaveLength(words(SMALL).length + 1);
  });

  it('is taken out when nothing is left of it', () => {
    expect(words(done(setProse(at(SMALL), 1, '  \n')))).toHaveLength(words(SMALL).length - 1);
  });

  it('keeps apart what an empty line kept apart, and what a heading did', () => {
    const text = body('# A\nwords\n\n```bed\n```\nmore\n');
    expect(words(done(setProse(at(text), 0, 'plain words')))).toEqual([
      'plain words',
      'words',
      '```bed\n```',
      'more',
    ]);
    const added = done(addProse(at(text), 2, 'new\n\nwords'));
    expect(words(added)).toEqual(['# A', 'words', '```bed\n```', 'new', 'words', 'more']);
    expect(words(done(addProse(at(text), -1, 'first')))[0]).toBe('first');
  });

  it('refuses what would hide a cell, and a value of no scenario, with the reason', () => {
    expect(refusal(setProse(at(SMALL), 1, 'words\n\n```')).todo).toContain('three backticks');
    expect(refusal(setProse(at(SMALL), 1, '`=netCost of Nobody`'))).toMatchObject({
      what: 'no scenario has this name',
      found: '"Nobody"',
    });
  });

  it('takes the line ends of the file', () => {
    const crlf = SMALL.replace(/\n/g, '\r\n');
    const next = done(setProse(at(crlf), 1, 'one\n\ntwo'));
    expect(next).toContain('one\r\n\r\ntwo\r\n');
    expect(next.replace(/\r\n/g, '')).not.toContain('\n');
  });
});

describe('the form of a cell', () => {
  it.each(CELL_KINDS)('has a field for every option of %s, and starts it soundly', (kind) => {
    const fields = fieldsOf(kind);
    expect(fields.map(({ key }) => key).sort()).toEqual(Object.keys(CELL_OPTIONS[kind].shape).sort());
    // Nothing in the list of words may be without its words.
    for (const { key, label } of fields) expect(label).not.toBe(key);
    const { start } = CELL_WORDS[kind];
    expect(CELL_OPTIONS[kind].safeParse(start).success).toBe(true);
    for (const { key, required } of fields) if (required) expect(start).toHaveProperty(key);
  });

  it('reads limits, choices and defaults off the schema', () => {
    const of = (kind: 'sweep' | 'flip' | 'bed', key: string) =>
      fieldsOf(kind).find((field) => field.key === key);
    expect(of('sweep', 'steps')).toMatchObject({ type: 'number', whole: true, low: 2, high: 201, start: 41 });
    expect(of('sweep', 'from')).toMatchObject({ type: 'number', low: undefined, high: undefined });
    expect(of('flip', 'between')).toMatchObject({ type: 'scenario', many: 'pair', required: false });
    expect(of('bed', 'show')).toMatchObject({ type: 'choice', start: 'depth' });
  });
});
