/**
 * Edits of a notebook's text. Each changes only the part of the front matter it is about: comments, order and
 * layout elsewhere stay as the keeper wrote them. Every edit is read back before it is returned.
 */
import { type Document, isMap, isSeq, type Node, parseDocument } from 'yaml';
import { findFrontMatter, isProblem } from './frontMatter.ts';
import { isPlain } from './merge.ts';
import type { Path } from './path.ts';
import type { Override } from './schema.ts';
import { type Splice, spliceDelete, spliceSet } from './splice.ts';
import { inBlock, inFlow } from './yamlWrite.ts';

/** What may stand in front matter. */
export type Value =
  | string
  | number
  | boolean
  | readonly Value[]
  | { readonly [key: string]: Value | undefined };

/**
 * The text with the value at a path of the front matter set, or taken out when it is undefined. Missing maps on
 * the way are made. An entry of one of the farm's lists set within a scenario first copies that list to the
 * scenario, since lists are replaced whole.
 * @throws when the text has no front matter that can be read.
 */
export function setInput(text: string, path: Path | string, value: Value | undefined): string {
  const { source, from, document } = open(text);
  const next = setIn(document, source, typeof path === 'string' ? toPath(path) : path, value);
  return next === source ? text : text.slice(0, from) + next + text.slice(from + source.length);
}

/**
 * The same in YAML that stands by itself, such as the options of a cell; of none at all the first is written.
 * @throws when the YAML cannot be read.
 */
export function setOption(source: string, path: Path, value: Value | undefined): string {
  const document = parse(source);
  if (document.errors.length > 0) throw new Error('cannot edit: the options cannot be read');
  if (isMap(document.contents)) return setIn(document, source, path, value);
  if (value === undefined || path.length !== 1) return source;
  const eol = source.includes('\r\n') ? '\r\n' : '\n';
  return `${source}${source === '' || source.endsWith('\n') ? '' : eol}${inFlow(String(path[0]))}: ${inFlow(value)}${eol}`;
}

function setIn(document: Document, source: string, path: Path, value: Value | undefined): string {
  const data = document.toJS() as unknown;
  const [at, whole] = withOwnList(data, path, tidy(value));
  const expected = changed(data, at, whole);
  if (same(expected, data)) return source;
  // Of the last option nothing is left, and an empty map would be written as one.
  if (expected === undefined) return cutAll(document, source);
  return (
    (whole === undefined
      ? tryOut(source, spliceDelete(document, source, at), expected)
      : (tryOut(source, spliceSet(document, source, at, whole, true), expected) ??
        tryOut(source, spliceSet(document, source, at, whole), expected))) ??
    rewritten(document, at, whole, expected)
  );
}

/** The source without its one key; comments stay. */
function cutAll(document: Document, source: string): string {
  const [from, to] = (document.contents as Node).range ?? [0, source.length];
  const first = source.lastIndexOf('\n', from - 1) + 1;
  return source.slice(0, first) + source.slice(to).replace(/^[^\n]*\n/, '');
}

/** The text with an item more at the end of a list; the list is made when there is none. */
export function addItem(text: string, list: Path | string, item: Value): string {
  const at = typeof list === 'string' ? toPath(list) : list;
  const { document } = open(text);
  const node = at.length === 0 ? document.contents : document.getIn(at, true);
  if (isSeq(node) && node.items.length > 0) return setInput(text, [...at, node.items.length], item);
  return at.length > 1 || document.hasIn(at)
    ? setInput(text, at, [item])
    : withNewList(text, String(at[0]), item);
}

/** The same with the item on a line of its own, whatever it holds. */
export function addRow(text: string, list: string, item: Value): string {
  if (open(text).document.hasIn([list])) return addItem(text, list, item);
  return withNewList(text, list, item, inFlow);
}

/** Puts a keeper's own number in place of a row of the tables, or changes the one that is there. */
export function setOverride(text: string, override: Override): string {
  const index = overrideIds(text).indexOf(override.id);
  const { id, value, low, high, because } = override;
  if (index < 0) return addItem(text, 'coefficients', { id, value, low, high, because });
  return Object.entries({ value, low, high, because }).reduce(
    (edited, [key, v]) => setInput(edited, ['coefficients', index, key], v),
    text,
  );
}

/** Goes back to the row of the tables. */
export function removeOverride(text: string, id: string): string {
  const index = overrideIds(text).indexOf(id);
  return index < 0 ? text : setInput(text, ['coefficients', index], undefined);
}

/** The front matter as it is written, defaults left out. Throws when it cannot be read. */
export const written = (text: string): unknown => open(text).document.toJS();

function overrideIds(text: string): unknown[] {
  const { coefficients } = open(text).document.toJS() as { coefficients?: { id?: unknown }[] };
  return (coefficients ?? []).map((c) => c?.id);
}

function open(text: string): { source: string; from: number; document: Document } {
  const front = findFrontMatter(text, '');
  if (isProblem(front)) throw new Error(`cannot edit: ${front.what}`);
  const document = parse(front.source);
  if (document.errors.length > 0 || !isMap(document.contents))
    throw new Error('cannot edit: the front matter cannot be read');
  return { source: front.source, from: front.from, document };
}

const parse = (source: string) =>
  parseDocument(source, {
    version: '1.2',
    schema: 'core',
    prettyErrors: false,
    logLevel: 'silent',
    uniqueKeys: false,
  });

/** Numbers without the tail that binary sums leave: 0.3, not 0.30000000000000004. */
const tidy = (value: Value | undefined) =>
  typeof value === 'number' ? Number(value.toPrecision(12)) : value;

const toPath = (path: string): Path =>
  path.split('.').map((part) => (/^\d+$/.test(part) ? Number(part) : part));

function withOwnList(
  data: unknown,
  path: Path,
  value: Value | undefined,
): readonly [Path, Value | undefined] {
  if (path[0] !== 'scenarios' || path[2] !== 'farm') return [path, value];
  const index = path.findIndex((part, k) => k > 2 && typeof part === 'number');
  if (index < 0 || at(data, path.slice(0, index)) !== undefined) return [path, value];
  const shared = at(data, path.slice(2, index));
  if (!Array.isArray(shared)) return [path, value];
  return [path.slice(0, index), changed(shared, path.slice(index), value) as Value];
}

const at = (data: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (here, part) =>
      here !== null && typeof here === 'object' ? (here as Record<string, unknown>)[part] : undefined,
    data,
  );

/** A copy of plain data with one value changed or taken out, and what that leaves empty with it. */
function changed(data: unknown, [key, ...rest]: Path, value: unknown): unknown {
  if (key === undefined) return value;
  const inner = changed(at(data, [key]), rest, value);
  const gone = inner === undefined;
  if (Array.isArray(data) || (data === undefined && typeof key === 'number')) {
    const list = [...((data as unknown[] | undefined) ?? [])];
    if (gone) list.splice(Number(key), 1);
    else list[Number(key)] = inner;
    return list.length === 0 && gone ? undefined : list;
  }
  const map: Record<string, unknown> = isPlain(data) ? { ...data } : {};
  if (gone) delete map[key];
  else map[key] = inner;
  return gone && Object.keys(map).length === 0 ? undefined : map;
}

function tryOut(source: string, splice: Splice | undefined, expected: unknown): string | undefined {
  if (!splice) return undefined;
  const next = source.slice(0, splice.from) + splice.insert + source.slice(splice.to);
  const read = parse(next);
  return read.errors.length === 0 && same(read.toJS(), expected) ? next : undefined;
}

/** Where no small change would do: the library writes the front matter anew, comments kept. */
function rewritten(document: Document, path: Path, value: unknown, expected: unknown): string {
  let from = path;
  if (value === undefined) {
    // What the deletion leaves empty goes with it.
    while (from.length > 1 && at(expected, from.slice(0, -1)) === undefined) from = from.slice(0, -1);
    document.deleteIn(from);
  } else {
    document.setIn(from, document.createNode(value));
  }
  const next = document.toString({ lineWidth: 0 });
  if (!same(parse(next).toJS(), expected)) throw new Error(`cannot edit: ${path.join('.')}`);
  return next;
}

function withNewList(text: string, key: string, item: Value, inLine?: (item: Value) => string): string {
  const { source, from } = open(text);
  const eol = source.includes('\r\n') ? '\r\n' : '\n';
  const next = `${source}${source.endsWith('\n') ? '' : eol}${key}:${eol}${inLine ? `  - ${inLine(item)}` : inBlock([item], 2, eol)}${eol}`;
  return text.slice(0, from) + next + text.slice(from + source.length);
}

function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((item, k) => same(item, b[k]));
  if (!isPlain(a) || !isPlain(b)) return false;
  const keys = Object.entries(a).filter(([, v]) => v !== undefined);
  return (
    keys.length === Object.values(b).filter((v) => v !== undefined).length &&
    keys.every(([key, v]) => same(v, b[key]))
  );
}
