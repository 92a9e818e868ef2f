/**
 * From strict scenarios to the columns of the model. Each number that enters is a binding: its value, its
 * range and where it came from, so that draws, traces and sweeps need to know nothing else.
 */
import { CHOICES, INPUT_FAMILIES, INPUTS } from '../notebook/inputs.ts';
import type { Override, Scenario } from '../notebook/schema.ts';
import type { Coefficient, Tables } from '../tables/coefficient.ts';
import { pricesFor } from '../tables/priceIndex.ts';
import { familyOf } from './engine/columns.ts';
import type { Plan } from './engine/plan.ts';
import { pricesWithoutTax } from './money/ownPrices.ts';
import { ALWAYS, BASELINE, planFor } from './quantities.ts';
import { applyQuotes } from './works/bill.ts';

export interface Binding {
  readonly column: string;
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly origin: 'input' | 'coefficient' | 'price' | 'override' | 'missing';
  /** Shared by every scenario that uses the same number: coefficient or price id, or the path of an input. */
  readonly id: string;
  readonly coefficient?: Coefficient;
  /** The keeper's reason, for overrides and own prices. */
  readonly because?: string;
}

export interface BoundScenario {
  readonly scenario: Scenario;
  /** The table's rows with the keeper's own numbers in place: what the checks look at. */
  readonly coefficients: ReadonlyMap<string, Coefficient>;
  readonly bindings: ReadonlyMap<string, Binding>;
}

/** Numbers a notebook puts in place of rows of the tables. */
export interface Replacements {
  readonly overrides: readonly Override[];
}

/** Every column `plan` must be given for one scenario: by default what all results need. */
export function bindScenario(
  written: Scenario,
  tables: Tables,
  replacements: Replacements = { overrides: [] },
  plan: Plan = planFor(ALWAYS),
): BoundScenario {
  const scenario = pricesWithoutTax(applyQuotes(written), tables);
  const bindings = new Map<string, Binding>();
  const put = (binding: Binding) => bindings.set(binding.column, binding);
  for (const { column, label, unit, path, of } of INPUTS) put(input(column, label, unit, path, of(scenario)));
  for (const { family, path, items, fields, placeOf } of INPUT_FAMILIES)
    items(scenario).forEach((item, k) => {
      for (const [name, { key, label, unit, written: as, low, high }] of Object.entries(fields)) {
        const value = item[key];
        if (typeof value !== 'number') continue;
        const end = (of: string | undefined) => {
          const given = of === undefined ? undefined : item[of];
          return typeof given === 'number' ? given : value;
        };
        put({
          ...input(
            `${family}${k + 1}${name}`,
            `${label}, ${String(item.name ?? item[key === 'share' ? family : ''] ?? family)} ${k + 1}`,
            unit,
            placeOf?.(scenario, k, as) ?? `${path}.${k}.${as}`,
            value,
          ),
          low: end(low),
          high: end(high),
        });
      }
    });
  const lookUp = lookUpIn(scenario, tables, replacements);
  for (const read of plan.inputs) {
    // The table's maker chooses the winter and the baseline; every other column is bound here.
    if (read.startsWith('@') || read === 'weatherIndex' || BASELINE.test(read)) continue;
    const of = familyOf(read);
    if (!of) {
      if (!bindings.has(read)) put(lookUp(read, read));
      continue;
    }
    const spec = INPUT_FAMILIES.find((f) => f.family === of.family);
    if (!spec) throw new Error(`unknown family: ${of.family}`);
    spec.items(scenario).forEach((item, k) => {
      const column = `${of.family}${k + 1}${of.field}`;
      if (!bindings.has(column))
        put(
          lookUp(
            `${spec.choice?.rows ?? of.family}${of.field}`,
            column,
            spec.choice && String(item[spec.choice.key]),
          ),
        );
    });
  }
  return { scenario, bindings, coefficients: withOverrides(tables.coefficients, replacements.overrides) };
}

function withOverrides(
  rows: ReadonlyMap<string, Coefficient>,
  overrides: readonly Override[],
): ReadonlyMap<string, Coefficient> {
  const own = overrides.flatMap((o): [string, Coefficient][] => {
    const row = rows.get(o.id);
    return row
      ? [
          [
            o.id,
            { ...row, central: o.value, low: o.low ?? o.value, high: o.high ?? o.value, note: o.because },
          ],
        ]
      : [];
  });
  return own.length > 0 ? new Map([...rows, ...own]) : rows;
}

function input(column: string, label: string, unit: string, path: string, value: number): Binding {
  return { column, label, unit, value, low: value, high: value, origin: 'input', id: path };
}

/** Finds the row for a column: own price, override, coefficient or price table; `missing` when there is none. */
function lookUpIn(scenario: Scenario, tables: Tables, { overrides }: Replacements) {
  const { currency, year, prices: ownPrices } = scenario.farm.money;
  const priceTable = pricesFor(tables, { currency, year, country: scenario.farm.place.country });
  const [coefficientChoices, priceChoices] = [choicesIn(tables.coefficients), choicesIn(priceTable)];
  return (name: string, column: string, familyOption?: string): Binding => {
    const dimension = coefficientChoices.get(name) ?? priceChoices.get(name);
    const option = familyOption ?? (dimension === undefined ? undefined : CHOICES[dimension]?.(scenario));
    const id = option === undefined || dimension === undefined ? name : `${name}.${option}`;
    const coefficient = tables.coefficients.get(id);
    const price = priceTable.get(id);
    const row = coefficient ?? price;
    const own = ownPrices[id];
    const override = overrides.findLast((o) => o.id === id);
    if (row && !override && !own) return asInTable(row, column, coefficient ? 'coefficient' : 'price');
    const shared = { column, id, label: row?.appliesTo ?? id, unit: row?.unit ?? '', coefficient: row };
    if (override) return { ...shared, ...ranged(override), origin: 'override', because: override.because };
    if (own) return { ...shared, ...ranged(own), origin: 'override', because: own.because };
    return { ...shared, value: Number.NaN, low: Number.NaN, high: Number.NaN, origin: 'missing' };
  };
}

/** Most numbers stand as the tables have them, in every scenario of every notebook: each is made once. */
const inTable = new WeakMap<Coefficient, Map<string, Binding>>();

function asInTable(row: Coefficient, column: string, origin: 'coefficient' | 'price'): Binding {
  let columns = inTable.get(row);
  if (!columns) {
    columns = new Map();
    inTable.set(row, columns);
  }
  let binding = columns.get(column);
  if (!binding) {
    const { id, appliesTo: label, unit, central: value, low, high } = row;
    binding = { column, id, label, unit, coefficient: row, value, low, high, origin };
    columns.set(column, binding);
  }
  return binding;
}

const ranged = (o: { value: number; low?: number; high?: number }) => ({
  value: o.value,
  low: o.low ?? o.value,
  high: o.high ?? o.value,
});

/** Tables do not change once read, and every scenario asks. */
const choicesKept = new WeakMap<ReadonlyMap<string, Coefficient>, ReadonlyMap<string, string>>();

/** The dimension each name of a table hangs on, for those that hang on one. */
function choicesIn(rows: ReadonlyMap<string, Coefficient>): ReadonlyMap<string, string> {
  let found = choicesKept.get(rows);
  if (!found) {
    found = new Map(
      [...rows.values()].flatMap(({ name, choice }) =>
        choice === undefined ? [] : [[name, choice] as const],
      ),
    );
    choicesKept.set(rows, found);
  }
  return found;
}

/** Where each row's columns differ from its bindings; absent columns stand at the binding's value. */
export type RowChanges = ReadonlyMap<string, number>;

/**
 * The columns the model takes: a row for each scenario, in order, with `weatherIndex` chosen for it. Families
 * are as long as the longest; shorter scenarios get items of share and head 0.
 */
export function toTable(
  rows: readonly { bound: BoundScenario; weatherIndex: number; changes?: RowChanges }[],
): Record<string, Float64Array> {
  const columns: Record<string, Float64Array> = { weatherIndex: new Float64Array(rows.length) };
  rows.forEach(({ bound, weatherIndex }, row) => {
    columns.weatherIndex[row] = weatherIndex;
    for (const binding of bound.bindings.values()) {
      columns[binding.column] ??= new Float64Array(rows.length);
      columns[binding.column][row] = binding.value;
    }
  });
  rows.forEach(({ changes }, row) => {
    for (const [name, value] of changes ?? []) {
      if (!columns[name]) throw new Error(`unknown column: ${name}`);
      columns[name][row] = value;
    }
  });
  return columns;
}
