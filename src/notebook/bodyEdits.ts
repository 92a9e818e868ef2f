/** What a keeper does with the body of a notebook: paragraphs and cells added, changed, moved and taken out. */
import type { Block } from './body.ts';
import type { CellKind } from './cells.ts';
import { cellWritten, cellYaml } from './cellText.ts';
import { type Edited, type Editing, editWith, Refused } from './edit.ts';
import { findFrontMatter, isProblem } from './frontMatter.ts';
import { type BodyPart, partsOf } from './parts.ts';
import type { Notebook } from './read.ts';
import { movedOrder, permuted, without } from './segments.ts';
import { setOption, type Value } from './write.ts';

export type Options = Readonly<Record<string, Value | undefined>>;

/**
 * Where something new goes: behind the part at this place, before all with −1. Places count paragraphs and cells as
 * `partsOf` lists them.
 */
type Place = number;

/** A cell more, behind a part. */
export const addCell = (at: Editing, behind: Place, kind: CellKind, options: Options): Edited =>
  editWith(
    at,
    () => `cell ${kind} added`,
    (notebook) => {
      const text = inserted(at.text, notebook, behind, cellWritten(kind, options, eolOf(at.text)));
      const cells = cellsOf(notebook.blocks);
      const before = partsOf(notebook.blocks)
        .slice(0, behind + 1)
        .filter(({ block }) => block.type !== 'prose').length;
      const now = cellsOf(blocksOf(at, text));
      const fits = now.length === cells.length + 1 && now[before]?.startsWith(`\`\`\`${kind}`);
      if (!fits) throw new Refused(SWALLOWED);
      return text;
    },
  );

/** Options of a cell as they are to stand; one that is undefined is taken out, what is not named stays. */
export const setOptions = (at: Editing, place: Place, options: Options): Edited =>
  editWith(
    at,
    (notebook) => `${nameOf(partAt(notebook, place))} changed`,
    (notebook) => {
      const { block } = partAt(notebook, place);
      if (block.type !== 'cell') throw new Error('there is no cell at this place');
      const { from, to } = cellYaml(block);
      const yaml = Object.entries(options).reduce(
        (so, [key, value]) => setOption(so, [key], value),
        at.text.slice(from, to),
      );
      return at.text.slice(0, from) + yaml + at.text.slice(to);
    },
  );

/**
 * A paragraph in other words; nothing takes it out, an empty line within makes two of it. With `was`, only where the
 * same words still stand there.
 */
export const setProse = (at: Editing, place: Place, words: string, was?: string): Edited =>
  editWith(
    at,
    (notebook) => `${words.trim() === '' ? 'taken out' : 'changed'}: ${nameOf(partAt(notebook, place))}`,
    (notebook) => {
      const parts = partsOf(notebook.blocks);
      const part = partAt(notebook, place);
      const clean = tidy(words, eolOf(at.text));
      const now = at.text.slice(part.from, part.to);
      if (was !== undefined && was !== now)
        throw new Refused({
          what: 'other words stand here now than when you began',
          line: part.line,
          found: nameOf(part),
          todo: 'copy what you wrote, leave it as it was, and begin again',
        });
      if (clean === now) return at.text;
      if (clean === '') return without(at.text, parts, place);
      const next = parts[place + 1];
      // Words right above other words would run into them.
      const gap = next?.block.type === 'prose' && !hasGap(at.text.slice(part.to)) ? eolOf(at.text) : '';
      return guarded(at, notebook, at.text.slice(0, part.from) + clean + gap + at.text.slice(part.to));
    },
  );

/** A paragraph more, behind a part. */
export const addProse = (at: Editing, behind: Place, words: string): Edited =>
  editWith(
    at,
    () => 'words added',
    (notebook) => {
      const clean = tidy(words, eolOf(at.text));
      return clean === '' ? at.text : guarded(at, notebook, inserted(at.text, notebook, behind, clean));
    },
  );

/** A part past the one before or behind it. */
export const movePart = (at: Editing, place: Place, by: -1 | 1): Edited =>
  editWith(
    at,
    (notebook) => `${nameOf(partAt(notebook, place))} moved ${by < 0 ? 'up' : 'down'}`,
    (notebook) => {
      const parts = partsOf(notebook.blocks);
      const to = place + by;
      if (!parts[place] || !parts[to]) return at.text;
      const own = at.text.slice(parts[place].from, parts[place].to);
      const moved = permuted(at.text, parts, movedOrder(parts.length, place, to));
      const wanted = parts.map(({ block }) => block);
      [wanted[place], wanted[to]] = [wanted[to], wanted[place]];
      const cells = cellsOf(wanted);
      for (const text of [moved, apart(moved, parts, Math.min(place, to))]) {
        const blocks = blocksOf(at, text);
        const there = partsOf(blocks)[to];
        const now = cellsOf(blocks);
        const whole = there && text.slice(there.from, there.to) === own;
        if (whole && now.length === cells.length && now.every((cell, k) => cell === cells[k])) return text;
      }
      throw new Refused(SWALLOWED);
    },
  );

/** The notebook without a paragraph or a cell. */
export const removePart = (at: Editing, place: Place): Edited =>
  editWith(
    at,
    (notebook) => `taken out: ${nameOf(partAt(notebook, place))}`,
    (notebook) => guarded(at, notebook, without(at.text, partsOf(notebook.blocks), place), place),
  );

const SWALLOWED = {
  what: 'a cell next to these words would become part of them',
  found: 'a list, a quotation or a fence that is still open there',
  todo: 'close the fence with three backticks on a line of its own, or choose another place',
} as const;

function partAt({ blocks }: Notebook, place: Place): BodyPart {
  const part = partsOf(blocks)[place];
  if (!part) throw new Error('there is nothing at this place any more');
  return part;
}

/** For the undo button: the cell's kind, or the first words. */
function nameOf({ block, from, to }: BodyPart): string {
  if (block.type !== 'prose') return `cell ${block.kind}`;
  const words = block.text.slice(from - block.from, to - block.from).replace(/\s+/g, ' ');
  return `“${words.length > 32 ? `${words.slice(0, 31).trimEnd()}…` : words}”`;
}

/** Cells as they are written, in their order. */
const cellsOf = (blocks: readonly Block[]): string[] =>
  blocks.flatMap((block) => (block.type === 'prose' ? [] : [block.text.trimEnd()]));

const blocksOf = ({ read, file }: Editing, text: string) => read(text, file).notebook?.blocks ?? [];

/** Refuses a text in which a cell is lost that was there before; but for the one at `gone`. */
function guarded(at: Editing, { blocks }: Notebook, text: string, gone?: Place): string {
  const left = partsOf(blocks)
    .filter((_, k) => k !== gone)
    .map(({ block }) => block);
  const wanted = cellsOf([...new Set(left)]);
  const now = cellsOf(blocksOf(at, text));
  let k = 0;
  for (const cell of now) if (cell === wanted[k]) k++;
  if (k < wanted.length) throw new Refused(SWALLOWED);
  return text;
}

/** Something new behind a part, with an empty line before and behind it. */
function inserted(text: string, { blocks }: Notebook, behind: Place, written: string): string {
  const eol = eolOf(text);
  const part = partsOf(blocks)[behind];
  const front = findFrontMatter(text, '');
  const start = part?.to ?? (isProblem(front) ? 0 : front.bodyFrom);
  const [before, after] = [text.slice(0, start), text.slice(start)];
  const gap = part || !before.endsWith('\n') ? eol + eol : eol;
  const parted = part ? hasGap(after) : /^[ \t]*\r?\n/.test(after);
  const wanted = (part && parted ? '' : eol) + (part || parted ? '' : eol);
  const rest = after.trim() === '' ? after || eol : wanted + after;
  return before + gap + written + rest;
}

/** The same with an empty line between the part at `first` and the next. */
function apart(text: string, parts: readonly BodyPart[], first: Place): string {
  // What has changed places is as long together as before.
  const [a, b] = [parts[first], parts[first + 1]];
  const to = a.from + (b.to - b.from);
  return text.slice(0, to) + eolOf(text) + text.slice(to);
}

/** Whether an empty line comes first. */
const hasGap = (text: string) => /^[ \t]*\r?\n[ \t]*(\r?\n|$)/.test(text);

/** Words as they go into the file: its line ends, nothing empty around them. */
const tidy = (words: string, eol: string) =>
  words
    .replace(/^(?:[ \t]*\r?\n)+/, '')
    .trimEnd()
    .replace(/\r?\n/g, eol);

const eolOf = (text: string) => (text.includes('\r\n') ? '\r\n' : '\n');
