/** What a validator found, in words a keeper can act on: where it stands, what was found, what is allowed. */
import type { z } from 'zod';
import type { Problem } from '../units/problem.ts';
import { nearest } from './nearest.ts';
import { allowedWords, keysAt, schemaAt } from './schemaAt.ts';
import { spanReason } from './spans.ts';

export interface IssueContext {
  readonly schema: z.core.$ZodType;
  /** What was validated. */
  readonly data: unknown;
  readonly file: string;
  /** Path of `data` in the front matter, put before every key. */
  readonly at: readonly (string | number)[];
  readonly lineOf: (path: readonly (string | number)[]) => number;
}

type Issue = z.core.$ZodIssue;

/** Looking for the nearest of what is allowed takes time, and nobody reads more. */
const MOST_KEYS = 50;

/** The problems one issue stands for; an issue about several unknown keys is a problem for each. */
export function problemsOf(issue: Issue, context: IssueContext): Problem[] {
  const { schema, data, file, at, lineOf } = context;
  const path = issue.path as (string | number)[];
  const place = (more: readonly (string | number)[] = []) => {
    const whole = [...at, ...path, ...more];
    return { file, line: lineOf(whole), ...(whole.length > 0 ? { key: whole.join('.') } : {}) };
  };
  const value = valueAt(data, path);
  if (issue.code === 'unrecognized_keys') {
    const allowed = keysAt(schema, path, data);
    const more = issue.keys.length - MOST_KEYS;
    const rest =
      more > 0
        ? [{ what: `and ${more} more keys that are not known`, ...place([issue.keys[MOST_KEYS]]) }]
        : [];
    const named = issue.keys.slice(0, MOST_KEYS).map((key) => ({
      what: 'this key is not known here',
      ...place([key]),
      found: quote(key),
      allowed: allowed.length <= 8 ? allowed.join(', ') : `nearest ${nearest(key, allowed).join(', ')}`,
      todo: /^\d+$/.test(key)
        ? 'write a decimal with a point, not a comma'
        : 'the unit is part of a key: check its spelling',
    }));
    return [...named, ...rest];
  }
  if (issue.code === 'custom')
    return [{ what: issue.message, ...place(), ...customParts(issue.message, value, data, path) }];
  const target = schemaAt(schema, path, data);
  const allowed =
    issue.code === 'invalid_union' ? `one of ${optionsOf(issue).join(', ')}` : target && allowedWords(target);
  const rest = { ...place(), ...(allowed === undefined ? {} : { allowed }) };
  const last = String(path.at(-1) ?? 'front matter');
  if (value === undefined) return [{ what: `${last} is missing`, ...rest, todo: `write ${last}: here` }];
  if (value === null) return [{ what: 'nothing is written after the colon', ...rest, found: 'nothing' }];
  const beyond =
    issue.code === 'too_big' || issue.code === 'too_small' ? [...at, ...path].join('.') : undefined;
  const options =
    target && allowed?.startsWith('one of ') && typeof value === 'string' ? allowed.slice(7).split(', ') : [];
  return [
    {
      what: wording(issue, value),
      ...rest,
      found: show(value),
      ...(options.length > 3
        ? { todo: `nearest: ${nearest(value as string, options, 2).join(', ')}` }
        : numberHint(value, allowed, last, beyond)),
    },
  ];
}

/** Kinds a discriminated union knows; the library's type does not say that it lists them. */
const optionsOf = (issue: object) => ((issue as { options?: readonly unknown[] }).options ?? []).map(String);

function wording(issue: Issue, value: unknown): string {
  if (issue.code === 'too_small')
    return typeof value === 'number' ? 'the number is too small' : 'this is too short';
  if (issue.code === 'too_big')
    return typeof value === 'number' ? 'the number is too large' : 'this is too long';
  if (issue.code === 'invalid_value' || issue.code === 'invalid_union')
    return 'the word is not one of those allowed';
  if (issue.code === 'invalid_format')
    return issue.format === 'date' ? 'this is not a date' : 'this is not written as it must be';
  return typeof value === 'string'
    ? 'words stand where something else is wanted'
    : 'this is not of the right kind';
}

/** Numbers with a unit, a decimal comma, quotes or per cent: what to write instead. */
function numberHint(
  value: unknown,
  allowed: string | undefined,
  key: string,
  beyond: string | undefined,
): { todo?: string } {
  if (allowed?.startsWith('words') && (typeof value === 'number' || typeof value === 'boolean'))
    return { todo: `put it in quotes: "${value}"` };
  if (!allowed?.includes('number')) return {};
  const fraction = allowed.endsWith('from 0 to 1');
  if (typeof value === 'number')
    return fraction && value > 1 && value <= 100
      ? { todo: `${key} is a fraction: write ${value / 100} for ${value} %` }
      : beyondHint(beyond);
  const match = typeof value === 'string' ? /^\s*(-?\d+(?:[.,]\d+)?)\s*(.*?)\s*$/.exec(value) : null;
  if (!match) return {};
  const number = Number(match[1].replace(',', '.'));
  if (match[2] === '%' && fraction) return { todo: `write ${number / 100}` };
  const divided = /^\/\s*(\d+(?:\.\d+)?)$/.exec(match[2]);
  if (divided && Number(divided[1]) !== 0) return { todo: `write ${number / Number(divided[1])}` };
  const grouped = /^[_'\u2009\u202f]?\d{3}(?:[_'\u2009\u202f]\d{3})*$/.exec(match[2]);
  if (grouped)
    return { todo: `write ${match[1]}${match[2].replace(/\D/g, '')}, without a mark between the digits` };
  if (match[2] !== '') return { todo: `write ${number}: the unit stands in the key` };
  return { todo: `write ${number}${match[1].includes(',') ? ' with a point' : ' without quotes'}` };
}

/** Why the span ends there, and on whose word. */
function beyondHint(place: string | undefined): { todo?: string } {
  const reason = place === undefined ? undefined : spanReason(place);
  return reason ? { todo: `look at the unit: ${reason.because} (${reason.basis})` } : {};
}

function customParts(
  message: string,
  value: unknown,
  data: unknown,
  path: readonly PropertyKey[],
): Partial<Problem> {
  if (message.includes('sum to 1')) {
    const shares = Array.isArray(value)
      ? value.map((item) => Number((item as { share?: unknown }).share))
      : Object.entries((value ?? {}) as object).flatMap(([key, v]) =>
          key.endsWith('Share') ? [Number(v)] : [],
        );
    const sum = Number(shares.reduce((a, b) => a + b, 0).toFixed(6));
    return {
      found: String(sum),
      allowed: '1',
      todo:
        sum < 1
          ? `${Number((1 - sum).toFixed(6))} is missing`
          : `${Number((sum - 1).toFixed(6))} is too much`,
    };
  }
  const start = (valueAt(data, path.slice(0, -1)) as { start?: unknown } | undefined)?.start;
  return {
    found: show(value),
    ...(message.includes('before it starts') ? { allowed: `a date after ${String(start)}` } : {}),
  };
}

export const valueAt = (data: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (at, part) =>
      at !== null && typeof at === 'object' ? (at as Record<PropertyKey, unknown>)[part] : undefined,
    data,
  );

const quote = (text: string) => `"${text.length > 60 ? `${text.slice(0, 60)}…` : text}"`;

export function show(value: unknown): string {
  if (typeof value === 'string') return quote(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (value !== null && typeof value === 'object') return 'a map of keys';
  return value === undefined ? 'nothing' : String(value);
}
