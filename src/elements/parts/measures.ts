/** The rows of the cards, in the order a keeper asks: what stays, what it takes, how sure. */

import { resultNamed } from '../../model/dictionary.ts';
import { type Better, COMPARISONS } from '../../model/measures.ts';
import type { ResultName, Values } from '../../model/quantities.ts';
import { capital, labelOf, unitOf } from '../../plots/reading.ts';

export interface Measure {
  /** The result whose working the number opens. */
  readonly quantity: ResultName;
  readonly label: string;
  readonly unit: string;
  readonly better?: Better;
  /** When what is shown is the result over the days of the winter. */
  readonly perDay?: boolean;
  /** Why a scenario may have none. */
  readonly absent: string;
}

export interface Block {
  readonly title: string;
  readonly measures: readonly Measure[];
}

export const STAYS: Block = {
  title: 'What stays',
  measures: [
    {
      quantity: 'nitrogenKeptKg',
      label: 'Nitrogen kept',
      unit: 'kg',
      better: 'more',
      absent: 'not computed',
    },
    {
      quantity: 'nitrogenAvailableKg',
      label: 'For the first crop',
      unit: 'kg',
      better: 'more',
      absent: 'not computed',
    },
    {
      quantity: 'nitrogenBroughtKg',
      label: 'Brought in with bedding',
      unit: 'kg',
      absent: 'no bed, so no bedding',
    },
    {
      quantity: 'nitrogenLostKg',
      label: 'Nitrogen lost',
      unit: 'kg',
      better: 'less',
      absent: 'not computed',
    },
    {
      quantity: 'phosphorusKeptKg',
      label: 'Phosphorus kept',
      unit: 'kg',
      better: 'more',
      absent: 'not computed',
    },
    {
      quantity: 'potassiumKeptKg',
      label: 'Potassium kept',
      unit: 'kg',
      better: 'more',
      absent: 'not computed',
    },
    { quantity: 'compostTonnes', label: 'Compost made', unit: 't', absent: 'no bed, so no compost' },
  ],
};

export const TAKES: Block = {
  title: 'What it takes',
  measures: [
    {
      quantity: 'labourHours',
      label: 'Work',
      unit: 'h a day',
      better: 'less',
      perDay: true,
      absent: 'not computed',
    },
    {
      quantity: 'netCost',
      label: 'Net cost a year',
      unit: 'money',
      better: 'less',
      absent: 'a price is missing',
    },
    {
      quantity: 'capitalCost',
      label: 'To build',
      unit: 'money',
      better: 'less',
      absent: 'no cost of building is known',
    },
    { quantity: 'beddingTonnes', label: 'Bedding', unit: 't', absent: 'no bed, so no bedding' },
  ],
};

/** Measures for which the cards say how often a scenario is best. */
export const SURE: readonly {
  readonly quantity: ResultName;
  readonly better: Better;
  readonly label: string;
}[] = [
  { quantity: 'nitrogenKeptKg', better: 'more', label: 'Keeps most nitrogen' },
  { quantity: 'netCost', better: 'less', label: 'Costs least' },
  { quantity: 'labourHours', better: 'less', label: 'Least work' },
];

/** Rows of the results a cell names, in its order; each is shown as what its name says. */
export function chosenBlock(names: readonly string[]): Block {
  const told = [...STAYS.measures, ...TAKES.measures];
  return {
    title: 'Chosen results',
    measures: names.map(resultNamed).map((quantity) => {
      const compared = COMPARISONS.find(({ name }) => name === quantity);
      return {
        quantity,
        label: capital(compared?.short ?? labelOf(quantity)),
        unit: unitOf(quantity),
        ...(compared?.better ? { better: compared.better } : {}),
        absent: told.find((m) => m.quantity === quantity)?.absent ?? 'this scenario has none',
      };
    }),
  };
}

/** The number a row shows. */
export function amountOf(
  { quantity, perDay }: Measure,
  values: Values,
  of: Partial<Values> = values,
): number | null {
  const value = of[quantity];
  if (typeof value !== 'number') return null;
  if (!perDay) return value;
  const days = values.winterDays ?? 0;
  return days > 0 ? value / days : null;
}

/** Index of the one best value, or -1 when none is better than the rest. */
export function bestOf(numbers: readonly (number | null)[], better: Better | undefined): number {
  if (!better) return -1;
  const known = numbers.flatMap((value, index) => (value === null ? [] : [{ value, index }]));
  if (known.length < 2) return -1;
  known.sort((a, b) => (better === 'more' ? b.value - a.value : a.value - b.value));
  return known[0].value === known[1].value ? -1 : known[0].index;
}
