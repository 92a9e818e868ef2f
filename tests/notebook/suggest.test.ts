/** What the text editor offers, held against what the reader takes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CELL_KINDS } from '../../src/notebook/cells.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { type NamesToSuggest, suggestionsAt } from '../../src/notebook/suggest.ts';
import { shipped } from './shipped.ts';

const names: NamesToSuggest = {
  results: [{ word: 'netCost', tells: '' }],
  inputs: [{ word: 'headCount', tells: '' }],
  scenarios: ['Paddock', 'Beds, deep'],
};
/** Words offered where `|` stands. */
const at = (marked: string) => {
  const place = marked.indexOf('|');
  const found = suggestionsAt(marked.replace('|', ''), place, names);
  return { from: found?.from, words: found?.list.map(({ word }) => word) ?? [] };
};

const FRONT = `---
winterkeep: 1
title: A farm
farm:
  soil: { texture: loam }
  herd:
    - { name: cows, class: sucklerCow, head: 20 }
scenarios:
  - name: Paddock
    system: outwintered
`;

describe('what is offered', () => {
  it('is keys of the map the cursor stands in, without those that are there', () => {
    const { words } = at(`${FRONT.replace('farm:\n', 'farm:\n  la|\n')}---\n`);
    expect(words).toContain('land:');
    expect(words).not.toContain('soil:');
    expect(words).not.toContain('herd:');
    expect(at(`${FRONT}    ex|\n---\n`).words).toContain('exposure: ');
    expect(at(`${FRONT}    ex|\n---\n`).words).not.toContain('system: ');
    expect(at(`${FRONT}|\n---\n`).words).toEqual(expect.arrayContaining(['decide:', 'view: ']));
  });

  it('is keys and words between braces', () => {
    const inSoil = at(`${FRONT.replace('{ texture: loam }', '{ texture: loam, ro| }')}---\n`);
    expect(inSoil.words).toContain('rootDepthMm: ');
    expect(inSoil.words).not.toContain('texture: ');
    expect(at(`${FRONT.replace('texture: loam', 'texture: lo|')}---\n`).words).toContain('loamySand');
    expect(at(`${FRONT.replace('class: sucklerCow', 'class: |')}---\n`).words).toContain('bull');
    expect(at(`${FRONT.replace(', head: 20', ', |')}---\n`).words).toContain('weightKg: ');
  });

  it('is the words that a key allows', () => {
    expect(at(`${FRONT.replace('outwintered', 'de|')}---\n`).words).toEqual(
      expect.arrayContaining(['outwintered', 'slatted', 'deep-bedded']),
    );
    expect(at(`${FRONT}invented: |\n---\n`).words).toEqual(['true', 'false']);
    expect(at(`${FRONT}    finance: { baseline: | }\n---\n`).words).toEqual(['Paddock', '"Beds, deep"']);
  });

  it('is cells, their options and what those may name', () => {
    expect(at(`${FRONT}---\n\n\`\`\`sw|\n`).words).toEqual(CELL_KINDS);
    expect(at(`${FRONT}---\n\n\`\`\`sweep\nover: headCount\n|\n\`\`\`\n`).words).toContain('measure: ');
    expect(at(`${FRONT}---\n\n\`\`\`sweep\nover: headCount\n|\n\`\`\`\n`).words).not.toContain('over: ');
    expect(at(`${FRONT}---\n\n\`\`\`sweep\nover: he|\n\`\`\`\n`).words).toEqual(['headCount']);
    expect(at(`${FRONT}---\n\n\`\`\`cards\nmeasures: [netCost, |]\n\`\`\`\n`).words).toEqual(['netCost']);
    expect(at(`${FRONT}---\n\n\`\`\`rain\nshow: w|\n\`\`\`\n`).words).toEqual(['winter', 'winters']);
  });

  it('is nothing in prose, in a remark or in a quotation', () => {
    expect(at(`${FRONT}---\n\nSome wo|rds`).words).toEqual([]);
    expect(at(`${FRONT}# vi|\n---\n`).words).toEqual([]);
    expect(at(`${FRONT.replace('A farm', '"A fa|')}---\n`).words).toEqual([]);
  });

  it('takes the place of the word at the cursor', () => {
    const { from } = at(`${FRONT}    exp|\n---\n`);
    expect(from).toBe(FRONT.length + 4);
  });

  it('is taken by the reader, wherever a word of a shipped notebook is written anew', () => {
    let tried = 0;
    for (const { text } of shipped) {
      expect(readNotebook(text, 'x.md').ok).toBe(true);
      for (const { index, 0: whole, 1: key } of text.matchAll(
        /\b(texture|system|class|feed|crop|units): [\w-]+/g,
      )) {
        const start = index + key.length + 2;
        const found = suggestionsAt(text, start, names);
        if (!found || index > text.indexOf('\n---', 4)) continue;
        for (const { word } of found.list.slice(0, 3)) {
          const next = text.slice(0, start) + word + text.slice(index + whole.length);
          const refused = readNotebook(next, 'x.md').problems.filter(({ what }) => /not one of/.test(what));
          expect(refused).toEqual([]);
          tried++;
        }
      }
    }
    expect(tried).toBeGreaterThan(30);
  });

  it('never throws, whatever stands there', () => {
    const texts = shipped.map(({ text }) => text);
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.nat(), fc.string({ maxLength: 8 }), (text, place, put) => {
        const from = place % text.length;
        const changed = text.slice(0, from) + put + text.slice(from + 3);
        const cursor = Math.min(changed.length, from + put.length);
        const found = suggestionsAt(changed, cursor, names);
        if (found) expect(found.from).toBeLessThanOrEqual(cursor);
      }),
      { numRuns: 300 },
    );
  });
});
