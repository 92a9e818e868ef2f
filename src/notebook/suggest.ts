/** What may be written where the cursor stands in a notebook's text: read off the schema that checks it. */
import { z } from 'zod';
import { CELL_KINDS, CELL_OPTIONS, isCellKind, referenceOf } from './cells.ts';
import { CELL_WORDS } from './cellWords.ts';
import { findFrontMatter, isProblem } from './frontMatter.ts';
import { frontSchema } from './frontSchema.ts';
import { labelOf, optionWords } from './inputWords.ts';
import { valueAt } from './issues.ts';
import type { Path } from './path.ts';
import { allowedWords, keysAt, schemaAt, unwrap } from './schemaAt.ts';
import { placeIn, type TextPlace } from './textPlace.ts';
import { readYaml } from './yamlText.ts';

export interface Suggestion {
  /** What is put in place of the word at the cursor. */
  readonly word: string;
  /** What it means or what it allows. */
  readonly tells: string;
}

export interface Suggestions {
  /** Offset in the text at which the word at the cursor begins. */
  readonly from: number;
  readonly list: readonly Suggestion[];
}

/** Names a cell may refer to, each with what it is called. */
export interface NamesToSuggest {
  readonly results: readonly Suggestion[];
  readonly inputs: readonly Suggestion[];
  readonly scenarios: readonly string[];
}

/** What may stand at `at`; undefined where nothing is known of it, as in prose. */
export function suggestionsAt(text: string, at: number, names: NamesToSuggest): Suggestions | undefined {
  const front = findFrontMatter(text, '');
  const inFront = !isProblem(front) && at >= front.from && at < front.bodyFrom;
  const found = inFront
    ? inYaml(text.slice(front.from, at), frontSchema, () => dataWithout(front.source, at - front.from), names)
    : inBody(isProblem(front) ? text.slice(0, at) : text.slice(front.bodyFrom, at), names);
  return found && found.list.length > 0 ? { from: at - found.word.length, list: found.list } : undefined;
}

interface Found {
  readonly word: string;
  readonly list: readonly Suggestion[];
}

/** The data around the line that is being written, which cannot be read as it stands. */
function dataWithout(source: string, at: number): unknown {
  const from = source.lastIndexOf('\n', at - 1) + 1;
  const end = source.indexOf('\n', at);
  const indent = /^\s*/.exec(source.slice(from, at))?.[0] ?? '';
  const dash = source.startsWith('- ', from + indent.length);
  const rest = end < 0 ? '' : source.slice(end);
  for (const line of dash ? [`${indent}- {}`, ''] : ['']) {
    const { data, problems } = readYaml(`${source.slice(0, from)}${line}${rest}`, 1, '');
    if (problems.length === 0) return data;
  }
  return undefined;
}

function inYaml(
  before: string,
  root: z.core.$ZodType,
  data: () => unknown,
  names: NamesToSuggest,
): Found | undefined {
  const place = placeIn(before);
  if (!place) return undefined;
  const { path, key, word, item } = place;
  if (key !== undefined || item) {
    const at = key === undefined ? path : [...path, key];
    const values = valuesAt(root, at, data, names, item);
    if (values.length > 0 || key !== undefined) return { word, list: values };
  }
  return /^[\w.-]*$/.test(word) ? { word, list: keysFor(root, place, data()) } : undefined;
}

function keysFor(root: z.core.$ZodType, { path, beside }: TextPlace, data: unknown): Suggestion[] {
  const there = valueAt(data, path);
  const taken = new Set([
    ...beside,
    ...(there !== null && typeof there === 'object' ? Object.keys(there) : []),
  ]);
  return allKeys(root, path, data)
    .filter((key) => !taken.has(key))
    .map((key) => {
      const schema = schemaAt(root, [...path, key], data);
      const inner = schema && unwrap(schema);
      const holds = inner instanceof z.ZodObject || inner instanceof z.ZodRecord || isRows(inner);
      return { word: holds ? `${key}:` : `${key}: `, tells: keyTells([...path, key], schema) };
    });
}

const isRows = (schema: z.core.$ZodType | undefined) =>
  schema instanceof z.ZodArray && !(unwrap(schema.element) instanceof z.ZodNumber);

/** Keys at a place; where the kind of an entry is not said yet, those of every kind. */
function allKeys(root: z.core.$ZodType, path: Path, data: unknown): string[] {
  const known = keysAt(root, path, data);
  const schema = schemaAt(root, path, data);
  const inner = schema && unwrap(schema);
  if (known.length > 0 || !(inner instanceof z.ZodDiscriminatedUnion)) return known;
  return [...new Set((inner.options as z.ZodObject[]).flatMap((option) => Object.keys(option.shape)))];
}

function keyTells(path: Path, schema: z.core.$ZodType | undefined): string {
  const pattern = path.map((part) => (typeof part === 'number' ? '*' : part)).join('.');
  const said = (schema as z.ZodType | undefined)?.description;
  const inner = schema && unwrap(schema);
  const allowed = !inner || inner instanceof z.ZodObject ? '' : allowedWords(inner);
  return [said ?? labelOf(pattern), short(allowed)].filter((part) => part !== '').join('; ');
}

const short = (words: string) => (words.length > 60 ? '' : words);

function valuesAt(
  root: z.core.$ZodType,
  path: Path,
  data: () => unknown,
  names: NamesToSuggest,
  item: boolean,
): readonly Suggestion[] {
  const option = path.findLast((part) => typeof part === 'string');
  const refers = root === frontSchema || option === undefined ? undefined : referenceOf(String(option));
  if (refers === 'scenarios')
    return names.scenarios.map((name) => ({ word: quoted(name), tells: 'scenario' }));
  if (refers) return names[refers];
  const last = path.at(-1);
  if (root === frontSchema && (last === 'baseline' || (last === 'scenario' && path[0] === 'diary')))
    return names.scenarios.map((name) => ({ word: quoted(name), tells: 'scenario' }));
  const schema = schemaAt(root, path, data());
  let inner = schema && unwrap(schema);
  // The place is the list, or already one item of it.
  if (item && inner instanceof z.ZodArray) inner = unwrap(inner.element);
  if (inner instanceof z.ZodEnum)
    return (inner.options as string[]).map((word) => ({ word, tells: optionTells(word) }));
  if (inner instanceof z.ZodBoolean)
    return ['true', 'false'].map((word) => ({ word, tells: optionWords(word) }));
  if (inner instanceof z.ZodLiteral)
    return [...inner.values].map((word) => ({ word: String(word), tells: '' }));
  return [];
}

const optionTells = (word: string) => {
  const words = optionWords(word);
  return words === word ? '' : words;
};

/** As YAML would read it back between brackets as well. */
const quoted = (name: string) =>
  /^[\p{L}][\p{L}\p{N} ()/+-]*$/u.test(name) && !/^(true|false|null|yes|no|on|off)$/i.test(name)
    ? name
    : JSON.stringify(name);

/** Inside a cell, or where the word of one is written. */
function inBody(before: string, names: NamesToSuggest): Found | undefined {
  const lines = before.split(/\r\n?|\n/);
  let open: { readonly mark: string; readonly kind: string; readonly from: number } | undefined;
  lines.slice(0, -1).forEach((line, k) => {
    const fence = /^ {0,3}(`{3,}|~{3,})\s*(\S*)/.exec(line);
    if (!fence) return;
    if (!open) open = { mark: fence[1], kind: fence[2], from: k + 1 };
    else if (fence[2] === '' && fence[1].startsWith(open.mark)) open = undefined;
  });
  const last = lines[lines.length - 1];
  if (!open) {
    const word = /^ {0,3}(?:`{3,}|~{3,})\s*(\w*)$/.exec(last)?.[1];
    if (word === undefined) return undefined;
    return { word, list: CELL_KINDS.map((kind) => ({ word: kind, tells: CELL_WORDS[kind].answers })) };
  }
  const { kind, from } = open;
  if (!isCellKind(kind)) return undefined;
  const written = lines.slice(from, -1).join('\n');
  const data = () => readYaml(written, 1, '').data ?? {};
  return inYaml(lines.slice(from).join('\n'), CELL_OPTIONS[kind], data, names);
}
