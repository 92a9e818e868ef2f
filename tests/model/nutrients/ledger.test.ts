import { describe, expect, it } from 'vitest';
import { run } from '../nutrientRig.ts';

// Every column a power of two, so that a sum shows exactly which columns are in it.
const COLUMNS = [
  'yardAmmoniaKg', 'paddockAmmoniaKg', 'houseAmmoniaKg', 'storeAmmoniaKg', 'bedAmmoniaKg', 'heapAmmoniaKg', 'spreadAmmoniaKg',
  'paddockNitrousKg', 'storeNitrousKg', 'bedNitrousKg', 'heapNitrousKg', 'soilNitrousKg', 'paddockDinitrogenKg',
  'storeDinitrogenKg', 'bedDinitrogenKg', 'heapDinitrogenKg', 'soilDinitrogenKg', 'paddockLeachedKg', 'heapLeachedKg',
  'soilLeachedKg', 'paddockOrganicLeachedKg', 'soilOrganicLeachedKg', 'paddockRunoffKg', 'paddockNitrogenKeptKg', 'soilNitrogenKeptKg',
] as const; // biome-ignore format: one list
const row = Object.fromEntries(COLUMNS.map((name, k) => [name, 2 ** k]));
const BEDDING = 100;
const everything = 2 ** COLUMNS.length - 1;
const remaining = row.paddockNitrogenKeptKg + row.soilNitrogenKeptKg;

describe('ledger', () => {
  const [out] = run(['ledger', 'kept'], {
    ...row,
    nitrogenExcretedKg: everything - BEDDING - 50,
    nitrogenWastedKg: 50,
    nitrogenMaterialKg: BEDDING,
  });

  it('counts every loss once', () => {
    const lost = out.nitrogenAmmoniaKg + out.nitrogenNitrousKg + out.nitrogenDinitrogenKg + out.nitrogenLeachedKg + out.nitrogenRunoffKg;
    expect(lost).toBe(everything - remaining);
    expect(out.nitrogenLostKg).toBe(lost);
  }); // biome-ignore format: one sum

  it("keeps the herd's own apart from what bedding brought", () => {
    expect(out.nitrogenRemainingKg).toBe(remaining);
    expect(out.nitrogenBroughtKg).toBe(BEDDING);
    expect(out.nitrogenKeptKg).toBe(remaining - BEDDING);
    const [strawAlone] = run(['ledger', 'kept'], { ...row, nitrogenMaterialKg: everything });
    expect(strawAlone.nitrogenKeptKg).toBe(0);
    expect(strawAlone.nitrogenBroughtKg).toBe(remaining);
  });

  it('says how much of what is there is used, bound or at risk', () => {
    const [split] = run(['ledger', 'kept'], {
      ...row, soilMineralKg: 100, groundNitrogenUsedKg: 60, paddockNitrogenAtRiskKg: 7, paddockNitrogenInCropKg: 50,
    }); // biome-ignore format: one row
    expect(split.nitrogenAtRiskKg).toBe(47);
    expect(split.nitrogenBoundKg + split.nitrogenAtRiskKg + 110).toBe(remaining);
  });

  it('ends the ladder at what is kept', () => {
    const below = ['paddockNitrousKg', 'paddockDinitrogenKg', 'paddockLeachedKg', 'paddockOrganicLeachedKg', 'soilNitrousKg', 'soilDinitrogenKg', 'soilLeachedKg', 'soilOrganicLeachedKg'];
    expect(out.nitrogenInKg).toBe(everything - BEDDING);
    expect(out.nitrogenIntoSoilKg - below.reduce((sum, name) => sum + row[name], 0)).toBe(out.nitrogenKeptKg);
    expect(out.nitrogenOutOfHousingKg).toBeLessThan(out.nitrogenInKg);
    expect(out.nitrogenOutOfStoreKg).toBeLessThan(out.nitrogenOutOfHousingKg);
    expect(out.nitrogenIntoSoilKg).toBeLessThan(out.nitrogenOutOfStoreKg);
  }); // biome-ignore format: one list

  it('sums phosphorus, potassium and carbon', () => {
    const [sums] = run(['ledger', 'kept'], {
      paddockPhosphorusLostKg: 1, slurryPhosphorusLostKg: 2, heapPhosphorusLostKg: 4, paddockPhosphorusKeptKg: 8, soilPhosphorusKeptKg: 16,
      paddockPotassiumLostKg: 1, slurryPotassiumLostKg: 2, heapPotassiumLostKg: 4, paddockPotassiumKeptKg: 8, soilPotassiumKeptKg: 16,
      phosphorusExcretedKg: 20, phosphorusWastedKg: 7, phosphorusMaterialKg: 4, potassiumMaterialKg: 1, potassiumExcretedKg: 30, potassiumWastedKg: 0,
      paddockCarbonKeptKg: 1, soilCarbonKeptKg: 2, compostCarbonKg: 2, carbonMaterialKg: 10, packCarbonInKg: 40, packCarbonKg: 20, heapCarbonInKg: 20,
    }); // biome-ignore format: one row
    expect([
      sums.phosphorusLostKg,
      sums.phosphorusKeptKg,
      sums.phosphorusBroughtKg,
      sums.potassiumLostKg,
      sums.potassiumKeptKg,
      sums.potassiumBroughtKg,
      sums.carbonKeptKg,
      sums.carbonBroughtKg,
    ]).toEqual([7, 20, 4, 7, 23, 1, 2.5, 0.5]);
  });

  it('gives methane by route: 1 t of volatile solids, 0.67 kg/m³', () => {
    const factors = { volatileSolidsKg: 1000, methaneCapacityM3PerKg: 0.18, pastureMethaneCapacityM3PerKg: 0.19, pastureMethaneFraction: 0.0047, storeMethaneFraction: 0.1, bedMethaneFraction: 0.17, compostMethaneFraction: 0.005 };
    const [pasture, slurry, pack] = run(['ledger'], [{ ...factors, paddockShare: 1 }, { ...factors, slurryShare: 1 }, { ...factors, packShare: 1 }]);
    expect(pasture.methaneKg).toBeCloseTo(1000 * 0.19 * 0.67 * 0.0047, 9);
    expect(slurry.methaneKg).toBeCloseTo(1000 * 0.18 * 0.67 * 0.1, 9);
    expect(pack.methaneKg).toBeCloseTo(1000 * 0.18 * 0.67 * 0.175, 9);
  }); // biome-ignore format: one row
});
