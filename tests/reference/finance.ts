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

/** Works of one kind as they stand and are bought: each set lasts `every` years, the first is `age` years old or new. */
function bookKind(price: number, every: number, years: number, age: number | null): number[] {
  const flows = new Array<number>(years + 1).fill(0);
  // Years the set that stands today still has; a new one is bought today.
  let left = age === null ? 0 : Math.max(1, every - age);
  let boughtEver = false;
  for (let t = 0; t <= years; t++) {
    const buys = t === 0 ? age === null : left === 0 && t < years;
    if (buys) {
      flows[t] -= price;
      left = every;
      boughtEver = true;
    }
    if (t === years && boughtEver) flows[t] += (price * left) / every;
    if (t < years) left -= 1;
  }
  return flows;
}

export interface BookedWorks {
  /** First price of what lasts as long as the years looked at, and of what is bought again every `every` years. */
  readonly lasting: number;
  readonly shortLived: number;
  readonly every: number;
  readonly grant: number;
  /** Year the grant is paid in. It is a sum of money: at `inflation` a year it is worth less, the later it comes. */
  readonly grantYear?: number;
  readonly inflation?: number;
  /** Running cost less the worth of what is kept and gained, a year, in today's prices. */
  readonly running: number;
  readonly years: number;
  /** As new, what stands already of both kinds, and its age. */
  readonly owned?: { readonly lasting: number; readonly shortLived: number; readonly age: number };
  /** Years at the beginning in which another running cost is paid, the works not being used yet. */
  readonly late?: { readonly years: number; readonly running: number };
}

/** Flows in today's prices, year by year; the unused part of the last purchase comes back in the last year. */
export function bookWorks(of: BookedWorks): number[] {
  const { lasting, shortLived, every, grant, grantYear = 0, inflation = 0, running, years, owned, late } = of;
  const kinds = [bookKind(lasting, years, years, null), bookKind(shortLived, every, years, null)];
  if (owned) {
    kinds.push(bookKind(owned.lasting, years, years, owned.age));
    kinds.push(bookKind(owned.shortLived, every, years, owned.age));
  }
  return Array.from({ length: years + 1 }, (_, t) => {
    const works = kinds.reduce((sum, flows) => sum + flows[t], 0);
    const cost = t === 0 ? 0 : late && t <= late.years ? late.running : running;
    return works - cost + (t === grantYear ? grant / (1 + inflation) ** t : 0);
  });
}

/** Amounts taxed when they are paid, and the tax back `lag` months later: what moves each month, to month `months`. */
export function bookTax(
  bought: readonly number[],
  fraction: number,
  lag: number,
): { out: number[]; back: number[] } {
  const out = bought.map((amount) => -amount * fraction);
  const back = bought.map((_, month) => (month >= lag ? bought[month - lag] * fraction : 0));
  return { out, back };
}
