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
import { HAD_INPUTS, HAD_RESULTS, HADS, hadAt } from './owned.ts';
import { debtServiceCover } from './presentValue.ts';
import { rateOfReturn } from './rateOfReturn.ts';

// biome-ignore format: one list of names
const OWN = [
  'capitalCost', 'capitalShortLived', 'capitalOwned', 'capitalOwnedShortLived', 'grantUsed', 'operatingCost',
  'nutrientValue', 'gainsPerYear', 'lifeYears', 'shortLifeYears', 'inflation', 'grantYears', 'alreadyHaveYears',
] as const;
// biome-ignore format: one list of names
const BASELINE = [
  'baselineCapitalCost', 'baselineCapitalShortLived', 'baselineCapitalOwned', 'baselineCapitalOwnedShortLived',
  'baselineGrantUsed', 'baselineOperatingCost', 'baselineNutrientValue', 'baselineGainsPerYear',
  'baselineShortLifeYears', 'baselineGrantYears', 'baselineAlreadyHaveYears',
] as const;
/** Entries of what stands already: their worth, and in families as long as the longest list their ages. */
const HAD = [...HAD_RESULTS, 'had*AgeYears', 'had*LeftYears'] as const;
const ofBaseline = <Name extends string>(name: Name) =>
  `baseline${name[0].toUpperCase()}${name.slice(1)}` as `baseline${Capitalize<Name>}`;
const BASELINE_HAD = [...HAD_RESULTS, ...HAD_INPUTS].map(ofBaseline);

/** The entries of row `i` from a walk's reads, own or of the baseline; nothing where no scenario has any. */
function hadOf(read: Readonly<Record<string, Float64Array | readonly Float64Array[]>>, i: number) {
  return hadAt(
    i,
    read['had*AgeYears'] as readonly Float64Array[],
    read['had*LeftYears'] as readonly Float64Array[],
    HAD_RESULTS.map((name) => read[name] as Float64Array),
  );
}
function baselineHadOf(
  read: Readonly<Record<string, Float64Array | readonly Float64Array[]>>,
  i: number,
  entries: number,
) {
  const of = (had: string, what: string) => read[ofBaseline(`${had}${what}`)] as Float64Array;
  const some = HADS.slice(0, entries);
  return hadAt(
    i,
    some.map((had) => of(had, 'AgeYears')),
    some.map((had) => of(had, 'LeftYears')),
    some.flatMap((had) => [of(had, 'Capital'), of(had, 'ShortLived')]),
  );
}

const earned = walk({
  name: 'earned against the baseline',
  about: 'Rate of return and payback of the differences to the baseline, over the life of the scenario',
  reads: [...OWN, 'interestRate', ...BASELINE, ...HAD, ...BASELINE_HAD],
  makes: {
    internalRateOfReturn: {
      label: 'rate of return against the baseline',
      unit: 'fraction',
      formula:
        'the rate at which the differences to the baseline are worth nothing today; absent for the baseline and where there is none or more than one',
      source: ['financeText'],
      from: [...OWN, ...BASELINE, ...HAD, ...BASELINE_HAD],
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
    const entries = r['had*AgeYears'].length;
    for (let i = 0; i < count; i++) {
      const terms: FlowTerms = {
        capitalCost: r.capitalCost[i],
        capitalShortLived: r.capitalShortLived[i],
        capitalOwned: r.capitalOwned[i],
        capitalOwnedShortLived: r.capitalOwnedShortLived[i],
        grantUsed: r.grantUsed[i],
        operatingCost: r.operatingCost[i],
        nutrientValue: r.nutrientValue[i],
        gainsPerYear: r.gainsPerYear[i],
        lifeYears: r.lifeYears[i],
        shortLifeYears: r.shortLifeYears[i],
        inflation: r.inflation[i],
        grantYears: r.grantYears[i],
        alreadyHaveYears: r.alreadyHaveYears[i],
        ...(entries > 0 && hadOf(r, i)),
      };
      const flows = flowsAgainst(terms, {
        capitalCost: r.baselineCapitalCost[i],
        capitalShortLived: r.baselineCapitalShortLived[i],
        capitalOwned: r.baselineCapitalOwned[i],
        capitalOwnedShortLived: r.baselineCapitalOwnedShortLived[i],
        grantUsed: r.baselineGrantUsed[i],
        operatingCost: r.baselineOperatingCost[i],
        nutrientValue: r.baselineNutrientValue[i],
        gainsPerYear: r.baselineGainsPerYear[i],
        shortLifeYears: r.baselineShortLifeYears[i],
        grantYears: r.baselineGrantYears[i],
        alreadyHaveYears: r.baselineAlreadyHaveYears[i],
        ...(entries > 0 && baselineHadOf(r, i, entries)),
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
    'value of nutrients and named gains less running cost of every year of the life, less capital and what is bought again, plus grant when it is paid and the unused share of what was bought last, all worth today; before loans and tax',
    { source: ['financeText'] },
  ).of(
    [...OWN, 'interestRate', 'had*AgeYears', 'had*LeftYears', ...HAD_RESULTS],
    (
      i,
      capital,
      short,
      owned,
      ownedShort,
      grant,
      running,
      nutrients,
      gains,
      life,
      shortLife,
      inflation,
      grantYears,
      age,
      rate,
      ages,
      left,
      ...worthOfEach
    ) => {
      const terms: CashTerms = {
        capitalCost: capital[i],
        capitalShortLived: short[i],
        capitalOwned: owned[i],
        capitalOwnedShortLived: ownedShort[i],
        grantUsed: grant[i],
        operatingCost: running[i],
        nutrientValue: nutrients[i],
        gainsPerYear: gains[i],
        lifeYears: life[i],
        shortLifeYears: shortLife[i],
        inflation: inflation[i],
        grantYears: grantYears[i],
        alreadyHaveYears: age[i],
        interestRate: rate[i],
        ...(ages.length > 0 && hadAt(i, ages, left, worthOfEach)),
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
    'income of the herd and gains in cash less running cost in cash, over the payment on these loans and on those the farm already has; without a named income, the cash saved against the baseline over the payment on these loans; absent without a loan',
    { source: ['financeText'] },
  ).of(
    [
      'incomePerYear', 'operatingCashCost', 'gainsInCash', 'baselineOperatingCashCost', 'baselineGainsInCash', 'loanPayment',
      'debtServicePerYear',
    ], // biome-ignore format: one list
    (i, income, cost, gains, baselineCost, baselineGains, payment, already) =>
      debtServiceCover(
        cashForDebt(income[i], cost[i] - gains[i], baselineCost[i] - baselineGains[i]),
        serviceOf(payment[i], already[i], income[i]),
      ),
  ),
};

export const against = [worth, earned, debt] as const;
