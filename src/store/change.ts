/**
 * One input changed by a person: what was typed is read, weighed against what is usual, written as the smallest edit of
 * the text and read back. The answer is the new text, a question, or a refusal in plain words; nothing else happens.
 */
import { unknownIds } from '../model/idFaults.ts';
import { CATALOGUE_OF_INPUTS, type Input, inputAt, listAt, patternOf } from '../notebook/catalogue.ts';
import { optionWords } from '../notebook/inputWords.ts';
import type { Path } from '../notebook/path.ts';
import { readNotebook } from '../notebook/read.ts';
import { setInput, type Value, written } from '../notebook/write.ts';
import type { Problem } from '../units/problem.ts';
import { readTyped, type TypedAs, typedUnit } from '../units/typed.ts';
import { type Field, type FieldsOf, fieldOf } from './fields.ts';
import { shareEdits } from './shares.ts';
import { limitWords, questionOf, shownValue } from './weigh.ts';

export interface Change {
  readonly at: Path;
  /** As it was typed or picked; empty takes it out, so that the default, the tables or the farm hold again. */
  readonly typed: string;
  /** The question was answered: keep it. */
  readonly sure?: boolean;
  readonly as: TypedAs;
}

export type Outcome =
  | { readonly kind: 'done'; readonly text: string; readonly what: string; readonly said?: string }
  | { readonly kind: 'same' }
  | { readonly kind: 'ask'; readonly words: string }
  | { readonly kind: 'refused'; readonly words: string };

type Read = { readonly value: Value | undefined } | { readonly refused: string };

const refused = (words: string): Outcome => ({ kind: 'refused', words });

/** The outcome of a change to the text `of` was read from; `file` only names it. */
export function change(of: FieldsOf, { at, typed, sure, as }: Change): Outcome {
  const input = inputAt(at);
  const field = input && fieldOf(of, input, at);
  if (!input || !field) return refused('this cannot be changed here');
  const read = readAs(field, typed, as);
  if ('refused' in read) return refused(read.refused);
  const { value } = read;
  if (value !== undefined && typeof value === 'number') {
    const wrong = limitWords(field, value, as);
    if (wrong) return refused(wrong);
    const question = sure ? undefined : questionOf(field, value, as);
    if (question) return { kind: 'ask', words: question };
  }
  const edits = shareEdits(of.notebook, at, value) ?? { edits: [withNeeded(of, at, value)] };
  if ('refused' in edits) return refused(edits.refused);
  return write(of, edits.edits, `${nameOf(of, at, input)} ${wordsOf(field, value, as)}`, edits.said);
}

/**
 * A scenario's shed that is not written has a size all the same; the first thing written of it brings along what a
 * written shed must say.
 */
function withNeeded(of: FieldsOf, at: Path, value: Value | undefined): readonly [Path, Value | undefined] {
  const [parent, key] = [at.slice(0, -1), String(at.at(-1))];
  if (patternOf(parent) !== 'scenarios.*.shed' || value === undefined) return [at, value];
  if (writtenAt(of.text, parent) !== undefined) return [at, value];
  const { shed } = of.notebook.scenarios[Number(at[1])];
  const needed = CATALOGUE_OF_INPUTS.flatMap(({ pattern, key: other, optional }) =>
    !optional && pattern === `scenarios.*.shed.${other}` ? [[other, shed[other as 'lengthM']] as const] : [],
  );
  return [parent, { ...Object.fromEntries(needed), [key]: value }];
}

/** Edits written one after the other, and the text read back: what is refused is refused before anything is kept. */
export function write(
  of: FieldsOf,
  edits: readonly (readonly [Path, Value | undefined])[],
  what: string,
  said?: string,
): Outcome {
  return writeText(
    of,
    (before) => edits.reduce((text, [path, value]) => setInput(text, path, value), before),
    what,
    said,
  );
}

export function writeText(
  of: FieldsOf,
  edit: (text: string) => string,
  what: string,
  said?: string,
): Outcome {
  let text = of.text;
  try {
    text = edit(text);
  } catch (error) {
    return refused(
      `the change could not be written: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
  if (text === of.text) return { kind: 'same' };
  const fault = newFaults(of, text)[0];
  if (fault) return refused(faultWords(fault));
  return { kind: 'done', text, what, ...(said === undefined ? {} : { said }) };
}

/** What is wrong with the new text that was not wrong with the old. */
function newFaults({ text, notebook, tables }: FieldsOf, next: string): Problem[] {
  const faults = (source: string) => {
    const { notebook: read, problems } = readNotebook(source, notebook.file);
    return [...problems, ...(read ? unknownIds(read, tables) : [])];
  };
  const name = ({ what, key, found }: Problem) => `${key} ${what} ${found}`;
  const after = faults(next);
  if (after.length === 0) return [];
  const before = new Set(faults(text).map(name));
  return after.filter((problem) => !before.has(name(problem)));
}

function faultWords({ what, found, allowed, todo }: Problem): string {
  const parts = [found && `found ${found}`, allowed && `allowed: ${allowed}`, todo].filter(Boolean);
  return parts.length === 0 ? what : `${what}: ${parts.join('; ')}`;
}

/** What was typed or picked, as the value the file holds. */
function readAs(field: Field, typed: string, as: TypedAs): Read {
  const text = typed.trim();
  const inScenario = field.at[0] === 'scenarios' && field.at[2] === 'farm';
  if (text === '') {
    if (field.kind === 'several') return { value: [] };
    if (field.optional || inScenario || field.origin === 'system') return { value: undefined };
    return { refused: `${field.label} cannot be left empty: ${askFor(field, as)}` };
  }
  switch (field.kind) {
    case 'number': {
      const read = readTyped(text, field.unit, as);
      if ('refused' in read) return read;
      if (field.whole && !Number.isInteger(read.value))
        return { refused: `${field.label} is counted whole: type ${Math.round(read.value)}` };
      return read;
    }
    case 'numbers':
      return numbersOf(field, text, as);
    case 'yesNo':
      return { value: text === 'true' };
    case 'several':
      return { value: text === 'unknown' ? undefined : text.split(' ') };
    default:
      return { value: text };
  }
}

function numbersOf(field: Field, text: string, as: TypedAs): Read {
  const parts = text.split(/[;\s]+/).filter((part) => part !== '');
  const values: number[] = [];
  for (const part of parts) {
    const read = readTyped(part, field.unit, as);
    if ('refused' in read) return read;
    const wrong = limitWords({ ...field, usual: undefined }, read.value, as);
    if (wrong) return { refused: wrong };
    values.push(read.value);
  }
  return values.length === 12
    ? { value: values }
    : {
        refused: `twelve numbers are wanted, January to December, with spaces between; there are ${values.length}`,
      };
}

const askFor = (field: Field, as: TypedAs) =>
  field.kind === 'number' ? `type a number${inUnit(field.unit, as)}` : 'choose or type one';
const inUnit = (unit: string, as: TypedAs) => {
  const shown = typedUnit(unit, as);
  return shown === '' ? '' : ` in ${shown}`;
};

/** "cows in calf: weight", "Deep bed: tank depth". */
export function nameOf({ notebook }: FieldsOf, path: Path, { label }: Pick<Input, 'label'>): string {
  const scenario = path[0] === 'scenarios' ? notebook.scenarios[Number(path[1])]?.name : undefined;
  const row = rowName(notebook, path);
  return [scenario, row, label].filter((part) => part !== undefined).join(': ');
}

/** The row a field stands in, by its own name. */
function rowName(notebook: FieldsOf['notebook'], path: Path): string | undefined {
  for (let k = path.length - 1; k > 1; k--)
    if (listAt(path.slice(0, k)) && path[0] !== 'coefficients') {
      const item = path
        .slice(0, k + 1)
        .reduce<unknown>(
          (here, part) => (here as Record<PropertyKey, unknown> | undefined)?.[part],
          notebook,
        ) as Record<string, unknown> | undefined;
      const named = item?.name ?? item?.feed ?? item?.material ?? item?.line;
      return typeof named === 'string' ? optionWords(named) : String(path[k]);
    }
  return path[0] === 'coefficients' ? notebook.overrides[Number(path[1])]?.id : undefined;
}

/** "to 650 kg", "as the farm". */
function wordsOf(field: Field, value: Value | undefined, as: TypedAs): string {
  if (value === undefined)
    return field.at[2] === 'farm' && field.at[0] === 'scenarios' ? 'as the farm' : 'left open';
  if (typeof value === 'number') return `to ${shownValue(value, field.unit, as)}`;
  if (Array.isArray(value)) return value.length === 0 ? 'to none' : `to ${value.join(', ')}`;
  if (typeof value === 'boolean') return value ? 'to yes' : 'to no';
  return `to ${field.kind === 'choice' ? optionWords(String(value)) : String(value)}`;
}

export const writtenAt = (text: string, path: Path): unknown =>
  path.reduce<unknown>(
    (here, part) =>
      here !== null && typeof here === 'object' ? (here as Record<PropertyKey, unknown>)[part] : undefined,
    written(text),
  );
