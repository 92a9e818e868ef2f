/** The form of a cell: a field for each of its options, read off the schema that the file is held to. */
import { z } from 'zod';
import { CELL_OPTIONS, type CellKind, referenceOf } from './cells.ts';
import { CHOICE_WORDS, OPTION_WORDS } from './cellWords.ts';
import { allowedWords, numberLimits, unwrap } from './schemaAt.ts';

interface Common {
  readonly key: string;
  readonly label: string;
  /** Whether the cell cannot do without it. */
  readonly required: boolean;
  /** What is allowed, in words. */
  readonly allowed: string;
}

export type Field =
  | (Common & {
      readonly type: 'scenario' | 'quantity' | 'input' /** How many are named: one, a pair, or a list. */;
      readonly many: 'one' | 'pair' | 'list';
    })
  | (Common & {
      readonly type: 'choice';
      readonly options: readonly { readonly value: string; readonly words: string }[];
      readonly start: string | undefined;
    })
  | (Common & {
      readonly type: 'number';
      readonly whole: boolean;
      readonly low: number | undefined;
      readonly high: number | undefined;
      readonly start: number | undefined;
    })
  | (Common & { readonly type: 'text' });

const NAMED = { results: 'quantity', inputs: 'input', scenarios: 'scenario' } as const;

/** The fields of a kind of cell, in the order of its schema; words under it last. */
export function fieldsOf(kind: CellKind): Field[] {
  const fields = Object.entries(CELL_OPTIONS[kind].shape).map(([key, schema]) =>
    fieldOf(key, schema as z.ZodType),
  );
  return [...fields.filter(({ key }) => key !== 'caption'), ...fields.filter(({ key }) => key === 'caption')];
}

function fieldOf(key: string, schema: z.ZodType): Field {
  const inner = unwrap(schema);
  const common = {
    key,
    label: OPTION_WORDS[key] ?? key,
    required: !schema.safeParse(undefined).success,
    allowed: allowedWords(schema),
  };
  const named = referenceOf(key);
  const start = schema instanceof z.ZodDefault ? schema.def.defaultValue : undefined;
  if (named)
    return {
      ...common,
      type: NAMED[named],
      many: inner instanceof z.ZodArray ? 'list' : inner instanceof z.ZodTuple ? 'pair' : 'one',
    };
  if (inner instanceof z.ZodEnum)
    return {
      ...common,
      type: 'choice',
      options: inner.options.map((value) => ({
        value: String(value),
        words: CHOICE_WORDS[value] ?? String(value),
      })),
      start: start as string | undefined,
    };
  if (inner instanceof z.ZodNumber) {
    const { low = Number.NaN, high = Number.NaN } = numberLimits(schema) ?? {};
    const finite = (limit: number) => (Math.abs(limit) < Number.MAX_SAFE_INTEGER ? limit : undefined);
    return {
      ...common,
      type: 'number',
      whole: inner.format === 'safeint',
      low: finite(low),
      high: finite(high),
      start: start as number | undefined,
    };
  }
  return { ...common, type: 'text' };
}
