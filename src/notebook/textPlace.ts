/** Where in the YAML of a text the cursor stands, though what is being typed there cannot be read yet. */
import type { Path } from './path.ts';

export interface TextPlace {
  /** Path of the map or list that is being written. */
  readonly path: Path;
  /** Key whose value is being written; undefined where a key is, or an item of a list. */
  readonly key?: string;
  /** What is typed so far of the word at the cursor. */
  readonly word: string;
  /** Keys written before on the same line, inside the same braces. */
  readonly beside: readonly string[];
  /** In a list between brackets, or an item that is a plain word. */
  readonly item: boolean;
}

interface Line {
  /** Columns of the dashes that begin items. */
  readonly dashes: readonly number[];
  /** Column of what follows them. */
  readonly column: number;
  readonly key?: string;
  /** What follows the colon, or the dashes where there is no key. */
  readonly rest: string;
}

const KEY = /^("[^"]*"|'[^']*'|[\w.-]+)\s*:(?:\s+|$)/;

function lineOf(text: string): Line | undefined {
  if (/^\s*(#|$)/.test(text)) return undefined;
  const dashes: number[] = [];
  let column = text.search(/\S/);
  for (let dash = /^-(\s+|$)/.exec(text.slice(column)); dash; dash = /^-(\s+|$)/.exec(text.slice(column))) {
    dashes.push(column);
    column += dash[0].length;
  }
  const key = KEY.exec(text.slice(column));
  return key
    ? { dashes, column, key: bare(key[1]), rest: text.slice(column + key[0].length) }
    : { dashes, column, rest: text.slice(column) };
}

const bare = (word: string) => word.replace(/^(["'])(.*)\1$/, '$2');

/** The place at the end of `before`, which is all of the YAML up to the cursor; undefined inside a remark or a quotation. */
export function placeIn(before: string): TextPlace | undefined {
  const lines = before.split(/\r\n?|\n/);
  const last = lines.pop() ?? '';
  if (/(^|\s)#/.test(last)) return undefined;
  const current = lineOf(last) ?? { dashes: [], column: last.length, rest: '' };
  const path = parentsOf(lines, current);
  if (/^[{[]/.test(current.rest))
    return flowPlace(current.rest, current.key === undefined ? path : [...path, current.key]);
  const word = current.rest;
  if (/["']/.test(word)) return undefined;
  if (current.key !== undefined) return { path, key: current.key, word, beside: [], item: false };
  return { path, word, beside: [], item: current.dashes.length > 0 };
}

/** Keys and places in lists above a line, by how far each line is set in. */
function parentsOf(lines: readonly string[], { dashes, column }: Line): Path {
  const path: (string | number)[] = [];
  /** Lines that begin left of here are parents. */
  let limit = column;
  /** Column of the dashes of the list that is being counted. */
  let list: number | undefined;
  let count = 0;
  const enter = (dash: number) => {
    if (list !== undefined) path.unshift(count);
    [list, count, limit] = [dash, 0, dash];
  };
  for (const dash of [...dashes].reverse()) enter(dash);
  for (let k = lines.length - 1; k >= 0; k--) {
    const line = lineOf(lines[k]);
    if (!line) continue;
    if (list !== undefined && line.dashes.includes(list)) count++;
    // A list may begin in the column of its key.
    const isParent =
      line.column < limit || (list !== undefined && line.column === limit && line.dashes.length === 0);
    if (isParent && line.key !== undefined) {
      if (list !== undefined) path.unshift(count);
      list = undefined;
      path.unshift(line.key);
      limit = line.column;
    }
    for (const dash of [...line.dashes].reverse()) if (dash < limit) enter(dash);
  }
  return path;
}

interface Open {
  readonly map: boolean;
  key?: string;
  index: number;
  readonly keys: string[];
}

/** The place at the end of a map or list between braces or brackets. */
function flowPlace(text: string, from: Path): TextPlace | undefined {
  const open: Open[] = [];
  let word = '';
  let quote = '';
  for (let k = 0; k < text.length; k++) {
    const letter = text[k];
    const top = open.at(-1);
    if (quote !== '') {
      if (letter === quote) quote = '';
    } else if (word.trim() === '' && (letter === '"' || letter === "'")) quote = letter;
    else if (letter === '{' || letter === '[') {
      open.push({ map: letter === '{', index: 0, keys: [] });
      word = '';
      continue;
    } else if (letter === '}' || letter === ']') {
      open.pop();
      word = '';
      continue;
    } else if (letter === ',' && top) {
      top.key = undefined;
      top.index++;
      word = '';
      continue;
    } else if (letter === ':' && top?.map && top.key === undefined && /\s|^$/.test(text[k + 1] ?? '')) {
      top.key = bare(word.trim());
      top.keys.push(top.key);
      word = '';
      continue;
    }
    word += letter;
  }
  const top = open.at(-1);
  if (!top || quote !== '') return undefined;
  const inside: Path = [
    ...from,
    ...open.slice(0, -1).map((each) => (each.map ? (each.key ?? '') : each.index)),
  ];
  if (!top.map) return { path: inside, word: word.trimStart(), beside: [], item: true };
  const { key, keys } = top;
  return key === undefined
    ? { path: inside, word: word.trimStart(), beside: keys, item: false }
    : { path: inside, key, word: word.trimStart(), beside: keys, item: false };
}
