import { describe, expect, it } from 'vitest';
import { run } from '../nutrientRig.ts';

// Every column a power of two, so that a sum shows exactly which columns are in it.
const COLUMNS = [
  'yardAmmoniaKg', 'paddockAmmoniaKg', 'houseAmmoniaKg', 'storeAmmoniaKg', 'bedAmmoniaKg', 'heapAmmoniaKg', 'spreadAmmoniaKg',
  'paddockNitrousKg', 'storeNitrousKg', 'bedNitrousKg', 'heapNitrousKg', 'soilNitrousKg', 'paddockDinitrogenKg',
  'storeDinitrogenKg', 'bedDinitrogenKg', 'heapDinitrogenKg', 'soilDinitrogenKg', 'paddockLeachedKg', 'heapLeachedKg',
  'soilLeachedKg', 'paddockRunoffKg', 'paddockNitrogenKeptKg', 'soilNitrogenKeptKg',
] as const; // biome-ignore format: one list
const row = Object.fromEntries(COLUMNS.map((name, k) => [name, 2 ** k]));
const everything = 2 ** COLUMNS.length - 1;

describe('ledger', () => {
  const [out] = run(['ledger'], { ...row, nitrogenExcretedKg: everything - 100, nitrogenBeddingKg: 100 });

  it('counts every loss once', () => {
    expect(
      out.nitrogenAmmoniaKg + out.nitrogenNitrousKg + out.nitrogenDinitrogenKg + out.nitrogenLeachedKg + out.nitrogenRunoffKg + out.nitrogenKeptKg,
    ).toBe(everything);
  }); // biome-ignore format: one sum

  it('ends the ladder at what is kept', () => {
    const below = ['paddockNitrousKg', 'paddockDinitrogenKg', 'paddockLeachedKg', 'soilNitrousKg', 'soilDinitrogenKg', 'soilLeachedKg'];
    expect(out.nitrogenInKg).toBe(everything);
    expect(out.nitrogenIntoSoilKg - below.reduce((sum, name) => sum + row[name], 0)).toBe(out.nitrogenKeptKg);
    expect(out.nitrogenOutOfHousingKg).toBeLessThan(out.nitrogenInKg);
    expect(out.nitrogenOutOfStoreKg).toBeLessThan(out.nitrogenOutOfHousingKg);
    expect(out.nitrogenIntoSoilKg).toBeLessThan(out.nitrogenOutOfStoreKg);
  }); // biome-ignore format: one list

  it('sums phosphorus, potassium and carbon', () => {
    const [sums] = run(['ledger'], {
      paddockPhosphorusLostKg: 1, slurryPhosphorusLostKg: 2, heapPhosphorusLostKg: 4, paddockPhosphorusKeptKg: 8, soilPhosphorusKeptKg: 16,
      paddockPotassiumLostKg: 1, slurryPotassiumLostKg: 2, heapPotassiumLostKg: 4, paddockPotassiumKeptKg: 8, soilPotassiumKeptKg: 16,
      paddockCarbonKeptKg: 1, soilCarbonKeptKg: 2,
    }); // biome-ignore format: one row
    expect([
      sums.phosphorusLostKg,
      sums.phosphorusKeptKg,
      sums.potassiumLostKg,
      sums.potassiumKeptKg,
      sums.carbonKeptKg,
    ]).toEqual([7, 24, 7, 24, 3]);
  });

  it('gives methane by route: 1 t of volatile solids, 0.67 kg/m³', () => {
    const factors = { volatileSolidsKg: 1000, methaneCapacityM3PerKg: 0.18, pastureMethaneCapacityM3PerKg: 0.19, pastureMethaneFraction: 0.0047, slurryMethaneFraction: 0.1, bedMethaneFraction: 0.17, compostMethaneFraction: 0.005 };
    const [pasture, slurry, pack] = run(['ledger'], [{ ...factors, paddockShare: 1 }, { ...factors, slurryShare: 1 }, { ...factors, packShare: 1 }]);
    expect(pasture.methaneKg).toBeCloseTo(1000 * 0.19 * 0.67 * 0.0047, 9);
    expect(slurry.methaneKg).toBeCloseTo(1000 * 0.18 * 0.67 * 0.1, 9);
    expect(pack.methaneKg).toBeCloseTo(1000 * 0.18 * 0.67 * 0.175, 9);
  }); // biome-ignore format: one row
});
