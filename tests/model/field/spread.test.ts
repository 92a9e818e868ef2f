import { describe, expect, it } from 'vitest';
import { TECHNIQUES } from '../../../src/notebook/schema.ts';
import { central, run } from '../nutrientRig.ts';

const LOAD = { slurryNitrogenKg: 300, slurryTanKg: 150, compostNitrogenKg: 400, compostTanKg: 20 };

describe('spread', () => {
  it('lets technique act on slurry only and working in on both', () => {
    const [plain, shoe, ploughed] = run(
      ['spreading'],
      [
        LOAD,
        { ...LOAD, spreadLossTechnique: central('spreadLossTechnique', 'trailingShoe') },
        { ...LOAD, incorporationHours: 0.5, incorporationForm: 0 },
      ],
    );
    expect(shoe.slurrySpreadAmmoniaKg).toBeLessThan(0.75 * plain.slurrySpreadAmmoniaKg);
    expect(shoe.compostSpreadAmmoniaKg).toBe(plain.compostSpreadAmmoniaKg);
    expect(plain.slurryWorkedInFactor).toBe(1);
    expect(ploughed.slurrySpreadAmmoniaKg / plain.slurrySpreadAmmoniaKg).toBeCloseTo(ploughed.slurryWorkedInFactor, 12);
    expect(ploughed.compostSpreadAmmoniaKg / plain.compostSpreadAmmoniaKg).toBeCloseTo(ploughed.compostWorkedInFactor, 12);
    expect(ploughed.slurryWorkedInFactor).toBeLessThan(0.5);
  }); // biome-ignore format: one case

  it.each([0, 1])('loses less with each technique that puts slurry deeper, form %i', (spreadTwoPoolForm) => {
    const names = [
      'spreadLossTechnique',
      'twoPoolFastTechnique',
      'twoPoolRateTechnique',
      'twoPoolSlowTechnique',
    ];
    const lost = TECHNIQUES.map((technique) => {
      const rows = Object.fromEntries(names.map((name) => [name, central(name, technique)]));
      return run(['spreading'], { ...LOAD, ...rows, spreadTwoPoolForm })[0].slurrySpreadAmmoniaKg;
    });
    expect(lost).toEqual([...lost].sort((a, b) => b - a));
    expect(new Set(lost).size).toBe(TECHNIQUES.length);
  });

  it.each([0, 1])('loses more on a warm, windy day and of thick slurry, form %i', (spreadTwoPoolForm) => {
    const at = (weekC: number, more = {}) =>
      run(['spreading'], { ...LOAD, spreadTwoPoolForm, slurryM3: 50, slurryDryMatterKg: 3000, ...more }, weekC)[0].slurrySpreadAmmoniaKg;
    const plain = at(8);
    expect(at(18)).toBeGreaterThan(1.1 * plain);
    expect(at(8, { spreadWindGivenMPerS: 6 })).toBeGreaterThan(1.1 * plain);
    expect(at(8, { slurryDryMatterKg: 4500 })).toBeGreaterThan(1.05 * plain);
  }); // biome-ignore format: one call

  it('loses no more TAN than there is, and less of solid manure in the cold', () => {
    const [all] = run(['spreading'], { ...LOAD, spreadLossIntercept: 40, spreadTwoPoolForm: 0, spreadDayEffect: 5 });
    expect(all.slurrySpreadAmmoniaKg).toBeCloseTo(150, 9);
    const [hot, cold, frost] = [40, 0, -40].map((weekC) => run(['spreading'], LOAD, weekC)[0].compostSpreadAmmoniaKg);
    expect(hot).toBe(20);
    expect(cold).toBeCloseTo(20 * 0.607 * Math.exp(-0.538), 9);
    expect(frost).toBeCloseTo(20 * 0.15, 9);
  }); // biome-ignore format: one list

  it('asks for no ground where no limit is set', () => {
    const [out] = run(['spreading'], { ...LOAD, nitrogenCapKgPerHa: 0, phosphorusCapKgPerHa: 0 });
    expect(out.areaNeededHa).toBe(0);
  });
});
