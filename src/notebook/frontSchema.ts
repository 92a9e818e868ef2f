/** The front matter as a person writes it: everything that has a default may be left out. */
import { z } from 'zod';
import { diaryEntrySchema } from './diary.ts';
import { FORMAT_VERSION, farmSchema, overrideSchema, scenarioSchema } from './schema.ts';
import { unwrap } from './schemaAt.ts';

export const MOST_SCENARIOS = 24;
const UNIT_SYSTEMS = ['metric', 'us'] as const;
const VIEWS = ['notebook', 'board'] as const;

/** Any part of an object schema: objects at every level may be incomplete, lists are whole. */
function partOf(schema: z.core.$ZodType): z.ZodType {
  const inner = unwrap(schema);
  if (!(inner instanceof z.ZodObject)) return (inner as z.ZodType).optional();
  const shape: Record<string, z.ZodType> = {};
  for (const [key, value] of Object.entries(inner.shape)) {
    const description = (value as z.ZodType).description;
    const part = partOf(value);
    shape[key] = description === undefined ? part : part.describe(description);
  }
  return z.strictObject(shape).optional();
}

const { name, system, because, ...rest } = scenarioSchema.shape;

/** A scenario as it is written: a name, a system, a reason, and only what differs. */
const scenarioDifferenceSchema = z.strictObject({
  name,
  system,
  because,
  ...Object.fromEntries(Object.entries(rest).map(([key, value]) => [key, partOf(value)])),
});

export const frontSchema = z.strictObject({
  winterkeep: z.literal(FORMAT_VERSION).describe('Version of the notebook format'),
  title: z.string().min(1).max(200),
  invented: z.boolean().default(false).describe('True for a farm that does not exist'),
  units: z
    .enum(UNIT_SYSTEMS)
    .default('metric')
    .describe('What the page shows; a notebook is always written in metric'),
  view: z
    .enum(VIEWS)
    .default('notebook')
    .describe('How the page opens: `board` shows answer, cards and figures side by side without the words'),
  farm: farmSchema,
  scenarios: z.array(scenarioDifferenceSchema).min(1).max(MOST_SCENARIOS),
  coefficients: z
    .array(overrideSchema)
    .max(200)
    .default([])
    .describe('Own numbers in place of rows of the tables'),
  diary: z.array(diaryEntrySchema).max(3000).default([]),
  draws: z
    .strictObject({
      count: z.number().int().min(1).max(1_000_000).default(10_000),
      seed: z.number().int().min(0).max(2_147_483_647).default(1),
    })
    .prefault({})
    .describe('How many draws, and the seed that makes them repeatable'),
  decide: z
    .strictObject({ weights: z.record(z.string().max(200), z.number().min(0).max(1e9)).default({}) })
    .prefault({})
    .describe('What the keeper weighs: results by name'),
});

/** What is checked before the scenarios are completed: the same, each scenario still as it was written. */
export const outerSchema = frontSchema.extend({ scenarios: z.array(z.unknown()).min(1).max(MOST_SCENARIOS) });

export type Outer = z.output<typeof outerSchema>;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];
export type View = (typeof VIEWS)[number];
