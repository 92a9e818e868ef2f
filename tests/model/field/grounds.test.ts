/** Worked by hand from the same equations: these hold the arithmetic still and prove nothing of the world. */
import { describe, expect, it } from 'vitest';
import { nitrificationRate, nitrifiedFraction } from '../../../src/model/field/nitrification.ts';
import { coveredHa } from '../../../src/model/field/patches.ts';
import {
  smotheredFraction,
  springGrassKgPerHa,
  treadingLossFraction,
} from '../../../src/model/field/treading.ts';
import { alone } from './alone.ts';

describe('the grounds of the paddock (regression checks)', () => {
  it.each([
    [16, 180, 6, 0.16272],
    [32, 150, 9, 0.1791],
    [72, 30, 1, 0.5503],
  ])('%i head for %i days on %i ha cover their share of it once', (head, days, hectares, covered) => {
    const patchHa = (head * days * 10 * 0.37) / 10_000;
    expect(coveredHa(patchHa, hectares) / hectares).toBeCloseTo(covered, 4);
  });

  it('halves ammonium in 5.6, 4.9 and 3.9 weeks at 0, 2 and 5 °C', () => {
    for (const [temperature, weeks] of [
      [0, 5.6],
      [2, 4.9],
      [5, 3.9],
    ] as const) {
      const kept = 1 - nitrifiedFraction(temperature, 0, nitrificationRate(0.22), 0.0693, 10, 0);
      expect(Math.log(0.5) / Math.log(kept)).toBeCloseTo(weeks, 1);
    }
    expect((1 - nitrifiedFraction(2, 0, nitrificationRate(0.22), 0.0693, 10, 0)) ** 20).toBeCloseTo(0.058, 3);
  });

  it('takes 30 % of spring growth with 100 wet cow-days a hectare of loam and 66 % with 300', () => {
    expect(treadingLossFraction(100, 0.36)).toBeCloseTo(0.302, 3);
    expect(treadingLossFraction(300, 0.36)).toBeCloseTo(0.66, 3);
  });

  it('takes 600 kg of spring grass a hectare for 75 days, 360 net of what is regained', () => {
    expect(springGrassKgPerHa(75, 16, 600, 0)).toBe(600);
    expect(9 * springGrassKgPerHa(75, 16, 600, 0.4)).toBeCloseTo(3240, 9);
    expect(springGrassKgPerHa(20, 16, 600, 0)).toBe(320);
  });

  it('smothers nothing under nothing, and more under more', () => {
    expect(smotheredFraction(0, 0.7)).toBe(0);
    expect(smotheredFraction(0.7, 0.7)).toBeCloseTo(1 / Math.E, 12);
    expect(smotheredFraction(7, 0.7)).toBeGreaterThan(0.9);
  });

  it('loses 34.6 kg of 576 kg potassium past the roots, 34.6 over frozen ground and some 13 to drainage', () => {
    const out = alone(
      ['paddockPotassiumRunoffKg', 'paddockPotassiumBypassKg', 'paddockPotassiumLeachedKg'],
      {
        paddockPotassiumInKg: 576, urinePotassiumFraction: 0.8, frozenWinterFraction: 0.5, paddockWashMm: 60, rainMm: 300,
        frozenPotassiumWashFraction: 0.6, wetDays: 90, winterDays: 180, urineBypassFraction: 0.125, potassiumBypassPerNitrogen: 1.2,
        drainageMm: 250, potassiumLeachedFraction: 0.07, potassiumLeachReferenceMm: 250,
      }, // biome-ignore format: one row
    );
    expect(out.paddockPotassiumBypassKg[0]).toBeCloseTo(34.56, 9);
    expect(out.paddockPotassiumRunoffKg[0]).toBeCloseTo(34.56, 9);
    // By hand 0.07 × 195.8 = 13.7; levelling off, 1 − e^(−0.07) of it.
    expect(out.paddockPotassiumLeachedKg[0]).toBeCloseTo(195.84 * -Math.expm1(-0.07), 9);
  });
});
