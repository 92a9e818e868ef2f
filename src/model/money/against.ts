/**
 * What a scenario is worth alone, and what it earns against its baseline. A column of the baseline's row has the name
 * of the own column after `baseline`; it is not a number where there is no baseline or the scenario is it itself, and
 * what rests on it is then absent. Tax is left out.
 */
import { quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';
import {
  type CashTerms,
  cashForDebt,
  type FlowTerms,
  flowsAgainst,
  paybackOf,
  serviceOf,
  worthAgainst,
} from './cashTerms.ts';
import { debtServiceCover } from './presentValue.ts';
import { rateOfReturn } from './rateOfReturn.ts';

// biome-ignore format: one list of names
const OWN = [
  'capitalCost', 'capitalShortLived', 'grantUsed', 'operatingCost', 'nutrientValue', 'lifeYears', 'shortLifeYears',
  'inflation',
] as const;
// biome-ignore format: one list of names
const BASELINE = [
  'baselineCapitalCost', 'baselineCapitalShortLived', 'baselineGrantUsed', 'baselineOperatingCost',
  'baselineNutrientValue', 'baselineShortLifeYears',
] as const;

const earned = walk({
  name: 'earned against the baseline',
  about: 'Rate of return and payback of the differences to the baseline, over the life of the scenario',
  reads: [...OWN, 'interestRate', ...BASELINE],
  makes: {
    internalRateOfReturn: {
      label: 'rate of return against the baseline',
      unit: 'fraction',
      formula:
        'the rate at which the differences to the baseline are worth nothing today; absent for the baseline and where there is none or more than one',
      source: ['financeText'],
      from: [...OWN, ...BASELINE],
    },
    paybackYears: {
      label: 'discounted payback against the baseline',
      unit: 'yr',
      formula:
        'years until the discounted differences to the baseline have paid back the extra capital; absent when never',
      source: ['financeText'],
    },
  },
  run({ count, read: r, write: w, wants }) {
    const wantsRate = wants('internalRateOfReturn');
    for (let i = 0; i < count; i++) {
      const terms: FlowTerms = {
        capitalCost: r.capitalCost[i],
        capitalShortLived: r.capitalShortLived[i],
        grantUsed: r.grantUsed[i],
        operatingCost: r.operatingCost[i],
        nutrientValue: r.nutrientValue[i],
        lifeYears: r.lifeYears[i],
        shortLifeYears: r.shortLifeYears[i],
        inflation: r.inflation[i],
      };
      const flows = flowsAgainst(terms, {
        capitalCost: r.baselineCapitalCost[i],
        capitalShortLived: r.baselineCapitalShortLived[i],
        grantUsed: r.baselineGrantUsed[i],
        operatingCost: r.baselineOperatingCost[i],
        nutrientValue: r.baselineNutrientValue[i],
        shortLifeYears: r.baselineShortLifeYears[i],
      });
      // The rate is looked for on a grid of hundreds of steps: only where somebody asks for it.
      if (wantsRate) w.internalRateOfReturn[i] = rateOfReturn(flows).rate ?? Number.NaN;
      w.paybackYears[i] = paybackOf(r.interestRate[i], flows) ?? Number.NaN;
    }
  },
});

const worth = {
  netPresentValue: quantity(
    'present value of the scenario alone',
    'money',
    'value of nutrients less running cost of every year of the life, less capital, replacements of short-lived works, plus grant and the unused share of the last replacement, all worth today; before loans and tax',
    { source: ['financeText'] },
  ).of(
    [...OWN, 'interestRate'],
    (i, capital, short, grant, running, nutrients, life, shortLife, inflation, rate) => {
      const terms: CashTerms = {
        capitalCost: capital[i],
        capitalShortLived: short[i],
        grantUsed: grant[i],
        operatingCost: running[i],
        nutrientValue: nutrients[i],
        lifeYears: life[i],
        shortLifeYears: shortLife[i],
        inflation: inflation[i],
        interestRate: rate[i],
      };
      return worthAgainst(terms);
    },
  ),
};

const debt = {
  incomePerYear: quantity(
    'income of the herd to serve debt',
    'money',
    'income a head named in the notebook × head; absent when none is named',
  ).product(['incomePerHead', 'headCount']),
  debtServiceCover: quantity(
    'debt service cover',
    '×',
    'income of the herd less running cost in cash, over the payment on these loans and on those the farm already has; without a named income, the cash saved against the baseline over the payment on these loans; absent without a loan',
    { source: ['financeText'] },
  ).of(
    ['incomePerYear', 'operatingCashCost', 'baselineOperatingCashCost', 'loanPayment', 'debtServicePerYear'],
    (i, income, cost, baselineCost, payment, already) =>
      debtServiceCover(
        cashForDebt(income[i], cost[i], baselineCost[i]),
        serviceOf(payment[i], already[i], income[i]),
      ),
  ),
};

export const against = [worth, earned, debt] as const;
