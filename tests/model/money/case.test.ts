/** The case of invented scenarios against a baseline. Own arithmetic, so regression checks. */
import { describe, expect, it } from 'vitest';
import { type CaseInput, financeCase } from '../../../src/model/money/case.ts';
import { type Row, runMoney } from '../moneyRig.ts';

/** Through costs and finance, so that stage and case are seen to agree. */
function scenario(name: string, row: Row, rest: Partial<CaseInput> = {}): CaseInput {
  const { values } = runMoney(['costs', 'finance', 'against'], [row])[0];
  const made = Object.fromEntries(
    Object.entries(values).map(([key, value]) => [key, Number.isFinite(value) ? value : null]),
  );
  return { name, values: made, column: (column) => values[column], ...rest };
}

const COMMON: Row = { headCount: 20, winterDays: 180, interestRate: 0.05, lifeYears: 20, shortLifeYears: 10, vetPricePerHead: 0, hoofPricePerHead: 0, insuranceFraction: 0, repairsBuildingFraction: 0, repairsEquipmentFraction: 0 }; // biome-ignore format: one short list
const OUT: Row = { ...COMMON, capitalCost: 4000, capitalCash: 4000, capitalShortLived: 4000, labourHours: 400, labourPricePerHour: 15, tractorHours: 100, tractorPricePerHour: 22, nutrientValue: 300 }; // biome-ignore format: one short list
const BED: Row = {
  ...COMMON, capitalCost: 50_000, capitalCash: 45_000, capitalShortLived: 5000, grantAmount: 10_000, labourHours: 250,
  labourPricePerHour: 15, tractorHours: 60, tractorPricePerHour: 22, nutrientValue: 2500, loan1Amount: 20_000,
  loan1Rate: 0.06, loan1Years: 12, loan1GraceYears: 1, loan1Straight: 0,
}; // biome-ignore format: one short list

const out = scenario('outside', OUT);
const bed = scenario('bed', BED);
const [outCase, bedCase] = financeCase([out, bed], 'outside');

describe('cash flow by year', () => {
  it('runs over the life of the works', () =>
    expect(bedCase.years.map((y) => y.year)).toEqual(Array.from({ length: 21 }, (_, k) => k)));
  it('year 0: works, grant and loan', () => {
    const [first] = bedCase.years;
    expect([first.works, first.grant, first.borrowed, first.net, first.afterLoans]).toEqual([
      -50_000, 10_000, 20_000, -40_000, -20_000,
    ]);
  });
  it('year 10 buys the short-lived works again', () => {
    expect(bedCase.years[10].works).toBe(-5000);
    expect(bedCase.years[9].works).toBeCloseTo(0, 12);
  });
  it('a grace year pays interest only, and the debt ends at 0', () => {
    expect(bedCase.years[1].principal).toBeCloseTo(0, 9);
    expect(bedCase.years[1].interest).toBeCloseTo(-1200, 9);
    expect(bedCase.years[12].debt).toBeCloseTo(0, 9);
    expect(bedCase.years[13].interest).toBeCloseTo(0, 12);
  });
  it('is worth what the finance stage says', () => {
    expect(bedCase.netPresentValue.value).toBeCloseTo(bed.values.netPresentValue!, 6);
    expect(outCase.netPresentValue.value).toBeCloseTo(out.values.netPresentValue!, 6);
    expect(bedCase.levelisedCost.value).toBeCloseTo(bed.values.levelisedCost!, 6);
  });
  it('and still does with inflation and a life that is no multiple of the short one', () => {
    const odd = scenario('odd', { ...BED, inflation: 0.025, lifeYears: 23, shortLifeYears: 7 });
    expect(financeCase([odd])[0].netPresentValue.value).toBeCloseTo(odd.values.netPresentValue!, 6);
  });
});

describe('difference to the baseline', () => {
  const difference = bedCase.difference!;
  it('is the difference of the two present values', () =>
    expect(difference.netPresentValue.value).toBeCloseTo(
      bed.values.netPresentValue! - out.values.netPresentValue!,
      6,
    ));
  it('gains 150 h × 15 + 40 h × 22 + 2,200 of nutrients a year on 36,000 of extra capital', () => {
    expect(difference.flows[0]).toBeCloseTo(-36_000, 9);
    expect(difference.flows[1]).toBeCloseTo(5330, 9);
  });
  it('has one rate of return and a payback', () => {
    // 36,000/5,330 a year over 20 years: near 13.6 %, replacement of 1,000 more in year 10.
    expect(difference.internalRateOfReturn.rate).toBeGreaterThan(0.13);
    expect(difference.internalRateOfReturn.rate).toBeLessThan(0.14);
    // 5 % and 5,330 a year: 36,000 is reached in year 8.46.
    expect(difference.paybackYears.value).toBeCloseTo(8.5, 1);
  });
  it('says why the baseline has none', () => {
    expect(outCase.difference).toBeNull();
    expect(outCase.differenceWhy).toContain('baseline');
    expect(out.values.internalRateOfReturn).toBeNull();
    expect(out.values.paybackYears).toBeNull();
    expect(outCase.loanPayment.value).toBe(0);
  });
  it('takes the cheapest to build where no baseline is named', () =>
    expect(financeCase([bed, out])[0].difference?.baseline).toBe('outside'));
  it("takes a scenario's own baseline before that of the notebook", () =>
    expect(financeCase([{ ...bed, baseline: 'bed' }, out], 'outside')[0].difference).toBeNull());
  it('names a baseline nobody knows', () =>
    expect(financeCase([bed, out], 'nowhere')[0].differenceWhy).toBe('no scenario is called "nowhere"'));
  it('buys what wears out of the baseline again', () => {
    const short = scenario('short', { ...OUT, shortLifeYears: 8 });
    const flows = financeCase([short, bed], 'short')[1].difference!.flows;
    expect(flows[8] - flows[7]).toBeCloseTo(4000, 9);
    // The third set, bought in year 16, is half used up in year 20.
    const bedAlone = financeCase([bed], 'bed')[0].years;
    expect(flows[20] - flows[19] - (bedAlone[20].net - bedAlone[19].net)).toBeCloseTo(-2000, 6);
  });
  it('holds a baseline against it in one price level, whatever its own column says', () => {
    const priced = { ...BED, inflation: 0.02 };
    const flat = financeCase([out, scenario('bed', priced)], 'outside')[1].difference!;
    const same = financeCase(
      [scenario('outside', { ...OUT, inflation: 0.02 }), scenario('bed', priced)],
      'outside',
    )[1];
    expect(flat.netPresentValue.value).toBeCloseTo(same.difference!.netPresentValue.value!, 9);
  });
  it('a scenario that never earns its capital back says so', () => {
    const dear = scenario('dear', { ...BED, labourHours: 500, nutrientValue: 0 });
    const one = financeCase([out, dear], 'outside')[1].difference!;
    expect(one.paybackYears).toEqual({
      value: null,
      why: 'not paid back within the 20 years the works last',
    });
    expect(one.internalRateOfReturn.rate).toBeNull();
    expect(one.internalRateOfReturn.why).not.toBe('');
  });
});

describe('debt service cover', () => {
  it('serves from cash saved against the baseline when no income is named', () => {
    expect(bedCase.coverFrom).toBe('saving');
    // 40 tractor hours of 22 over the annuity of 11 years after grace.
    const payment = 20_000 / ((1 - 1.06 ** -11) / 0.06);
    expect(bedCase.debtServiceCover.value).toBeCloseTo(880 / payment, 6);
  });
  it('serves from income when it is named, and says so year by year', () => {
    const [, one] = financeCase([out, scenario('bed', { ...BED, incomePerHead: 450 })], 'outside');
    expect(one.coverFrom).toBe('income');
    expect(one.debtServiceCover.value).toBeCloseTo((9000 - 1320) / one.loanPayment.value!, 6);
    expect(one.years[5].cover).toBeCloseTo(one.debtServiceCover.value!, 6);
    expect(one.years[13].cover).toBeNull();
  });
  it('says there is no loan', () =>
    expect(outCase.debtServiceCover).toEqual({ value: null, why: 'there is no loan to serve' }));
});

describe('gaps', () => {
  it('a loan of 0 years is named', () => {
    const [one] = financeCase([scenario('bad', { ...BED, loan1Years: 0 })]);
    expect(one.loanPayment.value).toBeNull();
    expect(one.loanPayment.why).toContain('0 years');
    expect(one.debtServiceCover.why).toContain('0 years');
  });
  it('a life of 0 years is named', () => {
    const [one] = financeCase([scenario('bad', { ...BED, lifeYears: 0 }), out]);
    expect(one.netPresentValue.value).toBeNull();
    expect(one.netPresentValue.why).toContain('0 years');
  });
  it('a missing price leaves every figure that rests on it absent', () => {
    const bad = scenario('bad', { ...BED, tractorPricePerHour: Number.NaN });
    const [, one] = financeCase([out, bad], 'outside');
    expect(one.netPresentValue.value).toBeNull();
    expect(one.difference!.internalRateOfReturn.rate).toBeNull();
    expect(one.difference!.paybackYears.value).toBeNull();
    expect(one.debtServiceCover.value).toBeNull();
    expect(one.difference!.internalRateOfReturn.why).toContain('missing');
    expect(one.difference!.paybackYears.why).toContain('missing');
  });
});
