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
    column: 'incomePerYear',
    label: 'income to serve debt',
    unit: 'money',
    path: 'finance.incomePerYear',
    of: (s) => s.finance.incomePerYear ?? Number.NaN,
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
    label: 'life of the works',
    unit: 'yr',
    path: 'finance.lifeYears',
    of: (s) => s.finance.lifeYears,
    min: 5,
    max: 40,
    step: 1,
  },
  {
    column: 'inflation',
    label: 'inflation',
    unit: 'fraction',
    path: 'finance.inflation',
    of: (s) => s.finance.inflation,
  },
];
