/** Reads the schema of the front matter as a document about itself: what stands at a path, and what is allowed there. */
import { z } from 'zod';
import { ID_FORM } from './noteSchema.ts';

/** The schema without its wrappers for defaults and absence. */
export function unwrap(schema: z.core.$ZodType): z.core.$ZodType {
  let at = schema;
  while (
    at instanceof z.ZodDefault ||
    at instanceof z.ZodPrefault ||
    at instanceof z.ZodOptional ||
    at instanceof z.ZodNullable
  )
    at = at.def.innerType;
  return at;
}

/** The schema at a path, or undefined where the path leads nowhere. */
export function schemaAt(
  root: z.core.$ZodType,
  path: readonly PropertyKey[],
  value?: unknown,
): z.core.$ZodType | undefined {
  let at: z.core.$ZodType | undefined = root;
  let here = value;
  for (const part of path) {
    const inner: z.core.$ZodType | undefined = at && unwrap(at);
    if (inner instanceof z.ZodObject)
      at = Object.hasOwn(inner.shape, part) ? inner.shape[String(part)] : undefined;
    else if (inner instanceof z.ZodArray) at = inner.element;
    else if (inner instanceof z.ZodRecord) at = inner.valueType;
    else if (inner instanceof z.ZodDiscriminatedUnion) at = optionOf(inner, here)?.shape[String(part)];
    else return undefined;
    here = (here as Record<PropertyKey, unknown> | null | undefined)?.[part];
  }
  return at;
}

function optionOf(union: z.ZodDiscriminatedUnion, value: unknown): z.ZodObject | undefined {
  const kind = (value as Record<string, unknown> | null | undefined)?.[union.def.discriminator];
  return (union.options as z.ZodObject[]).find((option) => {
    const literal = unwrap(option.shape[union.def.discriminator]);
    return literal instanceof z.ZodLiteral && literal.values.has(kind as string);
  });
}

/** Keys an object may have. */
export function keysAt(root: z.core.$ZodType, path: readonly PropertyKey[], value?: unknown): string[] {
  const at = schemaAt(root, path, value);
  const inner = at && unwrap(at);
  if (inner instanceof z.ZodObject) return Object.keys(inner.shape);
  if (inner instanceof z.ZodDiscriminatedUnion) {
    const here = path.reduce<unknown>(
      (v, part) => (v as Record<PropertyKey, unknown> | null | undefined)?.[part],
      value,
    );
    return Object.keys(optionOf(inner, here)?.shape ?? {});
  }
  return [];
}

/** "a number from 0 to 1", "one of sand, loam", "a list of 12". */
export function allowedWords(schema: z.core.$ZodType): string {
  const inner = unwrap(schema);
  if (inner instanceof z.ZodNumber) return numberWords(inner);
  if (inner instanceof z.ZodEnum) return `one of ${inner.options.join(', ')}`;
  if (inner instanceof z.ZodLiteral) return [...inner.values].join(', ');
  if (inner instanceof z.ZodBoolean) return 'true or false';
  if (inner instanceof z.ZodISODate) return 'a date as year-month-day, such as 2025-11-01';
  if (inner instanceof z.ZodISODateTime) return 'a moment in world time, such as 2025-11-01T18:30:00Z';
  if (inner instanceof z.ZodString) return textWords(inner);
  if (inner instanceof z.ZodArray) return `a list${sizeWords(inner)}`;
  if (inner instanceof z.ZodObject) return `the keys ${Object.keys(inner.shape).join(', ')}`;
  if (inner instanceof z.ZodRecord) return 'names with a value each';
  if (inner instanceof z.ZodDiscriminatedUnion) return 'a map of keys and values';
  return 'a value';
}

interface Check {
  readonly check: string;
  readonly value?: number;
  readonly inclusive?: boolean;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly length?: number;
  readonly pattern?: RegExp;
}
const checksOf = (schema: { def: { checks?: unknown[] } }) =>
  (schema.def.checks ?? []).map((check) => (check as { _zod: { def: Check } })._zod.def);

/** The span a number must lie in, its lower end left out when `above`; undefined where the schema is of no number. */
export function numberLimits(
  schema: z.core.$ZodType,
): { readonly low: number; readonly above: boolean; readonly high: number } | undefined {
  const inner = unwrap(schema);
  if (!(inner instanceof z.ZodNumber)) return undefined;
  return {
    low: inner.minValue ?? Number.NEGATIVE_INFINITY,
    above: checksOf(inner).some((c) => c.check === 'greater_than' && c.inclusive === false),
    high: inner.maxValue ?? Number.POSITIVE_INFINITY,
  };
}

function numberWords(schema: z.ZodNumber): string {
  const checks = checksOf(schema);
  const above = checks.some((c) => c.check === 'greater_than' && c.inclusive === false);
  const finite = (v: number | null) => (v !== null && Math.abs(v) < Number.MAX_SAFE_INTEGER ? v : null);
  const [low, high] = [finite(schema.minValue), finite(schema.maxValue)];
  const noun = schema.format === 'safeint' ? 'a whole number' : 'a number';
  if (low !== null && high !== null)
    return above ? `${noun} above ${low}, at most ${high}` : `${noun} from ${low} to ${high}`;
  if (low !== null) return above ? `${noun} above ${low}` : `${noun} of ${low} or more`;
  return high === null ? noun : `${noun} of ${high} or less`;
}

function textWords(schema: z.ZodString): string {
  const exact = checksOf(schema).find((c) => c.check === 'length_equals')?.length;
  if (exact !== undefined) return `${exact} letters`;
  if (checksOf(schema).some((c) => c.pattern === ID_FORM)) return '4 to 40 letters, digits and hyphens';
  if (checksOf(schema).some((c) => c.check === 'string_format'))
    return schema.maxLength === null
      ? 'three capital letters, such as EUR'
      : `words on one line, at most ${schema.maxLength} letters`;
  return schema.maxLength === null ? 'words' : `words, at most ${schema.maxLength} letters`;
}

function sizeWords(schema: z.ZodArray): string {
  const of = (name: string) => checksOf(schema as never).find((c) => c.check === name);
  const exact = of('length_equals')?.length;
  if (exact !== undefined) return ` of ${exact}`;
  const [least, most] = [of('min_length')?.minimum, of('max_length')?.maximum];
  if (least !== undefined && most !== undefined) return ` of ${least} to ${most}`;
  return most === undefined ? '' : ` of at most ${most}`;
}
