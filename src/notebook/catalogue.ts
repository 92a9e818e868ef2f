/**
 * Every input that front matter can hold, read off the schema that checks it: where it stands, what it is called, its
 * unit, what may be written there. A key that is added to the schema is here the same day.
 */
import { z } from 'zod';
import { frontSchema } from './frontSchema.ts';
import { labelOf, noteOf, SUBJECTS, type Subject, subjectOf, unitOf } from './inputWords.ts';
import { noteSchema } from './noteSchema.ts';
import type { Path } from './path.ts';
import { farmSchema, scenarioSchema } from './schema.ts';
import { allowedWords, numberLimits, unwrap } from './schemaAt.ts';

export { SUBJECTS, type Subject };

export type InputKind = 'number' | 'numbers' | 'choice' | 'yesNo' | 'date' | 'text' | 'several';

/** One place that holds one value. `*` in its pattern stands for a place in a list or a name in a map. */
export interface Input {
  readonly pattern: string;
  readonly key: string;
  readonly label: string;
  readonly kind: InputKind;
  /** The model's metric unit; empty for what is counted or has none. */
  readonly unit: string;
  readonly options?: readonly string[];
  /** What a number may be at all; `above` leaves the lower end out. */
  readonly limits?: { readonly low: number; readonly above: boolean; readonly high: number };
  readonly whole?: boolean;
  /** What is allowed, in words of the file. */
  readonly allowed: string;
  readonly note?: string;
  readonly subject: Subject;
  /** Whether it may be left out: for a default, the tables or nothing. */
  readonly optional: boolean;
  /** What the schema puts where nothing is written. */
  readonly fallback?: unknown;
}

/** A list of rows, or a map of named rows, that can grow and shrink. */
export interface InputList {
  readonly pattern: string;
  readonly label: string;
  readonly subject: Subject;
  readonly least: number;
  readonly most: number;
  /** Rows stand under names, not in an order. */
  readonly named: boolean;
}

/** Leaves that no field of the page writes, and why. */
export const NOT_EDITABLE: Readonly<Record<string, string>> = {
  winterkeep: 'the version of the format says how the file is read; it is no input',
  'farm.weather.file':
    'chosen under the weather line of the page, where the days of a file are looked at first',
  'scenarios.*.name': 'a scenario is renamed among the scenarios, where every mention of its name follows',
  'scenarios.*.finance.quotes.*.line': 'names the line of the bill a quote stands for; the bill asks for it',
  'coefficients.*.id': 'names the row of the tables a number stands in place of; a working asks for it',
  'scenarios.*.farm.weather.file': 'one weather for all scenarios; chosen under the weather line of the page',
  'scenarios.*.farm.money.currency': 'one for all scenarios: change it in the farm',
  'scenarios.*.farm.money.year': 'one for all scenarios: change it in the farm',
  'scenarios.*.farm.money.inflation': 'one for all scenarios: change it in the farm',
  'scenarios.*.farm.money.interestRate': 'one for all scenarios: change it in the farm',
  'scenarios.*.farm.money.horizonYears': 'one for all scenarios: change it in the farm',
  id: 'tells copies of the notebook from other notebooks; a new one would part them',
  ...Object.fromEntries(
    Object.keys(noteSchema.shape).map((key) => [
      `notes.*.${key}`,
      'notes are written, answered and taken out where they stand',
    ]),
  ),
  'diary.*': 'a diary is written day by day as the winter goes; it is a record and no input of the farm',
};

/** Lists that record what happened and who said what. */
const RECORDS = ['diary', 'notes'];

interface Leaf {
  readonly pattern: string;
  readonly schema: z.core.$ZodType;
}

/** Every leaf below a schema, lists and maps as `*`; a list of plain values is one leaf. */
export function leavesOf(schema: z.core.$ZodType, at: string): Leaf[] {
  const inner = unwrap(schema);
  const below = (key: string) => (at === '' ? key : `${at}.${key}`);
  if (inner instanceof z.ZodObject)
    return Object.entries(inner.shape).flatMap(([key, value]) =>
      leavesOf(value as z.core.$ZodType, below(key)),
    );
  if (inner instanceof z.ZodArray && isRows(inner)) return leavesOf(inner.element, below('*'));
  if (inner instanceof z.ZodRecord) return leavesOf(inner.valueType, below('*'));
  return [{ pattern: at, schema }];
}

const isRows = (list: z.ZodArray) => unwrap(list.element) instanceof z.ZodObject;

/** The schemas a field of the page may write into; scenarios as they stand once completed, so that defaults show. */
const ROOTS: readonly Leaf[] = [
  { pattern: 'farm', schema: farmSchema },
  { pattern: 'scenarios.*', schema: scenarioSchema },
  ...Object.entries(frontSchema.shape)
    .filter(([key]) => key !== 'farm' && key !== 'scenarios')
    .map(([pattern, schema]) => ({ pattern, schema })),
];

const ALL_LEAVES = ROOTS.flatMap(({ pattern, schema }) => leavesOf(schema, pattern));

/** Every input a field may write. */
export const CATALOGUE_OF_INPUTS: readonly Input[] = ALL_LEAVES.filter(
  ({ pattern }) => notEditable(pattern) === undefined,
).flatMap(({ pattern, schema }) => inputOf(pattern, schema) ?? []);

/** Why the place is not written from a field; undefined where it is. */
export function notEditable(pattern: string): string | undefined {
  const whole = NOT_EDITABLE[pattern];
  if (whole !== undefined) return whole;
  return pattern === 'diary' || pattern.startsWith('diary.') ? NOT_EDITABLE['diary.*'] : undefined;
}

function inputOf(pattern: string, schema: z.core.$ZodType): Input | undefined {
  const kind = kindOf(schema);
  if (!kind) return undefined;
  const inner = unwrap(schema);
  const optional = schema instanceof z.ZodOptional || schema instanceof z.ZodDefault;
  const note = noteOf(pattern, (schema as z.ZodType).description ?? (inner as z.ZodType).description);
  const limits = kind === 'numbers' ? numberLimits((inner as z.ZodArray).element) : numberLimits(schema);
  const options = optionsOf(inner);
  return {
    pattern,
    key: pattern.split('.').at(-1) as string,
    label: labelOf(pattern),
    kind,
    unit: kind === 'number' || kind === 'numbers' ? unitOf(pattern) : '',
    ...(options ? { options } : {}),
    ...(limits ? { limits } : {}),
    ...(inner instanceof z.ZodNumber && inner.format === 'safeint' ? { whole: true } : {}),
    allowed: allowedWords(schema),
    ...(note === undefined ? {} : { note }),
    subject: subjectOf(pattern),
    optional,
    ...(schema instanceof z.ZodDefault ? { fallback: schema.def.defaultValue } : {}),
  };
}

function kindOf(schema: z.core.$ZodType): InputKind | undefined {
  const inner = unwrap(schema);
  if (inner instanceof z.ZodNumber) return 'number';
  if (inner instanceof z.ZodEnum) return 'choice';
  if (inner instanceof z.ZodBoolean) return 'yesNo';
  if (inner instanceof z.ZodISODate) return 'date';
  if (inner instanceof z.ZodString) return 'text';
  if (inner instanceof z.ZodArray && unwrap(inner.element) instanceof z.ZodEnum) return 'several';
  if (inner instanceof z.ZodArray && unwrap(inner.element) instanceof z.ZodNumber) return 'numbers';
  return undefined;
}

function optionsOf(inner: z.core.$ZodType): readonly string[] | undefined {
  if (inner instanceof z.ZodEnum) return inner.options.map(String);
  return inner instanceof z.ZodArray ? optionsOf(unwrap(inner.element)) : undefined;
}

/** Every list whose rows can be added, copied and taken out. */
export const CATALOGUE_OF_LISTS: readonly InputList[] = ROOTS.flatMap(({ pattern, schema }) =>
  listsOf(schema, pattern),
);

function listsOf(schema: z.core.$ZodType, at: string): InputList[] {
  const inner = unwrap(schema);
  if (RECORDS.includes(at)) return [];
  if (inner instanceof z.ZodObject)
    return Object.entries(inner.shape).flatMap(([key, value]) =>
      listsOf(value as z.core.$ZodType, `${at}.${key}`),
    );
  const rows = inner instanceof z.ZodRecord || (inner instanceof z.ZodArray && isRows(inner));
  if (!rows) return [];
  const size = (name: string, key: string) =>
    ((inner as { def: { checks?: unknown[] } }).def.checks ?? [])
      .map((check) => (check as { _zod: { def: Record<string, unknown> } })._zod.def)
      .find((check) => check.check === name)?.[key] as number | undefined;
  return [
    {
      pattern: at,
      label: labelOf(at),
      subject: subjectOf(at),
      least: size('min_length', 'minimum') ?? 0,
      most: size('max_length', 'maximum') ?? Number.POSITIVE_INFINITY,
      named: inner instanceof z.ZodRecord,
    },
  ];
}

const INPUT_BY_PATTERN = new Map(CATALOGUE_OF_INPUTS.map((input) => [input.pattern, input]));
const LIST_BY_PATTERN = new Map(CATALOGUE_OF_LISTS.map((list) => [list.pattern, list]));

/** A place in a notebook as its pattern: numbers, and names of a map's rows, become `*`. */
export function patternOf(path: Path): string {
  const parts: string[] = [];
  for (const part of path) {
    const named = LIST_BY_PATTERN.get(parts.join('.'))?.named || parts.join('.') === 'decide.weights';
    parts.push(typeof part === 'number' || named ? '*' : part);
  }
  return parts.join('.');
}

/** The input at a place of a notebook; undefined where no field may write. */
export const inputAt = (path: Path): Input | undefined => INPUT_BY_PATTERN.get(patternOf(path));

export const listAt = (path: Path): InputList | undefined => LIST_BY_PATTERN.get(patternOf(path));
