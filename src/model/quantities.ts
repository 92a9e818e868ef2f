/**
 * The whole calculation on one screen: what is declared, in the order the matter flows.
 *
 *   herd ─ winter ─ intake ─ excretion ─ bedding ─ placement ┬─ paddock ──────────────┐
 *                                                            ├─ slurry ──┐            ├─ ledger ─ value ─ …
 *                                                            └─ bed ─ compost ─ spreading ─ soil ┘
 *
 * The engine orders the work by what each declaration reads; the order here is that of the dictionary.
 */
import { bed } from './bed/bed.ts';
import { bedding } from './bed/bedding.ts';
import { compost } from './bed/compost.ts';
import { openBed } from './bed/openBed.ts';
import { type Catalogue, catalogue, type NamesIn, type SeriesIn } from './engine/catalogue.ts';
import { type Plan, planOf } from './engine/plan.ts';
import { recall } from './engine/recall.ts';
import { nitrifiedWeeks } from './field/nitrifiedWeeks.ts';
import { paddock } from './field/paddock.ts';
import { soil } from './field/soil.ts';
import { spreading } from './field/spread.ts';
import { excretion } from './herd/excretion.ts';
import { herd } from './herd/herd.ts';
import { intake } from './herd/intake.ts';
import { placement } from './herd/placement.ts';
import { against } from './money/against.ts';
import { costs } from './money/costs.ts';
import { finance } from './money/finance.ts';
import { labour } from './money/labour.ts';
import { kept } from './nutrients/kept.ts';
import { ledger } from './nutrients/ledger.ts';
import { value } from './nutrients/value.ts';
import { worth } from './nutrients/worth.ts';
import { slurry } from './slurry/slurry.ts';
import { frost } from './weather/frost.ts';
import { soilWater } from './weather/soilWater.ts';
import { winter } from './weather/winter.ts';
import { building } from './works/building.ts';

const PARTS = {
  herd,
  winter,
  frost,
  soilWater: [soilWater, nitrifiedWeeks],
  intake,
  excretion,
  bedding,
  openBed,
  placement,
  paddock,
  slurry,
  bed,
  compost,
  spreading,
  soil,
  ledger,
  value,
  worth,
  kept,
  labour,
  building,
  costs,
  finance,
  against,
} as const;

export const CATALOGUE: Catalogue = catalogue(PARTS);

/** Every name the model makes: results, weekly and daily series. */
export type QuantityName = NamesIn<(typeof PARTS)[keyof typeof PARTS]>;

/** What is declared of one number a row: by these names a scenario's values, bands and comparisons are read. */
export type ResultName = Exclude<QuantityName, SeriesIn<(typeof PARTS)[keyof typeof PARTS]>>;

/** Series of `WEEKS` numbers a row. */
export type WeekName = SeriesIn<
  (typeof PARTS)[keyof typeof PARTS],
  { readonly width: number; readonly onDemand?: never }
>;

/** Series of `DAYS` numbers a row. */
export type DayName = SeriesIn<(typeof PARTS)[keyof typeof PARTS], { readonly onDemand: true }>;

/** What is told of one scenario: every result and the winter's days; null where it has no such quantity. */
export type Values = Readonly<Record<ResultName | 'winterDays', number | null>>;

/** The same at the 10th, 50th and 90th percentile of the draws; what was not drawn is not there. */
export interface Bands {
  readonly p10: Partial<Values>;
  readonly p50: Partial<Values>;
  readonly p90: Partial<Values>;
}

/** Weekly series of one scenario, `WEEKS` numbers each, NaN after the last week of the winter. */
export type Tracks = Readonly<Record<WeekName, Float64Array>>;

/** Columns that bring in another scenario, the baseline of the row's own: `baselineOperatingCost`. */
export const BASELINE = /^baseline([A-Z]\w*)$/;

/** Every column of a baseline that any declaration reads. */
export const BASELINE_COLUMNS: readonly string[] = [
  ...new Set(
    [...CATALOGUE.stepOf.values()].flatMap(({ reads }) => reads).filter((read) => BASELINE.test(read)),
  ),
];

/** A page asks for some dozens; each holds a chunk of all its columns. */
export const MOST_PLANS = 48;
const plans = new Map<string, Plan>();

/** The plan for these names, the same one while it is in use. Throws on a name the model does not make. */
export const planFor = (names: readonly QuantityName[]): Plan =>
  recall(plans, names.join(' '), MOST_PLANS, () => planOf(CATALOGUE, names));

const namesOf = <Name extends QuantityName>(holds: (width: number, onDemand: boolean) => boolean) =>
  [...CATALOGUE.entries.values()].filter((e) => holds(e.width, e.onDemand)).map((e) => e.name as Name);

/** Every result, and every series that is always worked out. */
export const ALWAYS: readonly (ResultName | WeekName)[] = namesOf((_, onDemand) => !onDemand);
export const WEEKLY: readonly WeekName[] = namesOf((width, onDemand) => width > 1 && !onDemand);
export const DAILY: readonly DayName[] = namesOf((_, onDemand) => onDemand);
