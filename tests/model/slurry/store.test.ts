import { describe, expect, it } from 'vitest';
import { STORE_COVERS } from '../../../src/notebook/schema.ts';
import { central, run } from '../nutrientRig.ts';

const STORE = {
  winterDays: 180,
  slurryShare: 1,
  slurryTanInKg: 292,
  slurryNitrogenInKg: 292,
  storeSurfaceGivenM2: 42,
  storeNitrousFraction: 0,
  storeDinitrogenFraction: 0,
  storeNitricOxideFraction: 0,
  timesStirred: 0,
};
const lost = (weekC: number, more = {}) => run(['slurry'], { ...STORE, ...more }, weekC)[0].storeAmmoniaKg;
const covered = (cover: string) => ({
  storeAmmoniaFactor: central('storeAmmoniaFactor', cover),
  storeCoverBrokenFraction: central('storeCoverBrokenFraction', cover),
});

describe('ammonia of an outside store', () => {
  it('gives the worked sums at 5 °C for 180 days (regression check)', () => {
    const area = { storeShareForm: 0, storeAmmoniaSlopePerC: 0.0553, storeMostWeekFraction: 1 };
    const share = { ...area, storeShareForm: 1 };
    const crust = { storeAmmoniaFactor: 0.4 };
    // 42 m² × 4 g × e^(0.0553 × −5); the first weeks, with little in the store, take no more than there is.
    expect(lost(5, area)).toBeGreaterThan(22.9 * 0.98);
    expect(lost(5, area)).toBeLessThan(22.95);
    expect(lost(5, { ...area, ...crust })).toBeCloseTo(9.17, 1);
    expect(lost(5, share)).toBeCloseTo(33.2, 1);
    expect(lost(5, { ...share, ...crust })).toBeCloseTo(13.3, 1);
  });

  it.each(['crust', 'straw'])(
    '%s cuts it to 20 to 50 % at its central value (Sommer 1993: to 20 %)',
    (cover) => {
      for (const storeShareForm of [0, 1]) {
        const part = lost(5, { storeShareForm, ...covered(cover) }) / lost(5, { storeShareForm });
        expect(part).toBeGreaterThan(0.2);
        expect(part).toBeLessThan(0.5);
      }
    },
  );

  it('stands in the order of the covers, none under slats', () => {
    const all = STORE_COVERS.map((cover) => [cover, lost(5, covered(cover))] as const);
    const of = Object.fromEntries(all);
    expect(of.underSlats).toBe(0);
    expect(of.lid).toBeLessThan(of.balls);
    expect(of.balls).toBeLessThan(of.crust);
    expect(of.crust).toBeLessThan(of.none);
  });

  it('loses more of a crust that is stirred, up to that of an open store, and nothing more of a lid', () => {
    const [still, once, often, always] = [0, 1, 6, 60].map((timesStirred) => lost(5, { ...covered('crust'), timesStirred }));
    expect(still).toBeLessThan(once);
    expect(once).toBeLessThan(often);
    expect(often).toBeLessThan(always);
    expect(always).toBeLessThanOrEqual(lost(5));
    expect(lost(5, { ...covered('lid'), timesStirred: 6 })).toBe(lost(5, covered('lid')));
  }); // biome-ignore format: one list

  it('feels cold, surface and time until it is spread', () => {
    expect(lost(0)).toBeLessThan(0.75 * lost(10));
    const area = { storeShareForm: 0 };
    expect(lost(10, { ...area, storeSurfaceGivenM2: 84 })).toBeGreaterThan(1.7 * lost(10, area));
    expect(lost(10, { spreadDay: 330 })).toBeGreaterThan(1.3 * lost(10, { spreadDay: 180 }));
    expect(lost(10, { spreadDay: 60 })).toBe(lost(10));
  });

  it('takes its surface from volume and depth, or from the open store that catches rain', () => {
    const surface = (more = {}) =>
      run(['slurry'], { ...STORE, storeSurfaceGivenM2: Number.NaN, slurryWaterInKg: 120_000, storeDryMatterLossFraction: 0, slurryDensityKgPerM3: 1000, ...more })[0].storeSurfaceM2;
    expect(surface({ storeDepthM: 3 })).toBeCloseTo(40, 9);
    expect(surface({ storeDepthM: 3, openStoreM2: 70 })).toBe(70);
    expect(surface({ storeDepthM: 3, storeSurfaceGivenM2: 55 })).toBe(55);
    expect(surface({ storeDepthM: 3, pitStoreShare: 1 })).toBe(0);
  }); // biome-ignore format: one row
});

describe('methane of stored slurry', () => {
  const share = (weekC: number, more = {}) =>
    run(['slurry'], { ...STORE, winterDays: 182, methaneFixedForm: 0, methaneLowestC: 4, ...more }, weekC)[0].storeMethaneFraction;

  it('filled evenly over six months: 0.110 at 5 °C and 0.194 at 10 °C (regression check)', () => {
    expect(share(5)).toBeCloseTo(0.1097, 2);
    expect(share(10)).toBeCloseTo(0.1943, 2);
  });

  it('lies near the recalled shares of the guidelines for six months, 14 % cool and 21 % temperate (IPCC 2019, from memory)', () => {
    expect(Math.abs(share(4.6) - 0.14)).toBeLessThan(0.05);
    expect(Math.abs(share(10) - 0.21)).toBeLessThan(0.05);
  });

  it('rises with warmth and waiting, falls where the store was emptied clean', () => {
    expect(share(15)).toBeGreaterThan(2 * share(5));
    expect(share(10, { spreadDay: 330 })).toBeGreaterThan(1.3 * share(10));
    expect(share(10, { emptiedCleanShare: 1 })).toBeCloseTo(share(10) * central('cleanStoreMethaneFactor'), 9);
  });

  it('takes the table or the Nordic share in the other forms', () => {
    const fixed = { methaneFixedForm: 1, slurryMethaneFraction: 0.17 };
    expect(share(5, { ...fixed, methaneNordicForm: 0 })).toBeCloseTo(0.17, 9);
    expect(share(15, { ...fixed, methaneNordicForm: 1 })).toBeCloseTo(0.035, 9);
  });

  it('is that of the pit where slurry stays under the slats, warmer than outside', () => {
    expect(share(2, { pitStoreShare: 1 })).toBeGreaterThan(share(2));
  });
}); // biome-ignore format: one row
