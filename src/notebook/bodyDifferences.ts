/** What differs below the front matter: paragraphs and cells that came, went, changed or stand elsewhere, and own weather. */
import { type Block, readBody } from './body.ts';
import { CELL_WORDS, OPTION_WORDS } from './cellWords.ts';
import { partsOf } from './parts.ts';

interface Piece {
  readonly text: string;
  readonly block: Block;
}

/** More pairs than this are not compared one with another. */
const MOST_PAIRS = 4_000_000;

export interface Told {
  readonly of: 'inputs' | 'scenarios' | 'cells' | 'words' | 'notes';
  readonly words: string;
}

export function bodyDifferences(before: string, oldFrom: number, after: string, newFrom: number): Told[] {
  const [was, is] = [readBody(before, oldFrom, 1, ''), readBody(after, newFrom, 1, '')];
  const [olds, news] = [piecesOf(before, was.blocks), piecesOf(after, is.blocks)];
  const gaps = gapsBetween(olds, news);
  const told: Told[] = [];
  const gone: Piece[] = [];
  const come: Piece[] = [];
  for (const gap of gaps) {
    const left = [...gap.come];
    for (const old of gap.gone) {
      const same = left.findIndex((each) => sort(each) === sort(old));
      if (same < 0) gone.push(old);
      else told.push(changed(old, left.splice(same, 1)[0]));
    }
    come.push(...left);
  }
  for (const old of gone) {
    const moved = come.findIndex(({ text }) => text === old.text);
    if (moved >= 0) come.splice(moved, 1);
    told.push(tell(old, moved >= 0 ? 'stands elsewhere' : 'was taken out'));
  }
  for (const each of come) told.push(tell(each, 'was added'));
  return [...told, ...weatherDifferences(was.weather, is.weather)];
}

const piecesOf = (text: string, blocks: readonly Block[]): Piece[] =>
  partsOf(blocks).map(({ block, from, to }) => ({
    block,
    text: text.slice(from, to).replace(/\r\n?/g, '\n'),
  }));

/** Prose is compared with prose, a cell with one of its kind. */
const sort = ({ block }: Piece) => (block.type === 'prose' ? 'prose' : block.kind);

interface Gap {
  readonly gone: Piece[];
  readonly come: Piece[];
}

/** What stands between the pieces both have, in the longest order they share. */
function gapsBetween(olds: readonly Piece[], news: readonly Piece[]): Gap[] {
  let front = 0;
  while (front < Math.min(olds.length, news.length) && olds[front].text === news[front].text) front++;
  const [a, b] = [olds.slice(front), news.slice(front)];
  if (a.length * b.length > MOST_PAIRS) return [{ gone: a, come: b }];
  const width = b.length + 1;
  const longest = new Uint32Array((a.length + 1) * width);
  for (let i = a.length - 1; i >= 0; i--)
    for (let j = b.length - 1; j >= 0; j--)
      longest[i * width + j] =
        a[i].text === b[j].text
          ? longest[(i + 1) * width + j + 1] + 1
          : Math.max(longest[(i + 1) * width + j], longest[i * width + j + 1]);
  const gaps: Gap[] = [{ gone: [], come: [] }];
  for (let i = 0, j = 0; i < a.length || j < b.length; ) {
    const gap = gaps[gaps.length - 1];
    if (i < a.length && j < b.length && a[i].text === b[j].text) {
      if (gap.gone.length + gap.come.length > 0) gaps.push({ gone: [], come: [] });
      i++;
      j++;
    } else if (j >= b.length || (i < a.length && longest[(i + 1) * width + j] >= longest[i * width + j + 1]))
      gap.gone.push(a[i++]);
    else gap.come.push(b[j++]);
  }
  return gaps;
}

const cellName = (block: Block) =>
  block.type === 'prose' ? '' : block.type === 'cell' ? CELL_WORDS[block.kind].name : block.kind;

function tell(piece: Piece, what: string): Told {
  if (piece.block.type === 'prose') return { of: 'words', words: `“${excerpt(piece.text, 0)}” ${what}` };
  return { of: 'cells', words: `“${cellName(piece.block)}” ${what}` };
}

function changed(old: Piece, now: Piece): Told {
  if (now.block.type === 'prose') {
    const at = firstDifference(old.text, now.text);
    return { of: 'words', words: `“${excerpt(old.text, at)}” is now “${excerpt(now.text, at)}”` };
  }
  const [was, is] = [optionsOf(old.block), optionsOf(now.block)];
  const options = [...new Set([...Object.keys(was), ...Object.keys(is)])]
    .filter((key) => said(was[key]) !== said(is[key]))
    .map((key) => `${(OPTION_WORDS[key] ?? key).toLowerCase()} ${said(was[key])}, now ${said(is[key])}`);
  const words = options.length === 0 ? 'is written otherwise' : options.join('; ');
  return { of: 'cells', words: `“${cellName(now.block)}”: ${words}` };
}

const optionsOf = (block: Block): Readonly<Record<string, unknown>> =>
  block.type === 'cell' ? (block.options as Record<string, unknown>) : {};

const said = (value: unknown): string =>
  value === undefined ? 'not set' : Array.isArray(value) ? value.map(String).join(', ') : String(value);

const SHOWN = 70;

function firstDifference(a: string, b: string): number {
  let at = 0;
  while (at < Math.min(a.length, b.length) && a[at] === b[at]) at++;
  return at;
}

/** Some words around a place, cut between words. */
function excerpt(text: string, at: number): string {
  const flat = text.replace(/\s/g, ' ');
  const from = at < SHOWN / 2 ? 0 : flat.lastIndexOf(' ', at - SHOWN / 3) + 1;
  const rest = flat.slice(from);
  const end = rest.length <= SHOWN ? rest.length : Math.max(rest.lastIndexOf(' ', SHOWN), SHOWN / 2);
  return `${from > 0 ? '… ' : ''}${rest.slice(0, end).trim()}${end < rest.length ? ' …' : ''}`;
}

function weatherDifferences(was: ReadonlyMap<string, string>, is: ReadonlyMap<string, string>): Told[] {
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((name): Told[] => {
    if (was.get(name) === is.get(name)) return [];
    const what = was.has(name) ? (is.has(name) ? 'are others' : 'were taken out') : 'were added';
    return [{ of: 'inputs', words: `days of own weather “${name}” ${what}` }];
  });
}
