/**
 * Money over time. Rates are fractions a year, flows stand at the end of each year and flow 0 stands today,
 * undiscounted (other conventions start at year 1 and give another figure). Where a figure is not defined the
 * answer is NaN or null with a reason, never a number that looks computed.
 */

/** Present worth of 1 a year for `years` years; NaN for no years or a rate of −100 % or less. */
export function annuityFactor(rate: number, years: number): number {
  if (!(years > 0) || !(rate > -1)) return Number.NaN;
  // Below this a series would lose digits that the limit keeps.
  if (Math.abs(rate) < 1e-12) return years;
  return -Math.expm1(-years * Math.log1p(rate)) / rate;
}

/** Level yearly payment that pays back `amount` with interest in `years`. */
export function annuityPayment(amount: number, rate: number, years: number): number {
  return amount / annuityFactor(rate, years);
}

/** Worth today of the flows of years 0, 1, 2 …, flow 0 undiscounted. */
export function netPresentValue(rate: number, flows: readonly number[]): number {
  const discount = 1 / (1 + rate);
  let value = 0;
  for (let t = flows.length - 1; t >= 0; t--) value = flows[t] + value * discount;
  return value;
}

/** Rate in today's prices from a rate in the prices of each year. */
export function realRate(nominal: number, inflation: number): number {
  return (1 + nominal) / (1 + inflation) - 1;
}

/** The even yearly amount worth as much today as `presentCost` (equivalent annual cost). */
export function levelisedCost(presentCost: number, rate: number, years: number): number {
  return presentCost / annuityFactor(rate, years);
}

/**
 * Years until the discounted flows have paid back what they cost: the last year that ends in the red plus the
 * part of the next that clears it. Null when they never do; 0 when nothing is ever owed.
 */
export function discountedPayback(rate: number, flows: readonly number[]): number | null {
  let sum = 0;
  let payback: number | null = 0;
  for (let t = 0; t < flows.length; t++) {
    const flow = flows[t] / (1 + rate) ** t;
    if (!Number.isFinite(flow)) return null;
    const before = sum;
    sum += flow;
    if (sum < 0) payback = null;
    else if (before < 0) payback = t - 1 + -before / flow;
  }
  return payback;
}

/** Operating income before interest, tax and depreciation over interest and principal; NaN without a debt. */
export function debtServiceCover(operatingIncome: number, debtService: number): number {
  return debtService > 0 ? operatingIncome / debtService : Number.NaN;
}

/** The older farm-budget way to a yearly cost of a building: even depreciation and interest on half its price. */
export function straightLineCost(price: number, rate: number, years: number, upkeepFraction: number): number {
  return years > 0 ? price / years + (price / 2) * rate + price * upkeepFraction : Number.NaN;
}

/** First year after which short-lived works have been replaced `times` times; whole years, at least one. */
export function replacementYear(shortLifeYears: number, times: number): number {
  return times * Math.max(1, Math.round(shortLifeYears));
}
