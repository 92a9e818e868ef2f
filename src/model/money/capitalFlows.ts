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
  /** As new, what of both kinds stands already, and how old it is. */
  readonly owned?: number;
  readonly ownedShortLived?: number;
  readonly ownedYears?: number;
}

/**
 * Money spent on works (below 0) in years 0 … horizon, in the prices of each year. What wears out is bought
 * again at the end of its life, what stands already when what is left of its life is over; the unused share of the last
 * purchase comes back at the end of the horizon.
 * Tests hold it, discounted, against a closed form.
 */
export function capitalFlows(terms: WorksTerms & { readonly horizon: number }): number[] {
  const flows = new Array<number>(terms.horizon + 1).fill(0);
  addWorks(flows, terms, 1);
  return flows;
}

/** The same, added to `flows` (years 0 … its end) times `sign`. */
export function addWorks(flows: number[], terms: WorksTerms, sign: 1 | -1): void {
  const { capital, shortLived, inflation, owned = 0, ownedShortLived = 0, ownedYears = 0 } = terms;
  buy(flows, sign * (capital - shortLived), terms.lifeYears, inflation, 0);
  buy(flows, sign * shortLived, terms.shortLifeYears, inflation, 0);
  if (owned === 0) return;
  buy(flows, sign * (owned - ownedShortLived), terms.lifeYears, inflation, ownedYears);
  buy(flows, sign * ownedShortLived, terms.shortLifeYears, inflation, ownedYears);
}

/** What is `oldYears` old today is bought first when it is worn out; new works, of no age, at once. */
function buy(flows: number[], price: number, lifeYears: number, inflation: number, oldYears: number): void {
  const horizon = flows.length - 1;
  const every = replacementYear(lifeYears, 1);
  if (!Number.isFinite(every) || !Number.isFinite(oldYears)) {
    flows.fill(Number.NaN);
    return;
  }
  // What is past its life is bought in the first year, since today it still stands.
  const first = oldYears > 0 ? Math.max(1, every - Math.round(oldYears)) : 0;
  // Prices rise by as much from one purchase to the next.
  const rises = every < horizon ? (1 + inflation) ** every : 1;
  let prices = first === 0 ? price : price * (1 + inflation) ** first;
  let last = first;
  for (let year = first; year === 0 || year < horizon; year += every) {
    flows[year] -= prices;
    prices *= rises;
    last = year;
  }
  const unused = first > 0 && first >= horizon ? 0 : Math.max(0, 1 - (horizon - last) / every);
  flows[horizon] += unused > 0 ? price * unused * (1 + inflation) ** horizon : price * unused;
}
