/** Short-lived works bought again, in closed form: what the yearly flows of `capitalFlows` must come to. */
import { replacementYear } from '../../src/model/money/presentValue.ts';

/**
 * Worth today of buying short-lived works again while the rest still stands, less the unused share of the
 * last set at the end. All in today's prices and at the real rate, for a first price of 1.
 */
export function replacementFactor(rate: number, years: number, shortLifeYears: number): number {
  let worth = 0;
  let last = 0;
  for (let times = 1; replacementYear(shortLifeYears, times) < years; times++) {
    last = replacementYear(shortLifeYears, times);
    worth += (1 + rate) ** -last;
  }
  const unused = Math.max(0, 1 - (years - last) / replacementYear(shortLifeYears, 1));
  return worth - unused * (1 + rate) ** -years;
}
