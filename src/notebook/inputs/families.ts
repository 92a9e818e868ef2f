/** Inputs that repeat: groups of the herd, feeds, bedding materials, loans. */
import { daysBetween } from '../../units/days.ts';
import { HAD_NAMES } from '../billIds.ts';
import type { Scenario } from '../schema.ts';

/** Classes that are full grown: fed to need unless the keeper says otherwise. */
const FULL_GROWN: readonly string[] = ['sucklerCow', 'bull'];

/**
 * Day of the winter on which a group calves; 0 for the last winter day, since no date is given, and below 0 where
 * they had calved before it. The first winter day itself counts as the second.
 */
function calvingDay(start: string, date: string | undefined): number {
  if (date === undefined) return 0;
  const day = daysBetween(start, date);
  return day === 0 ? 1 : day;
}

/** Repeated inputs: `group2WeightKg` is field `WeightKg` of the second group. */
export interface InputFamily {
  readonly family: string;
  readonly path: string;
  readonly items: (s: Scenario) => readonly Readonly<Record<string, unknown>>[];
  readonly fields: Readonly<
    Record<
      string,
      {
        readonly key: string;
        readonly label: string;
        readonly unit: string;
        /** Keys of the item that hold the ends of its range, where the keeper may give one. */
        readonly low?: string;
        readonly high?: string;
        /** The key of the notebook it is worked out from, where that is another. */
        readonly written: string;
      }
    >
  >;
  /** Where a field of the item at `k` is written in the scenario, if not in the item itself. */
  readonly placeOf?: (s: Scenario, k: number, key: string) => string | undefined;
  /**
   * The key of an item that picks its rows in the tables, and the dimension those rows are marked with; `rows` where
   * the rows bear the name of another family.
   */
  readonly choice?: { readonly key: string; readonly dimension: string; readonly rows?: string };
}

const field = (key: string, label: string, unit: string, written = key) => ({ key, label, unit, written });

/** What a mix or a heap takes of a material is written there, the rest where the farm lists it. */
const amongMaterials =
  (parts: (s: Scenario) => readonly { readonly material: string }[]) =>
  (s: Scenario, k: number, key: string): string | undefined => {
    const at = s.farm.materials.findIndex(({ material }) => material === parts(s)[k]?.material);
    return at < 0 || key === 'share' || key === 'tonnes' ? undefined : `farm.materials.${at}.${key}`;
  };

/** A material as the farm has it. Own material costs hours and no cash unless the keeper says so; bought comes ready. */
function onFarm(s: Scenario, material: string) {
  const on = s.farm.materials.find((m) => m.material === material);
  const pricePerTonne = on?.pricePerTonne ?? (on?.own ? 0 : undefined);
  const machineHoursPerTonne = on?.machineHoursPerTonne ?? (on?.own ? undefined : 0);
  return { ...on, pricePerTonne, machineHoursPerTonne };
}

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
      CalvingDay: field('calvingDay', 'calving, day of the winter (0: the last)', 'd', 'calvingDate'),
      AppetiteShare: field('appetiteShare', 'fed to appetite (1) or need (0)', 'fraction', 'fedTo'),
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
    items: (s) => s.bed.mix.map((part) => ({ ...onFarm(s, part.material), ...part })),
    placeOf: amongMaterials((s) => s.bed.mix),
    choice: { key: 'material', dimension: 'material' },
    fields: {
      Share: field('share', 'share of the mix', 'fraction'),
      MoistureFraction: field('moistureFraction', 'moisture', 'fraction'),
      PricePerTonne: field('pricePerTonne', 'price', 'money/t'),
      HoursPerTonne: field('machineHoursPerTonne', 'own machine hours', 'h/t'),
    },
  },
  {
    family: 'amendment',
    path: 'compost.amendments',
    items: (s) => s.compost.amendments.map((part) => ({ ...onFarm(s, part.material), ...part })),
    placeOf: amongMaterials((s) => s.compost.amendments),
    choice: { key: 'material', dimension: 'material', rows: 'material' },
    fields: {
      Tonnes: field('tonnes', 'mixed into the heap', 't'),
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
      Straight: field('straight', 'equal principal parts', 'fraction', 'kind'),
    },
  },
  {
    family: 'had',
    path: 'finance.alreadyHave.lines',
    items: (s) =>
      (s.finance.alreadyHave?.lines ?? []).map((line) => ({
        ...line,
        name: line.what,
        code: HAD_NAMES.indexOf(line.what) + 1,
        leftYears: line.leftYears ?? Number.NaN,
      })),
    fields: {
      Code: field('code', 'works that stand already, number of the line or group', '', 'what'),
      Share: field('share', 'part that stands already', 'fraction'),
      AgeYears: field('ageYears', 'age of what stands already', 'yr'),
      LeftYears: field('leftYears', 'years until what stands already is bought again, where known', 'yr'),
    },
  },
  {
    family: 'gain',
    path: 'finance.gains',
    items: (s) => s.finance.gains.map((gain) => ({ ...gain, paid: gain.cash ? 1 : 0 })),
    fields: {
      Amount: { ...field('amount', 'gain a year', 'money'), low: 'low', high: 'high' },
      Paid: field('paid', 'gain paid in cash', 'fraction', 'cash'),
    },
  },
];
