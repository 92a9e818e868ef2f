/** Buying works and buying them again, year by year. */
import { replacementYear } from './presentValue.ts';

export interface WorksTerms {
  /** First price of all works, and of the short-lived part of them. */
  readonly capital: number;
  readonly shortLived: number;
  readonly lifeYears: number;
  readonly shortLifeYears: number;
  /** Prices rise by this fraction a year. */
  readonly inflation: number;
}

/**
 * Money spent on works (below 0) in years 0 … horizon, in the prices of each year. What wears out is bought
 * again at the end of its life; the unused share of the last purchase comes back at the end of the horizon.
 * Tests hold it, discounted, against a closed form.
 */
export function capitalFlows(terms: WorksTerms & { readonly horizon: number }): number[] {
  const flows = new Array<number>(terms.horizon + 1).fill(0);
  addWorks(flows, terms, 1);
  return flows;
}

/** The same, added to `flows` (years 0 … its end) times `sign`. */
export function addWorks(flows: number[], terms: WorksTerms, sign: 1 | -1): void {
  const { capital, shortLived, inflation } = terms;
  buy(flows, sign * (capital - shortLived), terms.lifeYears, inflation);
  buy(flows, sign * shortLived, terms.shortLifeYears, inflation);
}

function buy(flows: number[], price: number, lifeYears: number, inflation: number): void {
  const horizon = flows.length - 1;
  const every = replacementYear(lifeYears, 1);
  if (!Number.isFinite(every)) {
    flows.fill(Number.NaN);
    return;
  }
  // Prices rise by as much from one purchase to the next.
  const rises = every < horizon ? (1 + inflation) ** every : 1;
  let prices = price;
  let last = 0;
  for (let year = 0; year === 0 || year < horizon; year += every) {
    flows[year] -= prices;
    prices *= rises;
    last = year;
  }
  const unused = Math.max(0, 1 - (horizon - last) / every);
  flows[horizon] += unused > 0 ? price * unused * (1 + inflation) ** horizon : price * unused;
}
