/** The tables behind the paper, numbers as numbers, for a spreadsheet or a file. */
import { COST_LINES } from '../plots/costStack.ts';
import { labelOf } from '../plots/reading.ts';
import { CASH_LINES, type CashLine, cashMonths } from '../study/moneyBook.ts';
import { cashYears, economicYears } from '../study/moneyYears.ts';
import type { TimberList } from '../study/timberList.ts';
import { ownNumbers, rowsUsed } from './assumptions.ts';
import { priceSource } from './bill.ts';
import { budgetOf } from './budget.ts';
import type { Report } from './report.ts';

export type Cell = string | number | null;

export interface CaseTable {
  /** File name without ending, and name of the sheet. */
  readonly name: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** Money to the cent. */
const hundredth = (value: number | null | undefined): number | null =>
  value === null || value === undefined ? null : Math.round(value * 100) / 100;
/** Millimetres whole, metres and cubic metres to the thousandth. */
const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

/** Bill, timber for the saw, costs, cash by year and month, economics by year, gains the keeper names, stress and assumptions. */
export function caseTables(report: Report): CaseTable[] {
  const { members } = report.proposal;
  const timber = members ? [timberTable(members)] : [];
  return [
    bill(report),
    ...timber,
    costs(report),
    cash(report),
    months(report),
    economics(report),
    gains(report),
    stress(report),
    assumptions(report),
  ];
}

function bill(report: Report): CaseTable {
  const { run, proposal: { bill: lines, result, index } } = report; // biome-ignore format: one line
  const budget = budgetOf(report);
  const { values, bands } = result;
  const total = (label: string, amount: number | null, name?: keyof typeof values): Cell[] => [
    label,
    null,
    '',
    null,
    null,
    null,
    amount,
    hundredth(name && bands?.p10[name]),
    hundredth(name && bands?.p90[name]),
    run.currency,
    run.year,
    '',
    '',
    '',
  ];
  return {
    name: 'bill',
    head: [
      'line',
      'quantity',
      'unit',
      'unit price',
      'unit price low',
      'unit price high',
      'amount',
      'amount p10',
      'amount p90',
      'currency',
      'year',
      'cash or own',
      'price from',
      'source',
    ],
    rows: [
      ...lines.map((line): Cell[] => [
        line.label,
        line.quantity,
        line.unit === 'money' ? run.currency : line.unit,
        line.unitPrice,
        line.low,
        line.high,
        line.amount,
        hundredth(line.spec && bands?.p10[line.spec.cost]),
        hundredth(line.spec && bands?.p90[line.spec.cost]),
        line.currency,
        line.year,
        line.own ? 'own' : 'cash',
        priceSource(line),
        run.bound[index].bindings.get(line.spec?.price ?? '')?.coefficient?.source ?? '',
      ]),
      total('in cash', values.capitalCash, 'capitalCash'),
      total('in own timber and hours', values.capitalNonCash, 'capitalNonCash'),
      total('together', values.capitalCost, 'capitalCost'),
      ...(budget.unforeseen === null
        ? []
        : [
            total('unforeseen, in cash: P80 less the lines', budget.unforeseen),
            total('budget in cash, P80', hundredth(budget.cash)),
          ]),
    ],
  };
}

function timberTable({ members, timberM3, boardsM2, boardM }: TimberList): CaseTable {
  return {
    name: 'timber',
    head: ['part', 'pieces', 'width mm', 'thickness mm', 'length m', 'volume m3', 'longer than to be had'],
    rows: [
      ...members.map(({ part, pieces, widthM, thickM, lengthM, m3, tooLong }): Cell[] => [
        part,
        pieces,
        widthM === null ? null : Math.round(widthM * 1000),
        thickM === null ? null : Math.round(thickM * 1000),
        lengthM === null ? null : thousandth(lengthM),
        thousandth(m3),
        tooLong ? 'yes' : '',
      ]),
      ['timber of the bill', null, null, null, null, thousandth(timberM3), ''],
      [
        'boards above the walls, in the line of cladding',
        null,
        null,
        boardM * 1000,
        null,
        thousandth(boardsM2 * boardM),
        '',
      ],
    ],
  };
}

const AFTER = [
  'annualCost',
  'nutrientValue',
  'gainsPerYear',
  'netCost',
  'annualCostPerHead',
  'netCostPerHead',
  'netCostPerHeadDay',
  'costPerNitrogenKeptKg',
  'operatingCost',
  'operatingCashCost',
] as const;

function costs({ run, results }: Report): CaseTable {
  const ranged = results.some(({ bands }) => bands);
  return {
    name: 'costs',
    head: [
      'quantity',
      'label',
      'currency',
      'year',
      ...results.flatMap(({ name }) => (ranged ? [name, `${name} p10`, `${name} p90`] : [name])),
    ],
    rows: [...COST_LINES, ...AFTER].map((name) => [
      name,
      labelOf(name),
      run.currency,
      run.year,
      ...results.flatMap(({ values, bands }) =>
        ranged
          ? [values[name] ?? null, bands?.p10[name] ?? null, bands?.p90[name] ?? null]
          : [values[name] ?? null],
      ),
    ]),
  };
}

const CASH_HEADS: Readonly<Record<CashLine, string>> = {
  works: 'works in cash',
  grant: 'grant',
  income: 'income',
  feed: 'feed',
  bedding: 'bedding',
  machines: 'machines and contractor',
  upkeep: 'upkeep, insurance, vet',
  gains: 'gains in cash',
  vatOut: 'VAT out',
  vatBack: 'VAT back',
  borrowed: 'borrowed',
  interest: 'interest',
  principal: 'principal',
  already: 'other loans',
};

function cash({ run, results }: Report): CaseTable {
  return {
    name: 'cash',
    head: ['scenario', 'year', 'currency', ...CASH_LINES.map((line) => CASH_HEADS[line]), 'left', 'left to date', 'debt', 'cover'],
    rows: results.flatMap((result) =>
      cashYears(result).map((y): Cell[] => [
        result.name, y.year, run.currency, ...CASH_LINES.map((line) => y[line]), y.sum, y.toDate, y.debt, y.cover,
      ]),
    ),
  }; // biome-ignore format: one list of cells
}

function months({ run, results }: Report): CaseTable {
  return {
    name: 'cash-months',
    head: ['scenario', 'year', 'month', 'currency', ...CASH_LINES.map((line) => CASH_HEADS[line]), 'left', 'left to date'],
    rows: results.flatMap((result) =>
      cashMonths(result).map((m): Cell[] => [
        result.name, m.year, m.name, run.currency, ...CASH_LINES.map((line) => m[line]), m.sum, m.toDate,
      ]),
    ),
  }; // biome-ignore format: one list of cells
}

function gains({ run, results }: Report): CaseTable {
  return {
    name: 'gains',
    head: ['scenario', 'gain', 'currency', 'a year', 'low', 'high', 'cash or worth', 'because'],
    rows: results.flatMap(({ name, scenario }) =>
      scenario.finance.gains.map((g): Cell[] => [
        name, g.name, run.currency, g.amount, g.low ?? g.amount, g.high ?? g.amount, g.cash ? 'cash' : 'worth', g.because,
      ]),
    ),
  }; // biome-ignore format: one list of cells
}

function economics({ run, results, bands: of }: Report): CaseTable {
  const bands = of();
  return {
    name: 'economics',
    head: ['scenario', 'year', 'currency', 'works', 'grant', 'winter in cash', 'own hours', 'grass lost', 'nutrient value', 'gains', 'sum before loans', 'worth to date', 'baseline', 'difference to baseline', 'discounted sum p10', 'discounted sum p50', 'discounted sum p90'],
    rows: results.flatMap((result) => {
      const { name, finance: { difference } } = result;
      return economicYears(result).map((y, k): Cell[] => [
        name, y.year, run.currency, y.works, y.grant, y.running, y.ownHours, y.grassLost, y.nutrientValue, y.gains, y.sum, y.worthToDate,
        difference?.baseline ?? '', difference?.flows[k] ?? null, bands.get(name)?.p10[k] ?? null, bands.get(name)?.p50[k] ?? null, bands.get(name)?.p90[k] ?? null,
      ]);
    }),
  }; // biome-ignore format: one list of cells
}

function stress({ run, stress: rows }: Report): CaseTable {
  return {
    name: 'stress',
    head: [
      'stress',
      'level',
      'unit',
      'scenario',
      'currency',
      'net cost',
      'change in net cost',
      'present value',
      'against baseline',
      'debt service cover',
      'break-even level',
      'in words',
    ],
    rows: rows.flatMap((row) =>
      row.outcomes.map((o): Cell[] => [
        row.label,
        row.level,
        row.unit === 'years' ? 'years' : row.unit === '%' ? 'fraction' : 'fraction, added',
        o.name,
        run.currency,
        o.netCost,
        o.netCostChange,
        o.netPresentValue,
        o.gain,
        o.debtServiceCover,
        o.breakEven,
        o.words,
      ]),
    ),
  };
}

function assumptions({ run, proposal: { index } }: Report): CaseTable {
  const own = new Set(ownNumbers(run, index).map(({ column }) => column));
  const inputs = [...run.bound[index].bindings.values()].filter(
    ({ origin, value }) => origin === 'input' && Number.isFinite(value),
  );
  const finite = (value: number) => (Number.isFinite(value) ? value : null);
  return {
    name: 'assumptions',
    head: [
      'id',
      'what',
      'value',
      'low',
      'high',
      'unit',
      'from',
      'basis',
      'source',
      'where',
      'because',
      'price currency',
      'price year',
      'brought to',
      'by index',
      'country',
      'value added tax',
      'buys',
    ],
    rows: [...inputs, ...rowsUsed(run, index)].map((b): Cell[] => [
      b.id,
      b.label,
      finite(b.value),
      finite(b.low),
      finite(b.high),
      b.unit.replace('money', run.currency),
      own.has(b.column) ? 'own number' : b.origin === 'input' ? 'notebook' : b.origin,
      own.has(b.column) || b.origin === 'input' ? 'own' : (b.coefficient?.basis ?? ''),
      b.coefficient?.source ?? '',
      b.coefficient?.where ?? '',
      b.because ?? '',
      b.coefficient?.currency ?? '',
      b.coefficient?.year ?? null,
      b.coefficient?.indexed?.year ?? null,
      b.coefficient?.indexed?.by ?? '',
      b.coefficient?.country ?? '',
      b.coefficient?.vat ?? '',
      b.coefficient?.terms ?? '',
    ]),
  };
}
