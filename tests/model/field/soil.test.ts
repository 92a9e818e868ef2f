import { describe, expect, it } from 'vitest';
import { runRows, smoothYear, type Turn } from '../fieldRig.ts';
import { isAmount, namesIn } from '../parts.ts';

const nordic = smoothYear(5, 12, 1.9);
const atlantic = smoothYear(9.5, 5, 3.2);
const run = (turns: readonly Turn[], picks = {}) =>
  runRows(['winter', 'soilWater', 'paddock', 'soil'], [nordic, atlantic], turns, picks, false).rows;

describe('the soil stage', () => {
  it('leaches far more of ammonium spread in autumn than in spring', () => {
    const ammonium = { slurryNitrogenReleasedKg: 0 };
    const [spring, autumn, winter] = run([165, 320, 20].map((spreadDay) => ({ ...ammonium, spreadDay })));
    expect(autumn.soilLeachedKg).toBeGreaterThan(4 * spring.soilLeachedKg);
    expect(winter.soilLeachedKg).toBeGreaterThan(5 * spring.soilLeachedKg);
  });

  it('timing matters on sand: most of what is spread in November drains, little of what is spread in April', () => {
    const [spring, october, november] = runRows(
      ['winter', 'soilWater', 'paddock', 'soil'],
      [nordic, atlantic],
      [165, 350, 14].map((spreadDay) => ({ spreadDay, weatherIndex: 1 })),
      { texture: 'sand' },
      false,
    ).rows;
    const mineral = spring.soilAmmoniumKg + spring.soilLaterAmmoniumKg;
    expect(spring.soilLeachedKg).toBeLessThan(0.1 * mineral);
    expect(october.soilLeachedKg).toBeGreaterThan(0.25 * mineral);
    expect(november.soilLeachedKg).toBeGreaterThan(0.4 * mineral);
  });

  it('drains what is mineralised too: more of it after autumn than after spring, and never more than there is', () => {
    const released = (spreadDay: number) => {
      const [without, more] = run([0, 40].map((slurryNitrogenReleasedKg) => ({ spreadDay, slurryNitrogenReleasedKg, weatherIndex: 1 })));
      return more.soilLeachedKg - without.soilLeachedKg;
    };
    const [spring, autumn] = [released(165), released(320)];
    expect(spring).toBeGreaterThan(0);
    expect(autumn).toBeGreaterThan(spring);
    expect(autumn).toBeLessThan(40);
  }); // biome-ignore format: one row

  it('leaches more where the same slurry lies on less ground, for the crop takes longer to empty it', () => {
    const [wide, narrow] = run([
      { weatherIndex: 0, receivingHa: 20 },
      { weatherIndex: 0, receivingHa: 0.5 },
    ]);
    expect(narrow.soilLeachedKg).toBeGreaterThan(wide.soilLeachedKg);
  });

  it('loses organic nitrogen beside nitrate, at most what is not released', () => {
    const [some, most] = run([
      { weatherIndex: 1, spreadDay: 320 },
      { weatherIndex: 1, spreadDay: 320, leachedOrganicKgPerKg: 1e6 },
    ]);
    expect(some.soilOrganicLeachedKg).toBeCloseTo(0.165 * some.soilLeachedKg, 9);
    expect(some.soilOrganicLeachedKg).toBeGreaterThan(0);
    expect(most.soilOrganicLeachedKg).toBeCloseTo(most.soilNitrogenInKg - most.soilMineralInKg, 9);
    expect(most.soilNitrogenKeptKg).toBeCloseTo(most.soilMineralKg, 9);
  });

  it('takes gases by the published share of what is spread', () => {
    const [row] = run([{}]);
    expect(row.soilNitrousKg).toBeCloseTo(0.006 * 464, 9);
    expect(row.soilDinitrogenKg).toBeCloseTo(3 * 0.006 * 464 + 0.0122 * 464, 9);
  });

  it('takes gases from what was spread mineral and from what is released, pro rata, and loses nothing on the way', () => {
    const [row] = run([{}]);
    const left = row.soilAmmoniumKg / 105;
    expect(row.soilLaterAmmoniumKg / 28).toBeCloseTo(left, 12);
    expect(row.soilAmmoniumKg + row.soilLaterAmmoniumKg + row.soilNitrousKg + row.soilDinitrogenKg).toBeCloseTo(133, 9);
    const organic = 336 - 105 - 28;
    expect(row.soilNitrogenKeptKg).toBeCloseTo(organic - row.soilOrganicLeachedKg + row.soilMineralKg, 9);
  }); // biome-ignore format: one sum

  it('takes no more gas than there is nitrogen', () => {
    const [row] = run([{ slurrySoilNitrogenKg: 2, slurrySoilTanKg: 2, slurryNitrogenReleasedKg: 0 }]);
    expect(row.soilNitrousKg + row.soilDinitrogenKg).toBeCloseTo(2, 9);
    expect(row.soilNitrogenKeptKg).toBeCloseTo(0, 9);
  });

  it('counts humus of slurry, compost and paddock, each by its share', () => {
    const [row] = run([{ slurryCarbonKg: 1000, compostCarbonKg: 2000, paddockCarbonInKg: 3000 }], {
      way: 'turned',
    });
    expect(row.humusCarbonKg).toBeCloseTo(1000 * 0.2 + 2000 * 0.5 + 3000 * 0.2, 9);
    expect(row.soilCarbonKeptKg).toBe(3000);
    const [raw] = run([{ slurryCarbonKg: 0, compostCarbonKg: 2000, paddockCarbonInKg: 0 }], { way: 'none' });
    expect(raw.humusCarbonKg).toBeCloseTo(600, 9);
  });

  it('lays 10 t/ha at 0.60 t/m³ 1.67 mm deep, and holds a modest amount of water for it', () => {
    const [row] = run([
      { compostM3: 100 / 0.6, receivingHa: 10, compostCarbonKg: 15_000, slurryCarbonKg: 0 },
    ]);
    expect(row.layerDepthMm).toBeCloseTo(1.667, 3);
    // 750 kg of stable carbon a hectare in 250 mm at 1.35 t/m³ is 0.0222 %; 1.16 mm per 100 mm and percent.
    expect(row.waterHeldMm).toBeCloseTo(1.16 * 2.5 * 0.02222, 4);
  });

  it('makes nothing of nothing, on no ground', () => {
    const none = Object.fromEntries(
      [
        'slurryNitrogenKg',
        'slurrySoilNitrogenKg',
        'slurrySoilTanKg',
        'slurryNitrogenReleasedKg',
        'slurryPhosphorusKg',
        'slurryPotassiumKg',
        'slurryCarbonKg',
        'paddockCarbonInKg',
        'receivingHa',
      ].map((name) => [name, 0]),
    );
    const [row] = run([none]);
    for (const name of namesIn(['soil'], 1).filter(isAmount)) expect([name, row[name]]).toEqual([name, 0]);
  });
});
