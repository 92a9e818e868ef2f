/**
 * What each scenario costs over the life of its works, seen alone. What it earns against another scenario
 * (rate of return, payback) needs both: `model/case.ts` fills those in. Tax is left out.
 */

import { defineStage } from '../stage.ts';
import { loanBalance } from './loan.ts';
import { annuityFactor, debtServiceCover, realRate, replacementFactor } from './presentValue.ts';

export const financeStage = defineStage({
  name: 'finance',
  about: 'Loans, own money and the present value of a scenario alone; tax left out',
  // biome-ignore format: one list of names
  reads: [
    'capitalCost', 'capitalCash', 'capitalShortLived', 'grantUsed', 'ownMoney', 'operatingCost',
    'operatingCashCost', 'nutrientValue', 'interestRate', 'inflation', 'lifeYears', 'shortLifeYears',
    'incomePerYear',
  ],
  families: { loan: ['Amount', 'Rate', 'Years', 'GraceYears', 'Straight'] },
  makes: {
    loanTotal: { label: 'loans', unit: 'money', formula: 'sum of all loans', from: ['loan*Amount'] },
    loanPayment: {
      label: 'yearly payment on all loans',
      unit: 'money',
      formula:
        'interest and principal of all loans in the year they weigh most; grace years pay interest only',
      from: ['loan*Amount', 'loan*Rate', 'loan*Years', 'loan*GraceYears', 'loan*Straight'],
      source: ['financeText'],
    },
    loanInterest: {
      label: 'interest over the whole term',
      unit: 'money',
      formula: 'interest of all years and loans',
      from: ['loan*Amount', 'loan*Rate', 'loan*Years', 'loan*GraceYears', 'loan*Straight'],
    },
    ownMoneyNeeded: {
      label: 'own money needed',
      unit: 'money',
      formula: 'capital in cash less grant and loans, at least 0',
      from: ['capitalCash', 'grantUsed', 'loanTotal'],
    },
    fundingGap: {
      label: 'money still missing',
      unit: 'money',
      formula:
        'own money needed less the own money named in the notebook, at least 0; absent when none is named',
      from: ['ownMoneyNeeded', 'ownMoney'],
    },
    netPresentValue: {
      label: 'present value of the scenario alone',
      unit: 'money',
      formula:
        'value of nutrients less running cost of every year of the life, less capital, replacements of short-lived works, plus grant and the unused share of the last replacement, all worth today; before loans and tax',
      from: [
        'nutrientValue',
        'operatingCost',
        'capitalCost',
        'capitalShortLived',
        'grantUsed',
        'interestRate',
        'inflation',
        'lifeYears',
        'shortLifeYears',
      ],
      source: ['financeText'],
    },
    levelisedCost: {
      label: 'even yearly cost over the life',
      unit: 'money',
      formula: 'the even yearly amount, in prices of the notebook, worth as much today as the scenario costs',
      from: ['netPresentValue', 'interestRate', 'inflation', 'lifeYears'],
      source: ['financeText'],
    },
    internalRateOfReturn: {
      label: 'rate of return against the baseline',
      unit: 'fraction',
      formula:
        'the rate at which the differences to the baseline are worth nothing today; absent for the baseline and where there is none or more than one',
      from: [
        'capitalCost',
        'capitalShortLived',
        'grantUsed',
        'operatingCost',
        'nutrientValue',
        'lifeYears',
        'shortLifeYears',
        'inflation',
      ],
      source: ['financeText'],
    },
    paybackYears: {
      label: 'discounted payback against the baseline',
      unit: 'yr',
      formula:
        'years until the discounted differences to the baseline have paid back the extra capital; absent when never',
      from: [
        'capitalCost',
        'capitalShortLived',
        'grantUsed',
        'operatingCost',
        'nutrientValue',
        'lifeYears',
        'shortLifeYears',
        'interestRate',
        'inflation',
      ],
      source: ['financeText'],
    },
    debtServiceCover: {
      label: 'debt service cover',
      unit: '×',
      formula:
        'income named in the notebook less running cost in cash, over the payment on the loans; without a named income, the cash saved against the baseline over the payment; absent without a loan',
      from: ['incomePerYear', 'operatingCashCost', 'loanPayment'],
      source: ['financeText'],
    },
  },
  run({ count, read: r, family: { loan }, write: w }) {
    const owed = new Float64Array(loan.length);
    for (let i = 0; i < count; i++) {
      let total = 0;
      let lastYear = 0;
      for (let k = 0; k < loan.length; k++) {
        if (loan[k].Amount[i] === 0) continue;
        total += loan[k].Amount[i];
        lastYear = Math.max(lastYear, loan[k].Years[i]);
        owed[k] = balance(loan[k], i, 0);
      }
      let heaviest = 0;
      let interest = 0;
      for (let year = 1; year <= lastYear; year++) {
        let payment = 0;
        for (let k = 0; k < loan.length; k++) {
          if (loan[k].Amount[i] === 0) continue;
          const rate = loan[k].Rate[i];
          const opening = owed[k];
          owed[k] = balance(loan[k], i, year);
          payment += opening * (1 + rate) - owed[k];
          interest += opening * rate;
        }
        heaviest = Math.max(heaviest, payment);
      }
      // A loan of no years is not a loan without payments.
      const repayable = total === 0 || lastYear > 0;
      w.loanTotal[i] = total;
      w.loanPayment[i] = repayable ? heaviest : Number.NaN;
      w.loanInterest[i] = repayable ? interest : Number.NaN;
      const needed = r.capitalCash[i] - r.grantUsed[i] - total;
      w.ownMoneyNeeded[i] = Math.max(0, needed);
      w.fundingGap[i] = Math.max(0, w.ownMoneyNeeded[i] - r.ownMoney[i]);

      const rate = realRate(r.interestRate[i], r.inflation[i]);
      const years = Math.round(r.lifeYears[i]);
      const factor = annuityFactor(rate, years);
      const value =
        (r.nutrientValue[i] - r.operatingCost[i]) * factor -
        (r.capitalCost[i] - r.grantUsed[i]) -
        r.capitalShortLived[i] * replacementFactor(rate, years, r.shortLifeYears[i]);
      w.netPresentValue[i] = value;
      w.levelisedCost[i] = -value / factor;
      w.internalRateOfReturn[i] = Number.NaN;
      w.paybackYears[i] = Number.NaN;
      w.debtServiceCover[i] = debtServiceCover(r.incomePerYear[i] - r.operatingCashCost[i], w.loanPayment[i]);
    }
  },
});

type LoanColumns = Readonly<Record<'Amount' | 'Rate' | 'Years' | 'GraceYears' | 'Straight', Float64Array>>;

/** Debt on the loan of row `i` at the end of `year`. */
function balance(loan: LoanColumns, i: number, year: number): number {
  return loanBalance(
    loan.Amount[i],
    loan.Rate[i],
    loan.Years[i],
    loan.GraceYears[i],
    loan.Straight[i] > 0,
    year,
  );
}
