/** Worked numbers of the regressions: regression checks, but for the table of the authors of the two-pool form. */
import { describe, expect, it } from 'vitest';
import { goneBy, shifted, twoPoolLoss, workedInFactor } from '../../../src/model/field/spreadLoss.ts';
import { TECHNIQUES } from '../../../src/notebook/schema.ts';
import { central, run } from '../nutrientRig.ts';

const NAMES = ['spreadLossTechnique', 'twoPoolFastTechnique', 'twoPoolRateTechnique', 'twoPoolSlowTechnique'];
const technique = (name: string) => Object.fromEntries(NAMES.map((row) => [row, central(row, name)]));
/** Shares of TAN by both regressions at °C, m/s, % dry matter. */
const at = (celsius: number, wind: number, percent: number, name = 'broadcast', more = {}) =>
  run(
    ['spreading'],
    { spreadWindGivenMPerS: wind, slurryM3: 100, slurryDensityKgPerM3: 1000, slurryDryMatterKg: 1000 * percent, ...technique(name), ...more },
    celsius,
  )[0]; // biome-ignore format: one row
const METHODS = TECHNIQUES.slice(0, 4);

// Worked with coefficients of more digits than the rows have.
describe('one-line fit', () => {
  it.each([
    [10, 3, 6, [0.537, 0.221, 0.208, 0.078]],
    [2, 3, 6, [0.431, 0.156, 0.146, 0.052]],
    [20, 3, 6, [0.665, 0.327, 0.311, 0.126]],
    [10, 3, 12, [0.714, 0.379, 0.361, 0.153]],
  ])('%i °C, %i m/s, %i %%', (celsius, wind, percent, expected) => {
    const found = METHODS.map((name) => at(celsius, wind, percent, name).spreadOneLineFraction);
    for (let k = 0; k < expected.length; k++) expect(Math.abs(found[k] - expected[k])).toBeLessThan(0.0025);
  });
});

describe('two-pool regression', () => {
  it.each([
    [13, 6, [0.512, 0.295, 0.275, 0.133]],
    [0, 6, [0.388, 0.196, 0.184, 0.12]],
    [20, 6, [0.561, 0.366, 0.343, 0.142]],
    [13, 10, [0.665, 0.336, 0.309, 0.205]],
  ])('%i °C, %i %%', (celsius, percent, expected) => {
    const found = METHODS.map((name) => at(celsius, 2.7, percent, name).spreadTwoPoolFraction);
    for (let k = 0; k < expected.length; k++) expect(Math.abs(found[k] - expected[k])).toBeLessThan(0.001);
  });

  it('winter slurry of 10 % at 5 °C and 3 m/s: broadcast 0.565, shoe 0.241', () => {
    expect(at(5, 3, 10).spreadTwoPoolFraction).toBeCloseTo(0.565, 3);
    expect(at(5, 3, 10, 'trailingShoe').spreadTwoPoolFraction).toBeCloseTo(0.241, 3);
  });

  // The authors' own sensitivity table for broadcast slurry (published, in their research files).
  it.each([
    ['reference', 13, 2.7, 6, {}, 0.51],
    ['0 °C', 0, 2.7, 6, {}, 0.38],
    ['20 °C', 20, 2.7, 6, {}, 0.56],
    ['still air', 13, 0, 6, {}, 0.28],
    ['10 m/s', 13, 10, 6, {}, 0.62],
    ['pH 6.4', 13, 2.7, 6, { slurryPh: 6.4 }, 0.36],
    ['10 % dry matter', 13, 2.7, 10, {}, 0.69],
  ] as const)(
    '%s is within 0.03 of the table of its authors',
    (_, celsius, wind, percent, more, expected) => {
      expect(
        Math.abs(at(celsius, wind, percent, 'broadcast', more).spreadTwoPoolFraction - expected),
      ).toBeLessThan(0.03);
    },
  );

  it('agrees with small steps of its two equations', () => {
    const [fast, rate, soak, slow, bound] = [0.6, 0.05, 0.07, 0.002, 0.016];
    let [f, s, lost] = [fast, 1 - fast, 0];
    const step = 0.001;
    for (let t = 0; t < 168 / step; t++) {
      lost += (rate * f + slow * s) * step;
      [f, s] = [f - (rate + soak) * f * step, s + (soak * f - (slow + bound) * s) * step];
    }
    expect(twoPoolLoss(fast, rate, soak, slow, bound)).toBeCloseTo(lost, 4);
    expect(twoPoolLoss(fast, 0.01, 0.008, 0.009, 0.009)).toBeCloseTo(
      twoPoolLoss(fast, 0.01, 0.008, 0.009, 0.009 + 1e-7),
      6,
    );
  });
});

describe('course of the hours and working in', () => {
  it('gone by 1, 4, 6 and 24 h: 0.343, 0.685, 0.771, 0.949', () => {
    const gone = [1, 4, 6, 24].map((hours) => goneBy(hours, 2));
    [0.343, 0.685, 0.771, 0.949].forEach((share, k) => {
      expect(gone[k]).toBeCloseTo(share, 3);
    });
    expect([goneBy(0, 2), goneBy(72, 2), goneBy(900, 2)]).toEqual([0, 1, 1]);
  });

  it('ploughed after 1 h 0.375, after 4 h 0.701; disc after 4 h 0.780', () => {
    expect(workedInFactor(1, 2, 0.05)).toBeCloseTo(0.375, 3);
    expect(workedInFactor(4, 2, 0.05)).toBeCloseTo(0.701, 3);
    expect(workedInFactor(4, 2, 0.3)).toBeCloseTo(0.78, 3);
  });

  it('solid manure near the one experiment it rests on: ploughed at once 0.28, harrowed 0.52, after 6 h 0.80', () => {
    const half = central('solidLossHalfHours');
    const [plough, harrow] = ['plough', 'harrow'].map((by) => central('solidBuriedFactor', by));
    expect(Math.abs(workedInFactor(0.5, half, plough) - 0.28)).toBeLessThan(0.05);
    expect(Math.abs(workedInFactor(0.5, half, harrow) - 0.52)).toBeLessThan(0.05);
    expect(Math.abs(workedInFactor(6, half, harrow) - 0.8)).toBeLessThan(0.15);
  });

  it('shifts a share on the logit scale and leaves nothing and all as they are', () => {
    expect(shifted(0.5, Math.log(3))).toBeCloseTo(0.75, 12);
    expect([shifted(0, 3), shifted(1, -3), shifted(0.3, 0)]).toEqual([0, 1, expect.closeTo(0.3, 12)]);
  });
});

describe('solid manure', () => {
  it.each([[-2, 0.318], [0, 0.354], [5, 0.464], [10, 0.607], [15, 0.794]])('%i °C: %f of TAN', (celsius, expected) => {
    expect(run(['spreading'], { compostTanKg: 1 }, celsius)[0].compostSpreadAmmoniaKg).toBeCloseTo(expected, 3);
  }); // biome-ignore format: one list
});

describe('first crop of 30 t stored manure with 180 kg N, 36 kg TAN', () => {
  it.each([
    ['10 °C', 10, 36, 21.9, 30.7],
    ['2 °C', 2, 36, 14.2, 38],
    ['TAN of 18 kg', 10, 18, 10.9, 26.2],
  ])('%s: %i °C', (_, celsius, tan, ammonia, first) => {
    const row = { compostNitrogenKg: 180, compostTanKg: tan, compostMineralisedFraction: 0.12 };
    const [spread] = run(['spreading'], row, celsius);
    expect(Math.abs(spread.compostSpreadAmmoniaKg - ammonia)).toBeLessThan(0.1);
    const [{ compostNitrogenReleasedKg }] = run(['value'], { ...row, ...spread });
    // 0.95 of the mineral nitrogen stays, gases and drainage of the worked sum together.
    expect(Math.abs(0.95 * spread.compostSoilTanKg + compostNitrogenReleasedKg - first)).toBeLessThan(0.15);
  });

  it('second year 7.6 kg of the 126.7 that are left', () => {
    const [out] = run(['value'], { compostSoilNitrogenKg: 144, compostMineralisedFraction: 0.12, laterYearsFactor: 0.5, laterYearsForm: 0 });
    expect(out.nitrogenAvailableSecondYearKg).toBeCloseTo(7.6, 1);
  }); // biome-ignore format: one row
});
