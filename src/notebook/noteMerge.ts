/** How two copies of a notebook's notes become one, in whatever order copies meet. */
import type { Note, NoteTarget } from './noteSchema.ts';

/** Of two texts of one note the newer counts; of two of one moment, the one that reads later in the alphabet. */
function isLater(a: Note, b: Note): boolean {
  const apart = Date.parse(a.when) - Date.parse(b.when);
  return apart === 0 ? whole(a) > whole(b) : apart > 0;
}

const whole = ({ when, text, by, on }: Note) => JSON.stringify([when, text, by, keyOfTarget(on)]);

/** The same for the same place, and for no other. */
export function keyOfTarget(on: NoteTarget): string {
  const parts =
    on.kind === 'number'
      ? [on.quantity, on.scenario]
      : on.kind === 'figure'
        ? [on.cell, on.nth]
        : [on.kind === 'words' ? on.begin : on.kind === 'page' ? on.section : on.id];
  return JSON.stringify([on.kind, ...parts]);
}

/** Every note of both by id, each in its newest text; in the order of their ids, whichever copy comes first. */
export function mergeNotes(mine: readonly Note[], theirs: readonly Note[]): Note[] {
  const byId = new Map<string, Note>();
  for (const note of [...mine, ...theirs]) {
    const there = byId.get(note.id);
    if (!there || isLater(note, there)) byId.set(note.id, note);
  }
  return [...byId.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** What taking theirs in would bring: notes that are new here, or newer. */
export function gainedNotes(mine: readonly Note[], theirs: readonly Note[]): Note[] {
  const here = new Map(mine.map((note) => [note.id, whole(note)]));
  return mergeNotes(mine, theirs).filter((note) => here.get(note.id) !== whole(note));
}
