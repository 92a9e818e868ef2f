/**
 * The yearly flows of a scenario from the few results they rest on, for many draws or turned rows at once. The
 * same sums as `model/case.ts`, which works on one row and gives reasons; a test holds the two together.
 */

import { capitalFlows } from './capitalFlows.ts';
import { netPresentValue } from './presentValue.ts';

/** Results that the flows of a scenario rest on. */
export const CASH_RESULTS = [
  'capitalCost',
  'capitalShortLived',
  'grantUsed',
  'operatingCost',
  'nutrientValue',
] as const;
/** Input columns beside them. */
export const CASH_INPUTS = ['lifeYears', 'shortLifeYears', 'inflation', 'interestRate'] as const;

export type CashTerms = Readonly<
  Record<(typeof CASH_RESULTS)[number] | (typeof CASH_INPUTS)[number], number>
>;

/** Flows before loans and tax in the prices of each year, years 0 … horizon; works below 0. */
export function yearlyFlows(terms: CashTerms, horizon: number): number[] {
  const { inflation } = terms;
  const works = capitalFlows({
    capital: terms.capitalCost,
    shortLived: terms.capitalShortLived,
    lifeYears: Math.round(terms.lifeYears),
    shortLifeYears: terms.shortLifeYears,
    horizon,
    inflation,
  });
  return works.map((amount, year) =>
    year === 0
      ? amount + terms.grantUsed
      : amount + (terms.nutrientValue - terms.operatingCost) * (1 + inflation) ** year,
  );
}

/** Flows against another scenario over the life of the first; the scenario alone without one. */
export function flowsAgainst(terms: CashTerms, baseline?: CashTerms): number[] {
  const horizon = Math.round(terms.lifeYears);
  if (!(horizon >= 1)) return [];
  const own = yearlyFlows(terms, horizon);
  if (!baseline) return own;
  const other = yearlyFlows(baseline, horizon);
  return own.map((flow, year) => flow - other[year]);
}

/** Worth today of those flows at the scenario's own rate; NaN where a price is missing. */
export function worthAgainst(terms: CashTerms, baseline?: CashTerms): number {
  const flows = flowsAgainst(terms, baseline);
  return flows.length === 0 ? Number.NaN : netPresentValue(terms.interestRate, flows);
}

/** Sum to date of the discounted flows, year by year. */
export function runningWorth(rate: number, flows: readonly number[]): number[] {
  let sum = 0;
  return flows.map((flow, year) => {
    sum += flow / (1 + rate) ** year;
    return sum;
  });
}
