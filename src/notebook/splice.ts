/** The smallest change of YAML text that makes one edit, found from where its nodes stand; undefined where there is none. */
import {
  type Document,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Path } from './path.ts';
import { inBlock, inFlow, likeBefore } from './yamlWrite.ts';

export interface Splice {
  readonly from: number;
  readonly to: number;
  readonly insert: string;
}

interface Found {
  /** Deepest node written along the path. */
  readonly node: Node | null;
  /** How many parts of the path lead to it. */
  readonly depth: number;
  /** The pair whose value `node` is, if it is one. */
  readonly pair?: Pair;
}

const startOf = (node: Node) => node.range?.[0] ?? 0;
const endOf = (source: string, node: Node) => {
  let end = node.range?.[1] ?? 0;
  while (end > startOf(node) && /\s/.test(source[end - 1])) end--;
  return end;
};
const lineStart = (source: string, offset: number) => source.lastIndexOf('\n', offset - 1) + 1;
const columnOf = (source: string, offset: number) => offset - lineStart(source, offset);
/** Offset of the line end after `offset`, before its carriage return. */
function lineEnd(source: string, offset: number): number {
  const feed = source.indexOf('\n', offset);
  const end = feed < 0 ? source.length : feed;
  return source[end - 1] === '\r' && end > offset ? end - 1 : end;
}
const nextLine = (source: string, offset: number) => {
  const feed = source.indexOf('\n', offset);
  return feed < 0 ? source.length : feed + 1;
};
const eolOf = (source: string) => (source.includes('\r\n') ? '\r\n' : '\n');
const pairOf = (map: YAMLMap, key: string | number) =>
  map.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === String(key));

function follow(document: Document, path: Path): Found {
  let found: Found = { node: document.contents as Node | null, depth: 0 };
  for (const part of path) {
    const { node, depth } = found;
    if (isMap(node)) {
      const pair = pairOf(node, part);
      if (!pair) break;
      found = { node: pair.value as Node | null, depth: depth + 1, pair };
    } else if (isSeq(node) && node.items[Number(part)] !== undefined) {
      found = { node: node.items[Number(part)] as Node, depth: depth + 1 };
    } else break;
  }
  return found;
}

/** Sets the value at a path, making what is missing on the way. With `bare`, words are tried without quotes first. */
export function spliceSet(
  document: Document,
  source: string,
  path: Path,
  value: unknown,
  bare = false,
): Splice | undefined {
  const { node, depth, pair } = follow(document, path);
  if (depth === path.length) return replace(source, node, pair, value, bare);
  const [next, ...rest] = path.slice(depth);
  if (rest.some((part) => typeof part === 'number')) return undefined;
  const nested = rest.reduceRight<unknown>((inner, part) => ({ [part]: inner }), value);
  if (isSeq(node)) return next === node.items.length ? append(source, node, nested) : undefined;
  if (isMap(node)) return insert(source, node, String(next), nested);
  if (isScalar(node) && node.value === null) return replace(source, node, pair, { [next]: nested });
  return undefined;
}

function replace(
  source: string,
  node: Node | null,
  pair: Pair | undefined,
  value: unknown,
  bare = false,
): Splice | undefined {
  if (!node?.range) return undefined;
  const from = startOf(node);
  const to = endOf(source, node);
  if (isScalar(node) && (node.type === 'BLOCK_LITERAL' || node.type === 'BLOCK_FOLDED')) return undefined;
  if ((isMap(node) || isSeq(node)) && !node.flow) {
    const empty = Array.isArray(value) ? value.length === 0 : Object.keys(Object(value)).length === 0;
    if (empty || value === null || typeof value !== 'object') return undefined;
    return { from, to, insert: inBlock(value, columnOf(source, from), eolOf(source)).trimStart() };
  }
  const gap = from === to && pair && source[from - 1] === ':' ? ' ' : '';
  return { from, to, insert: gap + likeBefore(value, node, bare) };
}

/** Puts a new key after the last one of a map. */
function insert(source: string, map: YAMLMap, key: string, value: unknown): Splice | undefined {
  const text = `${inFlow(key)}: ${inFlow(value)}`;
  const last = map.items.at(-1);
  if (map.flow) {
    const close = (map.range?.[1] ?? 0) - 1;
    if (source[close] !== '}') return undefined;
    if (!last) return { from: close, to: close, insert: ` ${text} ` };
    const end = endOf(source, (last.value ?? last.key) as Node);
    return { from: end, to: end, insert: `, ${text}` };
  }
  if (!last) return undefined;
  const indent = columnOf(source, startOf(map.items[0].key as Node));
  const end = lineEnd(source, endOf(source, (last.value ?? last.key) as Node));
  return { from: end, to: end, insert: `${eolOf(source)}${' '.repeat(indent)}${text}` };
}

/** Adds an item to the end of a list, in the manner the list is written. */
function append(source: string, list: YAMLSeq, value: unknown): Splice | undefined {
  const last = list.items.at(-1) as Node | undefined;
  if (list.flow) {
    const close = (list.range?.[1] ?? 0) - 1;
    if (source[close] !== ']') return undefined;
    if (!last) return { from: close, to: close, insert: inFlow(value) };
    const end = endOf(source, last);
    return { from: end, to: end, insert: `, ${inFlow(value)}` };
  }
  if (!last) return undefined;
  const indent = columnOf(source, startOf(list));
  const end = lineEnd(source, endOf(source, last));
  const inOneLine = (isMap(last) || isSeq(last)) && last.flow;
  const text = inOneLine
    ? `${' '.repeat(indent)}- ${inFlow(value)}`
    : inBlock([value], indent, eolOf(source));
  return { from: end, to: end, insert: eolOf(source) + text };
}

/** Takes out the key or item at a path, and what would be left empty by it. */
export function spliceDelete(document: Document, source: string, path: Path): Splice | undefined {
  const parent = follow(document, path.slice(0, -1));
  const { node } = parent;
  if (parent.depth !== path.length - 1) return undefined;
  if ((isMap(node) || isSeq(node)) && node.items.length === 1 && path.length > 1)
    return spliceDelete(document, source, path.slice(0, -1));
  if (isMap(node)) {
    const index = node.items.findIndex(
      (pair) => isScalar(pair.key) && String(pair.key.value) === String(path.at(-1)),
    );
    if (index < 0) return undefined;
    const from = startOf(node.items[index].key as Node);
    const value = (pair: Pair) => (pair.value ?? pair.key) as Node;
    const end = endOf(source, value(node.items[index]));
    if (node.flow)
      return cutFlow(
        index,
        node.items.length,
        (k) => startOf(node.items[k].key as Node),
        (k) => endOf(source, value(node.items[k])),
      );
    return cutLines(source, from, end, /^\s*$/);
  }
  if (isSeq(node)) {
    const index = Number(path.at(-1));
    const items = node.items as Node[];
    if (!items[index]) return undefined;
    if (node.flow)
      return cutFlow(
        index,
        items.length,
        (k) => startOf(items[k]),
        (k) => endOf(source, items[k]),
      );
    return cutLines(source, startOf(items[index]), endOf(source, items[index]), /^\s*-\s+$/);
  }
  return undefined;
}

function cutFlow(
  index: number,
  count: number,
  start: (k: number) => number,
  end: (k: number) => number,
): Splice {
  const last = index === count - 1;
  return last
    ? { from: end(index - 1), to: end(index), insert: '' }
    : { from: start(index), to: start(index + 1), insert: '' };
}

/** Whole lines, when nothing else stands before the part on its first line. */
function cutLines(source: string, from: number, end: number, before: RegExp): Splice | undefined {
  const first = lineStart(source, from);
  if (!before.test(source.slice(first, from))) return undefined;
  return { from: first, to: nextLine(source, end), insert: '' };
}
