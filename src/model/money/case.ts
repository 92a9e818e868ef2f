/**
 * The money case: cash flow by year of each scenario, and what it earns against a baseline scenario. Present
 * value, rate of return and payback count own labour and the value of nutrients as money; debt service cover
 * counts cash alone. Flows are in the prices of their year and discounted at the interest rate; tax is left out.
 */

import type { ResultName, Values } from '../quantities.ts';
import { baselineNames, baselineOf } from './baseline.ts';
import {
  CASH_INPUTS,
  CASH_RESULTS,
  type CashTerms,
  cashForDebt,
  flowsAgainst,
  horizonOf,
  paybackOf,
  serviceOf,
  worthOf,
  type YearFlow,
  yearFlows,
} from './cashTerms.ts';
import { type Loan, loanFault, loanSchedule } from './loan.ts';
import { debtServiceCover, levelisedCost, realRate } from './presentValue.ts';
import { type RateOfReturn, rateOfReturn } from './rateOfReturn.ts';
import { delayedPart, ON_TIME, type Timing } from './timing.ts';

/** A scenario's results and its input columns, as they were run. */
export interface CaseInput {
  readonly name: string;
  readonly values: Partial<Values>;
  /** Value of an input column or coefficient of this row; undefined where there is none. */
  readonly column: (name: string) => number | undefined;
  /** Name of the scenario this one names as its baseline. */
  readonly baseline?: string;
}

export interface CaseYear extends YearFlow {
  readonly borrowed: number;
  readonly interest: number;
  readonly principal: number;
  /** Net with loans taken and served. */
  readonly afterLoans: number;
  readonly debt: number;
  /** Cash income over debt service of the year; null without either. */
  readonly cover: number | null;
}

/** A figure, or null and the reason in words. */
export interface Reasoned {
  readonly value: number | null;
  readonly why: string;
}

export interface Difference {
  readonly baseline: string;
  readonly flows: readonly number[];
  readonly netPresentValue: Reasoned;
  readonly internalRateOfReturn: RateOfReturn;
  readonly paybackYears: Reasoned;
  /** Even yearly gain over the baseline, in prices of the notebook. */
  readonly levelisedGain: Reasoned;
}

export interface FinanceCase {
  readonly name: string;
  readonly years: readonly CaseYear[];
  readonly netPresentValue: Reasoned;
  readonly levelisedCost: Reasoned;
  readonly loanPayment: Reasoned;
  readonly debtServiceCover: Reasoned;
  /** What serves the debt: the income named in the notebook, or the cash saved against the baseline. */
  readonly coverFrom: 'income' | 'saving' | null;
  readonly difference: Difference | null;
  /** Why there is no difference, in words; empty when there is one. */
  readonly differenceWhy: string;
}

/** What the case leaves out; said in the printed case. */
const CASE_LEFT_OUT: readonly string[] = [
  'income and property tax',
  'working capital between paying for the winter and selling animals, beyond the months shown',
  'what the buildings fetch at the end of their life, or cost to take down',
  'interest while the works are being paid for',
];

/** The same for a farm: value added tax is left out where the notebook does not speak of it. */
export const caseLeftOut = ({ vat }: { readonly vat?: unknown }): readonly string[] =>
  vat === undefined ? ['value added tax and any refund of it', ...CASE_LEFT_OUT] : CASE_LEFT_OUT;

/** The case of every scenario, each against its baseline: see `baselineOf`. What has no baseline is never late. */
export function financeCase(
  inputs: readonly CaseInput[],
  baselineName?: string,
  timing: Timing = ON_TIME,
): FinanceCase[] {
  const at = baselineOf(inputs, baselineName);
  const wanted = baselineNames(inputs, baselineName);
  return inputs.map((input, k) => {
    const baseline = at[k] < 0 || at[k] === k ? undefined : inputs[at[k]];
    return {
      ...alone(input, baseline, baseline ? timing : ON_TIME),
      difference: baseline ? differenceTo(input, baseline, timing) : null,
      differenceWhy: baseline
        ? ''
        : at[k] < 0
          ? `no scenario is called "${wanted[k]}"`
          : 'this is the baseline the others are compared with',
    };
  });
}

const read = (input: CaseInput, name: ResultName) => input.values[name] ?? Number.NaN;
const column = (input: CaseInput, name: string) => input.column(name) ?? Number.NaN;

/** What the flows of a scenario rest on. */
function termsOf(input: CaseInput): CashTerms {
  return Object.fromEntries([
    ...CASH_RESULTS.map((name) => [name, read(input, name)]),
    ...CASH_INPUTS.map((name) => [name, column(input, name)]),
  ]) as CashTerms;
}

const MISSING = 'a price or a term it needs is missing';

function reasoned(value: number, why = MISSING): Reasoned {
  return Number.isFinite(value) ? { value, why: '' } : { value: null, why };
}

/** The loans of a scenario, as its columns say. */
export function loansOf(input: CaseInput): Loan[] {
  const loans: Loan[] = [];
  for (let k = 1; input.column(`loan${k}Amount`) !== undefined; k++) {
    const of = (field: string) => column(input, `loan${k}${field}`);
    const loan = { amount: of('Amount'), rate: of('Rate'), years: of('Years'), graceYears: of('GraceYears') };
    if (loan.amount !== 0) loans.push({ ...loan, straightLine: of('Straight') > 0 });
  }
  return loans;
}

function alone(
  input: CaseInput,
  baseline: CaseInput | undefined,
  timing: Timing,
): Omit<FinanceCase, 'difference' | 'differenceWhy'> {
  const terms = termsOf(input);
  const horizon = horizonOf(terms);
  const loans = loansOf(input);
  const fault = loans.map(loanFault).find((words) => words !== null) ?? null;
  const flows =
    horizon >= 1 ? yearFlows(terms, horizon, baseline ? termsOf(baseline) : undefined, timing) : [];
  const { interestRate: rate, inflation } = terms;
  const income = read(input, 'incomePerYear');
  const already = column(input, 'debtServicePerYear');
  const coverFrom = Number.isFinite(income) ? 'income' : baseline ? 'saving' : null;
  const costOf = (one: CaseInput) => read(one, 'operatingCashCost') - read(one, 'gainsInCash');
  const before = baseline ? costOf(baseline) : Number.NaN;
  const cash = cashForDebt(income, costOf(input), before);
  // In a year of delay the winter costs what it does at the baseline, and nothing is saved against it.
  const cashWhileLate = cashForDebt(income, before, before);
  const cashIn = (year: number) => {
    const late = delayedPart(year, timing);
    return late > 0 ? cash + late * (cashWhileLate - cash) : cash;
  };
  const schedules = loans.map(loanSchedule);
  const years = flows.map((flow): CaseYear => {
    const rows = schedules.flatMap((schedule) => schedule[flow.year - 1] ?? []);
    const sum = (of: (row: (typeof rows)[number]) => number) => rows.reduce((all, row) => all + of(row), 0);
    const borrowed = flow.year === 0 ? loans.reduce((all, loan) => all + loan.amount, 0) : 0;
    const payment = sum((row) => row.payment);
    const cover = debtServiceCover(
      cashIn(flow.year) * (1 + inflation) ** flow.year,
      serviceOf(payment, already, income),
    );
    return {
      ...flow,
      borrowed,
      interest: -sum((row) => row.interest),
      principal: -sum((row) => row.principal),
      afterLoans: flow.net + borrowed - payment,
      debt: flow.year === 0 ? borrowed : sum((row) => row.closing),
      cover: Number.isFinite(cover) ? cover : null,
    };
  });
  const value = worthOf(
    rate,
    flows.map(({ net }) => net),
  );
  const noLife = horizon >= 1 ? MISSING : `the life of the works is ${horizon} years; it must be at least 1`;
  const payment = read(input, 'loanPayment');
  return {
    name: input.name,
    years,
    netPresentValue: reasoned(value, noLife),
    levelisedCost: reasoned(levelisedCost(-value, realRate(rate, inflation), horizon), noLife),
    loanPayment: fault ? { value: null, why: fault } : reasoned(payment),
    debtServiceCover: fault
      ? { value: null, why: fault }
      : !(payment > 0)
        ? { value: null, why: 'there is no loan to serve' }
        : coverFrom === null
          ? { value: null, why: 'no income is named and there is no baseline to save against' }
          : reasoned(debtServiceCover(cashIn(1), serviceOf(payment, already, income))),
    coverFrom: payment > 0 ? coverFrom : null,
  };
}

/** Both over the life of the scenario; works of the baseline that wear out earlier are bought again. */
function differenceTo(input: CaseInput, baseline: CaseInput, timing: Timing): Difference {
  const terms = termsOf(input);
  const horizon = horizonOf(terms);
  const { interestRate: rate, inflation } = terms;
  const flows = flowsAgainst(terms, termsOf(baseline), timing);
  const value = worthOf(rate, flows);
  const payback = paybackOf(rate, flows);
  return {
    baseline: baseline.name,
    flows,
    netPresentValue: reasoned(value),
    internalRateOfReturn: rateOfReturn(flows),
    paybackYears: reasoned(
      payback ?? Number.NaN,
      Number.isFinite(value) ? `not paid back within the ${horizon} years the works last` : MISSING,
    ),
    levelisedGain: reasoned(levelisedCost(value, realRate(rate, inflation), horizon)),
  };
}
