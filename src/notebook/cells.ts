/** The cells a notebook can hold: fenced blocks whose first word is a kind, with a few options in YAML. */
import { z } from 'zod';

const quantity = z.string().min(1).describe('Name of a result, such as nitrogenKeptKg');
const input = z.string().min(1).describe('Name of an input, such as headCount or rainFactor');
const scenario = z
  .string()
  .min(1)
  .describe('Name of a scenario; the first that has what the cell shows when absent');
const caption = z.string().min(1).max(1000).optional().describe('Words under the figure');
const some = {
  scenarios: z
    .array(scenario)
    .min(1)
    .max(24)
    .optional()
    .describe('Which scenarios, in this order; all when absent'),
  caption,
};
const one = { scenario: scenario.optional(), caption };
const pair = z
  .tuple([scenario, scenario])
  .optional()
  .describe('Two scenarios whose difference is looked at; the first two when absent');
const herd = z
  .enum(['built', 'stays'])
  .optional()
  .describe(
    'What turning the herd means: shed and yards built to match, or the shed stays; as on the page when absent',
  );
const span = {
  from: z.number().optional(),
  to: z.number().optional(),
  herd,
  steps: z.number().int().min(2).max(201).default(41),
};

const ELEMENTS = ['nitrogen', 'phosphorus', 'potassium'] as const;
const BED_SERIES = ['depth', 'moisture', 'carbonNitrogen', 'dryMatter', 'nitrogen', 'temperature'] as const;

export const CELL_OPTIONS = {
  /** Scenarios side by side: what stays, what it takes, how sure. */
  cards: z.strictObject({ ...some, measures: z.array(quantity).min(1).max(30).optional() }),
  /** Where each kilogram of an element went. */
  ledger: z.strictObject({ ...some, element: z.enum(ELEMENTS).default('nitrogen') }),
  /** One result across the scenarios. */
  compare: z.strictObject({ ...some, measure: quantity }),
  /** Nitrogen from what the animals dropped down to the first crop, rung by rung. */
  ladder: z.strictObject(some),
  /** Rain, snow, soil water and drainage through the winter; or every winter of the weather file. */
  rain: z.strictObject({
    ...one,
    show: z.enum(['winter', 'winters']).default('winter'),
    measure: quantity.optional(),
  }),
  /** A result while an input is turned; with `across`, two inputs against each other. */
  sweep: z.strictObject({ ...some, over: input, ...span, measure: quantity, across: input.optional() }),
  /** Where one scenario overtakes another. */
  flip: z.strictObject({ over: input, ...span, measure: quantity, between: pair, caption }),
  /** How sure a result is, and in how many draws each scenario is best. */
  draws: z.strictObject({ ...some, measure: quantity }),
  /** Which numbers decide, and which to measure first. */
  rank: z.strictObject({
    measure: quantity,
    between: pair,
    top: z.number().int().min(1).max(40).default(10),
    caption,
  }),
  /** The shed cut across, with the bed at any week. */
  section: z.strictObject({ ...one, week: z.number().int().min(0).max(52).optional() }),
  /** The shed from above. */
  plan: z.strictObject(one),
  /** The bed week by week. */
  bed: z.strictObject({ ...some, show: z.enum(BED_SERIES).default('depth') }),
  /** The cheapest bedding from the materials on hand. */
  mix: z.strictObject(one),
  calendar: z.strictObject(one),
  /** Bill of quantities. */
  bill: z.strictObject(one),
  costs: z.strictObject(some),
  cashflow: z.strictObject(some),
  /** The summary for a partner or lender. */
  case: z.strictObject(one),
  diary: z.strictObject(one),
  sources: z.strictObject({ caption }),
  checks: z.strictObject({ ...some, show: z.enum(['all', 'open']).default('all') }),
} as const;

export type CellKind = keyof typeof CELL_OPTIONS;
/** Options of one kind, defaults filled. */
type CellOptions<K extends CellKind = CellKind> = z.output<(typeof CELL_OPTIONS)[K]>;
/** A cell's kind with the options that belong to it. */
export type Cell = { [K in CellKind]: { readonly kind: K; readonly options: CellOptions<K> } }[CellKind];

export const CELL_KINDS = Object.keys(CELL_OPTIONS) as readonly CellKind[];

export const isCellKind = (word: string): word is CellKind => Object.hasOwn(CELL_OPTIONS, word);

/** Names a cell refers to, with the option each stands under. */
export interface CellReferences {
  readonly results: readonly (readonly [string, string])[];
  readonly inputs: readonly (readonly [string, string])[];
  readonly scenarios: readonly (readonly [string, string])[];
}

const REFERENCES: Readonly<Record<string, keyof CellReferences>> = {
  measure: 'results',
  measures: 'results',
  over: 'inputs',
  across: 'inputs',
  scenario: 'scenarios',
  scenarios: 'scenarios',
  between: 'scenarios',
};

/** What an option names, if it names anything. */
export const referenceOf = (option: string): keyof CellReferences | undefined =>
  Object.hasOwn(REFERENCES, option) ? REFERENCES[option] : undefined;

export function referencesOf(options: object): CellReferences {
  const out = {
    results: [] as [string, string][],
    inputs: [] as [string, string][],
    scenarios: [] as [string, string][],
  };
  for (const [key, value] of Object.entries(options)) {
    const to = referenceOf(key);
    if (to) for (const name of [value].flat()) if (typeof name === 'string') out[to].push([key, name]);
  }
  return out;
}
