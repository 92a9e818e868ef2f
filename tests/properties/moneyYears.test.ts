/** Cash and economics are never mixed: what is no cash moves no cash, what is only a loan moves no economics. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Opened, openNotebook } from '../../src/cli/open.ts';
import type { Scenario } from '../../src/notebook/schema.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { cashYears, economicYears } from '../../src/study/moneyYears.ts';
import { bookLoan, presentValue } from '../reference/finance.ts';

let opened: Opened;
beforeAll(async () => {
  opened = await openNotebook('notebooks/coast-lender-case.md');
});

/** The deep bed of the shipped notebook with its farm or finance changed. */
function deepBed(change: (scenario: Scenario) => Scenario = (same) => same) {
  const { notebook, tables, winters } = opened;
  const scenarios = notebook.scenarios.map(change);
  return evaluate({ scenarios, overrides: notebook.overrides }, tables, winters.winterOf).results[1];
}

const money = (scenario: Scenario, change: Partial<Scenario['farm']['money']>): Scenario => ({
  ...scenario,
  farm: { ...scenario.farm, money: { ...scenario.farm.money, ...change } },
});

describe('cash by year', () => {
  it('is the bank account, kept forward', () => {
    const result = deepBed((s) => money(s, { debtServicePerYear: 3000 }));
    const { capitalCash, operatingCashCost, grantUsed, headCount } = result.values;
    const { inflation, incomePerHead } = result.scenario.farm.money;
    const loan = bookLoan({ amount: 195_000, rate: 0.062, years: 15, graceYears: 1, straightLine: false });
    const rows = cashYears(result);
    expect(rows).toHaveLength(21);
    expect(rows[0].sum).toBeCloseTo(195_000 + grantUsed! - capitalCash!, 6);
    let account = rows[0].sum;
    for (const row of rows.slice(1)) {
      const prices = (1 + inflation) ** row.year;
      const winter = (incomePerHead! * headCount! - operatingCashCost!) * prices;
      const paid = (loan[row.year - 1]?.payment ?? 0) + 3000;
      expect(row.sum - row.works).toBeCloseTo(winter - paid, 4);
      account += row.sum;
      expect(row.toDate).toBeCloseTo(account, 4);
      expect(row.works).toBeLessThanOrEqual(0);
    }
    expect(rows[20].works).toBe(0);
    expect(rows.some(({ works, year }) => year > 0 && works < 0)).toBe(true);
  });

  it('does not move with the worth of an hour or of nutrients', () => {
    const bought = (s: Scenario): Scenario => ({ ...s, shed: { ...s.shed, ownTimber: false } });
    // Repairs and insurance are shares of the works, own timber and hours among them: here all is bought.
    const usual = deepBed(bought);
    expect(usual.values.capitalNonCash).toBe(0);
    const cash = cashYears(usual);
    const dear = deepBed((s) => money(bought(s), { labourPerHour: 60 }));
    expect(cashYears(dear)).toEqual(cash);
    expect(economicYears(dear)[3].ownHours).toBeCloseTo((economicYears(usual)[3].ownHours * 60) / 22, 4);
    const needed = deepBed((s) => ({
      ...bought(s),
      farm: { ...s.farm, soil: { ...s.farm.soil, needs: [] } },
    }));
    expect(economicYears(needed)[1].nutrientValue).not.toBe(economicYears(usual)[1].nutrientValue);
    expect(cashYears(needed)).toEqual(cash);
  });
});

describe('economics by year', () => {
  it('does not move with loans, own money or income', () => {
    const plain = economicYears(deepBed());
    const other = deepBed((s) =>
      money({ ...s, finance: { ...s.finance, loans: [], ownMoney: 1 } }, { incomePerHead: 10 }),
    );
    expect(economicYears(other)).toEqual(plain);
    expect(cashYears(other)).not.toEqual(cashYears(deepBed()));
  });

  it('adds up to the present value', () => {
    const result = deepBed();
    const rows = economicYears(result);
    for (const { works, grant, running, ownHours, grassLost, nutrientValue, sum } of rows)
      expect(works + grant + running + ownHours + grassLost + nutrientValue).toBeCloseTo(sum, 5);
    const worth = presentValue(
      result.scenario.farm.money.interestRate,
      rows.map(({ sum }) => sum),
    );
    expect(rows[20].worthToDate).toBeCloseTo(worth, 4);
    expect(result.finance.netPresentValue.value).toBeCloseTo(worth, 4);
  });
});
