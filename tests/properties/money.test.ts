/** What must hold for any money, whatever the figures. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capitalFlows } from '../../src/model/money/capitalFlows.ts';
import { loanSchedule } from '../../src/model/money/loan.ts';
import { annuityFactor, discountedPayback, netPresentValue } from '../../src/model/money/presentValue.ts';
import { rateOfReturn } from '../../src/model/money/rateOfReturn.ts';
import { BILL_LINES } from '../../src/model/works/bill.ts';
import { type Row, runMoney } from '../model/moneyRig.ts';
import { namesIn } from '../model/parts.ts';
import { replacementFactor } from '../reference/replacement.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const loan = fc
  .record({
    amount: real(1, 1e6),
    rate: real(0, 0.25),
    years: fc.integer({ min: 1, max: 60 }),
    grace: real(0, 1),
    straightLine: fc.boolean(),
  })
  .map(({ grace, ...rest }) => ({ ...rest, graceYears: Math.floor(grace * rest.years * 0.999) }));

describe('loans', () => {
  it('end at 0, repay what was lent, and never grow', () => {
    fc.assert(
      fc.property(loan, (one) => {
        const rows = loanSchedule(one);
        expect(rows).toHaveLength(one.years);
        expect(rows.at(-1)!.closing).toBe(0);
        const repaid = rows.reduce((sum, row) => sum + row.principal, 0);
        expect(repaid / one.amount).toBeCloseTo(1, 9);
        for (const row of rows) {
          expect(row.closing).toBeLessThanOrEqual(row.opening * (1 + 1e-12));
          expect(row.payment).toBeCloseTo(row.interest + row.principal, 6);
        }
      }),
    );
  });
  it('payments are worth the loan at its own rate', () => {
    fc.assert(
      fc.property(loan, (one) => {
        const worth = netPresentValue(one.rate, [0, ...loanSchedule(one).map((row) => row.payment)]);
        expect(worth / one.amount).toBeCloseTo(1, 8);
      }),
    );
  });
  it('equal payments are equal, equal parts are equal, and equal payments cost more interest', () => {
    fc.assert(
      fc.property(
        loan.filter((one) => one.rate > 0.001 && one.years - one.graceYears > 1),
        (one) => {
          const even = loanSchedule({ ...one, straightLine: false });
          const straight = loanSchedule({ ...one, straightLine: true });
          const after = (rows: typeof even) => rows.slice(one.graceYears);
          for (const row of after(even)) expect(row.payment / after(even)[0].payment).toBeCloseTo(1, 8);
          for (const row of after(straight))
            expect(row.principal / after(straight)[0].principal).toBeCloseTo(1, 8);
          const interest = (rows: typeof even) => rows.reduce((sum, row) => sum + row.interest, 0);
          expect(interest(even)).toBeGreaterThan(interest(straight));
        },
      ),
    );
  });
});

describe('returns', () => {
  const project = fc
    .tuple(real(100, 1e5), fc.array(real(1, 5e4), { minLength: 1, maxLength: 30 }))
    .map(([cost, flows]) => [-cost, ...flows]);
  it('are the rate at which a project is worth nothing', () => {
    fc.assert(
      fc.property(project, (flows) => {
        const { rate, why } = rateOfReturn(flows);
        if (rate === null) expect(why).not.toBe('');
        else expect(Math.abs(netPresentValue(rate, flows)) / -flows[0]).toBeLessThan(1e-9);
      }),
    );
  });
  it('a project pays back exactly when it is worth something', () => {
    fc.assert(
      fc.property(project, real(0, 0.3), (flows, rate) => {
        const worth = netPresentValue(rate, flows);
        fc.pre(Math.abs(worth) > 1e-6);
        expect(discountedPayback(rate, flows) !== null).toBe(worth > 0);
      }),
    );
  });
});

describe('works', () => {
  it('bought again year by year are worth what the closed form says', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        real(1, 40),
        real(0, 0.2),
        (years, shortLifeYears, rate) => {
          const flows = capitalFlows({
            capital: 1,
            shortLived: 1,
            lifeYears: years,
            shortLifeYears,
            horizon: years,
            inflation: 0,
          });
          expect(-netPresentValue(rate, flows)).toBeCloseTo(
            1 + replacementFactor(rate, years, shortLifeYears),
            9,
          );
        },
      ),
    );
  });
});

const row = fc.record({
  headCount: fc.integer({ min: 0, max: 80 }), bedShare: fc.constantFrom(0, 0.5, 0.75), slatsShare: fc.constantFrom(0, 0.5),
  pastureShare: fc.constantFrom(0, 0.25, 1), shedLengthM: real(5, 80), shedDepthM: real(3, 30), slatsUsedM2: real(0, 300),
  paddockHa: real(0.5, 40), beddingKg: real(0, 90_000), mixShareSum: fc.constant(1), material1Share: fc.constant(1), packM3: real(0, 600), storeNeededM3: real(0, 900), tankDepthM: real(0.5, 4),
  ownTimberShare: fc.constantFrom(0, 1), ownBuildShare: real(0, 1), snowLoadKnPerM2: real(0, 6), grantAmount: real(0, 90_000),
  nutrientValue: real(0, 6000), labourHours: real(0, 900), lifeYears: fc.integer({ min: 1, max: 40 }), interestRate: real(0, 0.12),
  nitrogenKeptKg: real(1, 2000), loan1Amount: real(0, 90_000), loan1Rate: real(0, 0.12), loan1Years: fc.integer({ min: 1, max: 30 }),
}); // biome-ignore format: one short list
const rest: Row = {
  loan1GraceYears: 0,
  loan1Straight: 0,
  winterDays: 180,
  vetPricePerHead: 20,
  hoofPricePerHead: 10,
};
const runOne = (given: Row) =>
  runMoney(['building', 'costs', 'finance', 'against'], [{ ...rest, ...given }])[0].values;
const ABSENT = new Set(['internalRateOfReturn', 'paybackYears', 'debtServiceCover', 'fundingGap']);

describe('bill, yearly cost and present value of any scenario', () => {
  it('lines equal totals, nothing is below 0, and only what needs a baseline, a loan or an income is absent', () => {
    fc.assert(
      fc.property(row, (given) => {
        const v = runOne(given);
        const lines = BILL_LINES.reduce((sum, line) => sum + Math.round(v[line.cost] * 100), 0);
        expect(Math.round(v.capitalCost * 100)).toBe(lines);
        expect(v.capitalCash + v.capitalNonCash).toBeCloseTo(v.capitalCost, 6);
        for (const line of BILL_LINES) {
          expect(v[line.quantity], line.id).toBeGreaterThanOrEqual(0);
          expect(v[line.cost], line.id).toBeGreaterThanOrEqual(0);
        }
        expect(v.capitalShortLived).toBeLessThanOrEqual(v.capitalCost);
        expect(v.grantUsed + v.grantOverCost).toBeCloseTo(given.grantAmount, 6);
        expect(v.annualCost - v.operatingCost).toBeCloseTo(v.capitalCharge, 6);
        expect(v.annualCost - v.netCost).toBeCloseTo(given.nutrientValue, 6);
        for (const name of namesIn(['building', 'costs', 'finance'], 1))
          if (!ABSENT.has(name)) expect(v[name], name).not.toBeNaN();
      }),
    );
  });
  it('without short-lived works the even yearly cost is the net cost', () => {
    fc.assert(
      fc.property(row, (given) => {
        const v = runMoney(
          ['costs', 'finance', 'against'],
          [
            {
              ...rest,
              ...given,
              capitalCost: 50_000,
              capitalCash: 50_000,
              capitalShortLived: 0,
              grantAmount: Math.min(given.grantAmount, 50_000),
            },
          ],
        )[0].values;
        expect(v.levelisedCost).toBeCloseTo(v.netCost, 5);
      }),
    );
  });
  it('a longer life never makes the yearly charge dearer', () => {
    fc.assert(
      fc.property(real(0, 0.15), fc.integer({ min: 1, max: 59 }), (rate, years) => {
        expect(1 / annuityFactor(rate, years + 1)).toBeLessThan(1 / annuityFactor(rate, years));
      }),
    );
  });
});
