/** How prices at large have moved: `data/priceIndices.csv`, a published index for each currency, a row a year. */
import type { Problem } from '../units/problem.ts';
import { basisFault, sourceFault } from './citation.ts';
import type { Coefficient, Source, Tables } from './coefficient.ts';
import { readCsv } from './csv.ts';

export const INDICES_FILE = 'data/priceIndices.csv';

const COLUMNS = { required: ['currency', 'year', 'value', 'name', 'source', 'where', 'basis', 'note'] };

export interface PriceIndex {
  readonly name: string;
  readonly byYear: ReadonlyMap<number, number>;
}

/** The indices of one file by currency, and what is wrong with its rows. */
export function readIndices(
  file: string,
  text: string,
  sources: ReadonlyMap<string, Source>,
): { indices: Map<string, PriceIndex>; problems: Problem[] } {
  const { records, problems: found } = readCsv(file, text, COLUMNS);
  const problems = [...found];
  const byCurrency = new Map<string, { name: string; byYear: Map<number, number> }>();
  for (const { line, values: v } of records) {
    const before = problems.length;
    const complain = (key: string, what: string, rest: Partial<Problem>) =>
      problems.push({ file, line, key: `${v.currency} ${v.year} ${key}`, what, ...rest });
    if (!/^[A-Z]{3}$/.test(v.currency))
      complain('currency', 'index without a currency', {
        found: v.currency || '(empty)',
        allowed: 'three letters, like EUR',
      });
    if (!/^(19|20)\d\d$/.test(v.year))
      complain('year', 'index without a year', { found: v.year || '(empty)', allowed: 'a year, like 2024' });
    const value = v.value === '' ? Number.NaN : Number(v.value);
    if (!(value > 0))
      complain('value', 'not a level of an index', {
        found: v.value || '(empty)',
        allowed: 'a number above 0',
      });
    if (v.name === '')
      complain('name', 'index without a name', { found: '(empty)', todo: 'name it as it is published' });
    const [noSource, noBasis] = [sourceFault(v.source, sources), basisFault(v.basis)];
    if (noSource) complain('source', noSource.what, noSource);
    if (noBasis) complain('basis', noBasis.what, noBasis);
    const known = byCurrency.get(v.currency);
    if (known && known.name !== v.name)
      complain('name', 'two indices for one currency', {
        found: v.name,
        allowed: known.name,
        todo: 'keep one',
      });
    if (known?.byYear.has(Number(v.year)))
      complain('year', 'year given twice', { found: v.year, todo: 'keep one row' });
    if (problems.length > before) continue;
    const index = known ?? { name: v.name, byYear: new Map<number, number>() };
    index.byYear.set(Number(v.year), value);
    byCurrency.set(v.currency, index);
  }
  return { indices: byCurrency, problems };
}

/** Key of the table of one country among the price tables: "EUR-IE"; those of a currency bear its name alone. */
export const countryKey = (currency: string, country: string): string => `${currency}-${country}`;

/** Where and when a farm buys. */
export interface Market {
  readonly currency: string;
  readonly year: number;
  readonly country?: string | undefined;
}

const kept = new WeakMap<Tables, Map<string, ReadonlyMap<string, Coefficient>>>();
const NONE: ReadonlyMap<string, Coefficient> = new Map();

/**
 * The price rows a farm computes with: those of its country before those of its currency, each brought to the year of
 * the notebook. A row whose year or the notebook's is not in the index stays as it is.
 */
export function pricesFor(
  tables: Tables,
  { currency, year, country }: Market,
): ReadonlyMap<string, Coefficient> {
  const own = country === undefined ? NONE : (tables.prices.get(countryKey(currency, country)) ?? NONE);
  const key = `${countryKey(currency, country ?? '')} ${year}`;
  const known = kept.get(tables) ?? new Map<string, ReadonlyMap<string, Coefficient>>();
  kept.set(tables, known);
  const before = known.get(key);
  if (before) return before;
  const index = tables.indices.get(currency);
  const rows = new Map<string, Coefficient>();
  for (const row of [...(tables.prices.get(currency) ?? NONE).values(), ...own.values()])
    rows.set(row.id, broughtTo(row, year, index));
  known.set(key, rows);
  return rows;
}

/** A row in the prices of another year. */
function broughtTo(row: Coefficient, year: number, index: PriceIndex | undefined): Coefficient {
  const from = row.year === undefined ? undefined : index?.byYear.get(row.year);
  const to = index?.byYear.get(year);
  // A share of other prices moves with them; a price of its own year needs no index.
  if (row.year === year || row.unit.startsWith('fraction')) return row;
  if (from === undefined || to === undefined || !index) return { ...row, indexed: null };
  const times = (value: number) => Number(((value * to) / from).toPrecision(4));
  return {
    ...row,
    low: times(row.low),
    central: times(row.central),
    high: times(row.high),
    indexed: { by: index.name, factor: to / from, year },
  };
}
