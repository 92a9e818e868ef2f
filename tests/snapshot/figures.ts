/**
 * Every figure the program gives, as one plain tree: for the shipped notebooks and for twenty invented farms. A
 * change that is meant to move no figure is held against this tree as it was before. The farms are made here from
 * a seed, with their own generator and their own lists, so that no change elsewhere can make other farms.
 */

import { openNotebook, shippedTables } from '../../src/cli/open.ts';
import { RESULTS } from '../../src/model/dictionary.ts';
import { notebookWinters } from '../../src/model/weather/notebookWinters.ts';
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';
import { type Override, type Scenario, scenarioSchema } from '../../src/notebook/schema.ts';
import { evaluate, type Run, type ScenarioResult } from '../../src/study/evaluate.ts';
import { explain } from '../../src/study/trace.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { bandsOf } from '../../src/uncertainty/percentiles.ts';

/** A figure, a word, or figures by name. */
export type Figures = number | string | boolean | null | { readonly [name: string]: Figures };

export const NOTEBOOKS = [
  'atlantic-rain-and-herd',
  'coast-lender-case',
  'hill-farm-choice',
  'hill-farm-own-chips',
];
export const FARMS = 20;
const NOTEBOOK_DRAWS = 200;
const FARM_DRAWS = 40;
const DRAW_SEED = 7;

/** The whole tree. `root` is the folder that holds `notebooks`. */
export async function allFigures(root: string): Promise<Figures> {
  const notebooks: Record<string, Figures> = {};
  for (const name of NOTEBOOKS) {
    const { run } = await openNotebook(`${root}/notebooks/${name}.md`);
    notebooks[name] = { ...runFigures(run, NOTEBOOK_DRAWS), traces: traceFigures(run) };
  }
  const farms: Record<string, Figures> = {};
  for (let seed = 1; seed <= FARMS; seed++)
    farms[`farm ${seed}`] = runFigures(await farmRun(seed), FARM_DRAWS);
  return { notebooks, farms };
}

function runFigures(run: Run, count: number): Record<string, Figures> {
  const draws = drawAll(run, { count, seed: DRAW_SEED, keep: RESULTS.map((result) => result.name) });
  return {
    currency: run.currency,
    year: run.year,
    scenarios: Object.fromEntries(
      run.results.map((result, k): [string, Figures] => {
        const { p10, p50, p90 } = bandsOf(draws, k);
        return [
          result.name,
          {
            values: named(result.values),
            bands: { p10: named(p10), p50: named(p50), p90: named(p90) },
            tracks: trackFigures(result),
            checks: checkFigures(result),
            finance: financeFigures(result),
          },
        ];
      }),
    ),
  };
}

/** JSON would make null of what is not a number, and a figure that becomes one or the other would not be seen. */
const figure = (value: number | null | undefined): Figures =>
  value === null || value === undefined ? null : Number.isFinite(value) ? value : String(value);

const named = (values: Readonly<Record<string, number | null>>): Figures =>
  Object.fromEntries(Object.entries(values).map(([name, value]) => [name, figure(value)]));

const sumOf = (values: Iterable<number>): number => {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
};

/** Three weeks and the sum stand for a series: 53 weeks of each would make the file ten times as large. */
function trackFigures({ tracks }: ScenarioResult): Figures {
  return Object.fromEntries(
    Object.entries(tracks).map(([name, series]): [string, Figures] => {
      const finite = [...series].filter(Number.isFinite);
      return [
        name,
        {
          weeks: finite.length,
          first: figure(finite[0]),
          middle: figure(finite[Math.floor(finite.length / 2)]),
          last: figure(finite.at(-1)),
          sum: sumOf(finite),
        },
      ];
    }),
  );
}

function checkFigures({ checks }: ScenarioResult): Figures {
  const out: Record<string, Figures> = {};
  for (const { id, status, value, limit, unit, week } of checks) {
    // A check may be asked more than once, for each group or each week.
    let key = id;
    for (let again = 2; key in out; again++) key = `${id} ${again}`;
    out[key] = { status, value: figure(value), limit: figure(limit), unit, week: figure(week) };
  }
  return out;
}

function financeFigures({ finance }: ScenarioResult): Figures {
  const { years, difference } = finance;
  const covers = years.flatMap(({ cover }) => cover ?? []);
  const sums = [
    'works',
    'grant',
    'running',
    'nutrientValue',
    'net',
    'borrowed',
    'interest',
    'principal',
    'afterLoans',
    'debt',
  ] as const;
  return {
    netPresentValue: figure(finance.netPresentValue.value),
    levelisedCost: figure(finance.levelisedCost.value),
    loanPayment: figure(finance.loanPayment.value),
    debtServiceCover: figure(finance.debtServiceCover.value),
    coverFrom: finance.coverFrom,
    years: {
      count: years.length,
      ...Object.fromEntries(sums.map((key) => [key, figure(sumOf(years.map((year) => year[key])))])),
      coverCount: covers.length,
      cover: sumOf(covers),
    },
    difference: difference && {
      baseline: difference.baseline,
      flowCount: difference.flows.length,
      flowSum: figure(sumOf(difference.flows)),
      flowFirst: figure(difference.flows[0]),
      flowLast: figure(difference.flows.at(-1)),
      netPresentValue: figure(difference.netPresentValue.value),
      rate: figure(difference.internalRateOfReturn.rate),
      rateCount: difference.internalRateOfReturn.rates.length,
      rateSum: sumOf(difference.internalRateOfReturn.rates),
      paybackYears: figure(difference.paybackYears.value),
      levelisedGain: figure(difference.levelisedGain.value),
    },
  };
}

/** What each result of the first scenario says of itself. */
function traceFigures(run: Run): Figures {
  return Object.fromEntries(
    RESULTS.map(({ name }): [string, Figures] => {
      const { value, label, unit, formula } = explain(run, 0, name);
      return [name, { value: figure(value), label, unit, formula: formula ?? null }];
    }),
  );
}

// ---------------------------------------------------------------- invented farms

const LISTS = {
  system: ['outwintered', 'slatted', 'deep-bedded'],
  texture: ['sand', 'loamySand', 'sandyLoam', 'loam', 'siltLoam', 'siltyClayLoam', 'clay'],
  class: ['sucklerCow', 'bull', 'heifer', 'steer', 'weanling', 'calf', 'finisher'],
  feed: ['grassSilage', 'haylage', 'hay', 'barleyStraw', 'oatStraw', 'wheatStraw'],
  feeder: ['ring', 'openRing', 'cone', 'cradle', 'trailer', 'ground', 'barrier'],
  material: [
    'wheatStraw',
    'barleyStraw',
    'oatStraw',
    'spoiledHay',
    'softwoodChips',
    'hardwoodChips',
    'branchChips',
    'shavings',
    'softwoodSawdust',
    'hardwoodSawdust',
    'bark',
    'peat',
    'leaves',
    'reed',
    'hempHurds',
  ],
  crop: ['hillPasture', 'grassCut1', 'grassCut2', 'springCereal', 'garden'],
  store: ['none', 'crust', 'straw', 'balls', 'sheet', 'lid', 'underSlats'],
  technique: ['broadcast', 'trailingHose', 'trailingShoe', 'openSlot', 'closedSlot'],
  incorporation: ['never', 'atOnce', 'within4h', 'within12h', 'within24h'],
  way: ['turned', 'static', 'none'],
  heapCover: ['open', 'fleece'],
  moved: ['fixed', 'monthly', 'weekly', 'daily'],
  exposure: ['open', 'windbreak', 'shed'],
  spaceRules: ['commonPracticeHorned', 'sweden', 'ireland', 'euOrganic', 'unitedKingdom'],
  country: ['EE', 'IE', 'SE', 'GB', 'CA', 'NZ', undefined],
  currency: ['EUR', 'GBP', 'SEK', 'CAD', 'USD'],
  quote: ['groundwork', 'padConcrete', 'postFixings', 'timberBought', 'roof', 'slats', 'tank', 'feedBarrier'],
  price: [
    'nitrogenPricePerKg',
    'potassiumPricePerKg',
    'feedPricePerTonne.hay',
    'materialPricePerTonne.barleyStraw',
    'tractorPricePerHour',
    'roofPricePerM2',
  ],
} as const;

/** Own values stand within the range of each row. */
const OWN_COEFFICIENTS = [
  ['packDecayAt20CPerDay', 0.005, 0.011],
  ['bedWetRestFraction', 0.35, 0.9],
  ['snowSafetyFactor', 1.4, 1.6],
  ['heapNitrogenLossIntercept', 0.56, 0.74],
  ['urineTanFraction', 0.86, 0.99],
  ['paddockAmmoniaTanFraction', 0.07, 0.19],
  ['houseAmmoniaTanFraction', 0.1, 0.34],
  ['storeAmmoniaTanFraction', 0.06, 0.39],
  ['slurrySpreadAmmoniaFraction', 0.25, 0.75],
  ['compostMineralisedFraction.turned', 0.01, 0.1],
  ['nitrogenCapKgPerHa', 170, 250],
  ['bedCleanOutDepthM', 0.9, 1.2],
] as const;

class Dice {
  private state: number;
  constructor(seed: number) {
    this.state = Math.imul(seed, 0x9e37_79b9) | 0;
  }

  /** From 0 up to 1: a counter whose bits are mixed by multiplying, the same on every machine. */
  next(): number {
    this.state = (this.state + 0x6d2b_79f5) | 0;
    let t = Math.imul(this.state ^ (this.state >>> 15), this.state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  /** Rounded, so that a farm can be written down. */
  between(low: number, high: number): number {
    return round(low + (high - low) * this.next());
  }

  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  pick<T>(from: readonly T[]): T {
    return from[this.whole(0, from.length - 1)];
  }

  some<T>(from: readonly T[], count: number): T[] {
    const left = [...from];
    return Array.from({ length: Math.min(count, left.length) }, () =>
      left.splice(this.whole(0, left.length - 1), 1),
    ).flat();
  }

  /** Shares that sum to 1. */
  shares(count: number): number[] {
    const weights = Array.from({ length: count }, () => this.whole(1, 9));
    const sum = sumOf(weights);
    return weights.map((weight) => weight / sum);
  }

  /** The key with a value, or not at all: what is not said gets its default. */
  maybe(share: number, key: string, value: () => unknown): Record<string, unknown> {
    return this.chance(share) ? { [key]: value() } : {};
  }
}

/** Enough digits to be odd numbers, few enough that another arithmetic library cannot move the input. */
const round = (value: number) => Math.round(value * 1e4) / 1e4;

const DAY_MS = 86_400_000;
const dayAfter = (start: string, days: number) =>
  new Date(Date.parse(start) + days * DAY_MS).toISOString().slice(0, 10);

export async function farmRun(seed: number): Promise<Run> {
  const dice = new Dice(seed);
  const farm = farmOf(dice, seed);
  const names = ['First', 'Second', 'Third'];
  const scenarios = names.map((_, k) => scenarioOf(dice, names, k, farm, LISTS.system[(seed + k) % 3]));
  const overrides: Override[] = dice.some(OWN_COEFFICIENTS, dice.whole(0, 3)).map(([id, low, high]) => {
    const value = dice.between(low, high);
    return { id, value, ...(dice.chance(0.5) ? { low, high } : {}), because: 'invented' };
  });
  const winter = madeUpWinter(dice, farm);
  // Every fifth farm has monthly normals only, which make their own days.
  const { winterOf, problems } =
    'monthly' in farm.weather
      ? await notebookWinters(scenarios, 'an invented farm', async () => undefined)
      : { winterOf: () => winter, problems: [] };
  if (problems.length > 0) throw new Error(`farm ${seed}: ${problems[0].what}`);
  return evaluate({ scenarios, overrides }, shippedTables(), winterOf);
}

/** A throw that once gave the height of the place, which no figure reads: without it all later throws would move. */
const nothingFrom = (_thrown: number) => ({});

type LooseFarm = ReturnType<typeof farmOf>;

function farmOf(dice: Dice, seed: number) {
  const start = dice.pick(['2025-09-25', '2025-10-20', '2025-11-01', '2025-12-15']);
  const days = seed === 1 ? 1 : seed === 2 ? 364 : dice.whole(60, 230);
  const south = dice.chance(0.1);
  const country = dice.pick(LISTS.country);
  const feeds = dice.some(LISTS.feed, dice.whole(1, 4));
  const feedShares = dice.shares(feeds.length);
  // Each material is the first of some farm, and so lies in some bed.
  const first = LISTS.material[seed % 15];
  const others = LISTS.material.filter((material) => material !== first);
  const materials = [first, ...dice.some(others, dice.whole(1, 4))];
  return {
    place: {
      name: `invented farm ${seed}`,
      latitudeDeg: south ? dice.between(-50, -35) : dice.between(40, 69),
      longitudeDeg: dice.between(-120, 40),
      ...nothingFrom(dice.whole(0, 900)),
      horizonDeg: dice.pick([0, 0, 5, 20]),
      ...(country === undefined ? {} : { country }),
    },
    winter: { start, end: dayAfter(start, days) },
    weather:
      seed % 5 === 0
        ? {
            monthly: {
              rainMm: Array.from({ length: 12 }, () => dice.whole(20, 180)),
              temperatureC: Array.from({ length: 12 }, (_, month) =>
                round(6 - 9 * Math.cos((month * Math.PI) / 6) + dice.between(-2, 2)),
              ),
            },
            seed: dice.whole(1, 99),
            rainFactor: dice.pick([1, 0.7, 1.4]),
          }
        : { file: 'made-up.csv' },
    soil: { texture: LISTS.texture[seed % 7], rootDepthMm: dice.whole(200, 1200) },
    herd: herdOf(dice, dice.whole(1, 4)),
    feed: feeds.map((feed, k) => ({
      feed,
      share: feedShares[k],
      ...dice.maybe(0.2, 'crudeProteinFraction', () => dice.between(0.05, 0.18)),
      ...dice.maybe(0.2, 'phosphorusFraction', () => dice.between(0.001, 0.004)),
      ...dice.maybe(0.2, 'potassiumFraction', () => dice.between(0.008, 0.03)),
      ...dice.maybe(0.2, 'digestibilityFraction', () => dice.between(0.45, 0.72)),
      ...dice.maybe(0.2, 'dryMatterFraction', () => dice.between(0.25, 0.88)),
      ...dice.maybe(0.3, 'pricePerTonne', () => dice.between(20, 250)),
    })),
    materials: materials.map((material) => ({
      material,
      tonnes: dice.whole(0, 200),
      own: dice.chance(0.4),
      ...dice.maybe(0.4, 'moistureFraction', () => dice.between(0.1, 0.55)),
      ...dice.maybe(0.4, 'pricePerTonne', () => dice.between(0, 140)),
      ...dice.maybe(0.4, 'machineHoursPerTonne', () => dice.between(0, 3)),
    })),
    land: {
      receivingHa: dice.between(2, 80),
      crop: LISTS.crop[seed % 5],
      nitrateZone: dice.chance(0.5),
    },
    money: {
      currency: dice.pick(LISTS.currency),
      year: dice.whole(2023, 2026),
      labourPerHour: dice.between(8, 30),
      interestRate: dice.pick([0, 0.035, 0.05, 0.09]),
      prices: Object.fromEntries(
        dice.some(LISTS.price, dice.whole(0, 3)).map((id) => {
          const value = dice.between(0.5, 90);
          const range = dice.chance(0.5) ? { low: value * 0.75, high: value * 1.5 } : {};
          return [id, { value, ...range, because: 'invented' }];
        }),
      ),
    },
    spaceRules: LISTS.spaceRules[seed % 5],
  };
}

function herdOf(dice: Dice, groups: number) {
  return Array.from({ length: groups }, (_, k) => {
    const kind = dice.pick(LISTS.class);
    const grown = kind === 'sucklerCow' || kind === 'bull';
    return {
      name: `group ${k + 1}`,
      class: kind,
      // A group may be empty, the first hardly ever.
      head: dice.chance(k === 0 ? 0.02 : 0.15) ? 0 : dice.whole(1, grown ? 60 : 40),
      weightKg: grown ? dice.whole(480, 1000) : dice.whole(150, 620),
      gainKgPerDay: grown ? dice.pick([0, 0, -0.3, 0.15]) : dice.between(0, 1.3),
      pregnantShare: kind === 'sucklerCow' || kind === 'heifer' ? dice.between(0, 1) : 0,
      milkKgPerDay: kind === 'sucklerCow' && dice.chance(0.4) ? dice.between(1, 10) : 0,
      hornedShare: dice.pick([0, 1, 0.4]),
    };
  });
}

function placementOf(dice: Dice) {
  const [bedShare, slatsShare, yardShare, pastureShare] = (() => {
    const weights = Array.from({ length: 4 }, () => (dice.chance(0.25) ? 0 : dice.whole(1, 9)));
    const sum = sumOf(weights);
    return sum > 0 ? weights.map((weight) => weight / sum) : [0, 0, 0, 1];
  })();
  return { bedShare, slatsShare, yardShare, pastureShare, yardTo: dice.pick(['pack', 'slurry']) };
}

/** Where the animals of a plain system spend the day; written out, so that other defaults make no other farm. */
const PLAIN = {
  outwintered: { bedShare: 0, slatsShare: 0, yardShare: 0, pastureShare: 1 },
  slatted: { bedShare: 0, slatsShare: 1, yardShare: 0, pastureShare: 0, yardTo: 'slurry' },
  'deep-bedded': { bedShare: 0.75, slatsShare: 0, yardShare: 0.25, pastureShare: 0, yardTo: 'pack' },
} as const;

function scenarioOf(
  dice: Dice,
  names: readonly string[],
  index: number,
  farm: LooseFarm,
  system: (typeof LISTS.system)[number],
): Scenario {
  const mixed = dice.chance(0.5);
  const [first, ...more] = farm.materials;
  const mix =
    index === 0 ? [first, ...dice.some(more, dice.whole(0, 2))] : dice.some(farm.materials, dice.whole(1, 3));
  const mixShares = dice.shares(mix.length);
  const others = names.filter((_, k) => k !== index);
  // Other animals or other ground in one column, as a keeper compares a smaller herd or a wetter field.
  const ownFarm = {
    ...farm,
    ...(index > 0 && dice.chance(0.3) ? { herd: herdOf(dice, dice.whole(1, 3)) } : {}),
    ...(index > 0 && dice.chance(0.2) ? { soil: { texture: dice.pick(LISTS.texture) } } : {}),
    ...(index > 0 && dice.chance(0.2)
      ? { land: { receivingHa: dice.between(1, 40), crop: dice.pick(LISTS.crop) } }
      : {}),
  };
  const price = {
    horizonYears: dice.whole(1, 40),
    inflation: dice.pick([0, 0, 0.02, -0.01]),
    ...dice.maybe(0.4, 'incomePerHead', () => dice.whole(-100, 2_000)),
  };
  return scenarioSchema.parse({
    name: names[index],
    system,
    because: 'invented',
    placement: mixed ? placementOf(dice) : PLAIN[system],
    feeder: dice.pick(LISTS.feeder),
    exposure: mixed ? dice.pick(LISTS.exposure) : system === 'outwintered' ? 'open' : 'shed',
    paddock: { areaHa: dice.between(0.3, 25), moved: dice.pick(LISTS.moved) },
    slats: {
      ...dice.maybe(0.5, 'areaM2', () => dice.whole(20, 300)),
      ...dice.maybe(0.6, 'tankDepthM', () => dice.between(1, 4)),
      ...dice.maybe(0.3, 'washLitresPerDay', () => dice.whole(0, 800)),
      store: dice.pick(LISTS.store),
      ...dice.maybe(0.6, 'openStoreM2', () => dice.whole(0, 200)),
      ...dice.maybe(0.4, 'openYardM2', () => dice.whole(0, 200)),
    },
    spreading: {
      technique: dice.pick(LISTS.technique),
      incorporation: dice.pick(LISTS.incorporation),
      month: dice.whole(1, 12),
    },
    shed: shedOf(dice),
    bed: {
      startDepthM: dice.pick([0, 0.3, 0.45]),
      ...bedKept(dice.between(0, 2.5)),
      mix: mix.map(({ material }, k) => ({ material, share: mixShares[k] })),
      ...dice.maybe(0.25, 'cleanOut', () => dayAfter(farm.winter.start, dice.whole(20, 300))),
    },
    compost: compostOf(dice, mix[0].material),
    finance: {
      ...dice.maybe(0.25, 'capital', () => dice.whole(0, 300_000)),
      ...dice.maybe(0.4, 'grant', () => dice.whole(0, 60_000)),
      ...dice.maybe(0.4, 'ownMoney', () => dice.whole(0, 80_000)),
      loans: Array.from({ length: dice.whole(0, 3) }, (_, k) => {
        const years = dice.whole(2, 25);
        return {
          name: `loan ${k + 1}`,
          amount: dice.whole(0, 150_000),
          rate: dice.pick([0, 0.03, 0.055, 0.08]),
          years,
          graceYears: dice.chance(0.4) ? dice.whole(0, Math.min(3, years - 1)) : 0,
          kind: dice.pick(['annuity', 'straightLine']),
        };
      }),
      ...dice.maybe(0.5, 'baseline', () => dice.pick(others)),
      quotes: dice
        .some(LISTS.quote, dice.whole(0, 2))
        .map((line) => ({ line, unitPrice: dice.between(5, 220), because: 'invented' })),
    },
    farm: { ...ownFarm, money: { ...ownFarm.money, ...price } },
  });
}

/** What came later than the dice hangs on the turns, so that all else of a farm stays as it was. */
function compostOf(dice: Dice, material: string) {
  const way = dice.pick(LISTS.way);
  const cover = dice.pick(LISTS.heapCover);
  const turns = dice.whole(0, 8);
  return {
    way,
    cover: cover === 'fleece' ? ['fleece', 'sheet', 'roof'][turns % 3] : cover,
    turns,
    compacted: turns % 5 === 1,
    ...(turns % 4 === 0 ? { days: 60 + 20 * turns } : {}),
    amendments: way !== 'none' && turns % 2 === 0 ? [{ material, tonnes: 4 + turns }] : [],
  };
}

/** Sheds too low, too small and too steep as well: what does not fit must go on being said. */
function shedOf(dice: Dice) {
  const lengthM = dice.between(8, 70);
  const depthM = dice.between(6, 18);
  return {
    lengthM,
    depthM,
    stanceDepthM: dice.pick([0, 3, 4.5]),
    eaveM: dice.between(2.6, 5.5),
    ...dice.maybe(0.3, 'rearEaveM', () => dice.between(2.2, 5)),
    pitchDeg: dice.whole(0, 35),
    overhangM: dice.between(0, 1.2),
    bayM: dice.between(3, 7),
    openSideAzimuthDeg: dice.whole(0, 360),
    pushWallM: dice.between(0.6, 2.5),
    barrierM: dice.between(0.4, 0.8),
    barrierLiftM: dice.between(0, 1.4),
    machineHeightM: dice.between(2, 3.4),
    machineWidthM: dice.between(1.4, 2.6),
    machineTurnM: dice.between(4, 10),
    gateHeightM: dice.between(1, 1.8),
    waterBowls: dice.whole(0, 8),
    bowlHeightM: dice.between(0.5, 1.1),
    bowlLiftM: dice.between(0, 1.2),
    exits: dice.whole(0, 4),
    hardStandingM2: dice.pick([0, 0, 60, 150]),
    calvingPensM2: dice.pick([0, 0, 12, 45]),
    ridgeSlotM: dice.between(0, 0.6),
    ...dice.maybe(0.4, 'inletM2', () => dice.between(0.5, 40)),
    longestTimberM: dice.between(4, 9),
    ownTimber: dice.chance(0.5),
    ownBuildShare: dice.pick([0, 0.5, 1]),
    snowLoadKnPerM2: dice.between(0, 4),
  };
}

/** Mild and wet, or cold and dry, or between, from the first winter day on; rain on some days and not on others. */
function madeUpWinter(dice: Dice, { winter, place }: LooseFarm): PreparedWeather {
  const days = 365;
  const meanC = dice.between(-2, 11);
  const swingC = dice.between(4, 18);
  const wetShare = dice.between(0.1, 0.7);
  const rainMm = dice.between(1, 14);
  const firstDay = (Date.parse(winter.start) - Date.parse('2025-01-15')) / DAY_MS;
  const south = place.latitudeDeg < 0 ? Math.PI : 0;
  const rain = new Float64Array(days);
  const temperatureC = new Float64Array(days);
  const hargreavesTermMm = new Float64Array(days);
  for (let day = 0; day < days; day++) {
    const cold = Math.cos(((firstDay + day) * 2 * Math.PI) / 365 + south);
    temperatureC[day] = round(meanC - swingC * cold + dice.between(-5, 5));
    rain[day] = dice.chance(wetShare) ? dice.between(0, 2 * rainMm) : 0;
    hargreavesTermMm[day] = round(
      Math.max(0, temperatureC[day] + 17.8) * Math.sqrt(dice.between(2, 11)) * (6 - 5 * cold),
    );
  }
  return { label: 'made-up', start: winter.start, days, rainMm: rain, temperatureC, hargreavesTermMm };
}

/** Some notebooks are silent on the rate, and some beds that are well bedded are stirred; one throw decides both. */
const bedKept = (rate: number) => ({
  ...(rate < 0.3 ? {} : { rateKgPer100Kg: rate }),
  ...(rate > 2 ? { stirredPerWeek: Math.round(7 * (rate - 2)) + 1 } : {}),
});
