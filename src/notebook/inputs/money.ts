/** Inputs of what is paid by whom, and of how the works are built. */
import type { InputColumn } from './column.ts';

export const MONEY_INPUTS: readonly InputColumn[] = [
  {
    column: 'capitalGiven',
    label: 'capital given',
    unit: 'money',
    path: 'finance.capital',
    of: (s) => s.finance.capital ?? Number.NaN,
  },
  { column: 'grantAmount', label: 'grant', unit: 'money', path: 'finance.grant', of: (s) => s.finance.grant },
  {
    column: 'ownMoney',
    label: 'own money',
    unit: 'money',
    path: 'finance.ownMoney',
    of: (s) => s.finance.ownMoney ?? Number.NaN,
  },
  {
    column: 'incomePerHead',
    label: 'income a head to serve debt',
    unit: 'money',
    path: 'farm.money.incomePerHead',
    of: (s) => s.farm.money.incomePerHead ?? Number.NaN,
  },
  {
    column: 'debtServicePerYear',
    label: 'yearly service of loans the farm already has',
    unit: 'money',
    path: 'farm.money.debtServicePerYear',
    of: (s) => s.farm.money.debtServicePerYear,
  },
  {
    column: 'ownBuildShare',
    label: 'erection by own hands',
    unit: 'fraction',
    path: 'shed.ownBuildShare',
    of: (s) => s.shed.ownBuildShare,
    min: 0,
    max: 1,
    step: 0.1,
  },
  {
    column: 'lifeYears',
    label: 'years the works are counted over',
    unit: 'yr',
    path: 'farm.money.horizonYears',
    of: (s) => s.farm.money.horizonYears,
    min: 5,
    max: 40,
    step: 1,
  },
  {
    column: 'inflation',
    label: 'inflation',
    unit: 'fraction',
    path: 'farm.money.inflation',
    of: (s) => s.farm.money.inflation,
  },
];
