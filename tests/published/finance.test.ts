/**
 * Money over time against figures others have printed. Each check names its source and basis: `published` was
 * read, `recalled` is from memory and recomputed, `own` is arithmetic of ours and so a regression check.
 */
import { irr, npv, pmt } from 'financial';
import { describe, expect, it } from 'vitest';
import { loanSchedule } from '../../src/model/money/loan.ts';
import {
  annuityFactor,
  annuityPayment,
  debtServiceCover,
  discountedPayback,
  levelisedCost,
  netPresentValue,
  realRate,
  straightLineCost,
} from '../../src/model/money/presentValue.ts';
import { rateOfReturn } from '../../src/model/money/rateOfReturn.ts';
import { EUR, TABLES } from '../model/moneyRig.ts';
import { bookLoan } from '../reference/finance.ts';
import { figure, sum, tableRow } from './labels.ts';

const even = (first: number, yearly: number, years: number) => [
  first,
  ...new Array<number>(years).fill(yearly),
];

describe('payment', () => {
  it(figure('NumPy Financial reference, pmt: 200,000 at 7.5 % a year over 180 months; published'), () =>
    expect(annuityPayment(200_000, 0.075 / 12, 180)).toBeCloseTo(1854.0247200054619, 6),
  );
  it(figure('the same by the library financial, a port of it; reference library'), () =>
    expect(annuityPayment(200_000, 0.075 / 12, 180)).toBeCloseTo(-pmt(0.075 / 12, 180, 200_000), 8),
  );
  it(sum('60,000 at 4 % over 25 years; own'), () =>
    expect(annuityPayment(60_000, 0.04, 25)).toBeCloseTo(3840.72, 2),
  );
  it(sum('without interest it is the even part; own'), () => expect(annuityPayment(1200, 0, 12)).toBe(100));
  it(
    sum('balance after k payments, PV(1 + r)^k − pmt((1 + r)^k − 1)/r; textbook formula, own figures'),
    () => {
      const [amount, rate, years, paid] = [60_000, 0.04, 25, 10];
      const grown = (1 + rate) ** paid;
      const expected = amount * grown - (annuityPayment(amount, rate, years) * (grown - 1)) / rate;
      const loan = { amount, rate, years, graceYears: 0, straightLine: false };
      expect(loanSchedule(loan)[paid - 1].closing).toBeCloseTo(expected, 6);
    },
  );
});

describe('a whole loan, payment by payment', () => {
  it(
    figure('NumPy Financial reference, ipmt: 2,500 at 8.24 % over 12 months, month by month; published'),
    () => {
      const printed = [
        [200.58, 17.17, 2299.42], [201.96, 15.79, 2097.46], [203.35, 14.4, 1894.11], [204.74, 13.01, 1689.37],
        [206.15, 11.6, 1483.22], [207.56, 10.18, 1275.66], [208.99, 8.76, 1066.67], [210.42, 7.32, 856.25],
        [211.87, 5.88, 644.38], [213.32, 4.42, 431.05], [214.79, 2.96, 216.26], [216.26, 1.49, 0],
      ]; // biome-ignore format: a printed table
      const terms = { amount: 2500, rate: 0.0824 / 12, years: 12, graceYears: 0, straightLine: false };
      for (const rows of [
        loanSchedule(terms).map(({ principal, interest, closing }) => [principal, interest, closing]),
        bookLoan(terms).map(({ principal, interest, owed }) => [principal, interest, owed]),
      ])
        rows.forEach((row, k) => {
          row.forEach((value, at) => {
            expect(Math.abs(value - printed[k][at])).toBeLessThan(0.0051);
          });
        });
    },
  );
});

describe('net present value', () => {
  const problem = [-40_000, 5000, 8000, 12_000, 30_000];
  it(
    figure('NumPy Financial reference, npv at 8 %; the problem was read, the value recalled and recomputed'),
    () => expect(netPresentValue(0.08, problem)).toBeCloseTo(3065.22267, 4),
  );
  it(figure('the same by the library financial; reference library'), () =>
    expect(netPresentValue(0.08, problem)).toBeCloseTo(npv(0.08, problem), 8),
  );
  it(figure('NumPy Financial reference, at 28.1 %; published'), () =>
    expect(netPresentValue(0.281, [-100, 39, 59, 55, 20])).toBeCloseTo(-0.0084785916, 9),
  );
  it.each([
    [0.11, 48.2, 44.37],
    [0.16, 23.85, 24.59],
  ])(figure('textbook: 200 for 80 × 4 years or 100 × 3 years, at %s; published'), (rate, a, b) => {
    expect(netPresentValue(rate, even(-200, 80, 4))).toBeCloseTo(a, 2);
    expect(netPresentValue(rate, even(-200, 100, 3))).toBeCloseTo(b, 2);
  });
  it(figure('textbook: machines of 45,000 at 14 %; published'), () => {
    expect(Math.abs(netPresentValue(0.14, even(-45_000, 20_000, 3)) - 1433)).toBeLessThan(1);
    expect(Math.abs(netPresentValue(0.14, even(-45_000, 12_000, 6)) - 1664)).toBeLessThan(1);
  });
});

describe('rate of return', () => {
  it(figure('NumPy Financial reference, irr; published'), () =>
    expect(rateOfReturn([-250_000, 100_000, 150_000, 200_000, 250_000, 300_000]).rate).toBeCloseTo(
      0.5672303344,
      9,
    ),
  );
  it(figure('NumPy Financial reference, irr 0.28095; published'), () =>
    expect(rateOfReturn([-100, 39, 59, 55, 20]).rate).toBeCloseTo(0.28095, 5),
  );
  it(figure('the same by the library financial; reference library'), () =>
    expect(rateOfReturn([-100, 39, 59, 55, 20]).rate).toBeCloseTo(irr([-100, 39, 59, 55, 20]), 8),
  );
  it(figure('textbook: 200 for 80 × 4 years 21.86 %, or 100 × 3 years 23.38 %; published'), () => {
    expect(rateOfReturn(even(-200, 80, 4)).rate).toBeCloseTo(0.2186, 4);
    expect(rateOfReturn(even(-200, 100, 3)).rate).toBeCloseTo(0.2338, 4);
  });
  it(
    sum('flows that change sign twice, −100 + 230 − 132: both 10 % and 20 % fit, so neither is given; own'),
    () => {
      const found = rateOfReturn([-100, 230, -132]);
      expect(found.rate).toBeNull();
      expect(found.rates[0]).toBeCloseTo(0.1, 9);
      expect(found.rates[1]).toBeCloseTo(0.2, 9);
      expect(found.why).toContain('10.0 %, 20.0 %');
    },
  );
  it.each([
    [[-100, -5, -5], 'no year brings money in'],
    [[100, 5, 5], 'no year costs money'],
    [[-100, Number.NaN, 50], 'missing'],
    [[100, -240, 150], 'more comes back than goes out'],
  ])(sum('none where there is none: %s; own'), (flows, words) => {
    const found = rateOfReturn(flows);
    expect(found.rate).toBeNull();
    expect(found.why).toContain(words);
  });
});

describe('discounted payback', () => {
  const inflows = [2800, 3700, 5100, 4300];
  it.each([
    [5200, 1.96],
    [5400, 2.03],
    [10_400, 3.65],
  ])(figure('textbook at 14 %% for a cost of %s: %s years; published'), (cost, years) =>
    expect(Math.abs(discountedPayback(0.14, [-cost, ...inflows])! - years)).toBeLessThan(0.01),
  );
  it(figure('textbook: −1,000; 347, 394, 424, 600 at 14 %; published'), () =>
    expect(discountedPayback(0.14, [-1000, 347, 394, 424, 600])).toBeCloseTo(3.2991, 3),
  );
  it.each([
    [0, 3.51],
    [0.05, 3.95],
  ])(figure('textbook: −10,000; 2,850 × 6 at %s: %s years; published'), (rate, years) =>
    expect(Math.abs(discountedPayback(rate, even(-10_000, 2850, 6))! - years)).toBeLessThan(0.01),
  );
  it(sum('never paid back is null, nothing owed is 0; own'), () => {
    expect(discountedPayback(0.05, [-100, 10, 10])).toBeNull();
    expect(discountedPayback(0.05, [10, 10])).toBe(0);
  });
});

describe('equivalent annual cost', () => {
  it.each([
    [350_000, 100_000, 10, 161_944.46],
    [550_000, 80_000, 15, 160_753.33],
  ])(
    sum('textbook at 12 %%: %s and %s a year over %s years; inputs published, answer own'),
    (first, yearly, years, eac) =>
      expect(levelisedCost(-netPresentValue(0.12, even(-first, -yearly, years)), 0.12, years)).toBeCloseTo(
        eac,
        2,
      ),
  );
  it(
    sum('textbook machines of 45,000 at 14 %: 617.08 and 427.91 a year; inputs published, answer own'),
    () => {
      expect(netPresentValue(0.14, even(-45_000, 20_000, 3)) / annuityFactor(0.14, 3)).toBeCloseTo(617.08, 1);
      expect(netPresentValue(0.14, even(-45_000, 12_000, 6)) / annuityFactor(0.14, 6)).toBeCloseTo(427.91, 1);
    },
  );
});

describe('debt and rates', () => {
  it(sum('debt service cover 28,000/20,000 = 1.40; own figures on a published definition'), () =>
    expect(debtServiceCover(18_000 + 6000 + 4000, 16_000 + 4000)).toBeCloseTo(1.4, 12),
  );
  it(sum('no debt, no cover; own'), () => expect(debtServiceCover(28_000, 0)).toBeNaN());
  it(sum('real rate of 5 % at 2 % inflation: 2.941 %; own'), () =>
    expect(realRate(0.05, 0.02)).toBeCloseTo(0.0294118, 7),
  );
  it(
    figure(
      'University of Georgia Extension: depreciation and interest on half of 25,000 at 8 % over 20 years; published',
    ),
    () => expect(straightLineCost(25_000, 0.08, 20, 0.035)).toBe(3125),
  );
  it(sum('straight-line loan of 10,000 at 5 % over 4 years: 3,000, 2,875, 2,750, 2,625; own'), () => {
    const loan = { amount: 10_000, rate: 0.05, years: 4, graceYears: 0, straightLine: true };
    expect(loanSchedule(loan).map((row) => row.payment)).toEqual([3000, 2875, 2750, 2625]);
  });
});

describe(tableRow('worth of manure in the price table'), () => {
  const price = (name: string) => EUR.get(name)!.central;
  it('Teagasc 2024: about 6.3 EUR a cubic metre, with 1.0 kg N, 0.5 kg P, 3.5 kg K; published', () =>
    expect(
      Math.abs(
        1.0 * price('nitrogenPricePerKg') +
          0.5 * price('phosphorusPricePerKg') +
          3.5 * price('potassiumPricePerKg') -
          6.3,
      ),
    ).toBeLessThan(0.05));
});

describe(tableRow('outwintered cattle, Salomon and others 2015'), () => {
  const of = (name: string) => TABLES.coefficients.get(name)!.central;
  it('72 cattle a hectare for a month leave 6.94 kg N and 0.69 kg P a head; own from published', () => {
    const head = of('referenceSalomonStockingHeadPerHa');
    expect(of('referenceSalomonNitrogenLoadKgPerHa') / head).toBeCloseTo(6.94, 2);
    expect(of('referenceSalomonPhosphorusLoadKgPerHa') / head).toBeCloseTo(0.69, 2);
  });
  it('1.8 % of the nitrogen and 2.8 % of the phosphorus ran off; own from published', () => {
    expect(
      of('referenceSalomonNitrogenRunoffKgPerHa') / of('referenceSalomonNitrogenLoadKgPerHa'),
    ).toBeCloseTo(0.018, 3);
    expect(
      of('referenceSalomonPhosphorusRunoffKgPerHa') / of('referenceSalomonPhosphorusLoadKgPerHa'),
    ).toBeCloseTo(0.028, 3);
  });
});
