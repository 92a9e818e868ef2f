/** The project's money against a reference of its own making, over random cases. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import {
  type CashTerms,
  cashForDebt,
  flowsAgainst,
  serviceOf,
  worthAgainst,
  yearFlows,
} from '../../src/model/money/cashTerms.ts';
import { loanSchedule } from '../../src/model/money/loan.ts';
import {
  annuityPayment,
  debtServiceCover,
  discountedPayback,
  levelisedCost,
  netPresentValue,
  realRate,
} from '../../src/model/money/presentValue.ts';
import { rateOfReturn } from '../../src/model/money/rateOfReturn.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { CHANCE_RESULTS, chancesOf } from '../../src/uncertainty/chances.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { shareBest } from '../../src/uncertainty/percentiles.ts';
import {
  bookLoan,
  bookWorks,
  evenYearly,
  levelPayment,
  paybackByBooks,
  presentValue,
  rateByHalving,
  realPresentValue,
} from '../reference/finance.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rate = fc.oneof(fc.constant(0), real(0.001, 0.25));
/** Equal to a hundred-millionth of what is at stake. */
const near = (a: number, b: number, scale: number): void => {
  expect(Math.abs(a - b) / Math.max(1, scale)).toBeLessThan(1e-8);
};

const loan = fc
  .record({
    amount: real(1, 1e6),
    rate,
    years: fc.integer({ min: 1, max: 40 }),
    grace: real(0, 1),
    straightLine: fc.boolean(),
  })
  .map(({ grace, ...rest }) => ({ ...rest, graceYears: Math.floor(grace * rest.years * 0.999) }));

const works = fc.record({
  lasting: real(0, 5e5),
  shortLived: real(0, 1e5),
  every: fc.integer({ min: 1, max: 25 }),
  grant: real(0, 5e4),
  grantYear: fc.integer({ min: 0, max: 6 }),
  running: real(-2e4, 8e4),
  years: fc.integer({ min: 1, max: 40 }),
  owned: fc.record({ lasting: real(1, 2e5), shortLived: real(0, 5e4), age: fc.integer({ min: 1, max: 45 }) }),
});
type Works = typeof works extends fc.Arbitrary<infer T> ? T : never;

/** The same works as the project is given them. */
const termsOf = (
  { lasting, shortLived, every, grant, grantYear, running, years, owned }: Works,
  interestRate: number,
  inflation: number,
): CashTerms => ({
  capitalCost: lasting + shortLived,
  capitalShortLived: shortLived,
  grantUsed: grant,
  capitalOwned: owned.lasting + owned.shortLived,
  capitalOwnedShortLived: owned.shortLived,
  alreadyHaveYears: owned.age,
  grantYears: grantYear,
  operatingCost: running + 700,
  nutrientValue: 500,
  gainsPerYear: 200,
  lifeYears: years,
  shortLifeYears: every,
  inflation,
  interestRate,
});

describe('loans', () => {
  it('run as an account kept forward: annuity, equal parts and years of grace', () => {
    fc.assert(
      fc.property(loan, (one) => {
        const rows = loanSchedule(one);
        bookLoan(one).forEach((booked, k) => {
          near(rows[k].interest, booked.interest, one.amount);
          near(rows[k].principal, booked.principal, one.amount);
          near(rows[k].payment, booked.payment, one.amount);
          near(rows[k].closing, booked.owed, one.amount);
        });
      }),
    );
  });
  it('level payments follow the textbook', () => {
    fc.assert(
      fc.property(real(1, 1e6), rate, fc.integer({ min: 1, max: 60 }), (amount, r, years) => {
        near(annuityPayment(amount, r, years), levelPayment(amount, r, years), amount);
      }),
    );
  });
});

describe('worth of works', () => {
  const all = fc.tuple(works, rate, real(0, 0.08));
  it('is that of the books, in the prices of each year and in today’s', () => {
    fc.assert(
      fc.property(all, ([one, r, inflation]) => {
        const booked = bookWorks({ ...one, inflation });
        const scale = booked.reduce((sum, flow) => sum + Math.abs(flow), 0) * (1 + inflation) ** one.years;
        const nominal = booked.map((flow, t) => flow * (1 + inflation) ** t);
        const worth = worthAgainst(termsOf(one, r, inflation));
        near(worth, presentValue(r, nominal), scale);
        near(worth, realPresentValue(r, inflation, booked), scale);
        flowsAgainst(termsOf(one, r, inflation)).forEach((flow, t) => {
          near(flow, nominal[t], scale);
        });
      }),
    );
  });
  it('against a baseline is the difference of both, and nothing against its like', () => {
    fc.assert(
      fc.property(all, works, ([one, r, inflation], base) => {
        const peer = { ...base, years: one.years };
        const [own, other] = [bookWorks({ ...one, inflation }), bookWorks({ ...peer, inflation })];
        const scale = [...own, ...other].reduce((sum, flow) => sum + Math.abs(flow), 0);
        near(
          worthAgainst(termsOf(one, r, inflation), termsOf(peer, r, inflation)),
          realPresentValue(r, inflation, own) - realPresentValue(r, inflation, other),
          scale * (1 + inflation) ** one.years,
        );
        near(worthAgainst(termsOf(one, r, inflation), termsOf(one, r, inflation)), 0, scale);
      }),
    );
  });
  it('a late grant and a year’s delay against a baseline are those of the books', () => {
    fc.assert(
      fc.property(all, works, fc.integer({ min: 0, max: 3 }), ([one, r, inflation], base, years) => {
        const peer = { ...base, years: one.years };
        const late = {
          ...one,
          inflation,
          grantYear: one.grantYear + years,
          late: { years, running: peer.running },
        };
        const [own, other] = [bookWorks(late), bookWorks({ ...peer, inflation })];
        const timing = { delayYears: years, grantLateYears: years };
        const terms = termsOf(one, r, inflation);
        const flows = flowsAgainst(terms, termsOf(peer, r, inflation), timing);
        const scale =
          [...own, ...other].reduce((sum, flow) => sum + Math.abs(flow), 0) * (1 + inflation) ** one.years;
        flows.forEach((flow, t) => {
          near(flow, (own[t] - other[t]) * (1 + inflation) ** t, scale);
        });
        const alone = yearFlows(terms, one.years, termsOf(peer, r, inflation), timing);
        alone.forEach(({ net }, t) => {
          near(net, own[t] * (1 + inflation) ** t, scale);
        });
      }),
    );
  });
  it('what falls between two years is shared by both', () => {
    const terms = {
      ...termsOf(
        {
          lasting: 100,
          shortLived: 0,
          every: 5,
          grant: 1000,
          grantYear: 0,
          running: 10,
          years: 5,
          owned: { lasting: 0, shortLived: 0, age: 1 },
        },
        0.05,
        0,
      ),
    };
    expect(flowsAgainst(terms, undefined, { delayYears: 0, grantLateYears: 1.25 })).toEqual([
      -100, 740, 240, -10, -10, -10,
    ]);
    const peer = { ...terms, operatingCost: 50 + 700, grantUsed: 0 };
    expect(
      yearFlows(terms, 5, peer, { delayYears: 1.5, grantLateYears: 0 }).map(
        ({ running, nutrientValue, gains }) => running + nutrientValue + gains,
      ),
    ).toEqual([0, -50, -30, -10, -10, -10]);
  });
  it('as an even yearly sum is the annuity of the real rate', () => {
    fc.assert(
      fc.property(all, ([one, r, inflation]) => {
        const present = -realPresentValue(r, inflation, bookWorks({ ...one, inflation }));
        const realOne = (1 + r) / (1 + inflation) - 1;
        near(
          levelisedCost(present, realRate(r, inflation), one.years),
          evenYearly(present, realOne, one.years),
          Math.abs(present),
        );
      }),
    );
  });
});

describe('flows of any signs', () => {
  /** Steps of an even grid of ln(1 + rate) from −99 % to 1000 % at which the present value has turned, each one walked. */
  const turnsOnGrid = (of: readonly number[]): number[] => {
    const at = (step: number) => Math.log(0.01) + ((Math.log(11) - Math.log(0.01)) * step) / 600;
    const worth = (step: number) => netPresentValue(Math.exp(at(step)) - 1, of);
    return Array.from({ length: 600 }, (_, k) => k + 1)
      .filter((step) => worth(step - 1) > 0 !== worth(step) > 0)
      .map((step) => Math.exp(at(step)) - 1);
  };
  const flow = fc.oneof(fc.constant(0), real(-3e4, 3e4), real(-10, 3e3));
  it('have as many rates, where they are, as a walk along the whole grid finds', () => {
    fc.assert(
      fc.property(fc.array(flow, { minLength: 2, maxLength: 40 }), (of) => {
        fc.pre(of.some((one) => one < 0) && of.some((one) => one > 0) && of[0] !== 0);
        const { rates } = rateOfReturn(of);
        const turns = turnsOnGrid(of);
        expect(rates.length).toBe(turns.length);
        rates.forEach((found, k) => {
          expect(found).toBeLessThanOrEqual(turns[k] + 1e-12);
          expect(1 + found).toBeGreaterThan((1 + turns[k]) * 0.988);
        });
      }),
    );
  });
});

describe('flows that cost first and earn later', () => {
  const flows = fc
    .tuple(real(100, 1e5), fc.array(real(1, 3e4), { minLength: 2, maxLength: 40 }))
    .map(([first, later]) => [-first, ...later]);
  it('have the rate that halving finds', () => {
    fc.assert(
      fc.property(flows, (of) => {
        const expected = rateByHalving(of);
        fc.pre(expected !== null && expected > -0.95 && expected < 9);
        expect(rateOfReturn(of).rate).toBeCloseTo(expected as number, 7);
      }),
    );
  });
  it('are worth and paid back as the books say', () => {
    fc.assert(
      fc.property(flows, rate, (of, r) => {
        near(netPresentValue(r, of), presentValue(r, of), Math.abs(of[0]) * 10);
        const expected = paybackByBooks(r, of);
        const found = discountedPayback(r, of);
        if (expected === null) expect(found).toBeNull();
        else expect(found).toBeCloseTo(expected, 7);
      }),
    );
  });
});

it('cover is cash over all payments: of the whole income with older loans, of the saving without', () => {
  fc.assert(
    fc.property(
      real(0, 2e5), real(0, 1e5), real(0, 1e5), real(1, 5e4), real(0, 2e4),
      (income, cost, base, payment, already) => {
        near(
          debtServiceCover(cashForDebt(income, cost, base), serviceOf(payment, already, income)),
          (income - cost) / (payment + already),
          1e5,
        );
        near(
          debtServiceCover(cashForDebt(Number.NaN, cost, base), serviceOf(payment, already, Number.NaN)),
          (base - cost) / payment,
          1e5,
        );
      },
    ),
  ); // biome-ignore format: one line of amounts
});

describe('the names of scenarios are only names', () => {
  it.each(['coast-lender-case', 'hill-farm-choice'])(
    'a copy has the same figures to the cent, and a baseline’s copy the same present value: %s',
    async (name) => {
      const { notebook, tables, winters, run } = await openNotebook(`notebooks/${name}.md`);
      const [base, one] = notebook.scenarios;
      const held = run.results[1];
      const baseline = held.finance.difference!.baseline;
      expect(baseline).toBe(base.name);
      const copied = evaluate(
        {
          scenarios: [
            base,
            one,
            { ...one, name: 'Copy' },
            { ...base, name: 'Base again' },
            { ...one, name: 'Against the copy', finance: { ...one.finance, baseline: 'Base again' } },
          ],
          overrides: notebook.overrides,
        },
        tables,
        winters.winterOf,
      );
      const [, same, copy, again, against] = copied.results;
      expect(same.values).toEqual(held.values);
      expect(copy.values).toEqual(same.values);
      expect({ ...copy.finance, name: '' }).toEqual({ ...same.finance, name: '' });
      expect(against.values).toEqual(same.values);
      expect(against.finance.difference).toEqual({ ...same.finance.difference, baseline: 'Base again' });
      expect(again.finance.difference?.netPresentValue.value).toBeCloseTo(0, 6);
      const draws = drawAll(copied, { count: 200, seed: 4, keep: [...CHANCE_RESULTS, 'netCost'] });
      expect(chancesOf(draws, 2, 0)).toEqual(chancesOf(draws, 1, 0));
      expect(chancesOf(draws, 4, 3)).toEqual(chancesOf(draws, 1, 0));
      // Those that tie for best share it.
      const best = shareBest(draws, 'netCost', 'less');
      expect(best[0]).toBeCloseTo(best[3], 9);
      expect(best.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    },
    30_000,
  );
});
