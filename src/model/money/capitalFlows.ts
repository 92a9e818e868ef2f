/** Buying works and buying them again, year by year. */
import { replacementYear } from './presentValue.ts';

export interface WorksTerms {
  /** First price of all works, and of the short-lived part of them. */
  readonly capital: number;
  readonly shortLived: number;
  readonly lifeYears: number;
  readonly shortLifeYears: number;
  /** Years looked at. */
  readonly horizon: number;
  /** Prices rise by this fraction a year. */
  readonly inflation: number;
}

/**
 * Money spent on works (below 0) in years 0 … horizon, in the prices of each year. What wears out is bought
 * again at the end of its life; the unused share of the last purchase comes back at the end of the horizon.
 * Tests hold it, discounted, against a closed form.
 */
export function capitalFlows({
  capital,
  shortLived,
  lifeYears,
  shortLifeYears,
  horizon,
  inflation,
}: WorksTerms): number[] {
  const flows = new Array<number>(horizon + 1).fill(0);
  const buy = (price: number, life: number) => {
    const every = replacementYear(life, 1);
    if (!Number.isFinite(every)) {
      flows.fill(Number.NaN);
      return;
    }
    let last = 0;
    for (let year = 0; year === 0 || year < horizon; year += every) {
      flows[year] -= price * (1 + inflation) ** year;
      last = year;
    }
    flows[horizon] += price * Math.max(0, 1 - (horizon - last) / every) * (1 + inflation) ** horizon;
  };
  buy(capital - shortLived, lifeYears);
  buy(shortLived, shortLifeYears);
  return flows;
}
