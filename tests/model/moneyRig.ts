/** Runs the money stages on rows of given columns; what is not given is a central row of the tables, or else 0. */
import { readDataFiles } from '../../src/cli/readData.ts';
import { WEEKS } from '../../src/model/series.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import { loadTables } from '../../src/tables/load.ts';
import { columnsRead, familiesRead, namesIn, runParts } from './parts.ts';

export const { tables: TABLES, problems: TABLE_PROBLEMS } = loadTables(readDataFiles(), CHOICE_OPTIONS);
export const EUR = TABLES.prices.get('EUR')!;

export type Row = Readonly<Record<string, number>>;
export type Options = Readonly<Record<string, string>>;

const OPTIONS: Options = {
  system: 'deep-bedded', feeder: 'barrier', exposure: 'shed', store: 'underSlats', technique: 'broadcast', way: 'turned',
  cover: 'covered', moved: 'weekly', crop: 'grassCut1', feed: 'hay', material: 'barleyStraw',
}; // biome-ignore format: one short list

/** Inputs that stand at a value other than 0 when nothing is said. */
const INPUTS: Row = {
  capitalGiven: Number.NaN, ownMoney: Number.NaN, incomePerHead: Number.NaN, lifeYears: 20, interestRate: 0.05,
  rearEaveM: Number.NaN, roofedShare: 1, bayM: 4.8, eaveM: 4.2, pitchDeg: 12, overhangM: 0.6, pushWallM: 1.8, longestTimberM: 6, snowLoadKnPerM2: 2,
  tankDepthM: 2.4, stanceDepthM: 3, labourPricePerHour: 15, nitrogenKeptKg: 100,
}; // biome-ignore format: one short list

/** Central value of a coefficient or a price in euros; undefined where there is none. */
export function central(name: string, options: Options = {}): number | undefined {
  const bare = name.replace(/^(feed|material|loan)\d+/, '$1');
  for (const rows of [TABLES.coefficients, EUR]) {
    const plain = rows.get(bare);
    if (plain) return plain.central;
    for (const [choice, option] of Object.entries({ ...OPTIONS, ...options })) {
      const row = rows.get(`${bare}.${option}`);
      if (row?.choice === choice) return row.central;
    }
  }
  return undefined;
}

export interface MoneyResult {
  readonly values: Readonly<Record<string, number>>;
  readonly week: Float64Array;
}

/** One result a row. `frozen` gives the frozen days of each week. */
export function runMoney(
  parts: readonly string[],
  rows: readonly Row[],
  options: Options = {},
  frozen: (week: number) => number = () => 0,
): MoneyResult[] {
  const made = namesIn(parts, 1);
  const given = new Set(rows.flatMap((row) => Object.keys(row)));
  const names = new Set<string>(given);
  // Without a baseline its columns stand at NaN, as the model gives them.
  for (const name of columnsRead(parts)) if (!made.includes(name)) names.add(name);
  for (const [family, fields] of Object.entries(familiesRead(parts)))
    for (let k = 1; given.has(`${family}${k}${fields[0]}`); k++)
      for (const field of fields) names.add(`${family}${k}${field}`);
  const fallback = (name: string) =>
    /^baseline[A-Z]/.test(name) ? Number.NaN : (INPUTS[name] ?? central(name, options) ?? 0);
  const columns = Object.fromEntries(
    [...names].map((name) => [name, Float64Array.from(rows, (row) => row[name] ?? fallback(name))]),
  );
  columns.weekFrozenDays = Float64Array.from({ length: rows.length * WEEKS }, (_, k) => frozen(k % WEEKS));
  const out: Record<string, Float64Array> = { ...columns, ...runParts(parts, columns, rows.length) };
  return rows.map((_, i) => ({
    values: Object.fromEntries([...made, ...names].map((name) => [name, out[name][i]])),
    week: out.weekLabourHours?.slice(i * WEEKS, (i + 1) * WEEKS) ?? new Float64Array(WEEKS),
  }));
}
