import { describe, expect, it } from 'vitest';
import { WEEKS } from '../../../src/model/series.ts';
import { cowOnStraw, lastOf, runCase } from '../bedCase.ts';

const of = (columns: Record<string, number> = {}, days = 180) =>
  runCase(['bed'], { columns: { ...cowOnStraw(days), ...columns } });

describe('the bed by week', () => {
  it('ends where the winter ends, and stands still after', () => {
    const { values, weeks } = of({}, 180);
    const pairs = [
      ['weekPackDepthM', 'packDepthM'],
      ['weekPackDryMatterKg', 'packDryMatterKg'],
      ['weekPackWaterKg', 'packWaterKg'],
      ['weekPackCarbonKg', 'packCarbonKg'],
      ['weekPackNitrogenKg', 'packNitrogenKg'],
      ['weekPackTanKg', 'packTanKg'],
      ['weekPackPhosphorusKg', 'packPhosphorusKg'],
      ['weekPackPotassiumKg', 'packPotassiumKg'],
      ['weekPackMoisture', 'packMoisture'],
      ['weekPackCarbonNitrogen', 'packCarbonNitrogen'],
    ] as const;
    for (const [week, whole] of pairs) {
      expect(weeks[week].filter(Number.isFinite)).toHaveLength(26);
      expect(weeks[week].length).toBe(WEEKS);
      expect(lastOf(weeks[week]), week).toBeCloseTo(values[whole], 9);
    }
  });

  it('is the same bed whatever week the winter stops in', () => {
    const long = of({}, 180).weeks;
    const short = of({}, 84).values;
    expect(long.weekPackDryMatterKg[11]).toBeCloseTo(short.packDryMatterKg, 9);
    expect(long.weekPackWaterKg[11]).toBeCloseTo(short.packWaterKg, 9);
    expect(long.weekPackNitrogenKg[11]).toBeCloseTo(short.packNitrogenKg, 9);
    expect(long.weekPackTanKg[11]).toBeCloseTo(short.packTanKg, 9);
  });

  it('stays empty, without a number that is none, when nothing falls on it', () => {
    for (const days of [0, 180]) {
      const { values } = runCase(['bed'], { columns: { winterDays: days } });
      for (const [name, value] of Object.entries(values)) expect(value, name).toBe(0);
    }
  });

  it('keeps everything when the winter is longer than the weeks there are', () => {
    const { values } = of({ winterDays: 400 });
    expect(values.packPhosphorusKg).toBeCloseTo(cowOnStraw().packPhosphorusInKg, 9);
  });

  it('loses nothing where nothing decays, dries or flies off', () => {
    const still = {
      packDecayPerDay: 0,
      bedEvaporationKgPerM2Day: 0,
      bedAmmoniaTanFraction: 0,
      bedTanLossPerWeekFraction: 0,
      bedNitrousFraction: 0,
    };
    const { values } = of(still);
    const cow = cowOnStraw();
    expect(values.packDryMatterKg).toBeCloseTo(cow.packDryMatterInKg, 8);
    expect(values.packWaterKg).toBeCloseTo(cow.packWaterInKg, 8);
    expect(values.packCarbonKg).toBeCloseTo(cow.packCarbonInKg, 8);
    expect(values.packNitrogenKg).toBeCloseTo(cow.packNitrogenInKg, 9);
    expect(values.immobilisedKg).toBe(0);
  });
});

describe('the first layer', () => {
  const layer = { startDepthM: 0.3, startDryMatterKg: 0.3 * 40 * 0.86 * 7 };

  it('lies loose at first and is trodden down', () => {
    const { weeks } = of(layer);
    const flat = of({ ...layer, startLayerSettlingDays: 1e-6 }).weeks;
    expect(weeks.weekPackDepthM[0]).toBeGreaterThan(flat.weekPackDepthM[0] + 0.05);
    expect(lastOf(weeks.weekPackDepthM)).toBeCloseTo(lastOf(flat.weekPackDepthM), 3);
  });

  it('rots from the first day, longer than what is laid later', () => {
    const early = of({ startDryMatterKg: 700 }).values;
    const late = of().values;
    // The same straw in all; more of it has lain the whole winter.
    expect(early.packDryMatterKg).toBeLessThan(late.packDryMatterKg);
    expect(early.packPhosphorusKg).toBeCloseTo(late.packPhosphorusKg, 9);
  });
});

describe('water of the bed', () => {
  it('cannot dry below air-dry bedding, however much room it has', () => {
    const { values } = of({ bedM2: 5000 });
    expect(values.packMoisture).toBeCloseTo(0.15, 9);
    expect(values.packWaterKg).toBeGreaterThan(0);
  });

  it('holds no air where the density asked for cannot be', () => {
    expect(of({ packDryDensityKgPerM3: 600 }).values.packFreeAirSpace).toBe(0);
  });
});

describe('nitrogen of the bed', () => {
  it('is bound as the bedding rots, and never beyond the ammonium there is', () => {
    const much = of({ immobilisationKgPerKg: 1 }).values;
    expect(much.packTanKg).toBeCloseTo(0, 9);
    expect(much.immobilisedKg).toBeLessThan(cowOnStraw().packTanInKg);
    const little = of().values;
    const straw = cowOnStraw().dryMatterMaterialKg;
    // What rots of it in 180 fed days: 1 − 0.4637 of its degradable part.
    expect(little.immobilisedKg).toBeCloseTo(0.0067 * straw * (1 - 0.4637), 2);
  });

  it('flies off less from peat, more without a bedding that binds', () => {
    const straw = of().values.bedAmmoniaKg;
    expect(of({ litterAmmoniaFactor: 0.45 }).values.bedAmmoniaKg).toBeLessThan(straw);
    expect(of({ immobilisationKgPerKg: 0 }).values.bedAmmoniaKg).toBeGreaterThan(straw);
  });

  it('keeps TAN within nitrogen and above nothing', () => {
    const { weeks } = of({ bedAmmoniaTanFraction: 1, bedNitrousFraction: 0.5 });
    for (let w = 0; w < 26; w++) {
      expect(weeks.weekPackTanKg[w]).toBeGreaterThanOrEqual(0);
      expect(weeks.weekPackTanKg[w]).toBeLessThanOrEqual(weeks.weekPackNitrogenKg[w]);
    }
  });
});
