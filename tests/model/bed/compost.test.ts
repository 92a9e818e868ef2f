import { describe, expect, it } from 'vitest';
import { cowHeap, runCase } from '../bedCase.ts';
import { isAmount } from '../parts.ts';

const of = (columns: Record<string, number> = {}, way = 'turned', cover = 'covered') =>
  runCase(['bed', 'compost'], { columns: { ...cowHeap(), compostTurns: 5, ...columns }, way, cover }).values;
const lost = (v: Readonly<Record<string, number>>) => v.packNitrogenKg - v.compostNitrogenKg;

describe('no heap', () => {
  it('passes the bed on as it is, in any weather', () => {
    const v = of({ rainPerWeekMm: 40 }, 'none', 'open');
    for (const matter of [
      'DryMatterKg',
      'WaterKg',
      'CarbonKg',
      'NitrogenKg',
      'TanKg',
      'PhosphorusKg',
      'PotassiumKg',
      'Tonnes',
    ])
      expect(v[`compost${matter}`], matter).toBe(v[`pack${matter}`]);
    for (const name of [
      'heapAmmoniaKg',
      'heapNitrousKg',
      'heapDinitrogenKg',
      'heapLeachedKg',
      'heapPhosphorusLostKg',
      'heapPotassiumLostKg',
    ])
      expect(v[name], name).toBe(0);
    expect(v.compostDays).toBe(0);
    expect(v.compostPeakClass).toBe(0);
  });
});

describe('a heap', () => {
  it('is empty, without a number that is none, when there is no bed', () => {
    for (const way of ['turned', 'static', 'none'])
      for (const days of [0, 180]) {
        const { values } = runCase(['bed', 'compost'], {
          columns: { winterDays: days, rainPerWeekMm: 20 },
          way,
        });
        for (const [name, value] of Object.entries(values))
          if (name !== 'heapRainMm' && isAmount(name)) expect(value, `${way} ${name}`).toBe(0);
      }
  });

  it('loses most turned and open, less covered, least left alone', () => {
    const rain = { rainPerWeekMm: 15 };
    expect(lost(of(rain, 'turned', 'open'))).toBeGreaterThan(lost(of(rain, 'turned', 'covered')));
    expect(lost(of(rain, 'turned', 'covered'))).toBeGreaterThan(lost(of(rain, 'static', 'covered')));
  });

  it('loses less nitrogen the richer it is in carbon', () => {
    const cow = cowHeap();
    const poor = of();
    const rich = of({
      packCarbonInKg: cow.packCarbonInKg * 1.3,
      carbonMaterialKg: cow.carbonMaterialKg * 1.6,
    });
    expect(rich.packCarbonNitrogen).toBeGreaterThan(poor.packCarbonNitrogen);
    expect(lost(rich)).toBeLessThan(lost(poor));
  });

  it('is washed by rain when open and not when covered', () => {
    const dry = of({ rainPerWeekMm: 0 }, 'turned', 'open');
    const wet = of({ rainPerWeekMm: 20 }, 'turned', 'open');
    const wetter = of({ rainPerWeekMm: 40 }, 'turned', 'open');
    expect(dry.heapLeachedKg).toBe(0);
    expect(dry.heapPotassiumLostKg).toBe(0);
    expect(wet.heapRainMm).toBeCloseTo((20 * 126) / 7, 9);
    for (const name of ['heapLeachedKg', 'heapPhosphorusLostKg', 'heapPotassiumLostKg', 'compostWaterKg'])
      expect(wetter[name], name).toBeGreaterThanOrEqual(wet[name]);
    expect(wet.heapPotassiumLostKg).toBeGreaterThan(
      of({ rainPerWeekMm: 20 }, 'turned', 'covered').heapPotassiumLostKg,
    );
    expect(of({ rainPerWeekMm: 40 }).compostWaterKg).toBeCloseTo(of({ rainPerWeekMm: 0 }).compostWaterKg, 9);
  });

  it('stalls dry rather than dry out: it keeps the moisture at which heaps stop', () => {
    const v = of({ packWaterInKg: 0.5 * cowHeap().packWaterInKg });
    expect(v.packMoisture).toBeLessThan(0.6);
    expect(v.compostMoisture).toBeGreaterThanOrEqual(0.45 - 1e-9);
    // A bed already drier than that stays as it is, but for the water rotting forms.
    const dry = of({ bedM2: 5000, bedWindMPerS: 3, everyWeekC: 15 });
    expect(dry.compostWaterKg).toBeCloseTo(dry.packWaterKg + dry.heapDryMatterLostKg * 0.55, 9);
  });

  it('never loses ash', () => {
    const v = of({ heapDryMatterLossFraction: 0.99, compostLossFactor: 3 });
    expect(v.compostDryMatterKg).toBeCloseTo(v.packAshKg, 9);
    expect(v.compostCarbonKg).toBeGreaterThanOrEqual(0);
  });

  it('takes longer with coarse wood, and when small and started in frost', () => {
    const cow = cowHeap();
    const plain = of().compostDays;
    expect(plain).toBe(126);
    expect(of({ coarseMaterialKg: 0.31 * cow.packDryMatterInKg }).compostDays).toBe(2 * plain);
    expect(of({ coarseMaterialKg: 0.29 * cow.packDryMatterInKg }).compostDays).toBe(plain);
    expect(of({ windrowHeightM: 1, everyWeekC: -5 }).compostDays).toBe(1.5 * plain);
    expect(of({ windrowHeightM: 1.5, everyWeekC: -5 }).compostDays).toBe(plain);
    expect(of({}, 'static').compostDays).toBe(365);
  });

  it('is called sanitised only when turned as often as the rule says', () => {
    // A bed dry enough to light.
    const packWaterInKg = 0.7 * cowHeap().packWaterInKg;
    expect(of({ packWaterInKg, compostTurns: 5 }).compostPeakClass).toBe(3);
    expect(of({ packWaterInKg, compostTurns: 4 }).compostPeakClass).toBe(2);
    expect(of({ packWaterInKg, compostTurns: 0 }).compostPeakClass).toBe(1);
    expect(of({ packWaterInKg, compostTurns: 9 }, 'static').compostPeakClass).toBe(1);
  });
});
