/** Answers → a notebook that reads without a problem, and what follows from it. Works out sizes with the model itself. */
import { unknownIds } from '../model/idFaults.ts';
import type { PreparedWeather } from '../model/weather/prepared.ts';
import { type Notebook, readNotebook } from '../notebook/read.ts';
import type { Scenario } from '../notebook/schema.ts';
import { evaluate, type Run, type WinterOf } from '../study/evaluate.ts';
import type { Tables } from '../tables/coefficient.ts';
import { daysBetween } from '../units/days.ts';
import type { Problem } from '../units/problem.ts';
import type { Worked } from './body.ts';
import { sharesOf } from './lists.ts';
import { type Plan, planOf } from './plan.ts';
import type { Begun } from './reader.ts';
import { sizesOf } from './size.ts';
import { notebookText, SCENARIOS } from './text.ts';

export interface Winters {
  readonly winterOf: WinterOf;
  readonly wintersOf?: (scenario: Scenario) => readonly PreparedWeather[];
  readonly problems: readonly Problem[];
}

export interface Setting {
  readonly tables: Tables;
  readonly winters: (notebook: Notebook) => Promise<Winters>;
}

export interface NewNotebook {
  readonly plan: Plan;
  readonly text: string;
  /** Undefined where the text has problems: a fault of the weather file, or of this program. */
  readonly run: Run | undefined;
  readonly problems: readonly Problem[];
}

const FILE = 'my-farm.md';
/** The mix and the sizes settle in so many runs: the first from a guess, the others from what it gave. */
const RUNS = 2;
/** And a bed that ends too wet is given more in so many more. */
const WET_RUNS = 4;
/** What a kg more a day per 100 kg takes off the moisture of a bed, about; only how far the next try goes. */
const DRIER_PER_KG = 0.08;

export async function newNotebook(begun: Begun, setting: Setting): Promise<NewNotebook> {
  const plan = planOf(begun);
  let worked: Worked = {
    sizes: sizesOf(plan, setting.tables, { slatsM2: 0, storeNeededM3: 0 }),
    mix: mixOf(plan, undefined),
    tonnes: new Map(plan.materials.map(({ material, tonnes }) => [material, tonnes ?? 0])),
    rateKgPer100Kg: undefined,
    weatherYear: undefined,
  };
  for (let k = 0; ; k++) {
    const text = k === 0 ? withoutSlats(notebookText(plan, worked)) : notebookText(plan, worked);
    const read = readNotebook(text, FILE);
    if (!read.ok) return { plan, text, run: undefined, problems: read.problems };
    const { winterOf, wintersOf, problems } = await setting.winters(read.notebook);
    const faults = [...problems, ...unknownIds(read.notebook, setting.tables)];
    if (faults.length > 0) return { plan, text, run: undefined, problems: faults };
    const run = evaluate(read.notebook, setting.tables, winterOf);
    const rate = k < RUNS ? worked.rateKgPer100Kg : drierRate(run, setting.tables, worked);
    const next = workedFrom(plan, run, setting.tables, k === 0 ? undefined : worked);
    if (k === RUNS + WET_RUNS || (k >= RUNS && rate === worked.rateKgPer100Kg && !short(worked, next)))
      return { plan, text, run, problems: [] };
    worked = {
      ...next,
      rateKgPer100Kg: rate,
      weatherYear: worked.weatherYear ?? middlingYear(wintersOf?.(read.notebook.scenarios[0]) ?? [], plan),
    };
  }
}

/** Less of a material is named than the last run took. */
const short = (worked: Worked, { tonnes }: Pick<Worked, 'tonnes'>) =>
  [...tonnes].some(([material, wanted]) => (worked.tonnes.get(material) ?? 0) < wanted);

/**
 * The bedding a day that the next run tries: more, in tenths of a kg, while the bed ends wetter than its check lets pass,
 * and never more than the tables know of.
 */
function drierRate(run: Run, { coefficients }: Tables, { rateKgPer100Kg: now }: Worked): number | undefined {
  const values = run.results.find(({ name }) => name === SCENARIOS.bed)?.values;
  const limit = coefficients.get('bedMoistureLimitFraction')?.high;
  const most = coefficients.get('beddingSilageKgPer100Kg')?.high;
  const { packMoisture, beddingDailyKgPer100Kg: usual } = values ?? {};
  if (limit === undefined || most === undefined || packMoisture == null || packMoisture <= limit) return now;
  const more = Math.max(0.1, (packMoisture - limit) / DRIER_PER_KG);
  return Math.max(now ?? 0, Math.min(most, Math.ceil(10 * ((now ?? usual ?? most) + more) - 1e-9) / 10));
}

/** In the first run the slatted area is left to the model, which takes it from its own rows. */
const withoutSlats = (text: string) => text.replace(/(slats: \{ )areaM2: [\d.]+, /, '$1');

function workedFrom(
  plan: Plan,
  run: Run,
  tables: Tables,
  before: Worked | undefined,
): Omit<Worked, 'weatherYear' | 'rateKgPer100Kg'> {
  const value = (name: string, of: 'slatsUsedM2' | 'beddingTonnes' | 'storeNeededM3') =>
    run.results.find((result) => result.name === name)?.values[of] ?? 0;
  const sizes =
    before?.sizes ??
    sizesOf(plan, tables, {
      slatsM2: value(SCENARIOS.slats, 'slatsUsedM2'),
      storeNeededM3: value(SCENARIOS.slats, 'storeNeededM3'),
    });
  const needTonnes = value(SCENARIOS.bed, 'beddingTonnes');
  const mix = mixOf(plan, needTonnes);
  const part = new Map(mix.map(({ material, share }) => [material, share]));
  const tonnes = new Map(
    plan.materials.map(({ material, tonnes: own }) => [
      material,
      own ?? Math.ceil(needTonnes * (part.get(material) ?? 0)),
    ]),
  );
  return { sizes, mix, tonnes };
}

/**
 * What the bed is laid of: what lies in reach, in proportion; where that does not last, the materials without tonnes are
 * bought for the rest. Without a need that is known, those alone.
 */
function mixOf({ materials }: Plan, needTonnes: number | undefined): Worked['mix'] {
  const bought = materials.filter(({ tonnes }) => tonnes === undefined);
  const there = materials.reduce((sum, { tonnes }) => sum + (tonnes ?? 0), 0);
  const rest = bought.length === 0 ? 0 : Math.max(0, (needTonnes ?? there + 1) - there) / bought.length;
  const parts = materials.map(({ tonnes }) => tonnes ?? rest);
  const shares = sharesOf(parts);
  return materials.flatMap(({ material }, k) => (shares[k] > 0 ? [{ material, share: shares[k] }] : []));
}

/** The year a winter with a middling sum of rain begins in. */
function middlingYear(winters: readonly PreparedWeather[], { winter }: Plan): number | undefined {
  const days = daysBetween(winter.start, winter.end);
  const sums = winters
    .map(({ start, rainMm }) => ({
      year: Number(start.slice(0, 4)),
      rain: rainMm.subarray(0, days).reduce((sum, mm) => sum + mm, 0),
    }))
    .sort((a, b) => a.rain - b.rain);
  return sums[Math.floor((sums.length - 1) / 2)]?.year;
}
