/**
 * The working is the working: every column is turned, and exactly what is declared to depend on it may move. So no
 * figure hangs on what its working denies, and nothing stands in a working that the figure does not need.
 */
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { toTable } from '../../src/model/bind.ts';
import { compute } from '../../src/model/compute.ts';
import type { Step } from '../../src/model/engine/catalogue.ts';
import { type Columns, familyOf } from '../../src/model/engine/columns.ts';
import { downstream, planOf } from '../../src/model/engine/plan.ts';
import { run } from '../../src/model/engine/run.ts';
import { HADS } from '../../src/model/money/owned.ts';
import { ALWAYS, BASELINE, CATALOGUE, DAILY } from '../../src/model/quantities.ts';
import { BILL_LINES } from '../../src/model/works/bill.ts';
import { HAD_NAMES } from '../../src/notebook/billIds.ts';
import { baselineRows } from '../../src/study/baselines.ts';
import type { Run } from '../../src/study/evaluate.ts';
import { FARMS, farmRun, NOTEBOOKS } from '../snapshot/figures.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const EVERY = [...ALWAYS, ...DAILY];

const steps = [...new Set(CATALOGUE.stepOf.values())];
const baselineReads = [...new Set(steps.flatMap((s) => s.reads))].filter((r) => BASELINE.test(r));

const runs: Run[] = [];
for (const name of NOTEBOOKS) runs.push((await openNotebook(`${ROOT}/notebooks/${name}.md`)).run);
for (let seed = 1; seed <= FARMS; seed++) runs.push(await farmRun(seed));

/** Every scenario of every farm is a row of one table, so that each turn is one call. */
const weather = runs.flatMap((r) => r.weather);
let before = 0;
const placed = runs.flatMap((r) => {
  const rows = r.bound.map((bound, k) => ({ bound, weatherIndex: r.weatherIndex[k] + before }));
  before += r.weather.length;
  return rows;
});
const rows = placed.length;
const baselines = (first: Columns) => {
  let from = 0;
  return runs.flatMap(({ bound }) => {
    const own = baselineRows(bound, first.capitalCost.subarray(from, from + bound.length));
    const at = from;
    from += bound.length;
    return own.map((row) => (row < 0 ? row : row + at));
  });
};
/** No farm here has works already: eight entries each, so that every line falls under every entry on some farm. */
const entries = Object.fromEntries(
  HADS.flatMap((had, k) => {
    const each = (of: (row: number) => number) => Float64Array.from({ length: rows }, (_, row) => of(row));
    return [
      [`${had}Code`, each((row) => ((row + 6 * k) % HAD_NAMES.length) + 1)],
      [`${had}Share`, each(() => 0.3)],
      [`${had}AgeYears`, each((row) => 2 + ((row + k) % 4))],
      [`${had}LeftYears`, each((row) => (row % 2 === 0 ? Number.NaN : 3 + k))],
    ];
  }),
);
// Nor does it name gains of its own.
const input: Record<string, Float64Array> = {
  ...toTable(placed),
  ...entries,
  gain1Amount: new Float64Array(rows).fill(500),
  gain1Paid: new Float64Array(rows).fill(0.5),
};
const columns: Record<string, Float64Array> = { ...input, ...compute(EVERY, input, weather, baselines) };
for (const name of baselineReads) {
  const own = columns[`${name[8].toLowerCase()}${name.slice(9)}`];
  columns[name] = Float64Array.from(baselines(columns), (row) => (row >= 0 && own ? own[row] : Number.NaN));
}

/** Columns under a read: one, or those of a family. */
function columnsUnder(read: string): string[] {
  const of = familyOf(read);
  if (!of) return columns[read] ? [read] : [];
  const found: string[] = [];
  while (columns[`${of.family}${found.length + 1}${of.field}`])
    found.push(`${of.family}${found.length + 1}${of.field}`);
  return found;
}

/** A little up and down, then far, so that limits and switches are passed too. */
const TURNS: readonly ((value: number) => number)[] = [
  (v) => v * 1.01 + 1e-6,
  (v) => v * 0.9 - 1e-6,
  (v) => v * 3 + 1,
  (v) => v * 0.2,
  (v) => v - 10,
  (v) => v * 30 + 300,
  () => 0,
  () => 1,
];
const TURNED_IF_ABSENT = 0.5;

/**
 * What the farms leave off: prices nobody gave, tax that is not reclaimed, works that stand already, slopes that are 0 in the tables, own hours where a contractor does it
 * all, soil too wet to run dry, wind that chills a dry coat on days of rain, animals fed beyond their need, a store stirred
 * once or left with old slurry, wind and pH where a regression is centred, grass that takes all a pat frees in the week it
 * is freed, beds nobody stirs, that stay cool and hold ammonium all winter, wood that never rots ready. Switched on, so that what hangs on them can be
 * seen to move.
 */
const SWITCHED: Readonly<Record<string, number | readonly number[]>> = {
  compostPricePerTonne: 25,
  alreadyHaveShare: 0.4,
  baselineAlreadyHaveShare: 0.4,
  alreadyHaveYears: 4,
  baselineAlreadyHaveYears: 4,
  capitalOwned: 9000,
  capitalOwnedShortLived: 4000,
  baselineCapitalOwned: 7000,
  baselineCapitalOwnedShortLived: 3000,
  worksVatFraction: 0.2,
  worksVatRate: 0.2,
  vatKeptWorks: 1,
  vatKeptWinter: 1,
  billVatSum: 5000,
  billAlreadyHaveSum: -5000,
  smallWindrowHeightM: 0.5,
  heapHotDaysStill: 400,
  heapHotDaysMost: 900,
  organicMatterPricePerTonne: 8,
  energyColdMjPerKgC: 0.005,
  contractorShare: 0.5,
  outdoorHoursFactor: 1.3,
  timesStirred: 3,
  emptiedCleanShare: 0.5,
  spreadWindUsedMPerS: 4,
  slurryPh: 7.8,
  startSoilWaterFraction: 0.05,
  rainFactor: 0.4,
  roofedShare: 0.5,
  winterUptakeKgPerHaDay: 0,
  bedStirredPerWeek: 2,
  bedLooseShare: 0.6,
  // In turn: all ammonium that is left goes as other gas, or none does.
  bedOtherGasMostKg: [1e5, 0],
  bedBindingForm: 0,
  packWarmestC: 47,
  compostStableDays: 40,
  finishedWoodCarbonNitrogen: 60,
  windChillC: 12,
  group1AppetiteShare: 0.5,
  group2AppetiteShare: 0.5,
  group3AppetiteShare: 0.5,
};
const LINE_COSTS = new Set<string>(BILL_LINES.filter(({ onTop }) => !onTop).map(({ cost }) => cost));
const entryWorth = (name: string) =>
  /^(baselineH|h)ad\dCapital$/.test(name)
    ? 900
    : /^(baselineH|h)ad\dShortLived$/.test(name)
      ? 400
      : undefined;
const switched = Object.fromEntries(
  Object.entries(columns).map(([name, values]) => {
    const to = /^bill(Bedded|Slatted)Places/.test(name)
      ? 3
      : LINE_COSTS.has(name)
        ? 700
        : (entryWorth(name) ?? SWITCHED[name]);
    const set = [to ?? []].flat();
    return [name, set.length === 0 ? values : values.map((_, row) => set[row % set.length])];
  }),
);

/** What a step makes that hangs on a read, its own results in between included. */
function declaredBelow({ makes }: Step, read: string): Set<string> {
  const below = new Set<string>();
  for (let before = -1; before < below.size; ) {
    before = below.size;
    for (const { name, from } of makes)
      if (from.includes(read) || from.some((f) => below.has(f))) below.add(name);
  }
  return below;
}

const differs = (a: Float64Array, b: Float64Array) => a.some((value, k) => !Object.is(value, b[k]));

const TABLES = [columns, switched];

/** A step by itself, everything else given: run on a table of columns. */
function alone(step: Step) {
  const own = new Set(step.makes.map(({ name }) => name));
  const given = new Set([...CATALOGUE.entries.keys()].filter((name) => !own.has(name)));
  const plan = planOf(CATALOGUE, [...own], given);
  const on = (table: Record<string, Float64Array>) =>
    run(plan, (name) => table[name], rows, { resources: { weather } });
  return { own: [...own], on, still: TABLES.map(on) };
}

/** What of a step's results moves, anywhere, when one read is turned alone. */
function movedBy({ own, on, still }: ReturnType<typeof alone>, read: string): Set<string> {
  const moved = new Set<string>();
  TABLES.forEach((table, k) => {
    for (const turn of TURNS) {
      // Nothing is left that could still be seen to move.
      if (moved.size === own.length) return;
      const turned: Record<string, Float64Array> = { ...table };
      for (const name of columnsUnder(read))
        turned[name] = table[name].map((v) => (Number.isNaN(v) ? TURNED_IF_ABSENT : turn(v)));
      const after = on(turned);
      for (const name of own) if (!moved.has(name) && differs(still[k][name], after[name])) moved.add(name);
    }
  });
  return moved;
}

/**
 * Reads that stand in a working for another reason than their amount: the winter a row stands in is a choice and no
 * number, and is turned by the test of winters.
 */
const NO_NUMBER = /^@|^weatherIndex$/;

/** The rate of return is looked for on a grid, and what it is found from has some eighty columns. */
const LONGEST_MS = 240_000;

describe('every step', () => {
  for (const step of steps)
    it(
      `${step.makes.length > 1 ? step.name : step.makes[0].name} moves with what it declares, and with nothing else`,
      () => {
        const stepAlone = alone(step);
        for (const read of step.reads) {
          if (NO_NUMBER.test(read)) continue;
          const below = declaredBelow(step, read);
          const moved = movedBy(stepAlone, read);
          expect({ read, undeclared: [...moved].filter((name) => !below.has(name)) }).toEqual({
            read,
            undeclared: [],
          });
          expect({ read, declaredButStill: [...below].filter((name) => !moved.has(name)) }).toEqual({
            read,
            declaredButStill: [],
          });
        }
      },
      LONGEST_MS,
    );
});

describe('every input', { timeout: 240_000 }, () => {
  it('moves only what is declared below it, from end to end', () => {
    const whole = planOf(CATALOGUE, ALWAYS);
    const inputs = Object.keys(columns).filter(
      (column) => !CATALOGUE.entries.has(column) && column !== 'weatherIndex' && !BASELINE.test(column),
    );
    for (const name of inputs) {
      const turned = {
        ...columns,
        [name]: columns[name].map((v) => (Number.isNaN(v) ? 1 : v * 1.01 + 1e-6)),
      };
      const after = run(whole, (name) => turned[name], rows, { resources: { weather } });
      const below = downstream(CATALOGUE, [name]);
      const hidden = ALWAYS.filter((made) => !below.has(made) && differs(columns[made], after[made]));
      expect({ name, hidden }).toEqual({ name, hidden: [] });
    }
  });
});
