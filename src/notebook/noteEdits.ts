/** What readers and keepers do with notes, as edits of the text: put, change, answer, take out, take in. */
import { type Edited, type Editing, editWith, Refused } from './edit.ts';
import { findFrontMatter, isProblem } from './frontMatter.ts';
import { gainedNotes } from './noteMerge.ts';
import { ID_FORM, MOST_NOTE_LETTERS, MOST_NOTES, type Note } from './noteSchema.ts';
import type { Notebook } from './read.ts';
import { addRow, setInput } from './write.ts';

/** A note more, or another text of one that is there. */
export const putNote = (at: Editing, note: Note): Edited =>
  editWith(
    at,
    ({ readerNotes }) =>
      `note of ${note.by} ${readerNotes.some(({ id }) => id === note.id) ? 'changed' : 'put'}`,
    (notebook) => {
      const clean = tidy(note.text);
      if (clean === '')
        throw new Refused({ what: 'the note is empty', todo: 'write what you want to say, or leave it' });
      if (clean.length > MOST_NOTE_LETTERS)
        throw new Refused({
          what: 'the note is too long',
          found: `${clean.length} letters`,
          allowed: `at most ${MOST_NOTE_LETTERS}`,
          todo: 'shorten it, or make two of it',
        });
      return withNotes(at.text, notebook, [{ ...note, text: clean }]);
    },
  );

/** The note without its text: what is left of it keeps it out where an older copy comes back. */
export const takeOutNote = (at: Editing, note: Note): Edited =>
  editWith(
    at,
    () => `note of ${note.by} taken out`,
    (notebook) => withNotes(at.text, notebook, [{ ...note, text: '' }]),
  );

/** Notes of another copy of the notebook that are new here, or newer. */
export const takeInNotes = (at: Editing, theirs: readonly Note[]): Edited =>
  editWith(
    at,
    ({ readerNotes }) => {
      const count = gainedNotes(readerNotes, theirs).length;
      return `${count} ${count === 1 ? 'note' : 'notes'} taken in`;
    },
    (notebook) => withNotes(at.text, notebook, gainedNotes(notebook.readerNotes, theirs)),
  );

/** A line each, so that two files with notes can be put together by other programs too. */
function withNotes(text: string, { readerNotes }: Notebook, notes: readonly Note[]): string {
  const ids = readerNotes.map(({ id }) => id);
  const more = notes.filter(({ id }) => !ids.includes(id)).length;
  if (ids.length + more > MOST_NOTES)
    throw new Refused({
      what: 'there would be too many notes',
      found: String(ids.length + more),
      allowed: `at most ${MOST_NOTES}`,
      todo: 'take notes that are answered out of the text itself',
    });
  let next = text;
  for (const note of notes) {
    const place = ids.indexOf(note.id);
    if (place >= 0) {
      next = setInput(next, ['notes', place], undefined);
      ids.splice(place, 1);
    }
    next = addRow(next, 'notes', note);
    ids.push(note.id);
  }
  return next;
}

/** Words without what cannot be seen and could turn those around it: controls and halves of letters. */
const tidy = (text: string) =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(/[^\P{Cc}\n]/gu, '')
    .replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g, '')
    .trim();

/** The last moment that is written with a year of four digits: a note of a wild clock can still be taken out. */
const LAST = Date.UTC(9999, 11, 31, 23, 59, 59, 999);

/** When a change of a note is written: never before the text it changes, whatever the clock says. */
export const momentAfter = (before: string | undefined, now: number): string =>
  new Date(Math.min(Math.max(now, before === undefined ? 0 : Date.parse(before) + 1), LAST)).toISOString();

/** What tells a notebook from all others, wherever copies of it go; undefined where none is written. */
export function notebookIdOf(text: string): string | undefined {
  const front = findFrontMatter(text, '');
  if (isProblem(front)) return undefined;
  const [, id] = /^id:[ \t]*["']?([A-Za-z0-9-]+)["']?[ \t]*(?:#.*)?\r?$/m.exec(front.source) ?? [];
  return id !== undefined && ID_FORM.test(id) ? id : undefined;
}
