/**
 * Money over time from the formulas of any corporate finance textbook, written for these tests alone: sums year by year
 * and account books kept forward, no closed form and none of the project's functions. Rates are fractions a year, flow 0
 * stands today.
 */

/** Worth today: the sum of C_t / (1 + r)^t. */
export const presentValue = (rate: number, flows: readonly number[]): number =>
  flows.reduce((sum, flow, t) => sum + flow / (1 + rate) ** t, 0);

/** The same from flows in today's prices at the real rate (Fisher: 1 + r = (1 + nominal) / (1 + inflation)). */
export const realPresentValue = (
  nominal: number,
  inflation: number,
  flowsInTodaysPrices: readonly number[],
): number => presentValue((1 + nominal) / (1 + inflation) - 1, flowsInTodaysPrices);

/** Level payment: P · r (1 + r)^n / ((1 + r)^n − 1), or P / n without interest. */
export function levelPayment(principal: number, rate: number, years: number): number {
  if (rate === 0) return principal / years;
  const grown = (1 + rate) ** years;
  return (principal * rate * grown) / (grown - 1);
}

export interface BookedLoan {
  readonly amount: number;
  readonly rate: number;
  readonly years: number;
  readonly graceYears: number;
  readonly straightLine: boolean;
}

/** A loan's account: each year interest is charged on what is owed, and the payment's rest goes off it. */
export function bookLoan({ amount, rate, years, graceYears, straightLine }: BookedLoan) {
  const paying = years - graceYears;
  const level = levelPayment(amount, rate, paying);
  let owed = amount;
  return Array.from({ length: years }, (_, k) => {
    const interest = owed * rate;
    const principal = k < graceYears ? 0 : straightLine ? amount / paying : level - interest;
    owed -= principal;
    return { interest, principal, payment: interest + principal, owed };
  });
}

/** Rate at which flows that cost first and earn later are worth nothing, by halving between −99 % and 1000 %. */
export function rateByHalving(flows: readonly number[]): number | null {
  let [low, high] = [-0.99, 10];
  if (presentValue(low, flows) < 0 || presentValue(high, flows) > 0) return null;
  for (let k = 0; k < 200; k++) {
    const middle = (low + high) / 2;
    if (presentValue(middle, flows) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Years until the discounted sum to date is no longer below 0, the last one in part; for flows that cost first. */
export function paybackByBooks(rate: number, flows: readonly number[]): number | null {
  let sum = 0;
  for (let t = 0; t < flows.length; t++) {
    const discounted = flows[t] / (1 + rate) ** t;
    if (t > 0 && sum < 0 && sum + discounted >= 0) return t - 1 + -sum / discounted;
    sum += discounted;
  }
  return null;
}

/** The even yearly amount at the end of each year that is worth `present` today. */
export function evenYearly(present: number, rate: number, years: number): number {
  let factor = 0;
  for (let t = 1; t <= years; t++) factor += 1 / (1 + rate) ** t;
  return present / factor;
}

export interface BookedWorks {
  /** First price of what lasts as long as the years looked at, and of what is bought again every `every` years. */
  readonly lasting: number;
  readonly shortLived: number;
  readonly every: number;
  readonly grant: number;
  /** Running cost less the worth of what is kept, a year, in today's prices. */
  readonly running: number;
  readonly years: number;
}

/** Flows in today's prices, year by year; the unused part of the last purchase comes back in the last year. */
export function bookWorks({ lasting, shortLived, every, grant, running, years }: BookedWorks): number[] {
  let left = 0;
  const flows: number[] = [];
  for (let t = 0; t <= years; t++) {
    let flow = t === 0 ? grant - lasting : -running;
    if (t > 0) left -= 1;
    if (t === 0 || (left === 0 && t < years)) {
      flow -= shortLived;
      left = every;
    }
    if (t === years) flow += (shortLived * left) / every;
    flows.push(flow);
  }
  return flows;
}
