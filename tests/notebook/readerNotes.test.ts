/** Notes of readers: read strictly, put into the text and nothing else, and put together in any order. */
import { describe, expect, it } from 'vitest';
import { isValue } from '../../src/model/dictionary.ts';
import {
  momentAfter,
  notebookIdOf,
  putNote,
  takeInNotes,
  takeOutNote,
} from '../../src/notebook/noteEdits.ts';
import { gainedNotes, mergeNotes } from '../../src/notebook/noteMerge.ts';
import {
  lostNotes,
  placeNotes,
  targetOfPart,
  targetWords,
  threadsOf,
} from '../../src/notebook/notePlaces.ts';
import { MOST_NOTES, type Note, type NoteTarget, PAGE_SECTIONS } from '../../src/notebook/noteSchema.ts';
import { partsOf } from '../../src/notebook/parts.ts';
import { type Notebook, readNotebook } from '../../src/notebook/read.ts';
import { renameScenario } from '../../src/notebook/scenarioEdits.ts';
import { textDifferences } from '../../src/notebook/textDifferences.ts';
import { setInput } from '../../src/notebook/write.ts';
import { formatProblem } from '../../src/units/problem.ts';
import { stream } from '../../src/units/random.ts';
import { shipped } from './shipped.ts';
import { SMALL } from './small.ts';

const NUMBER: NoteTarget = { kind: 'number', quantity: 'netCost', scenario: 'Deep bed' };
const note = (id: string, more: Partial<Note> = {}): Note => ({
  id,
  on: NUMBER,
  by: 'Neighbour',
  when: '2026-11-26T08:00:00.000Z',
  text: 'Is that with the loan?',
  ...more,
});
const at = (text: string) => ({ text, file: 'small.md', read: readNotebook });
function text(edited: ReturnType<typeof putNote>): string {
  if ('refused' in edited) throw new Error(formatProblem(edited.refused));
  return edited.text;
}
const put = (all: readonly Note[], from = SMALL) =>
  all.reduce((so, each) => text(putNote(at(so), each)), from);
const read = (source: string): Notebook => {
  const { notebook, problems } = readNotebook(source, 'small.md');
  expect(problems.map(formatProblem)).toEqual([]);
  return notebook as Notebook;
};
const problemsOf = (source: string) => readNotebook(source, 'small.md').problems.map(formatProblem);

describe('a note in the text', () => {
  it('is a line more and changes no other byte, in every shipped notebook and with carriage returns', () => {
    for (const { text: whole } of [...shipped, { text: SMALL }, { text: SMALL.replaceAll('\n', '\r\n') }]) {
      const once = put([note('aaaa')], whole);
      const twice = put([note('bbbb', { text: 'Line one\nand “two”: # no comment' })], once);
      const lines = twice.split('\n').filter((line) => !/^notes:\r?$|^ {2}- \{ id: (aaaa|bbbb)/.test(line));
      expect(lines.join('\n')).toBe(whole);
      expect(read(twice).readerNotes.map(({ text }) => text)).toEqual([
        'Is that with the loan?',
        'Line one\nand “two”: # no comment',
      ]);
    }
  });

  it('can be changed and taken out, beside notes that were written by hand with a comment', () => {
    const hand = SMALL.replace(
      'scenarios:\n',
      `notes: # asked in the kitchen
  - id: hand
    on: { kind: number, quantity: netCost, scenario: Paddock }
    by: Lender # by letter
    when: "2026-11-20T10:00:00Z"
    text: |
      Two lines
      of words
scenarios:\n`,
    );
    expect(read(hand).readerNotes[0].text).toBe('Two lines\nof words\n');
    const more = put([note('aaaa')], hand);
    const changed = put([note('aaaa', { text: 'Another', when: '2026-11-27T08:00:00Z' })], more);
    expect(changed).toContain('by: Lender # by letter');
    expect(changed.split('\n').length).toBe(more.split('\n').length);
    const out = text(takeOutNote(at(changed), read(changed).readerNotes[0]));
    expect(read(out).readerNotes.map(({ id, text }) => [id, text])).toEqual([
      ['aaaa', 'Another'],
      ['hand', ''],
    ]);
    expect(out).toContain('# asked in the kitchen');
    expect(out.slice(out.indexOf('\nscenarios:'))).toBe(SMALL.slice(SMALL.indexOf('\nscenarios:')));
  });

  it('says what is wrong with one that is not as it must be, and where', () => {
    const bad = (line: string) =>
      problemsOf(SMALL.replace('scenarios:\n', `notes:\n  - ${line}\nscenarios:\n`));
    const rest = 'by: A, when: "2026-11-26T08:00:00Z", text: b';
    expect(bad(`{ id: a b, on: { kind: note, id: cccc }, ${rest} }`).join()).toMatch(
      /line 2\d.*notes\.0\.id|notes\.0\.id.*letters, digits and hyphens/,
    );
    expect(bad(`{ id: aaaa, on: { kind: barn }, ${rest} }`).join()).toMatch(/notes\.0\.on/);
    expect(bad(`{ id: aaaa, on: { kind: figure, cell: flop }, ${rest} }`).join()).toMatch(/nearest: .*flip/);
    expect(bad(`{ id: aaaa, on: { kind: note, id: cccc }, by: A, when: today, text: b }`).join()).toMatch(
      /a moment in world time/,
    );
    expect(bad(`{ id: aaaa, on: { kind: note, id: cccc }, ${rest}, more: 1 }`).join()).toMatch(
      /not known here/,
    );
    const twice = `{ id: aaaa, on: { kind: note, id: cccc }, ${rest} }`;
    expect(bad(`${twice}\n  - ${twice}`).join()).toMatch(/two notes have the same id/);
    expect(problemsOf(SMALL.replace('title:', 'id: "a b"\ntitle:')).join()).toMatch(/4 to 40 letters/);
  });

  it('is refused where it is empty, too long or one too many, with what to do', () => {
    expect(putNote(at(SMALL), note('aaaa', { text: ' \n' }))).toMatchObject({
      refused: { what: 'the note is empty' },
    });
    expect(putNote(at(SMALL), note('aaaa', { text: 'x'.repeat(1001) }))).toMatchObject({
      refused: { found: '1001 letters', allowed: 'at most 1000' },
    });
    const rows = Array.from({ length: MOST_NOTES }, (_, k) => `  - ${JSON.stringify(note(`id-${k}`))}\n`);
    const full = SMALL.replace('scenarios:\n', `notes:\n${rows.join('')}scenarios:\n`);
    expect(putNote(at(full), note('aaaa'))).toMatchObject({ refused: { found: String(MOST_NOTES + 1) } });
    expect('text' in putNote(at(full), note('id-7', { text: 'other' }))).toBe(true);
  });

  it('keeps what a stranger writes as words: marks of YAML, of Markdown, of HTML, and nothing unseen', () => {
    const hostile = '---\n"\' ]} <img src=x onerror=alert(1)> {{ }} \u0000\u0007\u202e `=netCost` ```flip';
    const there = read(put([note('aaaa', { text: hostile, by: '"; rm: -rf' })])).readerNotes[0];
    expect(there.text).toBe('---\n"\' ]} <img src=x onerror=alert(1)> {{ }} \u202e `=netCost` ```flip');
    expect(there.by).toBe('"; rm: -rf');
  });
});

describe('where a note stands', () => {
  it('is found for every part of the shipped notebooks, and again after the parts around it have moved', () => {
    for (const { text: whole, file } of shipped) {
      const notebook = readNotebook(whole, file).notebook as Notebook;
      const parts = partsOf(notebook.blocks);
      parts.forEach((_, place) => {
        const on = targetOfPart(parts, place);
        if (!on) throw new Error(`${file}: no target at ${place}`);
        const placed = placeNotes({ ...notebook, readerNotes: [note('aaaa', { on })] }, isValue);
        expect([...placed.parts.keys()], `${file} ${place}`).toEqual([place]);
      });
    }
  });

  it('is said where it is gone: scenario, quantity, words, figure or note', () => {
    const gone: NoteTarget[] = [
      { kind: 'number', quantity: 'netCost', scenario: 'Nobody' },
      { kind: 'number', quantity: 'netCostt', scenario: 'Paddock' },
      { kind: 'words', begin: 'Never written' },
      { kind: 'figure', cell: 'flip', nth: 7 },
      { kind: 'note', id: 'zzzz' },
    ];
    const notebook = read(put(gone.map((on, k) => note(`id-${k}`, { on }))));
    expect(placeNotes(notebook, isValue).lost).toHaveLength(5);
    const said = lostNotes(notebook, isValue);
    expect(said.map(({ key }) => key)).toEqual(gone.map((_, k) => `notes.${k}.on`));
    for (const { line } of said) expect(notebook.text.split('\n')[(line ?? 0) - 1]).toContain('id-');
    expect(placeNotes(read(put([note('aaaa')])), isValue).numbers).toHaveLength(1);
  });

  it('is kept for what the page puts round the text, whatever becomes of the text', () => {
    const on = PAGE_SECTIONS.map((section, k) => note(`page-${k}`, { on: { kind: 'page', section } }));
    const notebook = read(put([...on, note('page-a', { on: { kind: 'note', id: 'page-0' } })]));
    const placed = placeNotes(notebook, isValue);
    expect([...placed.page.keys()].sort()).toEqual([...PAGE_SECTIONS].sort());
    expect(placed.page.get('answer')?.[0].answers.map(({ id }) => id)).toEqual(['page-a']);
    expect(placed.lost).toEqual([]);
    // Each has a name of its own in a sentence, and is one place for two copies.
    const said = PAGE_SECTIONS.map((section) => targetWords({ kind: 'page', section }, String));
    expect(new Set(said).size).toBe(PAGE_SECTIONS.length);
    expect(mergeNotes(on, on)).toHaveLength(PAGE_SECTIONS.length);
    expect(
      readNotebook(
        put([]).replace(
          /^farm:/m,
          "notes:\n  - { id: page-x, on: { kind: page, section: roof }, by: A, when: '2026-11-26T08:00:00.000Z', text: x }\nfarm:",
        ),
        'small.md',
      ).problems.length,
    ).toBe(1);
  });

  it('follows a scenario to its new name', () => {
    const renamed = text(renameScenario(at(put([note('aaaa')])), 1, 'Straw'));
    expect(read(renamed).readerNotes[0].on).toEqual({ ...NUMBER, scenario: 'Straw' });
  });

  it('gathers answers under the note they answer, in their order; a ring answers nobody', () => {
    const answer = (id: string, to: string, when: string, words = 'yes') =>
      note(id, { on: { kind: 'note', id: to }, when: `2026-11-2${when}T08:00:00Z`, text: words });
    const threads = threadsOf([
      answer('ccc3', 'bbb2', '9'),
      answer('bbb2', 'aaa1', '8'),
      note('aaa1', { text: '' }),
      note('dead', { text: '' }),
      answer('gone', 'aaa1', '7', ''),
      answer('rin1', 'rin2', '7'),
      answer('rin2', 'rin1', '7'),
    ]);
    expect(threads.map(({ note, answers }) => [note.id, ...answers.map(({ id }) => id)])).toEqual([
      ['aaa1', 'bbb2', 'ccc3'],
      ['rin1'],
      ['rin2'],
    ]);
  });
});

/** Copies of few notes by few people at few moments, so that the same ids and the same moments meet. */
function copies(seed: number): Note[][] {
  const random = stream(seed, 'copies');
  const pick = (n: number) => Math.floor(random() * n);
  return Array.from({ length: 4 }, () =>
    [...Array.from({ length: 6 }, (_, k) => `id-${k}`)]
      .filter(() => random() < 0.6)
      .map((id) =>
        note(id, {
          when: `2026-11-2${pick(3)}T0${pick(2)}:00:00${['', '.5', '.500'][pick(3)]}Z`,
          text: ['', 'yes', 'no', 'Perhaps\nnot'][pick(4)],
          by: ['Neighbour', 'Lender'][pick(2)],
          on: pick(3) === 0 ? { kind: 'words', begin: 'The bed' } : NUMBER,
        }),
      ),
  );
}
const shuffled = <T>(items: readonly T[], random: () => number) =>
  items
    .map((item) => [random(), item] as const)
    .sort((a, b) => a[0] - b[0])
    .map(([, item]) => item);

describe('two copies put together', () => {
  it('give the same in any order, however often and however grouped: 500 random sets', () => {
    for (let seed = 1; seed <= 500; seed++) {
      const [a, b, c, d] = copies(seed);
      const random = stream(seed, 'order');
      expect(mergeNotes(a, b)).toEqual(mergeNotes(b, a));
      expect(mergeNotes(mergeNotes(a, b), c)).toEqual(mergeNotes(a, mergeNotes(b, c)));
      expect(mergeNotes(a, mergeNotes(a, b))).toEqual(mergeNotes(a, b));
      const all = mergeNotes(mergeNotes(a, b), mergeNotes(c, d));
      const again = shuffled([a, b, c, d, a, c], random).reduce<Note[]>(
        (so, each) => mergeNotes(so, shuffled(each, random)),
        [],
      );
      expect(again).toEqual(all);
      expect(new Set(all.map(({ id }) => id))).toEqual(new Set([a, b, c, d].flat().map(({ id }) => id)));
      expect(gainedNotes(all, a)).toEqual([]);
      // The newest moment of each id wins: found without the merge's own order.
      for (const kept of all) {
        const moments = [a, b, c, d].flat().filter(({ id }) => id === kept.id);
        expect(Date.parse(kept.when)).toBe(Math.max(...moments.map(({ when }) => Date.parse(when))));
      }
    }
  });

  it('come to the same notes in the text, in any order, and the rest of the text stays', () => {
    for (let seed = 1; seed <= 6; seed++) {
      const all = copies(seed);
      const random = stream(seed, 'order');
      const into = (order: readonly Note[][]) =>
        order.reduce((so, each) => text(takeInNotes(at(so), each)), SMALL);
      const [one, other] = [into(all), into(shuffled([...all, all[0]], random))];
      expect(mergeNotes(read(one).readerNotes, [])).toEqual(mergeNotes(read(other).readerNotes, []));
      expect(text(takeInNotes(at(one), all[1]))).toBe(one);
      const rest = one.split('\n').filter((line) => !/^notes:$|^ {2}- \{ id: id-/.test(line));
      expect(rest.join('\n')).toBe(SMALL);
    }
  });

  it('let what was taken out stay out when an older copy comes back', () => {
    const first = put([note('aaaa')]);
    const mine = read(first).readerNotes[0];
    const when = momentAfter(mine.when, 0);
    expect(Date.parse(when)).toBe(Date.parse(mine.when) + 1);
    expect(momentAfter('9999-12-31T23:59:59.999Z', 0)).toBe('9999-12-31T23:59:59.999Z');
    const out = text(takeOutNote(at(first), { ...mine, when }));
    expect(text(takeInNotes(at(out), read(first).readerNotes))).toBe(out);
    expect(read(text(takeInNotes(at(first), read(out).readerNotes))).readerNotes[0].text).toBe('');
  });
});

describe('what is said of notes and of the id', () => {
  it('names who noted what since, and passes over the id', () => {
    const before = put([note('aaaa'), note('bbbb', { by: 'Lender', text: 'Old' })]);
    const after = put(
      [
        note('cccc', { by: 'Partner', text: 'New' }),
        note('aaaa', { text: 'Other', when: '2026-12-01T00:00:00Z' }),
      ],
      setInput(text(takeOutNote(at(before), note('bbbb', { by: 'Lender' }))), 'id', 'farm-1'),
    );
    expect(
      textDifferences(before, after)
        ?.map(({ of, words }) => `${of}: ${words}`)
        .sort(),
    ).toEqual([
      'notes: Lender took out “Old”',
      'notes: Neighbour now notes “Other”',
      'notes: Partner noted “New”',
    ]);
  });

  it('reads the id without reading the rest', () => {
    expect(notebookIdOf(SMALL)).toBeUndefined();
    const named = setInput(SMALL, 'id', '1234');
    expect([notebookIdOf(named), read(named).id]).toEqual(['1234', '1234']);
    expect(notebookIdOf(named.replaceAll('\n', '\r\n'))).toBe('1234');
    expect(notebookIdOf(`${SMALL}\nid: in-the-body\n`)).toBeUndefined();
    expect(notebookIdOf('no notebook')).toBeUndefined();
  });
});
