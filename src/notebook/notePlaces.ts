/** Where each note stands in the notebook as it is now, with its answers; and which have lost their place. */
import type { Problem } from '../units/problem.ts';
import { CELL_WORDS } from './cellWords.ts';
import { keyOfTarget } from './noteMerge.ts';
import { MOST_BEGIN, type Note, type NoteTarget, type PageSection } from './noteSchema.ts';
import { type BodyPart, partsOf } from './parts.ts';
import type { Notebook } from './read.ts';

/** A note and what was answered, the oldest first. */
export interface Thread {
  readonly note: Note;
  readonly answers: readonly Note[];
}

export interface PlacedNotes {
  /** By the place of a paragraph or cell, as `partsOf` counts them. */
  readonly parts: ReadonlyMap<number, readonly Thread[]>;
  readonly numbers: readonly Thread[];
  /** By what the page puts round the text. */
  readonly page: ReadonlyMap<PageSection, readonly Thread[]>;
  /** What they stood on is no longer there. */
  readonly lost: readonly Thread[];
}

const byTime = (a: Note, b: Note) => Date.parse(a.when) - Date.parse(b.when) || (a.id < b.id ? -1 : 1);

/** Notes with their answers; a note that was taken out stands only while an answer to it does. */
export function threadsOf(notes: readonly Note[]): Thread[] {
  const byId = new Map(notes.map((note) => [note.id, note]));
  const rootOf = (note: Note): Note => {
    const seen = new Set<Note>();
    let at = note;
    // Answers may be written in a ring by hand: then each stands for itself.
    while (at.on.kind === 'note' && !seen.has(at)) {
      seen.add(at);
      const next = byId.get(at.on.id);
      if (!next) return at;
      at = next;
    }
    return at.on.kind === 'note' ? note : at;
  };
  const answers = new Map<Note, Note[]>();
  for (const note of notes) {
    const root = rootOf(note);
    const list = answers.get(root) ?? [];
    if (root !== note && note.text !== '') list.push(note);
    answers.set(root, list);
  }
  return [...answers]
    .map(([note, list]) => ({ note, answers: list.sort(byTime) }))
    .filter(({ note, answers: list }) => note.text !== '' || list.length > 0)
    .sort((a, b) => byTime(a.note, b.note));
}

/** Words as a note on a paragraph knows them. */
export const beginOf = (words: string): string => words.replace(/\s+/g, ' ').trim().slice(0, MOST_BEGIN);

/** What a note put on this part of the body would stand on; undefined for a cell that cannot be read. */
export function targetOfPart(parts: readonly BodyPart[], place: number): NoteTarget | undefined {
  const part = parts[place];
  if (!part || part.block.type === 'broken') return undefined;
  if (part.block.type === 'prose') {
    const begin = beginOf(wordsOf(part));
    return begin === '' ? undefined : { kind: 'words', begin };
  }
  const { kind } = part.block;
  const nth = parts
    .slice(0, place + 1)
    .filter(({ block }) => block.type === 'cell' && block.kind === kind).length;
  return { kind: 'figure', cell: kind, nth };
}

const wordsOf = ({ block, from, to }: BodyPart) => block.text.slice(from - block.from, to - block.from);

/** `known` tells whether a quantity is one of the model's. */
export function placeNotes(
  { readerNotes, blocks, scenarios }: Pick<Notebook, 'readerNotes' | 'blocks' | 'scenarios'>,
  known: (quantity: string) => boolean,
): PlacedNotes {
  const parts = partsOf(blocks);
  const cells = new Map<string, number>();
  const words: (readonly [string, number])[] = [];
  parts.forEach((part, place) => {
    const on = targetOfPart(parts, place);
    if (on?.kind === 'figure') cells.set(keyOfTarget(on), place);
    else if (on?.kind === 'words') words.push([beginOf(wordsOf(part)), place]);
  });
  const names = new Set(scenarios.map(({ name }) => name));
  const placed = new Map<number, Thread[]>();
  const numbers: Thread[] = [];
  const page = new Map<PageSection, readonly Thread[]>();
  const lost: Thread[] = [];
  for (const thread of threadsOf(readerNotes)) {
    const { on } = thread.note;
    if (on.kind === 'number') {
      if (names.has(on.scenario) && known(on.quantity)) numbers.push(thread);
      else lost.push(thread);
      continue;
    }
    if (on.kind === 'page') {
      page.set(on.section, [...(page.get(on.section) ?? []), thread]);
      continue;
    }
    const place =
      on.kind === 'figure'
        ? cells.get(keyOfTarget(on))
        : on.kind === 'words'
          ? words.find(([begin]) => begin.startsWith(beginOf(on.begin)))?.[1]
          : undefined;
    if (place === undefined) lost.push(thread);
    else placed.set(place, [...(placed.get(place) ?? []), thread]);
  }
  return { parts: placed, numbers, page, lost };
}

/** What each section of the page is called in a sentence. */
export const SECTION_WORDS: Readonly<Record<PageSection, string>> = {
  answer: 'the answer',
  cards: 'the cards',
  ledger: 'where each nutrient went',
  compare: 'the scenarios side by side',
  checks: 'the limits checked',
  cautions: 'the cautions',
  sources: 'the sources',
};

/** What a note stands on, in words; `label` names a quantity. */
export function targetWords(on: NoteTarget, label: (quantity: string) => string): string {
  if (on.kind === 'number') return `${label(on.quantity)}, ${on.scenario}`;
  if (on.kind === 'figure')
    return `the figure “${CELL_WORDS[on.cell].name}”${on.nth > 1 ? `, number ${on.nth} of its kind` : ''}`;
  if (on.kind === 'page') return SECTION_WORDS[on.section];
  if (on.kind === 'words')
    return `the words “${on.begin.length > 60 ? `${on.begin.slice(0, 59)}…` : on.begin}”`;
  return 'a note that is not here';
}

/** A line for each note whose place is gone: it is kept and shown at the end, and stops nothing. */
export function lostNotes(notebook: Notebook, known: (quantity: string) => boolean): Problem[] {
  const { file, lineOf, readerNotes } = notebook;
  return placeNotes(notebook, known).lost.map(({ note }) => {
    const at = `notes.${readerNotes.indexOf(note)}.on`;
    return {
      what: 'what this note stands on is not in the notebook',
      file,
      line: lineOf(at),
      key: at,
      found: targetWords(note.on, (quantity) => quantity),
      todo: 'it is shown at the end; answer it or take it out there',
    };
  });
}
