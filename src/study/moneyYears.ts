/**
 * The years of a case as a bank sees them and as its economics count them, never mixed: what moves on the account, and
 * what own hours, own timber, grass and nutrients are worth. Amounts are in the prices of their year, money that goes
 * out below 0.
 */
import { pricesIn, runningWorth } from '../model/money/cashTerms.ts';
import type { ScenarioResult } from './evaluate.ts';

export interface CashYear {
  readonly year: number;
  /** Works paid for in cash: own timber and hours are left out, and nothing comes back at the end. */
  readonly works: number;
  readonly grant: number;
  /** What the herd brings, as far as the notebook names it. */
  readonly income: number;
  readonly running: number;
  readonly borrowed: number;
  readonly interest: number;
  readonly principal: number;
  /** Loans the farm has already; only where its income is named. */
  readonly already: number;
  /** Sum of all before. */
  readonly sum: number;
  readonly toDate: number;
  readonly debt: number;
  readonly cover: number | null;
}

export interface EconomicYear {
  readonly year: number;
  /** All works, own timber and hours as money; in the last year what is left of them. */
  readonly works: number;
  readonly grant: number;
  readonly running: number;
  readonly ownHours: number;
  readonly grassLost: number;
  readonly nutrientValue: number;
  /** Sum of all before: before loans and tax. */
  readonly sum: number;
  /** Worth today of the sums so far. */
  readonly worthToDate: number;
}

/** Years 0 … horizon; empty where a price is missing. */
export function cashYears({ values, finance, scenario }: ScenarioResult): CashYear[] {
  const { inflation, debtServicePerYear } = scenario.farm.money;
  const { capitalCash, operatingCashCost, incomePerYear } = values;
  const last = finance.years.length - 1;
  if (capitalCash == null || operatingCashCost == null) return [];
  let toDate = 0;
  return finance.years.map(({ year, works, grant, borrowed, interest, principal, debt, cover }) => {
    const prices = pricesIn(year, inflation);
    const row = {
      year,
      // What is bought again is short-lived, and bought; the last year's is only what is left of it.
      works: year === 0 ? -capitalCash : year === last ? 0 : works,
      grant,
      income: (incomePerYear ?? 0) * prices,
      running: -operatingCashCost * prices,
      borrowed,
      interest,
      principal,
      already: year === 0 || incomePerYear == null ? 0 : -debtServicePerYear,
    };
    const { year: _, ...amounts } = row;
    const sum = Object.values(amounts).reduce((all, amount) => all + amount, 0);
    toDate += sum;
    return { ...row, sum, toDate, debt, cover };
  });
}

/** Years 0 … horizon; empty where a price is missing. */
export function economicYears({ values, finance, scenario }: ScenarioResult): EconomicYear[] {
  const { inflation, interestRate } = scenario.farm.money;
  const { labourCost, operatingCashCost, operatingCost } = values;
  if (labourCost == null || operatingCashCost == null || operatingCost == null) return [];
  const worth = runningWorth(
    interestRate,
    finance.years.map(({ net }) => net),
  );
  return finance.years.map(({ year, works, grant, nutrientValue, net }) => {
    const prices = pricesIn(year, inflation);
    return {
      year,
      works,
      grant,
      running: -operatingCashCost * prices,
      ownHours: -labourCost * prices,
      grassLost: -(operatingCost - operatingCashCost - labourCost) * prices,
      nutrientValue,
      sum: net,
      worthToDate: worth[year],
    };
  });
}
