/**
 * The money case: cash flow by year of each scenario, and what it earns against a baseline scenario. Present
 * value, rate of return and payback count own labour and the value of nutrients as money; debt service cover
 * counts cash alone. Flows are in the prices of their year and discounted at the interest rate; tax is left out.
 */

import { capitalFlows } from './capitalFlows.ts';
import { type Loan, loanFault, loanSchedule } from './loan.ts';
import {
  annuityFactor,
  debtServiceCover,
  discountedPayback,
  netPresentValue,
  realRate,
} from './presentValue.ts';
import { type RateOfReturn, rateOfReturn } from './rateOfReturn.ts';

/** A scenario's results and its input columns, as they were run. */
export interface CaseInput {
  readonly name: string;
  readonly values: Readonly<Record<string, number | null>>;
  /** Value of an input column or coefficient of this row; undefined where there is none. */
  readonly column: (name: string) => number | undefined;
  /** Name of the scenario this one names as its baseline. */
  readonly baseline?: string;
}

export interface CaseYear {
  readonly year: number;
  /** Works bought (below 0) and, in the last year, what is left of them. */
  readonly works: number;
  readonly grant: number;
  readonly running: number;
  readonly nutrientValue: number;
  /** Sum of the four: before loans. */
  readonly net: number;
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
export const CASE_LEFT_OUT: readonly string[] = [
  'income and property tax',
  'working capital between paying for the winter and selling animals',
  'what the buildings fetch at the end of their life, or cost to take down',
];

/**
 * The case of every scenario. The baseline of each is the one it names, else `baselineName`, else the scenario
 * with the least capital.
 */
export function financeCase(inputs: readonly CaseInput[], baselineName?: string): FinanceCase[] {
  const cheapest = [...inputs].sort((a, b) => capitalOf(a) - capitalOf(b))[0];
  return inputs.map((input) => {
    const wanted = input.baseline ?? baselineName ?? cheapest?.name;
    const baseline = inputs.find((other) => other.name === wanted);
    const differenceWhy = !baseline
      ? `no scenario is called "${wanted}"`
      : baseline === input
        ? 'this is the baseline the others are compared with'
        : '';
    const against = baseline && baseline !== input ? baseline : undefined;
    return {
      ...alone(input, against),
      difference: against ? differenceTo(input, against) : null,
      differenceWhy,
    };
  });
}

/** The figures `compare` shows, by result name. */
export function caseValues(one: FinanceCase): Record<string, number | null> {
  return {
    netPresentValue: one.netPresentValue.value,
    internalRateOfReturn: one.difference?.internalRateOfReturn.rate ?? null,
    paybackYears: one.difference?.paybackYears.value ?? null,
    debtServiceCover: one.debtServiceCover.value,
    loanPayment: one.loanPayment.value,
  };
}

const read = (input: CaseInput, name: string) => input.values[name] ?? Number.NaN;
const column = (input: CaseInput, name: string) => input.column(name) ?? Number.NaN;
const capitalOf = (input: CaseInput) => input.values.capitalCost ?? Number.POSITIVE_INFINITY;
const lifeOf = (input: CaseInput) => Math.round(column(input, 'lifeYears'));
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

/** Flows before loans over `horizon` years: works, grant, running cost, nutrient value, each year's prices. */
function flowsOf(input: CaseInput, horizon: number) {
  const inflation = column(input, 'inflation');
  const works = capitalFlows({
    capital: read(input, 'capitalCost'),
    shortLived: read(input, 'capitalShortLived'),
    lifeYears: lifeOf(input),
    shortLifeYears: column(input, 'shortLifeYears'),
    horizon,
    inflation,
  });
  return works.map((amount, year) => {
    const prices = year === 0 ? 0 : (1 + inflation) ** year;
    const grant = year === 0 ? read(input, 'grantUsed') : 0;
    const running = year === 0 ? 0 : -read(input, 'operatingCost') * prices;
    const nutrientValue = year === 0 ? 0 : read(input, 'nutrientValue') * prices;
    return {
      year,
      works: amount,
      grant,
      running,
      nutrientValue,
      net: amount + grant + running + nutrientValue,
    };
  });
}

function alone(
  input: CaseInput,
  baseline: CaseInput | undefined,
): Omit<FinanceCase, 'difference' | 'differenceWhy'> {
  const horizon = lifeOf(input);
  const loans = loansOf(input);
  const fault = loans.map(loanFault).find((words) => words !== null) ?? null;
  const flows = horizon >= 1 ? flowsOf(input, horizon) : [];
  const rate = column(input, 'interestRate');
  const inflation = column(input, 'inflation');
  const income = column(input, 'incomePerYear');
  const saved = baseline
    ? read(baseline, 'operatingCashCost') - read(input, 'operatingCashCost')
    : Number.NaN;
  const coverFrom = Number.isFinite(income) ? 'income' : baseline ? 'saving' : null;
  const cash = coverFrom === 'income' ? income - read(input, 'operatingCashCost') : saved;
  const schedules = loans.map(loanSchedule);
  const years = flows.map((flow): CaseYear => {
    const rows = schedules.flatMap((schedule) => schedule[flow.year - 1] ?? []);
    const sum = (of: (row: (typeof rows)[number]) => number) => rows.reduce((all, row) => all + of(row), 0);
    const borrowed = flow.year === 0 ? loans.reduce((all, loan) => all + loan.amount, 0) : 0;
    const payment = sum((row) => row.payment);
    const cover = debtServiceCover(cash * (1 + inflation) ** flow.year, payment);
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
  const value = netPresentValue(
    rate,
    flows.map((flow) => flow.net),
  );
  const noLife = horizon >= 1 ? MISSING : `the life of the works is ${horizon} years; it must be at least 1`;
  const payment = read(input, 'loanPayment');
  const real = realRate(rate, inflation);
  return {
    name: input.name,
    years,
    netPresentValue: flows.length > 0 ? reasoned(value, noLife) : { value: null, why: noLife },
    levelisedCost: reasoned(-value / annuityFactor(real, horizon), noLife),
    loanPayment: fault ? { value: null, why: fault } : reasoned(payment),
    debtServiceCover: fault
      ? { value: null, why: fault }
      : !(payment > 0)
        ? { value: null, why: 'there is no loan to serve' }
        : coverFrom === null
          ? { value: null, why: 'no income is named and there is no baseline to save against' }
          : reasoned(debtServiceCover(cash, payment)),
    coverFrom: payment > 0 ? coverFrom : null,
  };
}

/** Both over the life of the scenario; works of the baseline that wear out earlier are bought again. */
function differenceTo(input: CaseInput, baseline: CaseInput): Difference {
  const horizon = lifeOf(input);
  const rate = column(input, 'interestRate');
  const base = horizon >= 1 ? flowsOf(baseline, horizon) : [];
  const flows = (horizon >= 1 ? flowsOf(input, horizon) : []).map((flow, year) => flow.net - base[year].net);
  const value = flows.length > 0 ? netPresentValue(rate, flows) : Number.NaN;
  const payback = discountedPayback(rate, flows);
  const real = realRate(rate, column(input, 'inflation'));
  return {
    baseline: baseline.name,
    flows,
    netPresentValue: reasoned(value),
    internalRateOfReturn: rateOfReturn(flows),
    paybackYears: !Number.isFinite(value)
      ? { value: null, why: MISSING }
      : payback === null
        ? { value: null, why: `not paid back within the ${horizon} years the works last` }
        : { value: payback, why: '' },
    levelisedGain: reasoned(value / annuityFactor(real, horizon)),
  };
}
