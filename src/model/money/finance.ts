/** Loans, own money and the even yearly cost of a scenario alone; tax left out. */

import { quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';
import { type Loan, loanBalance, loanFault } from './loan.ts';
import { levelisedCost, realRate } from './presentValue.ts';

const money = (label: string, formula: string, source?: readonly string[]) =>
  quantity(label, 'money', formula, source ? { source } : {});

const loans = walk({
  name: 'loans',
  about: 'All loans year by year',
  reads: ['loan*Amount', 'loan*Rate', 'loan*Years', 'loan*GraceYears', 'loan*Straight'],
  makes: {
    loanPayment: {
      label: 'yearly payment on all loans',
      unit: 'money',
      formula:
        'interest and principal of all loans in the year they weigh most; grace years pay interest only; absent where a loan cannot be reckoned',
      source: ['financeText'],
    },
    loanInterest: {
      label: 'interest over the whole term',
      unit: 'money',
      formula: 'interest of all years and loans',
    },
  },
  run({ count, read: r, write: w }) {
    const amount = r['loan*Amount'];
    const rate = r['loan*Rate'];
    const years = r['loan*Years'];
    const grace = r['loan*GraceYears'];
    const straight = r['loan*Straight'];
    const owed = new Float64Array(amount.length);
    const balance = (k: number, i: number, year: number) =>
      loanBalance(amount[k][i], rate[k][i], years[k][i], grace[k][i], straight[k][i] > 0, year);
    const loan: { -readonly [K in keyof Loan]: Loan[K] } = {
      amount: 0,
      rate: 0,
      years: 0,
      graceYears: 0,
      straightLine: false,
    };
    const reckons = (k: number, i: number) => {
      loan.amount = amount[k][i];
      loan.rate = rate[k][i];
      loan.years = years[k][i];
      loan.graceYears = grace[k][i];
      return loanFault(loan) === null;
    };
    for (let i = 0; i < count; i++) {
      let any = false;
      let sound = true;
      let lastYear = 0;
      for (let k = 0; k < amount.length; k++) {
        if (amount[k][i] === 0) continue;
        any = true;
        sound = sound && reckons(k, i);
        lastYear = Math.max(lastYear, years[k][i]);
        owed[k] = balance(k, i, 0);
      }
      let heaviest = 0;
      let interest = 0;
      for (let year = 1; year <= lastYear; year++) {
        let payment = 0;
        for (let k = 0; k < amount.length; k++) {
          if (amount[k][i] === 0) continue;
          const opening = owed[k];
          owed[k] = balance(k, i, year);
          payment += opening * (1 + rate[k][i]) - owed[k];
          interest += opening * rate[k][i];
        }
        heaviest = Math.max(heaviest, payment);
      }
      w.loanPayment[i] = sound ? heaviest : Number.NaN;
      // A loan of no years is not a loan without interest.
      w.loanInterest[i] = !any || lastYear > 0 ? interest : Number.NaN;
    }
  },
});

const own = {
  loanTotal: money('loans', 'sum of all loans').of(['loan*Amount'], (i, amount) => {
    let sum = 0;
    for (let k = 0; k < amount.length; k++) sum += amount[k][i];
    return sum;
  }),
  ownMoneyNeeded: money('own money needed', 'capital in cash less grant and loans, at least 0').of(
    ['capitalCash', 'grantUsed', 'loanTotal'],
    (i, cash, grant, lent) => Math.max(0, cash[i] - grant[i] - lent[i]),
  ),
  fundingGap: money(
    'money still missing',
    'own money needed less the own money named in the notebook, at least 0; absent when none is named',
  ).of(['ownMoneyNeeded', 'ownMoney'], (i, needed, named) => Math.max(0, needed[i] - named[i])),
  levelisedCost: money(
    'even yearly cost over the life',
    'the even yearly amount, in prices of the notebook, worth as much today as the scenario costs',
    ['financeText'],
  ).of(['netPresentValue', 'interestRate', 'inflation', 'lifeYears'], (i, worth, rate, inflation, life) =>
    levelisedCost(-worth[i], realRate(rate[i], inflation[i]), Math.round(life[i])),
  ),
};

export const finance = [loans, own] as const;
