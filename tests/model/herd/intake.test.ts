import { describe, expect, it } from 'vitest';
import { run } from '../nutrientRig.ts';

const COW = {
  herdFactor: 1,
  winterDays: 100,
  group1HeadCount: 10,
  group1WeightKg: 600,
  group1IntakeFraction: 0.018,
  group1AppetiteShare: 1,
  appetiteRisePerC: 0,
  feed1Share: 1,
};

describe('intake', () => {
  it('to appetite is head × weight × share × days', () => {
    expect(run(['intake'], COW)[0].dryMatterEatenKg).toBeCloseTo(10 * 600 * 0.018 * 100, 9);
  });

  it('adds feed for milk', () => {
    const [dry, milking] = run(['intake'], [COW, { ...COW, group1MilkKgPerDay: 8, intakePerMilkKg: 0.3 }]);
    expect(milking.dryMatterEatenKg - dry.dryMatterEatenKg).toBeCloseTo(10 * 8 * 0.3 * 100, 9);
  });

  it('mixes feeds by share of dry matter and weighs them as they lie', () => {
    const [out] = run(['intake'], {
      ...COW,
      feedWasteFraction: 0.1,
      feed1Share: 0.6,
      feed1DryMatterFraction: 0.3,
      feed1CrudeProteinFraction: 0.14,
      feed2Share: 0.4,
      feed2DryMatterFraction: 0.86,
      feed2CrudeProteinFraction: 0.04,
    });
    const eaten = 10800;
    expect(out.nitrogenEatenKg).toBeCloseTo((eaten * (0.6 * 0.14 + 0.4 * 0.04)) / 6.25, 9);
    expect(out.dryMatterOfferedKg).toBeCloseTo(eaten / 0.9, 9);
    expect(out.feedTonnes).toBeCloseTo((eaten / 0.9 / 1000) * (0.6 / 0.3 + 0.4 / 0.86), 9);
    expect(out.feedTonnes * 100 - (out.dryMatterWastedKg + out.waterWastedKg)).toBeCloseTo(0, 9);
    expect(out.nitrogenWastedKg).toBeCloseTo(out.nitrogenEatenKg / 9, 9);
  });

  it('passes over a feed a shorter scenario does not have', () => {
    const [out] = run(['intake'], { ...COW, feed2Share: 0, feed2DryMatterFraction: 0 });
    expect(Number.isFinite(out.feedTonnes)).toBe(true);
  });
});
