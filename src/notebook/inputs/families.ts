/** Inputs that repeat: groups of the herd, feeds, bedding materials, loans. */
import type { Scenario } from '../schema.ts';

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
    items: (s) => s.farm.herd,
    choice: { key: 'class', dimension: 'class' },
    fields: {
      HeadCount: field('head', 'head', 'head'),
      WeightKg: field('weightKg', 'weight', 'kg'),
      GainKgPerDay: field('gainKgPerDay', 'gain', 'kg/d'),
      PregnantShare: field('pregnantShare', 'share in calf', 'fraction'),
      MilkKgPerDay: field('milkKgPerDay', 'milk', 'kg/d'),
      HornedShare: field('hornedShare', 'share with horns', 'fraction'),
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
