/** Names in a notebook that must be known to the tables and the model. */
import { INPUT_FAMILIES, INPUTS } from '../notebook/inputs.ts';
import { checkNames } from '../notebook/names.ts';
import type { Notebook } from '../notebook/read.ts';
import type { Tables } from '../tables/coefficient.ts';
import type { Problem } from '../units/problem.ts';
import { RESULTS } from './dictionary.ts';
import { familyOf } from './engine/columns.ts';
import { rowLimits } from './limits.ts';
import { ALWAYS, BASELINE, planFor } from './quantities.ts';
import { quoteFaults } from './works/bill.ts';

/** Every name that names nothing, with its line and the ones most like it; and a currency without prices. */
export function unknownIds(notebook: Notebook, tables: Tables): Problem[] {
  const priceIds = new Set([...tables.prices.values()].flatMap((table) => [...table.keys()]));
  const coefficients = [...tables.coefficients.keys(), ...priceIds];
  const families = INPUT_FAMILIES.flatMap(({ family, fields, items }) =>
    Object.keys(fields).flatMap((field) =>
      Array.from(
        { length: Math.max(0, ...notebook.scenarios.map((s) => items(s).length)) },
        (_, k) => `${family}${k + 1}${field}`,
      ),
    ),
  );
  const inputs = ['headCount', ...INPUTS.map((i) => i.column), ...families, ...coefficients];
  const results = RESULTS.map((r) => r.name);
  const quantities = ['winterDays', ...results, ...inputs];
  return [
    ...missingRows(tables),
    ...checkNames(notebook, { coefficients, results, quantities, inputs }),
    ...overrideFaults(notebook, tables),
    ...notebook.scenarios.flatMap((scenario, k) =>
      quoteFaults(scenario).map(({ at, words }) =>
        problemAt(notebook, `scenarios.${k}.${at}`, { what: words }),
      ),
    ),
    ...currencyFaults(
      notebook,
      [...tables.prices.keys()].filter((key) => !key.includes('-')),
    ),
  ];
}

/** Tables do not change while they are used, and every edit of a notebook asks. */
const missingIn = new WeakMap<Tables, readonly Problem[]>();

/** A number the model reads and no table has: every figure that hangs on it would be absent, and nobody would know why. */
function missingRows(tables: Tables): readonly Problem[] {
  const found = missingIn.get(tables) ?? lookForRows(tables);
  missingIn.set(tables, found);
  return found;
}

function lookForRows({ coefficients, prices }: Tables): Problem[] {
  const known = new Set(
    [coefficients, ...prices.values()].flatMap((table) => [...table.values()].map(({ name }) => name)),
  );
  const given = new Set(INPUTS.map(({ column }) => column));
  return [...planFor(ALWAYS).inputs].flatMap((read) => {
    if (read.startsWith('@') || read === 'weatherIndex' || BASELINE.test(read) || given.has(read)) return [];
    const of = familyOf(read);
    const spec = of && INPUT_FAMILIES.find(({ family }) => family === of.family);
    if (of && spec && Object.hasOwn(spec.fields, of.field)) return [];
    const name = of ? `${spec?.choice?.rows ?? of.family}${of.field}` : read;
    return known.has(name)
      ? []
      : [
          {
            what: 'a number that the model reads is in no table',
            file: 'data',
            key: name,
            todo: 'put its row back',
          },
        ];
  });
}

/** Own values that the quantity cannot have: a share above the whole, a mass below nothing. */
function overrideFaults(notebook: Notebook, { coefficients, prices }: Tables): Problem[] {
  return notebook.overrides.flatMap(({ id, value, low, high }, k) => {
    const row = coefficients.get(id) ?? [...prices.values()].find((table) => table.has(id))?.get(id);
    if (!row) return [];
    const { holds, words } = rowLimits(row);
    return Object.entries({ value, low, high }).flatMap(([key, own]) =>
      own === undefined || holds(own)
        ? []
        : [
            problemAt(notebook, `coefficients.${k}.${key}`, {
              what: 'the coefficient cannot have this value',
              found: String(own),
              allowed: `${words}; the table says ${row.low} to ${row.high} ${row.unit}`,
            }),
          ],
    );
  });
}

function currencyFaults(notebook: Notebook, known: readonly string[]): Problem[] {
  const places = [
    { farm: notebook.farm, at: 'farm' },
    ...notebook.scenarios.map(({ farm }, k) => ({ farm, at: `scenarios.${k}.farm` })),
  ];
  const unknown = new Map<string, string>();
  for (const { farm, at } of places)
    if (!known.includes(farm.money.currency) && !unknown.has(farm.money.currency))
      unknown.set(farm.money.currency, `${at}.money.currency`);
  const mixed = places.filter(({ farm }) => farm.money.currency !== notebook.farm.money.currency);
  const mixedProblems = mixed.slice(0, 1).map(({ farm, at }) =>
    problemAt(notebook, `${at}.money.currency`, {
      what: 'two currencies stand in one notebook, and their amounts cannot be compared',
      found: farm.money.currency,
      allowed: notebook.farm.money.currency,
      todo: 'convert the prices of this scenario into the currency of the farm',
    }),
  );
  return [...mixedProblems, ...unknownCurrencies(notebook, unknown, known)];
}

function unknownCurrencies(
  notebook: Notebook,
  unknown: ReadonlyMap<string, string>,
  known: readonly string[],
): Problem[] {
  return [...unknown].map(([found, key]) =>
    problemAt(notebook, key, {
      what: 'there is no table of prices in this currency',
      found,
      allowed: known.join(', '),
      todo: 'use one of these and put own prices in place, with a reason',
    }),
  );
}

function problemAt(
  { file, lineOf }: Notebook,
  key: string,
  problem: Omit<Problem, 'file' | 'line' | 'key'>,
): Problem {
  return { ...problem, file, line: lineOf(key), key };
}
