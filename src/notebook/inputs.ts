/**
 * Which numbers of a strict scenario become columns of the model, under which name, and which choices pick a
 * row of the coefficient tables. The one place where the shape of a notebook meets the names of the model.
 */
import type { Scenario } from './schema.ts';

export interface InputColumn {
  readonly column: string;
  readonly label: string;
  readonly unit: string;
  /** Where it stands in the scenario, so that it can be turned, swept and written back. */
  readonly path: string;
  readonly of: (s: Scenario) => number;
  /** Sensible span and step for a slider or a sweep. */
  readonly min?: number;
  readonly max?: number;
  readonly step?: number;
}

const DAY_MS = 86_400_000;
const days = (from: string, to: string) => Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

/** Days from the first day of the winter to the middle of a month in the year that follows. */
export function dayOfMonthMiddle(start: string, month: number): number {
  const begin = new Date(Date.parse(start));
  const year = begin.getUTCFullYear();
  const middle = (y: number) => Date.UTC(y, month - 1, 15);
  const at = middle(year) >= begin.getTime() ? middle(year) : middle(year + 1);
  return Math.round((at - begin.getTime()) / DAY_MS);
}

/** Classes that are full grown: fed to need unless the keeper says otherwise. */
const FULL_GROWN: readonly string[] = ['sucklerCow', 'bull'];

/**
 * Day of the winter on which a group calves; 0 for the last winter day, since no date is given, and below 0 where
 * they had calved before it. The first winter day itself counts as the second.
 */
function calvingDay(start: string, date: string | undefined): number {
  if (date === undefined) return 0;
  const day = days(start, date);
  return day === 0 ? 1 : day;
}

/** 1 where the soil needs it, 0 where it has enough, NaN where no test is known. */
const needed = (needs: readonly string[] | undefined, nutrient: string): number =>
  needs === undefined ? Number.NaN : Number(needs.includes(nutrient));

/** Paths that every slider, sweep and lender may turn; a number at the path unless `of` says otherwise. */
export const INPUTS: readonly InputColumn[] = [
  {
    column: 'winterDays',
    label: 'winter days',
    unit: 'd',
    path: 'farm.winter',
    of: (s) => days(s.farm.winter.start, s.farm.winter.end),
    min: 30,
    max: 300,
    step: 1,
  },
  {
    column: 'rainFactor',
    label: 'rain against this weather',
    unit: '×',
    path: 'farm.weather.rainFactor',
    of: (s) => s.farm.weather.rainFactor,
    min: 0,
    max: 2.5,
    step: 0.05,
  },
  {
    column: 'herdFactor',
    label: 'herd against this herd',
    unit: '×',
    path: 'farm.herd',
    of: () => 1,
    min: 0.1,
    max: 4,
    step: 0.05,
  },
  {
    column: 'latitudeDeg',
    label: 'latitude',
    unit: '°',
    path: 'farm.place.latitudeDeg',
    of: (s) => s.farm.place.latitudeDeg,
  },
  {
    column: 'rootDepthMm',
    label: 'rooting depth',
    unit: 'mm',
    path: 'farm.soil.rootDepthMm',
    of: (s) => s.farm.soil.rootDepthMm,
    min: 200,
    max: 1500,
    step: 50,
  },
  {
    column: 'phosphorusNeeded',
    label: 'whether the soil needs phosphorus',
    unit: 'fraction',
    path: 'farm.soil.needs',
    of: (s) => needed(s.farm.soil.needs, 'phosphorus'),
  },
  {
    column: 'potassiumNeeded',
    label: 'whether the soil needs potassium',
    unit: 'fraction',
    path: 'farm.soil.needs',
    of: (s) => needed(s.farm.soil.needs, 'potassium'),
  },
  {
    column: 'receivingHa',
    label: 'ground for manure or compost',
    unit: 'ha',
    path: 'farm.land.receivingHa',
    of: (s) => s.farm.land.receivingHa,
    min: 1,
    max: 200,
    step: 1,
  },
  {
    column: 'labourPricePerHour',
    label: "own labour's worth",
    unit: 'money/h',
    path: 'farm.money.labourPerHour',
    of: (s) => s.farm.money.labourPerHour,
    min: 0,
    max: 60,
    step: 1,
  },
  {
    column: 'interestRate',
    label: 'interest rate',
    unit: 'fraction',
    path: 'farm.money.interestRate',
    of: (s) => s.farm.money.interestRate,
    min: 0,
    max: 0.15,
    step: 0.005,
  },
  {
    column: 'bedShare',
    label: 'share of the day on the bed',
    unit: 'fraction',
    path: 'placement.bedShare',
    of: (s) => s.placement.bedShare,
  },
  {
    column: 'slatsShare',
    label: 'share of the day on slats',
    unit: 'fraction',
    path: 'placement.slatsShare',
    of: (s) => s.placement.slatsShare,
  },
  {
    column: 'yardShare',
    label: 'share of the day on stance or yard',
    unit: 'fraction',
    path: 'placement.yardShare',
    of: (s) => s.placement.yardShare,
  },
  {
    column: 'pastureShare',
    label: 'share of the day on pasture',
    unit: 'fraction',
    path: 'placement.pastureShare',
    of: (s) => s.placement.pastureShare,
  },
  {
    column: 'yardToPackShare',
    label: 'yard scrapings that go to the pack',
    unit: 'fraction',
    path: 'placement.yardTo',
    of: (s) => (s.placement.yardTo === 'pack' ? 1 : 0),
  },
  {
    column: 'paddockHa',
    label: 'wintering paddock',
    unit: 'ha',
    path: 'paddock.areaHa',
    of: (s) => s.paddock.areaHa,
    min: 0.5,
    max: 100,
    step: 0.5,
  },
  {
    column: 'slatsM2',
    label: 'slatted area',
    unit: 'm²',
    path: 'slats.areaM2',
    of: (s) => s.slats.areaM2 ?? Number.NaN,
    min: 10,
    max: 1000,
    step: 5,
  },
  {
    column: 'tankDepthM',
    label: 'tank depth',
    unit: 'm',
    path: 'slats.tankDepthM',
    of: (s) => s.slats.tankDepthM,
    min: 1,
    max: 4,
    step: 0.1,
  },
  {
    column: 'washLitresPerDay',
    label: 'wash water',
    unit: 'L/d',
    path: 'slats.washLitresPerDay',
    of: (s) => s.slats.washLitresPerDay,
  },
  {
    column: 'openStoreM2',
    label: 'open store that catches rain',
    unit: 'm²',
    path: 'slats.openStoreM2',
    of: (s) => s.slats.openStoreM2,
  },
  {
    column: 'openYardM2',
    label: 'fouled yard that drains to the store',
    unit: 'm²',
    path: 'slats.openYardM2',
    of: (s) => s.slats.openYardM2,
  },
  {
    column: 'pitStoreShare',
    label: 'slurry kept under the slats',
    unit: 'fraction',
    path: 'slats.store',
    of: (s) => (s.slats.store === 'underSlats' ? 1 : 0),
  },
  {
    column: 'storeDepthM',
    label: 'depth of an outside store',
    unit: 'm',
    path: 'slats.storeDepthM',
    of: (s) => s.slats.storeDepthM,
    min: 1,
    max: 6,
    step: 0.1,
  },
  {
    column: 'storeSurfaceGivenM2',
    label: 'surface of an outside store',
    unit: 'm²',
    path: 'slats.storeSurfaceM2',
    of: (s) => s.slats.storeSurfaceM2 ?? Number.NaN,
    min: 10,
    max: 1000,
    step: 5,
  },
  {
    column: 'timesStirred',
    label: 'times an outside store is stirred',
    unit: 'times',
    path: 'slats.timesStirred',
    of: (s) => s.slats.timesStirred,
    min: 0,
    max: 26,
    step: 1,
  },
  {
    column: 'emptiedCleanShare',
    label: 'store emptied clean in autumn',
    unit: 'fraction',
    path: 'slats.emptiedClean',
    of: (s) => (s.slats.emptiedClean ? 1 : 0),
  },
  {
    column: 'spreadWindGivenMPerS',
    label: 'wind at spreading',
    unit: 'm/s',
    path: 'spreading.windMPerS',
    of: (s) => s.spreading.windMPerS ?? Number.NaN,
    min: 0,
    max: 8,
    step: 0.5,
  },
  {
    column: 'spreadDay',
    label: 'spreading day',
    unit: 'd',
    path: 'spreading.month',
    of: (s) => dayOfMonthMiddle(s.farm.winter.start, s.spreading.month),
  },
  {
    column: 'shedLengthM',
    label: 'shed length',
    unit: 'm',
    path: 'shed.lengthM',
    of: (s) => s.shed.lengthM,
    min: 5,
    max: 120,
    step: 0.5,
  },
  {
    column: 'shedDepthM',
    label: 'shed depth',
    unit: 'm',
    path: 'shed.depthM',
    of: (s) => s.shed.depthM,
    min: 3,
    max: 40,
    step: 0.5,
  },
  {
    column: 'stanceDepthM',
    label: 'feed stance depth',
    unit: 'm',
    path: 'shed.stanceDepthM',
    of: (s) => s.shed.stanceDepthM,
    min: 0,
    max: 6,
    step: 0.1,
  },
  {
    column: 'eaveM',
    label: 'lowest roof member',
    unit: 'm',
    path: 'shed.eaveM',
    of: (s) => s.shed.eaveM,
    min: 2,
    max: 8,
    step: 0.1,
  },
  { column: 'pitchDeg', label: 'roof pitch', unit: '°', path: 'shed.pitchDeg', of: (s) => s.shed.pitchDeg },
  {
    column: 'overhangM',
    label: 'roof overhang',
    unit: 'm',
    path: 'shed.overhangM',
    of: (s) => s.shed.overhangM,
  },
  { column: 'bayM', label: 'bay length', unit: 'm', path: 'shed.bayM', of: (s) => s.shed.bayM },
  {
    column: 'pushWallM',
    label: 'push wall height',
    unit: 'm',
    path: 'shed.pushWallM',
    of: (s) => s.shed.pushWallM,
  },
  {
    column: 'hardStandingM2',
    label: 'hard standing',
    unit: 'm²',
    path: 'shed.hardStandingM2',
    of: (s) => s.shed.hardStandingM2,
  },
  {
    column: 'waterBowls',
    label: 'water bowls',
    unit: 'bowls',
    path: 'shed.waterBowls',
    of: (s) => s.shed.waterBowls,
  },
  {
    column: 'longestTimberM',
    label: 'longest timber',
    unit: 'm',
    path: 'shed.longestTimberM',
    of: (s) => s.shed.longestTimberM,
  },
  {
    column: 'ownTimberShare',
    label: 'timber from own wood',
    unit: 'fraction',
    path: 'shed.ownTimber',
    of: (s) => (s.shed.ownTimber ? 1 : 0),
  },
  {
    column: 'snowLoadKnPerM2',
    label: 'ground snow load',
    unit: 'kN/m²',
    path: 'shed.snowLoadKnPerM2',
    of: (s) => s.shed.snowLoadKnPerM2,
  },
  {
    column: 'startDepthM',
    label: 'bed at the start',
    unit: 'm',
    path: 'bed.startDepthM',
    of: (s) => s.bed.startDepthM,
    min: 0,
    max: 0.6,
    step: 0.05,
  },
  {
    column: 'beddingRateKgPer100Kg',
    label: 'bedding a day per 100 kg live weight',
    unit: 'kg',
    path: 'bed.rateKgPer100Kg',
    of: (s) => s.bed.rateKgPer100Kg ?? Number.NaN,
    min: 0,
    max: 3,
    step: 0.1,
  },
  {
    column: 'bedStirredPerWeek',
    label: 'times the bed is stirred a week',
    unit: 'times',
    path: 'bed.stirredPerWeek',
    of: (s) => s.bed.stirredPerWeek,
    min: 0,
    max: 14,
    step: 1,
  },
  {
    column: 'compostTurns',
    label: 'compost turns',
    unit: 'turns',
    path: 'compost.turns',
    of: (s) => s.compost.turns,
    min: 0,
    max: 12,
    step: 1,
  },
  {
    column: 'capitalGiven',
    label: 'capital given',
    unit: 'money',
    path: 'finance.capital',
    of: (s) => s.finance.capital ?? Number.NaN,
  },
  { column: 'grantAmount', label: 'grant', unit: 'money', path: 'finance.grant', of: (s) => s.finance.grant },
  {
    column: 'ownMoney',
    label: 'own money',
    unit: 'money',
    path: 'finance.ownMoney',
    of: (s) => s.finance.ownMoney ?? Number.NaN,
  },
  {
    column: 'incomePerHead',
    label: 'income a head to serve debt',
    unit: 'money',
    path: 'farm.money.incomePerHead',
    of: (s) => s.farm.money.incomePerHead ?? Number.NaN,
  },
  {
    column: 'debtServicePerYear',
    label: 'yearly service of loans the farm already has',
    unit: 'money',
    path: 'farm.money.debtServicePerYear',
    of: (s) => s.farm.money.debtServicePerYear,
  },
  {
    column: 'ownBuildShare',
    label: 'erection by own hands',
    unit: 'fraction',
    path: 'shed.ownBuildShare',
    of: (s) => s.shed.ownBuildShare,
    min: 0,
    max: 1,
    step: 0.1,
  },
  {
    column: 'lifeYears',
    label: 'years the works are counted over',
    unit: 'yr',
    path: 'farm.money.horizonYears',
    of: (s) => s.farm.money.horizonYears,
    min: 5,
    max: 40,
    step: 1,
  },
  {
    column: 'inflation',
    label: 'inflation',
    unit: 'fraction',
    path: 'farm.money.inflation',
    of: (s) => s.farm.money.inflation,
  },
];

/** Repeated inputs: `group2WeightKg` is field `WeightKg` of the second group. */
export interface InputFamily {
  readonly family: string;
  readonly path: string;
  readonly items: (s: Scenario) => readonly Readonly<Record<string, unknown>>[];
  readonly fields: Readonly<
    Record<string, { readonly key: string; readonly label: string; readonly unit: string }>
  >;
  /** The key of an item that picks its rows in the tables, and the dimension those rows are marked with. */
  readonly choice?: { readonly key: string; readonly dimension: string };
}

const field = (key: string, label: string, unit: string) => ({ key, label, unit });

export const INPUT_FAMILIES: readonly InputFamily[] = [
  {
    family: 'group',
    path: 'farm.herd',
    items: (s) =>
      s.farm.herd.map((group) => ({
        ...group,
        calvingDay: calvingDay(s.farm.winter.start, group.calvingDate),
        appetiteShare:
          (group.fedTo ?? (FULL_GROWN.includes(group.class) ? 'need' : 'appetite')) === 'need' ? 0 : 1,
        dryMatterKgPerDay: group.dryMatterKgPerDay ?? 0,
      })),
    choice: { key: 'class', dimension: 'class' },
    fields: {
      HeadCount: field('head', 'head', 'head'),
      WeightKg: field('weightKg', 'weight', 'kg'),
      GainKgPerDay: field('gainKgPerDay', 'gain', 'kg/d'),
      PregnantShare: field('pregnantShare', 'share in calf', 'fraction'),
      MilkKgPerDay: field('milkKgPerDay', 'milk', 'kg/d'),
      HornedShare: field('hornedShare', 'share with horns', 'fraction'),
      CalvingDay: field('calvingDay', 'calving, day of the winter (0: the last)', 'd'),
      AppetiteShare: field('appetiteShare', 'fed to appetite (1) or need (0)', 'fraction'),
      FedKgPerDay: field('dryMatterKgPerDay', 'dry matter eaten, where known (0: not)', 'kg DM/d'),
    },
  },
  {
    family: 'feed',
    path: 'farm.feed',
    items: (s) => s.farm.feed,
    choice: { key: 'feed', dimension: 'feed' },
    fields: {
      Share: field('share', 'share of dry matter', 'fraction'),
      CrudeProteinFraction: field('crudeProteinFraction', 'crude protein', 'fraction'),
      PhosphorusFraction: field('phosphorusFraction', 'phosphorus', 'fraction'),
      PotassiumFraction: field('potassiumFraction', 'potassium', 'fraction'),
      DigestibilityFraction: field('digestibilityFraction', 'digestibility', 'fraction'),
      DryMatterFraction: field('dryMatterFraction', 'dry matter', 'fraction'),
      PricePerTonne: field('pricePerTonne', 'price', 'money/t'),
    },
  },
  {
    family: 'material',
    path: 'bed.mix',
    items: (s) =>
      s.bed.mix.map((part) => {
        const on = s.farm.materials.find((m) => m.material === part.material);
        // Own material costs hours and no cash unless the keeper says so; bought material comes ready to use.
        const pricePerTonne = on?.pricePerTonne ?? (on?.own ? 0 : undefined);
        const machineHoursPerTonne = on?.machineHoursPerTonne ?? (on?.own ? undefined : 0);
        return { ...on, pricePerTonne, machineHoursPerTonne, ...part };
      }),
    choice: { key: 'material', dimension: 'material' },
    fields: {
      Share: field('share', 'share of the mix', 'fraction'),
      MoistureFraction: field('moistureFraction', 'moisture', 'fraction'),
      PricePerTonne: field('pricePerTonne', 'price', 'money/t'),
      HoursPerTonne: field('machineHoursPerTonne', 'own machine hours', 'h/t'),
    },
  },
  {
    family: 'loan',
    path: 'finance.loans',
    items: (s) =>
      s.finance.loans.map((loan) => ({ ...loan, straight: loan.kind === 'straightLine' ? 1 : 0 })),
    fields: {
      Amount: field('amount', 'loan', 'money'),
      Rate: field('rate', 'loan rate', 'fraction'),
      Years: field('years', 'loan term', 'yr'),
      GraceYears: field('graceYears', 'grace', 'yr'),
      Straight: field('straight', 'equal principal parts', 'fraction'),
    },
  },
];

/** The choices a coefficient's rows can hang on: dimension → the option this scenario picks. */
export const CHOICES: Readonly<Record<string, (s: Scenario) => string>> = {
  system: (s) => s.system,
  texture: (s) => s.farm.soil.texture,
  crop: (s) => s.farm.land.crop,
  feeder: (s) => s.feeder,
  exposure: (s) => s.exposure,
  moved: (s) => s.paddock.moved,
  house: (s) => s.slats.house,
  store: (s) => s.slats.store,
  technique: (s) => s.spreading.technique,
  incorporation: (s) => s.spreading.incorporation,
  implement: (s) => s.spreading.implement,
  way: (s) => s.compost.way,
  cover: (s) => s.compost.cover,
};
