import { describe, expect, it } from 'vitest';
import { smoothYear } from '../fieldRig.ts';
import { alone } from './alone.ts';

const WEATHER = [smoothYear(9.5, 5, 3)];
const RESULTS = [
  'paddockBypassKg', 'paddockUrineBoundKg', 'paddockDinitrogenKg', 'paddockNitrousKg', 'weekPaddockOpenKg',
]; // biome-ignore format: one list
/** One cohort of 311 kg/ha in November on a silt loam: a patch of 0.37 m² ten times a day, 0.115 kg of urine nitrogen. */
const COHORT = {
  paddockTanDroppedKg: 311,
  paddockNitrogenInKg: 311,
  paddockUrineAmmoniaKg: 0.08 * 311,
  weekPaddockAmmoniumKg: [0.92 * 311],
  weekWetDays: [7],
  urineBypassFraction: 0.1,
  urineBoundFraction: 0.25,
  urineDinitrogenWetFraction: 0.1,
};

describe('urine in the soil', () => {
  it('splits a November cohort as worked by hand (regression check)', () => {
    const out = alone(RESULTS, COHORT, WEATHER);
    expect(out.paddockBypassKg[0]).toBeCloseTo(31.1, 9);
    expect(out.paddockUrineBoundKg[0]).toBeCloseTo(77.75, 9);
    expect(out.paddockDinitrogenKg[0]).toBeCloseTo(31.1, 9);
    expect(out.weekPaddockOpenKg[0]).toBeCloseTo(146.17, 9);
  });

  it('lets nothing run through where no day stands above field capacity', () => {
    const out = alone(
      RESULTS,
      { ...COHORT, weekWetDays: [0], urineDinitrogenDrainedFraction: 0.05 },
      WEATHER,
    );
    expect(out.paddockBypassKg[0]).toBe(0);
    expect(out.paddockDinitrogenKg[0]).toBeCloseTo(0.05 * 311, 9);
  });

  it('weighs two measurements of nitrogen gas by the form', () => {
    const co = { ...COHORT, urineCoDenitrificationFraction: 0.5 };
    const gas = (form: number) =>
      alone(RESULTS, { ...co, urineCoDenitrificationForm: form }, WEATHER).paddockDinitrogenKg[0];
    expect(gas(1)).toBeCloseTo(0.5 * 311, 9);
    expect(gas(0.3)).toBeCloseTo((0.7 * 0.1 + 0.3 * 0.5) * 311, 9);
  });

  it('takes no more than there is, in the order: through, bound, gas', () => {
    const out = alone(RESULTS, { ...COHORT, urineBoundFraction: 0.9, paddockNitrousFraction: 0.1 }, WEATHER);
    expect(out.paddockBypassKg[0] + out.paddockUrineBoundKg[0]).toBeCloseTo(0.92 * 311, 9);
    expect(out.paddockDinitrogenKg[0]).toBe(0);
    expect(out.paddockNitrousKg[0]).toBe(0);
    expect(out.weekPaddockOpenKg[0]).toBe(0);
  });
});
