/** Cash by month: the works and two years, to the cent the years of the table; tax out and back; a grant when it is paid. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Opened, openNotebook } from '../../src/cli/open.ts';
import type { Scenario } from '../../src/notebook/schema.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { CASH_LINES, cashMonths, lowestMonth, moneyBook } from '../../src/study/moneyBook.ts';
import { cashYears } from '../../src/study/moneyYears.ts';
import { bookTax } from '../reference/finance.ts';

const opened = new Map<string, Opened>();
const NAMES = ['coast-lender-case', 'hill-farm-choice', 'hill-farm-own-chips', 'atlantic-rain-and-herd'];
beforeAll(async () => {
  for (const name of NAMES) opened.set(name, await openNotebook(`notebooks/${name}.md`));
});

function resultsOf(name: string, change: (scenario: Scenario) => Scenario = (same) => same) {
  const { notebook, tables, winters } = opened.get(name)!;
  const { overrides } = notebook;
  return evaluate({ scenarios: notebook.scenarios.map(change), overrides }, tables, winters.winterOf).results;
}
const deepBed = (change?: (scenario: Scenario) => Scenario) => resultsOf('coast-lender-case', change)[1];

const money =
  (change: Partial<Scenario['farm']['money']>, finance: Partial<Scenario['finance']> = {}) =>
  (scenario: Scenario): Scenario => ({
    ...scenario,
    finance: { ...scenario.finance, ...finance },
    farm: { ...scenario.farm, money: { ...scenario.farm.money, ...change } },
  });
const VAT = {
  worksFraction: 0.15,
  winterFraction: 0.1,
  rates: {},
  pricesHoldIt: false,
  reclaimed: true,
  refundMonths: 2,
};

describe('cash by month', () => {
  it.each(NAMES)('%s: months add up to the years, line by line, to the cent', (name) => {
    const changes = [
      undefined,
      money(
        { vat: VAT, debtServicePerYear: 2345.67, paidIn: { income: 10, feed: 8, bedding: 9 } },
        {
          grantMonths: 7,
          worksMonths: 5,
          gains: [{ name: 'calves', amount: 1234.56, cash: true, because: 'guess' }],
        },
      ),
    ];
    for (const change of changes)
      for (const result of resultsOf(name, change)) {
        const [months, years] = [cashMonths(result), cashYears(result)];
        expect(months).toHaveLength(24 + result.scenario.finance.worksMonths);
        for (const year of [0, 1, 2]) {
          const own = months.filter((month) => month.year === year);
          for (const line of CASH_LINES) {
            const sum = own.reduce((all, month) => all + month[line], 0);
            expect(Math.abs(sum - years[year][line])).toBeLessThan(0.005 + 1e-6);
            for (const month of own) expect(month[line] * 100).toBeCloseTo(Math.round(month[line] * 100), 4);
          }
        }
        const account = months.reduce((all, { sum }) => all + sum, 0);
        expect(months[months.length - 1].toDate).toBeCloseTo(account, 2);
      }
  });

  it('tax goes out when it is paid and comes back as many months later', () => {
    const result = deepBed(money({ vat: { ...VAT, refundMonths: 5 } }));
    const book = moneyBook(result);
    const plain = moneyBook(deepBed());
    const insurance = result.values.insuranceCost!;
    const inflation = result.scenario.farm.money.inflation;
    const works = bookTax(
      plain.map((month) => -month.works),
      0.15,
      5,
    );
    // Taxed evenly over the year: all cash of the winter but insurance.
    const winter = bookTax(
      plain.map(({ year }) =>
        year === 0 ? 0 : ((result.values.operatingCashCost! - insurance) * (1 + inflation) ** year) / 12,
      ),
      0.1,
      5,
    );
    book.forEach((month, k) => {
      expect(month.vatOut).toBeCloseTo(works.out[k] + winter.out[k], 6);
      expect(month.vatBack).toBeCloseTo(works.back[k] + winter.back[k], 6);
    });
    expect(book.some(({ vatBack }) => vatBack > 0)).toBe(true);
    // Reclaimed tax moves cash between months and no cost.
    expect(result.values.netCost).toBe(deepBed().values.netCost);
  });

  it('tax that is not reclaimed is a cost and stands in the bill', () => {
    const plain = deepBed();
    const taxed = deepBed(money({ vat: { ...VAT, reclaimed: false } }));
    const { values: a } = plain;
    const { values: b } = taxed;
    expect(b.capitalCash! / a.capitalCash!).toBeCloseTo(1.15, 5);
    expect(b.capitalNonCash).toBeCloseTo(a.capitalNonCash!, 6);
    expect(b.vatCost! / (b.operatingCashCost! - b.insuranceCost! - b.vatCost!)).toBeCloseTo(0.1, 9);
    expect(moneyBook(taxed).every(({ vatOut, vatBack }) => vatOut === 0 && vatBack === 0)).toBe(true);
  });

  it('the grant and the loan move when the notebook says, and nothing else with them', () => {
    const late = moneyBook(deepBed(money({}, { grantMonths: 15 })));
    const paid = late.filter(({ grant }) => grant !== 0);
    expect(paid.map(({ month, grant }) => [month, grant])).toEqual([[15, 40_000]]);
    expect(
      late.filter(({ year }) => year === 0).reduce((all, { borrowed }) => all + borrowed, 0),
    ).toBeCloseTo(195_000, 6);
    const usual = deepBed();
    const { interestRate } = usual.scenario.farm.money;
    const worth = (of: typeof usual) => of.finance.netPresentValue.value!;
    expect(worth(usual) - worth(deepBed(money({}, { grantMonths: 15 })))).toBeCloseTo(
      40_000 - 40_000 / (1 + interestRate) ** 2,
      4,
    );
  });

  it('finds the month in which most must be at hand', () => {
    const months = cashMonths(deepBed());
    const low = lowestMonth(months)!;
    expect(low.toDate).toBe(Math.min(...months.map(({ toDate }) => toDate)));
  });
});

describe('gains the keeper names', () => {
  const gain = { name: 'calves saved', amount: 3000, low: 1000, high: 6000, because: 'two calves more' };
  it('come off the net cost, into cash where they are paid, and into the worth', () => {
    const plain = deepBed();
    const paid = deepBed(money({}, { gains: [{ ...gain, cash: true }] }));
    const worth = deepBed(money({}, { gains: [{ ...gain, cash: false }] }));
    for (const one of [paid, worth]) expect(one.values.netCost).toBeCloseTo(plain.values.netCost! - 3000, 6);
    expect(cashYears(paid)[1].sum - cashYears(plain)[1].sum).toBeCloseTo(3000 * 1.02, 6);
    expect(cashYears(worth)[1].sum).toBeCloseTo(cashYears(plain)[1].sum, 6);
    expect(paid.finance.debtServiceCover.value! - plain.finance.debtServiceCover.value!).toBeCloseTo(
      3000 / plain.values.loanPayment!,
      6,
    );
    const r = plain.scenario.farm.money.interestRate;
    let all = 0;
    for (let t = 1; t <= 20; t++) all += 3000 * (1.02 / (1 + r)) ** t;
    expect(paid.finance.netPresentValue.value! - plain.finance.netPresentValue.value!).toBeCloseTo(all, 3);
  });
});

describe('works that stand already', () => {
  it('are not bought, but repaired, insured and bought again when they are worn out', () => {
    const bought = deepBed();
    const half = deepBed(money({}, { alreadyHave: { share: 0.5, ageYears: 6, lines: [] } }));
    const { values: a } = bought;
    const { values: b } = half;
    expect(b.capitalCost! / a.capitalCost!).toBeCloseTo(0.5, 6);
    expect(b.repairsCost).toBeCloseTo(a.repairsCost!, 2);
    expect(b.insuranceCost).toBeCloseTo(a.insuranceCost!, 2);
    const again = half.finance.years.filter(({ year, works }) => year > 0 && year < 20 && works < 0);
    // Feeders and fences last 10 years: those of today 4 more, the new ones 10; the buildings 14 more.
    expect(again.map(({ year }) => year)).toEqual([4, 10, 14]);
    const none = deepBed(money({}, { alreadyHave: { share: 0, ageYears: 6, lines: [] } }));
    expect(none.values.netCost).toBe(a.netCost);
  });
});
