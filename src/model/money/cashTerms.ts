/**
 * The yearly flows of a scenario from the few figures they rest on: one definition for the columns of the model, for
 * many draws or turned rows at once, and for the table of years on the page.
 */

import { addWorks, capitalFlows } from './capitalFlows.ts';
import { HAD_INPUTS, HAD_RESULTS, type HadInput, type HadResult, ownedOf } from './owned.ts';
import { discountedPayback, netPresentValue } from './presentValue.ts';
import { delayedPart, ON_TIME, paidPart, type Timing } from './timing.ts';

const RESULTS = [
  'capitalCost',
  'capitalShortLived',
  'capitalOwned',
  'capitalOwnedShortLived',
  'grantUsed',
  'operatingCost',
  'nutrientValue',
  'gainsPerYear',
] as const;
const INPUTS = [
  'lifeYears',
  'shortLifeYears',
  'inflation',
  'interestRate',
  'grantYears',
  'alreadyHaveYears',
] as const;

/** Results that the flows of a scenario rest on. */
export const CASH_RESULTS = [...RESULTS, ...HAD_RESULTS] as const;
/** Input columns beside them. */
export const CASH_INPUTS = [...INPUTS, ...HAD_INPUTS] as const;

export type CashTerms = Readonly<
  Record<(typeof RESULTS)[number] | (typeof INPUTS)[number], number> &
    Partial<Record<HadResult | HadInput, number>>
>;
/** What the flows rest on before they are discounted. */
export type FlowTerms = Omit<CashTerms, 'interestRate'>;
/** What a baseline brings of its own: price level and years are the notebook's, the same for both. */
export type PeerTerms = Omit<FlowTerms, 'inflation' | 'lifeYears'>;

/** Flows before loans and tax of one year, in its prices. */
export interface YearFlow {
  readonly year: number;
  /** Works bought (below 0) and, in the last year, what is left of them. */
  readonly works: number;
  readonly grant: number;
  readonly running: number;
  readonly nutrientValue: number;
  /** What the keeper expects beyond the model. */
  readonly gains: number;
  /** Sum of all before: before loans. */
  readonly net: number;
}

/** Whole years looked at: the life of the works. */
export const horizonOf = ({ lifeYears }: Pick<CashTerms, 'lifeYears'>): number => Math.round(lifeYears);

/** What a yearly amount of today is in the prices of a year; nothing runs in year 0, when the works are bought. */
export const pricesIn = (year: number, inflation: number): number =>
  year === 0 ? 0 : (1 + inflation) ** year;

const worksOf = (terms: PeerTerms, { inflation, lifeYears }: FlowTerms) => ({
  capital: terms.capitalCost,
  shortLived: terms.capitalShortLived,
  lifeYears: horizonOf({ lifeYears }),
  shortLifeYears: terms.shortLifeYears,
  inflation,
  owned: ownedOf(terms),
});

/** Years 0 … horizon. In a year the works are not used yet, the winter is that of the baseline, if there is one. */
export function yearFlows(
  terms: FlowTerms,
  horizon: number,
  baseline?: PeerTerms,
  timing: Timing = ON_TIME,
): YearFlow[] {
  const bought = capitalFlows({ ...worksOf(terms, terms), horizon });
  return bought.map((works, year) => {
    const prices = pricesIn(year, terms.inflation);
    const late = baseline && year > 0 ? delayedPart(year, timing) : 0;
    const each = (name: 'operatingCost' | 'nutrientValue' | 'gainsPerYear') =>
      late > 0 && baseline ? terms[name] + late * (baseline[name] - terms[name]) : terms[name];
    const grant = terms.grantUsed * paidPart(year, terms.grantYears + timing.grantLateYears);
    const running = -each('operatingCost') * prices;
    const nutrientValue = each('nutrientValue') * prices;
    const gains = each('gainsPerYear') * prices;
    const net = works + grant + running + nutrientValue + gains;
    return { year, works, grant, running, nutrientValue, gains, net };
  });
}

const yearlyOf = (terms: PeerTerms) => terms.nutrientValue + terms.gainsPerYear - terms.operatingCost;

/** Flows against another scenario in one price level over the same years; the scenario alone without one. */
export function flowsAgainst(terms: FlowTerms, baseline?: PeerTerms, timing: Timing = ON_TIME): number[] {
  const horizon = horizonOf(terms);
  if (!(horizon >= 1)) return [];
  const flows = new Array<number>(horizon + 1).fill(0);
  addFlows(flows, terms, terms, 1, timing);
  if (!baseline) return flows;
  addFlows(flows, baseline, terms, -1, ON_TIME);
  if (timing.delayYears > 0) {
    const later = yearlyOf(terms) - yearlyOf(baseline);
    for (let year = 1; year <= horizon; year++)
      flows[year] -= later * delayedPart(year, timing) * pricesIn(year, terms.inflation);
  }
  return flows;
}

/** Flows added to `flows` (years 0 … its end) times `sign`: no object a year, since draws ask for millions. */
function addFlows(
  flows: number[],
  terms: PeerTerms,
  shared: FlowTerms,
  sign: 1 | -1,
  { grantLateYears }: Timing,
): void {
  addWorks(flows, worksOf(terms, shared), sign);
  const running = yearlyOf(terms);
  let prices = 1;
  const due = terms.grantYears + grantLateYears;
  for (let year = Math.floor(due); year <= due + 1 && year < flows.length; year++)
    flows[year] += sign * terms.grantUsed * paidPart(year, due);
  for (let year = 1; year < flows.length; year++) {
    prices *= 1 + shared.inflation;
    flows[year] += sign * running * prices;
  }
}

/** Worth today of flows at a rate; NaN where there are none or a price is missing. */
export function worthOf(rate: number, flows: readonly number[]): number {
  return flows.length === 0 ? Number.NaN : netPresentValue(rate, flows);
}

/** Years until discounted flows have paid back what they cost; null when never or where a price is missing. */
export function paybackOf(rate: number, flows: readonly number[]): number | null {
  return Number.isFinite(worthOf(rate, flows)) ? discountedPayback(rate, flows) : null;
}

/** Worth today of a scenario's flows at its own rate. */
export function worthAgainst(terms: CashTerms, baseline?: PeerTerms): number {
  return worthOf(terms.interestRate, flowsAgainst(terms, baseline));
}

/** Sum to date of the discounted flows, year by year. */
export function runningWorth(rate: number, flows: readonly number[]): number[] {
  let sum = 0;
  return flows.map((flow, year) => {
    sum += flow / (1 + rate) ** year;
    return sum;
  });
}

/**
 * Cash a year that serves the debt: what is left of the income named in the notebook or, where none is named, what is
 * saved in cash against the baseline. Costs are less the gains that come as cash.
 */
export function cashForDebt(income: number, cashCost: number, baselineCashCost: number): number {
  return (Number.isFinite(income) ? income : baselineCashCost) - cashCost;
}

/** What that cash must serve: loans the farm already has too, where its whole income does. */
export function serviceOf(payment: number, already: number, income: number): number {
  return payment > 0 && Number.isFinite(income) ? payment + already : payment;
}
