/**
 * The years of a case as a bank sees them and as its economics count them, never mixed: what moves on the account, and
 * what own hours, own timber, grass, nutrients and named gains are worth. Amounts are in the prices of their year, money that goes
 * out below 0.
 */
import { pricesIn, runningWorth } from '../model/money/cashTerms.ts';
import type { ScenarioResult } from './evaluate.ts';
import { CASH_LINES, type CashLine, moneyBook } from './moneyBook.ts';

export interface CashYear extends Readonly<Record<CashLine, number>> {
  readonly year: number;
  /** Feed, bedding, machines and upkeep together. */
  readonly running: number;
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
  readonly gains: number;
  /** Sum of all before: before loans and tax. */
  readonly sum: number;
  /** Worth today of the sums so far. */
  readonly worthToDate: number;
}

/** Years 0 … horizon, each the sum of its months; empty where a price is missing. */
export function cashYears(result: ScenarioResult): CashYear[] {
  const book = moneyBook(result);
  let toDate = 0;
  return result.finance.years.flatMap(({ year, debt, cover }): CashYear[] => {
    const months = book.filter((month) => month.year === year);
    if (months.length === 0) return [];
    const amounts = Object.fromEntries(
      CASH_LINES.map((line) => [line, months.reduce((all, month) => all + month[line], 0)]),
    ) as Record<CashLine, number>;
    const sum = CASH_LINES.reduce((all, line) => all + amounts[line], 0);
    toDate += sum;
    const running = amounts.feed + amounts.bedding + amounts.machines + amounts.upkeep;
    return [{ ...amounts, year, running, sum, toDate, debt, cover }];
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
  return finance.years.map(({ year, works, grant, nutrientValue, gains, net }) => {
    const prices = pricesIn(year, inflation);
    return {
      year,
      works,
      grant,
      running: -operatingCashCost * prices,
      ownHours: -labourCost * prices,
      grassLost: -(operatingCost - operatingCashCost - labourCost) * prices,
      nutrientValue,
      gains,
      sum: net,
      worthToDate: worth[year],
    };
  });
}
