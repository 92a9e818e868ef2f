/** Yearly cost by line. Hand-worked figures are regression checks; published ones say so. */
import { describe, expect, it } from 'vitest';
import { type Options, type Row, runMoney } from '../moneyRig.ts';

const one = (row: Row, options: Options = {}) => runMoney(['costs'], [row], options)[0].values;

const WINTER: Row = {
  headCount: 24, winterDays: 180, capitalCost: 60_000, capitalShortLived: 0, interestRate: 0.04, lifeYears: 25,
  repairsBuildingFraction: 0.01, insuranceFraction: 0, nutrientValue: 1500, nitrogenKeptKg: 800,
  dryMatterOfferedKg: 50_000, dryMatterWastedKg: 5000, feed1Share: 0.6, feed1DryMatterFraction: 0.88,
  feed1PricePerTonne: 170, feed2Share: 0.4, feed2DryMatterFraction: 0.4, feed2PricePerTonne: 45, beddingTonnes: 30,
  material1Share: 0.7, material1PricePerTonne: 100, material2Share: 0.3, material2PricePerTonne: 0,
  tractorHours: 100, tractorPricePerHour: 22, chippingHours: 10, chippingPricePerHour: 35, contractorSolidHours: 5,
  solidSpreadPricePerHour: 60, labourHours: 300, labourPricePerHour: 15, vetPricePerHead: 25, hoofPricePerHead: 12,
}; // biome-ignore format: one short list
const v = one(WINTER);

describe('lines', () => {
  it('capital charge: 60,000 at 4 % over 25 years is 3,840.72 (own arithmetic)', () =>
    expect(v.capitalCharge).toBeCloseTo(3840.72, 2));
  it('with 1 % repairs 4,440.72', () => expect(v.capitalCharge + v.repairsCost).toBeCloseTo(4440.72, 2));
  it('per place 185.03 and per place and day 1.028', () => {
    expect((v.capitalCharge + v.repairsCost) / 24).toBeCloseTo(185.03, 2);
    expect((v.capitalCharge + v.repairsCost) / 24 / 180).toBeCloseTo(1.028, 3);
  });
  it.each([
    // 50 t DM: 30/0.88 t × 170 + 20/0.4 t × 45 = 5795.4545 + 2250; a tenth of it is wasted.
    ['feedCost', 8045.4545 * 0.9],
    ['feedWasteCost', 8045.4545 * 0.1],
    ['beddingCost', 2100],
    ['machineryCost', 2550],
    ['contractorCost', 300],
    ['labourCost', 4500],
    ['vetCost', 600],
    ['hoofCost', 288],
    ['repairsCost', 600],
  ])('%s', (name, expected) => expect(v[name]).toBeCloseTo(expected, 2));
  it('short-lived works wear out over their own life', () => {
    const some = one({
      ...WINTER,
      capitalShortLived: 10_000,
      shortLifeYears: 10,
      repairsEquipmentFraction: 0.03,
    });
    // 50,000 over 25 years and 10,000 over 10 at 4 %: 3200.60 + 1232.91.
    expect(some.capitalCharge).toBeCloseTo(4433.51, 2);
    expect(some.repairsCost).toBeCloseTo(800, 9);
  });
  it('grass and reseeding', () => {
    const out = one({
      ...WINTER,
      grassLostTonnes: 4,
      grassPricePerTonne: 100,
      reseedHa: 0.5,
      reseedPricePerHa: 600,
    });
    expect(out.grassLostCost).toBe(400);
    expect(out.reseedCost).toBe(300);
    expect(out.annualCost - v.annualCost).toBeCloseTo(700, 9);
    expect(out.operatingCashCost - v.operatingCashCost).toBeCloseTo(300, 9);
  });
});

describe('sums', () => {
  it('net cost is the yearly cost less what the nutrients are worth', () => {
    expect(v.annualCost).toBeCloseTo(3840.72 + 600 + 2100 + 8045.4545 + 2550 + 300 + 4500 + 600 + 288, 1);
    expect(v.netCost).toBeCloseTo(v.annualCost - 1500, 9);
    expect(v.netCostPerHead).toBeCloseTo(v.netCost / 24, 9);
    expect(v.netCostPerHeadDay).toBeCloseTo(v.netCost / 24 / 180, 9);
    expect(v.costPerNitrogenKeptKg).toBeCloseTo(v.annualCost / 800, 9);
  });
  it('running cost in cash leaves out own labour', () =>
    expect(v.operatingCashCost).toBeCloseTo(v.annualCost - v.capitalCharge - 4500, 9));
  it('inflation lowers the charge in prices of today', () =>
    // Real rate 1.04/1.02 − 1 = 1.9608 %.
    expect(one({ ...WINTER, inflation: 0.02 }).capitalCharge).toBeCloseTo(3059.1, 1));
});

describe('published worked examples', () => {
  it('University of Georgia Extension, ownership cost of a farm building: 3,125 USD a year', () => {
    // Basis: published. 5,000 ft² at 5 USD, 20 years, 8 % on average value, 3 % tax and insurance, 0.5 % repair:
    // 1,250 + 1,000 + 750 + 125.
    const uga = one({
      headCount: 1, winterDays: 1, capitalCost: 25_000, interestRate: 0.08, lifeYears: 20, insuranceFraction: 0.03,
      repairsBuildingFraction: 0.005, vetPricePerHead: 0, hoofPricePerHead: 0,
    }); // biome-ignore format: one short list
    expect(uga.capitalChargeStraight).toBe(2250);
    expect(uga.insuranceCost).toBe(750);
    expect(uga.repairsCost).toBe(125);
    expect(uga.capitalChargeStraight + uga.insuranceCost + uga.repairsCost).toBe(3125);
  });
  // Oklahoma State University Extension, hay feeders compared. Basis: published. 180 bales of 1,200 lb at 70 USD.
  const POUND_KG = 0.45359237;
  it.each([
    [0.053, 3.71, 667.8],
    [0.13, 9.1, 1638],
    [0.205, 14.35, 2583],
    [0.21, 14.7, 2646],
  ])('hay wasted at %s: %s USD a bale, %s a season', (waste, perBale, season) => {
    const baleKg = 1200 * POUND_KG;
    const hay = one({
      dryMatterOfferedKg: 180 * baleKg, dryMatterWastedKg: 180 * baleKg * waste, feed1Share: 1, feed1DryMatterFraction: 1,
      feed1PricePerTonne: 70 / (baleKg / 1000),
    }); // biome-ignore format: one short list
    expect(hay.feedWasteCost).toBeCloseTo(season, 9);
    expect(hay.feedWasteCost / 180).toBeCloseTo(perBale, 9);
  });
});

describe('bad input is marked, never a silent zero', () => {
  it.each([
    ['missing feed price', { feed1PricePerTonne: Number.NaN }, 'feedCost'],
    ['missing bedding price', { material1PricePerTonne: Number.NaN }, 'beddingCost'],
    ['negative tractor price', { tractorPricePerHour: -1 }, 'machineryCost'],
    ['life of 0 years', { lifeYears: 0 }, 'capitalCharge'],
    ['unknown capital', { capitalCost: Number.NaN }, 'capitalCharge'],
  ] as const)('%s', (_, change, line) => {
    const bad = one({ ...WINTER, ...change });
    expect(bad[line]).toBeNaN();
    expect(bad.annualCost).toBeNaN();
    expect(bad.netCost).toBeNaN();
  });
  it('a grant over the cost pays the cost and no more, and says how much is over', () => {
    const granted = one({ ...WINTER, grantAmount: 70_000 });
    expect(granted.grantUsed).toBe(60_000);
    expect(granted.grantOverCost).toBe(10_000);
    expect(granted.capitalCharge).toBe(0);
  });
  it('no animals and nothing bought: no cost, no NaN but for cost a kilogram kept', () => {
    const none = one({ winterDays: 180, nitrogenKeptKg: 0 });
    expect(none.annualCost).toBe(0);
    expect(none.netCostPerHead).toBe(0);
    expect(none.netCostPerHeadDay).toBe(0);
    expect(none.costPerNitrogenKeptKg).toBeNaN();
  });
});
