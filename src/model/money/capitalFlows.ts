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
  /** What stands already: of an age each. */
  readonly owned?: readonly OwnedWorks[];
}

/** Works that stand already, as new, in money. */
export interface OwnedWorks {
  readonly capital: number;
  /** The short-lived part of them. */
  readonly shortLived: number;
  readonly ageYears: number;
  /** Years until they must be bought again, where they have been looked at; not a number: life less age. */
  readonly leftYears: number;
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
  const { capital, shortLived, inflation, lifeYears, shortLifeYears, owned = NOTHING } = terms;
  buy(flows, sign * (capital - shortLived), lifeYears, inflation, 0);
  buy(flows, sign * shortLived, shortLifeYears, inflation, 0);
  for (const one of owned) {
    const lasting = one.capital - one.shortLived;
    buy(flows, sign * lasting, lifeYears, inflation, firstAgain(lifeYears, one));
    buy(flows, sign * one.shortLived, shortLifeYears, inflation, firstAgain(shortLifeYears, one));
  }
}

const NOTHING: readonly OwnedWorks[] = [];

/** Year in which what stands already is bought again: never today, when it still stands. */
function firstAgain(lifeYears: number, { ageYears, leftYears }: OwnedWorks): number {
  const left = Number.isFinite(leftYears) ? leftYears : replacementYear(lifeYears, 1) - Math.round(ageYears);
  return Math.max(1, Math.round(left));
}

/** Bought in year `first` (0 is today) and again whenever its life is over. */
function buy(flows: number[], price: number, lifeYears: number, inflation: number, first: number): void {
  const horizon = flows.length - 1;
  const every = replacementYear(lifeYears, 1);
  if (!Number.isFinite(every) || !Number.isFinite(first)) {
    flows.fill(Number.NaN);
    return;
  }
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
