/** Loans and present value of a scenario alone. Hand-worked: own arithmetic, so regression checks. */
import { describe, expect, it } from 'vitest';
import { type Row, runMoney } from '../moneyRig.ts';

const one = (row: Row) => runMoney(['finance', 'against'], [row])[0].values;

const SHED: Row = {
  capitalCost: 60_000, capitalCash: 52_000, capitalShortLived: 0, grantUsed: 10_000, operatingCost: 9000,
  operatingCashCost: 5000, nutrientValue: 2000, interestRate: 0.04, lifeYears: 25, shortLifeYears: 10,
  loan1Amount: 30_000, loan1Rate: 0.05, loan1Years: 10, loan1GraceYears: 0, loan1Straight: 0,
}; // biome-ignore format: one short list

describe('loans', () => {
  it('annuity of 30,000 at 5 % over 10 years: 3,885.14', () =>
    expect(one(SHED).loanPayment).toBeCloseTo(3885.14, 2));
  it('equal parts: the first year weighs most, 3,000 + 1,500', () => {
    const { loanPayment, loanInterest } = one({ ...SHED, loan1Straight: 1 });
    expect(loanPayment).toBeCloseTo(4500, 9);
    // 5 % of 30,000 + 27,000 + … + 3,000.
    expect(loanInterest).toBeCloseTo(8250, 9);
  });
  it('grace: two years of interest, then the annuity of the eight years left', () =>
    expect(one({ ...SHED, loan1GraceYears: 2 }).loanPayment).toBeCloseTo(
      30_000 / ((1 - 1.05 ** -8) / 0.05),
      6,
    ));
  it('two loans add up in the year they weigh most', () => {
    const { loanTotal, loanPayment } = one({
      ...SHED, loan2Amount: 4000, loan2Rate: 0, loan2Years: 4, loan2GraceYears: 0, loan2Straight: 0,
    }); // biome-ignore format: one short list
    expect(loanTotal).toBe(34_000);
    expect(loanPayment).toBeCloseTo(3885.14 + 1000, 2);
  });
  it('a loan that starts when another ends does not pile up', () =>
    // 4,000 interest-free, two years of grace and two to repay, beside one that is over by then.
    expect(
      one({
        ...SHED,
        loan1Amount: 1000,
        loan1Rate: 0,
        loan1Years: 2,
        loan2Amount: 4000,
        loan2Rate: 0,
        loan2Years: 4,
        loan2GraceYears: 2,
        loan2Straight: 1,
      }).loanPayment,
    ).toBe(2000));
  it('no loan: no payment', () => {
    const { loanPayment, debtServiceCover } = one({
      ...SHED,
      loan1Amount: 0,
      headCount: 20,
      incomePerHead: 1000,
    });
    expect(loanPayment).toBe(0);
    expect(debtServiceCover).toBeNaN();
  });
  it.each([
    ['0 years', { loan1Years: 0 }],
    ['all grace', { loan1GraceYears: 10 }],
    ['a negative rate', { loan1Rate: -0.01 }],
    ['a negative amount', { loan1Amount: -5 }],
  ])('%s is marked', (_, change) => expect(one({ ...SHED, ...change }).loanPayment).toBeNaN());
});

describe('own money', () => {
  it('what cash is needed beyond grant and loans', () => expect(one(SHED).ownMoneyNeeded).toBe(12_000));
  it('the gap, when less is there', () => {
    expect(one({ ...SHED, ownMoney: 9000 }).fundingGap).toBe(3000);
    expect(one({ ...SHED, ownMoney: 15_000 }).fundingGap).toBe(0);
    expect(one(SHED).fundingGap).toBeNaN();
  });
});

describe('present value of the scenario alone', () => {
  // a(4 %, 25) = 15.622080: −7,000 × 15.622080 − 50,000.
  it('running cost less nutrients over the life, and the capital less grant', () =>
    expect(one(SHED).netPresentValue).toBeCloseTo(-159_354.56, 1));
  it('and as an even yearly cost', () => expect(one(SHED).levelisedCost).toBeCloseTo(10_200.6, 1));
  it('short-lived works are bought again after 10 and 20 years, and half of the last is left', () => {
    const some = one({ ...SHED, capitalShortLived: 8000 });
    const extra = 8000 * (1.04 ** -10 + 1.04 ** -20 - 0.5 * 1.04 ** -25);
    expect(one(SHED).netPresentValue - some.netPresentValue).toBeCloseTo(extra, 6);
  });
  it('inflation and interest at one rate cancel out', () =>
    expect(one({ ...SHED, inflation: 0.04 }).netPresentValue).toBeCloseTo(-7000 * 25 - 50_000, 6));
  it('a life of 0 years is marked', () => expect(one({ ...SHED, lifeYears: 0 }).netPresentValue).toBeNaN());
});

describe('debt service cover', () => {
  it('income less cash cost over the payment: (12,000 − 5,000)/3,885.14', () =>
    expect(one({ ...SHED, headCount: 20, incomePerHead: 600 }).debtServiceCover).toBeCloseTo(1.8017, 4));
  it('serves loans the farm already has as well: 7,000/(3,885.14 + 1,000)', () =>
    expect(
      one({ ...SHED, headCount: 20, incomePerHead: 600, debtServicePerYear: 1000 }).debtServiceCover,
    ).toBeCloseTo(1.4329, 4));
  it('falls with the herd that earns it', () =>
    expect(one({ ...SHED, headCount: 16, incomePerHead: 600 }).debtServiceCover).toBeCloseTo(
      (16 * 600 - 5000) / 3885.14,
      4,
    ));
  it('absent when no income is named', () => expect(one(SHED).debtServiceCover).toBeNaN());
});
