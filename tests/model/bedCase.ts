/** Rows for the bedding, bed and compost stages: central coefficients, zero inputs, and what a test sets. */
import { readDataFiles } from '../../src/cli/readData.ts';
import { planOf } from '../../src/model/engine/plan.ts';
import { run } from '../../src/model/engine/run.ts';
import { CATALOGUE } from '../../src/model/quantities.ts';
import { WEEKS } from '../../src/model/series.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import { INPUTS } from '../../src/notebook/inputs.ts';
import { loadTables } from '../../src/tables/load.ts';
import { columnsRead, familiesRead, namesIn, runParts } from './parts.ts';

export const { tables } = loadTables(readDataFiles(), CHOICE_OPTIONS);

/** Central value of a row; throws on a name that is not there, so that a typing error cannot pass for zero. */
export function central(id: string): number {
  const row = tables.coefficients.get(id);
  if (!row) throw new Error(`no coefficient ${id}`);
  return row.central;
}

/** Even weather, so that a heap can be tested without a year of days. */
const EVEN = { weekRainMm: 'rainPerWeekMm', weekTemperatureC: 'everyWeekC' } as const;

/** A part of a bedding mix: a material of the tables with any of its fields set otherwise. */
export interface MixPart {
  readonly material: string;
  readonly share: number;
  readonly fields?: Readonly<Record<string, number>>;
}

export interface Case {
  readonly columns?: Readonly<Record<string, number>>;
  readonly mix?: readonly MixPart[];
  /** Mixed into the heap: tonnes of materials of the tables, with any of their fields set otherwise. */
  readonly amendments?: readonly (Omit<MixPart, 'share'> & { readonly tonnes: number })[];
  readonly way?: string;
  readonly cover?: string;
  /** Weekly temperatures in place of `everyWeekC`. */
  readonly weekC?: Float64Array;
}

export interface CaseResult {
  readonly values: Readonly<Record<string, number>>;
  readonly weeks: Readonly<Record<string, Float64Array>>;
}

/** Runs parts over cases. Columns no table knows are 0 unless set. */
export function runCases(parts: readonly string[], cases: readonly Case[]): CaseResult[] {
  const reads = [...columnsRead(parts), ...Object.values(EVEN)];
  const families = familiesRead(parts);
  const fields = families.material ?? [];
  const inputs = new Set(INPUTS.map(({ column }) => column));
  const columns: Record<string, Float64Array> = {};
  const put = (name: string, row: number, value: number) => {
    columns[name] ??= new Float64Array(cases.length);
    columns[name][row] = value;
  };
  const items = Math.max(0, ...cases.map(({ mix }) => mix?.length ?? 0));
  const mixedIn = Math.max(0, ...cases.map(({ amendments }) => amendments?.length ?? 0));
  cases.forEach(({ columns: set = {}, mix = [], amendments = [], way = 'turned', cover = 'open' }, row) => {
    for (const name of reads) {
      const known = [name, `${name}.${way}`, `${name}.${cover}`]
        .map((id) => tables.coefficients.get(id))
        .find(Boolean);
      put(name, row, set[name] ?? (inputs.has(name) ? 0 : (known?.central ?? 0)));
    }
    for (const field of fields)
      for (let k = 0; k < items; k++) {
        const part = mix[k];
        const own = field === 'Share' ? part?.share : part?.fields?.[field];
        put(
          `material${k + 1}${field}`,
          row,
          part ? (own ?? central(`material${field}.${part.material}`)) : 0,
        );
      }
    for (const field of families.amendment ?? [])
      for (let k = 0; k < mixedIn; k++) {
        const part = amendments[k];
        const own = field === 'Tonnes' ? part?.tonnes : part?.fields?.[field];
        put(
          `amendment${k + 1}${field}`,
          row,
          part ? (own ?? central(`material${field}.${part.material}`)) : 0,
        );
      }
    const unread = Object.keys(set).filter((name) => !(name in columns));
    if (unread.length > 0) throw new Error(`no part reads ${unread.join(', ')}`);
  });
  for (const [series, of] of Object.entries(EVEN))
    columns[series] = Float64Array.from(
      { length: cases.length * WEEKS },
      (_, k) => columns[of][Math.floor(k / WEEKS)],
    );
  cases.forEach(({ weekC }, row) => {
    if (weekC) (columns.weekTemperatureC as Float64Array).set(weekC, row * WEEKS);
  });
  const out = runParts(parts, columns, cases.length);
  return cases.map((_, row) => ({
    values: Object.fromEntries(namesIn(parts, 1).map((name) => [name, out[name][row]])),
    weeks: Object.fromEntries(
      namesIn(parts, WEEKS).map((name) => [name, out[name].subarray(row * WEEKS, (row + 1) * WEEKS)]),
    ),
  }));
}

/** One case. */
export const runCase = (parts: readonly string[], only: Case = {}): CaseResult => runCases(parts, [only])[0];

/**
 * Some steps alone, all they read given: what is not named stands at its row's central value (those of a choice at
 * none of its options, so at 0), or at 0; a series at one number in every week.
 */
export function alone(
  names: readonly string[],
  given: Readonly<Record<string, number>>,
): Readonly<Record<string, number>> {
  const others = new Set([...CATALOGUE.entries.keys()].filter((name) => !names.includes(name)));
  const plan = planOf(CATALOGUE, [...names], others);
  const unread = Object.keys(given).filter((name) => !plan.inputs.has(name));
  if (unread.length > 0) throw new Error(`no step reads ${unread.join(', ')}`);
  const columns = Object.fromEntries(
    [...plan.inputs].map((name) => [
      name,
      CATALOGUE.entries.get(name)?.width === WEEKS
        ? new Float64Array(WEEKS).fill(given[name] ?? 0)
        : Float64Array.of(given[name] ?? tables.coefficients.get(name)?.central ?? 0),
    ]),
  );
  return Object.fromEntries(
    Object.entries(run(plan, (name) => columns[name], 1)).map(([name, made]) => [name, made[0]]),
  );
}

/** The last week of a series that exists. */
export const lastOf = (weeks: Float64Array): number =>
  weeks.filter((value) => !Number.isNaN(value)).at(-1) ?? Number.NaN;

/**
 * A made-up 650 kg cow on 7 m² for 180 days: 70 % of its 57 kg a day fall on the bed, with 9 kg of straw at 14 %
 * moisture; the columns the bed stage reads.
 */
export function cowOnStraw(days = 180): Record<string, number> {
  const straw = 9 * 0.86 * days;
  const excreta = 0.7 * 6.6 * days;
  return {
    winterDays: days,
    bedM2: 7,
    packDryMatterInKg: excreta + straw,
    packWaterInKg: 0.7 * (57 - 6.6) * days + 9 * 0.14 * days,
    waterMaterialKg: 9 * 0.14 * days,
    dryMatterMaterialKg: straw,
    packCarbonInKg: 0.44 * excreta + 0.45 * straw,
    carbonMaterialKg: 0.45 * straw,
    degradableCarbonMaterialKg: 0.45 * 0.45 * straw,
    availableCarbonMaterialKg: 0.5 * 0.45 * straw,
    degradableMaterialFraction: 0.45,
    ashMaterialKg: 0.06 * straw,
    packNitrogenInKg: 0.7 * 0.19 * days + 0.006 * straw,
    nitrogenMaterialKg: 0.006 * straw,
    packTanInKg: 0.6 * 0.7 * 0.19 * days,
    packPhosphorusInKg: 0.7 * 0.044 * days + 0.0009 * straw,
    phosphorusMaterialKg: 0.0009 * straw,
    packPotassiumInKg: 0.7 * 0.14 * days + 0.012 * straw,
    potassiumMaterialKg: 0.012 * straw,
    litterAmmoniaFactor: 1,
    immobilisationKgPerKg: 0.0067,
    excretaDegradableFraction: 0.4,
    rottingWaterKgPerKg: 0.55,
    packDryDensityKgPerM3: 220,
  };
}

/** The same cow with a heap of her bed at 15 °C, as the compost stage wants it: made when the winter ends, for 126 days. */
export const cowHeap = (days = 180): Record<string, number> => ({
  ...cowOnStraw(days),
  heapNitrogenFactor: 1,
  compostLossFactor: 1,
  cleanOutDay: days,
  compostDaysGiven: 126,
  everyWeekC: 15,
});
