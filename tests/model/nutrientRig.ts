/** Runs a few stages on one or more rows: given columns first, then central coefficients, then 0. */
import { readDataFiles } from '../../src/cli/readData.ts';
import { DAYS, WEEKS } from '../../src/model/series.ts';
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import { loadTables } from '../../src/tables/load.ts';
import { columnsRead, familiesRead, namesIn, runParts } from './parts.ts';

export const { tables: TABLES, problems: TABLE_PROBLEMS } = loadTables(readDataFiles(), CHOICE_OPTIONS);

/** A group of suckler cows, one feed; more by giving `group2HeadCount` and so on. */
const OPTIONS: Readonly<Record<string, string>> = {
  feeder: 'ring',
  exposure: 'shed',
  house: 'closed',
  store: 'none',
  technique: 'broadcast',
  incorporation: 'never',
  implement: 'plough',
  way: 'turned',
  crop: 'grassCut1',
  moved: 'weekly',
  class: 'sucklerCow',
  feed: 'haylage',
};

/** Central value of a coefficient, with the option of its choice if it has one. Throws where there is none. */
export function central(name: string, option?: string): number {
  const plain = TABLES.coefficients.get(option === undefined ? name : `${name}.${option}`);
  if (plain) return plain.central;
  for (const picked of Object.values(OPTIONS)) {
    const row = TABLES.coefficients.get(`${name}.${picked}`);
    if (row?.choice !== undefined && OPTIONS[row.choice] === picked) return row.central;
  }
  throw new Error(`no coefficient: ${name}`);
}

/** Inputs that a farm may leave out, and then stand as NaN. */
const LEFT_OUT = new Set(['storeSurfaceGivenM2', 'spreadWindGivenMPerS']);

const orZero = (name: string): number => {
  if (LEFT_OUT.has(name)) return Number.NaN;
  try {
    return central(name.replace(/^(group|feed|material|loan)\d+/, '$1'));
  } catch {
    return 0;
  }
};

export type Row = Readonly<Record<string, number>>;

/** A year that is the same every day; or `days` on which the first are dry and cold, the rest wet and mild. */
export function evenWeather(
  weekC: number,
  days: readonly { dayC: number; rainMm: number }[] = [],
): PreparedWeather {
  const temperatureC = new Float64Array(DAYS - 1).fill(weekC);
  const rainMm = new Float64Array(DAYS - 1);
  days.forEach((day, d) => {
    temperatureC[d] = day.dayC;
    rainMm[d] = day.rainMm;
  });
  const hargreavesTermMm = new Float64Array(DAYS - 1);
  return { label: 'even', start: '2025-11-01', days: DAYS - 1, rainMm, temperatureC, hargreavesTermMm };
}

/** Results by row; `weekC` sets every winter week's temperature, and every day's where no weather is given. */
export function run(
  parts: readonly string[],
  rows: Row | readonly Row[],
  weekC = 10,
  weather: PreparedWeather = evenWeather(weekC),
): Record<string, number>[] {
  const given = Array.isArray(rows) ? (rows as readonly Row[]) : [rows as Row];
  const made = namesIn(parts, 1);
  const names = new Set<string>(given.flatMap((row) => Object.keys(row)));
  const count = (family: string, field: string) => {
    let k = 0;
    while (given.some((row) => `${family}${k + 1}${field}` in row)) k++;
    return k;
  };
  const lengths: Record<string, number> = {
    group: count('group', 'HeadCount'),
    feed: count('feed', 'Share'),
  };
  for (const name of columnsRead(parts)) names.add(name);
  for (const [family, fields] of Object.entries(familiesRead(parts)))
    for (let k = 1; k <= (lengths[family] ?? 0); k++)
      for (const field of fields) names.add(`${family}${k}${field}`);
  const columns = Object.fromEntries(
    [...names].map((name) => [name, Float64Array.from(given, (row) => row[name] ?? orZero(name))]),
  );
  columns.weekTemperatureC = new Float64Array(given.length * WEEKS).fill(weekC);
  columns.weatherIndex = new Float64Array(given.length);
  const out = runParts(parts, columns, given.length, [weather]);
  return given.map((_, i) => Object.fromEntries(made.map((name) => [name, out[name][i]])));
}

/** Sum of the named results. */
export const total = (row: Readonly<Record<string, number>>, ...names: string[]): number =>
  names.reduce((sum, name) => sum + row[name], 0);
