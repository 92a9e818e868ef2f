/** An evaluation with round invented amounts, for figures of money: works, loans and a baseline. */

import { financeCase } from '../../src/model/money/case.ts';
import type { Tracks, Values } from '../../src/model/quantities.ts';
import type { Reading } from '../../src/plots/reading.ts';
import type { ScenarioResult } from '../../src/study/evaluate.ts';

export const reading: Reading = { currency: 'EUR', year: 2024, system: 'metric' };

const COLUMNS: Readonly<Record<string, number>> = {
  lifeYears: 20,
  shortLifeYears: 10,
  inflation: 0,
  interestRate: 0.05,
  grantYears: 0,
  alreadyHaveYears: 0,
};

const NOTHING_OWNED: Partial<Values> = {
  capitalOwned: 0,
  capitalOwnedShortLived: 0,
  gainsPerYear: 0,
  gainsInCash: 0,
};

interface Given {
  readonly name: string;
  readonly values: Partial<Values>;
  readonly loan?: number;
}

export function resultsOf(given: readonly Given[], baseline?: string): ScenarioResult[] {
  const columns = (loan = 0): Readonly<Record<string, number>> =>
    loan > 0
      ? {
          ...COLUMNS,
          loan1Amount: loan,
          loan1Rate: 0.05,
          loan1Years: 10,
          loan1GraceYears: 0,
          loan1Straight: 0,
        }
      : COLUMNS;
  const cases = financeCase(
    given.map(({ name, values, loan }) => ({
      name,
      values: { ...NOTHING_OWNED, ...values },
      column: (column: string) => columns(loan)[column],
    })),
    baseline,
  );
  return given.map(({ name, values }, k) => ({
    name,
    system: 'deep-bedded',
    scenario: { farm: { money: { interestRate: 0.05 } } } as unknown as ScenarioResult['scenario'],
    values: values as Values,
    checks: [],
    tracks: {} as Tracks,
    finance: cases[k],
  }));
}

/** Costs 10 000 a year outside, 9 000 in a bed that costs 8 000 to build. */
export const OUTSIDE: Partial<Values> = {
  capitalCost: 0, capitalShortLived: 0, grantUsed: 0, operatingCost: 10_000, operatingCashCost: 8000, nutrientValue: 500, loanPayment: 0,
  capitalCharge: 0, repairsCost: 0, insuranceCost: 0, beddingCost: null, feedCost: 6000, feedWasteCost: 1000, machineryCost: 500, contractorCost: 0,
  labourCost: 2000, grassLostCost: 300, reseedCost: 100, vetCost: 60, hoofCost: 40, annualCost: 10_000, netCost: 9500, netCostPerHead: 500, netCostPerHeadDay: 2.5, costPerNitrogenKeptKg: 20,
}; // biome-ignore format: one list of amounts
export const BED: Partial<Values> = {
  ...OUTSIDE, capitalCost: 8000, operatingCost: 9000, operatingCashCost: 7500, capitalCharge: 642, repairsCost: 80, insuranceCost: 40, beddingCost: 1200,
  feedCost: 5400, feedWasteCost: 300, labourCost: 1380, grassLostCost: null, reseedCost: null, annualCost: 9642, nutrientValue: 900, netCost: 8742, loanPayment: 518,
}; // biome-ignore format: one list of amounts
