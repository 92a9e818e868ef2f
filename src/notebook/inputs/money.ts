/** Inputs of what is paid by whom, and of how the works are built. */
import { oneRateOf, VAT_KINDS, type Vat, vatName, worksComeBack } from '../vat.ts';
import type { InputColumn } from './column.ts';

/** `without` is what stands where the notebook says nothing of the tax. */
const vatInput = (
  column: string,
  label: string,
  path: string,
  of: (vat: Vat) => number | undefined,
  without = Number.NaN,
): InputColumn => ({
  column,
  label,
  unit: 'fraction',
  path: `farm.money.vat.${path}`,
  of: ({ farm: { money: { vat } } }) => (vat ? (of(vat) ?? Number.NaN) : without), // biome-ignore format: one line
});

const VAT_INPUTS: readonly InputColumn[] = [
  ...VAT_KINDS.map((kind) =>
    vatInput(
      vatName(kind, 'Given'),
      `own rate of value added tax on ${kind}`,
      `rates.${kind}`,
      ({ rates }) => rates[kind],
    ),
  ),
  vatInput('vatWorksGiven', 'one rate of value added tax on all works', 'worksFraction', (vat) =>
    oneRateOf(vat, 'works'),
  ),
  vatInput('vatWinterGiven', 'one rate of value added tax on what the winter buys', 'winterFraction', (vat) =>
    oneRateOf(vat, 'winter'),
  ),
  vatInput(
    'vatKeptWorks',
    'value added tax on the works is a cost (1) or comes back (0)',
    'worksReclaimed',
    (vat) => (worksComeBack(vat) ? 0 : 1),
    0,
  ),
  vatInput(
    'vatKeptWinter',
    'value added tax on the winter is a cost (1) or comes back (0)',
    'reclaimed',
    ({ reclaimed }) => (reclaimed ? 0 : 1),
    0,
  ),
];

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
    column: 'grantYears',
    label: 'whole years until the grant is paid',
    unit: 'yr',
    path: 'finance.grantMonths',
    of: (s) => Math.ceil(s.finance.grantMonths / 12),
  },
  {
    column: 'alreadyHaveShare',
    label: 'part of the works that stands already',
    unit: 'fraction',
    path: 'finance.alreadyHave.share',
    of: (s) => s.finance.alreadyHave?.share ?? 0,
  },
  {
    column: 'alreadyHaveYears',
    label: 'age of what stands already',
    unit: 'yr',
    path: 'finance.alreadyHave.ageYears',
    of: (s) => s.finance.alreadyHave?.ageYears ?? 0,
  },
  ...VAT_INPUTS,
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
