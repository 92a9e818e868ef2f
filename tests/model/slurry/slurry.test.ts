import { describe, expect, it } from 'vitest';
import { STORE_COVERS } from '../../../src/notebook/schema.ts';
import { central, run, total } from '../nutrientRig.ts';

const TANK = {
  herdFactor: 1,
  winterDays: 140,
  slurryShare: 1,
  slatsShare: 1,
  slatsTanKg: 300,
  slurryTanInKg: 300,
  slurryNitrogenInKg: 600,
  slurryDryMatterInKg: 18000,
  slurryWaterInKg: 130000,
  group1HeadCount: 20,
};

describe('slurry', () => {
  it('sums solids, water, wash and rain to volume', () => {
    const [plain, wet] = run(['slurry'], [
      { ...TANK, storeDryMatterLossFraction: 0, slurryDensityKgPerM3: 1000 },
      { ...TANK, storeDryMatterLossFraction: 0, slurryDensityKgPerM3: 1000, washLitresPerDay: 100, openStoreM2: 80, openYardM2: 20, yardRunoffFraction: 0.5, rainMm: 400 },
    ]); // biome-ignore format: two rows
    expect(plain.slurryM3).toBeCloseTo(148, 9);
    expect(wet.slurryM3 - plain.slurryM3).toBeCloseTo(14 + 90 * 0.4, 9);
  });

  it('catches no rain and no wash water where there is no slurry', () => {
    const [out] = run(['slurry'], {
      winterDays: 140,
      washLitresPerDay: 100,
      openStoreM2: 80,
      rainMm: 400,
    });
    expect([out.slurryM3, out.storeNeededM3]).toEqual([0, 0]);
  });

  it('takes the slatted area given, or that of the class a head', () => {
    const [given, absent] = run(
      ['slurry'],
      [
        { ...TANK, slatsM2: 90 },
        { ...TANK, slatsM2: Number.NaN },
      ],
    );
    expect(given.slatsUsedM2).toBe(90);
    expect(absent.slatsUsedM2).toBeCloseTo(20 * central('groupSlatsM2', 'sucklerCow'), 9);
  });

  it('loses no more TAN than there is when shares are overridden past all sense', () => {
    const [out] = run(['slurry'], { ...TANK, houseAmmoniaTanFraction: 9, storeAmmoniaTanFraction: 90, storeShareForm: 1, storeDinitrogenFraction: 0.9, storeNitrousFraction: 0.9 });
    expect(out.slurryTanKg).toBeGreaterThanOrEqual(-1e-9);
    expect(out.storeNitrousKg + out.storeDinitrogenKg).toBeCloseTo(out.storeTanKg, 9);
    expect(total(out, 'houseAmmoniaKg', 'storeAmmoniaKg', 'storeNitrousKg', 'storeDinitrogenKg', 'slurryNitrogenKg')).toBeCloseTo(600, 9);
  }); // biome-ignore format: one row

  it('keeps nitrogen in the order of the covers: lid, sheet, straw, none', () => {
    const kept = (store: (typeof STORE_COVERS)[number]) =>
      run(['slurry'], {
        ...TANK,
        storeDepthM: 3,
        storeAmmoniaFactor: central('storeAmmoniaFactor', store),
        storeNitrousFraction: central('storeNitrousFraction', store),
      })[0].slurryNitrogenKg;
    const order = (['lid', 'sheet', 'straw', 'none'] as const).map(kept);
    expect(order).toEqual([...order].sort((a, b) => b - a));
    expect(new Set(order).size).toBe(4);
    for (const store of STORE_COVERS) expect(kept(store), store).toBeGreaterThan(0);
  });
});
