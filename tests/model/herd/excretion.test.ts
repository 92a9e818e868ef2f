import { describe, expect, it } from 'vitest';
import { central, run } from '../nutrientRig.ts';

const HERD = {
  herdFactor: 1,
  winterDays: 90,
  group1HeadCount: 10,
  group1WeightKg: 600,
  dryMatterEatenKg: 9900,
  nitrogenEatenKg: 160,
  phosphorusEatenKg: 24,
  potassiumEatenKg: 190,
  digestibility: 0.6,
};

describe('excretion', () => {
  it('is what is eaten where nothing is kept', () => {
    const [out] = run(['herd', 'excretion'], HERD);
    expect([out.nitrogenExcretedKg, out.phosphorusExcretedKg, out.potassiumExcretedKg]).toEqual([
      160, 24, 190,
    ]);
  });

  it('leaves out gain, milk that leaves the herd, and half of a calf in half of its time', () => {
    const [out] = run(['herd', 'excretion'], {
      ...HERD,
      group1GainKgPerDay: 0.1,
      group1MilkKgPerDay: 2,
      group1PregnantShare: 1,
      conceptusGrowthDays: 180,
    });
    const kept = (gain: string, milk: string, calf: string) =>
      90 * central(gain) + 1800 * central(milk) + 10 * 0.5 * central(calf);
    expect(160 - out.nitrogenExcretedKg).toBeCloseTo(
      kept('gainNitrogenKgPerKg', 'milkNitrogenKgPerKg', 'calfNitrogenKg'),
      9,
    );
    expect(24 - out.phosphorusExcretedKg).toBeCloseTo(
      kept('gainPhosphorusKgPerKg', 'milkPhosphorusKgPerKg', 'calfPhosphorusKg'),
      9,
    );
    expect(190 - out.potassiumExcretedKg).toBeCloseTo(
      kept('gainPotassiumKgPerKg', 'milkPotassiumKgPerKg', 'calfPotassiumKg'),
      9,
    );
  });

  it('keeps milk in the balance that calves of the herd drink', () => {
    const calves = { group2HeadCount: 10, group2WeightKg: 100, group2MilkDrunkKgPerDay: 6 };
    const [none, drunk] = run(['herd', 'excretion'], [HERD, { ...HERD, group1MilkKgPerDay: 5, ...calves }]);
    expect(drunk.nitrogenExcretedKg).toBe(none.nitrogenExcretedKg);
  });

  it('adds the nutrients of weight lost', () => {
    const [out] = run(['herd', 'excretion'], {
      ...HERD,
      group1GainKgPerDay: -0.2,
      gainNitrogenKgPerKg: 0.025,
    });
    expect(out.nitrogenExcretedKg).toBeCloseTo(160 + 10 * 90 * 0.2 * 0.025, 9);
  });

  it('never lets animals keep more than the limit share of what they eat', () => {
    const [out] = run(['herd', 'excretion'], {
      ...HERD,
      phosphorusEatenKg: 2,
      group1GainKgPerDay: 1,
      retentionLimitFraction: 0.5,
    });
    expect(out.phosphorusExcretedKg).toBeCloseTo(1, 12);
  });

  it('holds TAN between its bounds on straw and on rich grass', () => {
    const [straw, grass] = run(
      ['herd', 'excretion'],
      [
        { ...HERD, nitrogenEatenKg: 50 },
        { ...HERD, nitrogenEatenKg: 600 },
      ],
    );
    expect(straw.tanExcretedKg / straw.nitrogenExcretedKg).toBeCloseTo(central('tanLowestFraction'), 12);
    expect(grass.tanExcretedKg / grass.nitrogenExcretedKg).toBeCloseTo(central('tanHighestFraction'), 12);
  });

  it('gives no less water than dung holds', () => {
    const [out] = run(['herd', 'excretion'], { ...HERD, waterIntakeKgPerKg: 0, urineWaterForm: 0 });
    const dung = 9900 * 0.4;
    const wet = central('faecesMoistureFraction');
    expect(out.waterExcretedKg).toBeCloseTo((dung * wet) / (1 - wet), 6);
    expect(out.dryMatterExcretedKg).toBeCloseTo(dung, 9);
  });
});
