/** Runs the money stages on rows of given columns; what is not given is a central row of the tables, or else 0. */
import { table } from 'arquero';
import { readDataFiles } from '../../src/cli/readData.ts';
import { runPipeline } from '../../src/model/pipeline.ts';
import { defineStage, type Stage, WEEKS } from '../../src/model/stage.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import { loadTables } from '../../src/tables/load.ts';

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
  capitalGiven: Number.NaN, ownMoney: Number.NaN, incomePerYear: Number.NaN, lifeYears: 20, interestRate: 0.05,
  bayM: 4.8, eaveM: 4.2, pitchDeg: 12, overhangM: 0.6, pushWallM: 1.8, longestTimberM: 6, snowLoadKnPerM2: 2,
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
  stages: readonly Stage[],
  rows: readonly Row[],
  options: Options = {},
  frozen: (week: number) => number = () => 0,
): MoneyResult[] {
  const made = stages.flatMap((stage) => Object.keys(stage.makes));
  const given = new Set(rows.flatMap((row) => Object.keys(row)));
  const names = new Set<string>(given);
  for (const stage of stages) {
    for (const name of stage.reads) if (!made.includes(name)) names.add(name);
    for (const [family, fields] of Object.entries(stage.families ?? {}))
      for (let k = 1; given.has(`${family}${k}${fields[0]}`); k++)
        for (const field of fields) names.add(`${family}${k}${field}`);
  }
  const fallback = (name: string) => INPUTS[name] ?? central(name, options) ?? 0;
  const columns = Object.fromEntries(
    [...names].map((name) => [name, Float64Array.from(rows, (row) => row[name] ?? fallback(name))]),
  );
  const weather = defineStage({
    name: 'weather',
    about: 'frozen days as given',
    reads: [],
    makes: {},
    tracks: { weekFrozenDays: { label: 'frozen days', unit: 'd', formula: 'given', from: [] } },
    run: ({ count, track }) => {
      for (let i = 0; i < count; i++)
        for (let week = 0; week < WEEKS; week++) track.weekFrozenDays[i * WEEKS + week] = frozen(week);
    },
  });
  const out = runPipeline(table(columns), { weather: [], tracks: true }, [weather, ...stages]);
  return rows.map((_, i) => ({
    values: Object.fromEntries(
      [...made, ...names].map((name) => [
        name,
        Number((out.table.column(name) as unknown as Float64Array)[i]),
      ]),
    ),
    week: out.tracks.weekLabourHours?.slice(i * WEEKS, (i + 1) * WEEKS) ?? new Float64Array(WEEKS),
  }));
}
