/** What must hold of bed and heap for any inputs in reach: nothing appears, nothing vanishes, more is not less. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rateByMoisture, rateByTemperature } from '../../src/model/bed/haug.ts';
import { MATERIALS } from '../../src/notebook/schema.ts';
import { type Case, runCase, runCases } from '../model/bedCase.ts';

/** A thousand even steps: the ends are met, numbers no farm has (1e-300 m) are not. */
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1000 }).map((step) => min + ((max - min) * step) / 1000);

/** A herd's excreta and wasted feed on a bed; bedding is added by the stage and summed in below. */
const herd = fc.record({
  winterDays: fc.integer({ min: 1, max: 370 }),
  liveWeightKg: between(0, 40_000),
  beddingRateKgPer100Kg: between(0, 3),
  startDepthM: between(0, 0.6),
  shedLengthM: between(0, 60),
  shedDepthM: between(3, 15),
  stanceDepthM: between(0, 6),
  excretaDry: between(0, 30_000),
  waterPerDry: between(0, 12),
  carbon: between(0.35, 0.5),
  nitrogen: between(0.01, 0.06),
  tan: between(0, 0.8),
  wastedDry: between(0, 5000),
  everyWeekC: between(-25, 25),
  packDecayAt20CPerDay: between(0, 0.05),
  packDecayEvenPerDay: between(0, 0.03),
  packDecayEvenForm: between(0, 1),
  bedTopAirFraction: between(0.05, 0.6),
  bedWetRestFraction: between(0, 1),
  bedWindMPerS: between(0, 4),
  bedStirredPerWeek: between(0, 14),
  bedAmmoniaTanFraction: between(0, 1),
  bedAmmoniaForm: between(0, 1),
  bedNitrousFraction: between(0, 0.1),
  immobilisationScale: between(0, 3),
  rainPerWeekMm: between(0, 60),
});
type Herd = typeof herd extends fc.Arbitrary<infer T> ? T : never;

const mix = fc
  .uniqueArray(fc.tuple(fc.constantFrom(...MATERIALS), between(0.05, 1)), {
    minLength: 1,
    maxLength: 3,
    selector: ([material]) => material,
  })
  .map((parts) => {
    const total = parts.reduce((sum, [, share]) => sum + share, 0);
    return parts.map(([material, share]) => ({ material, share: share / total }));
  });

/** Turns a herd into the columns of the stages: what bedding brings is read off a first run of its stage. */
function toCase(
  h: Herd,
  parts: Case['mix'],
  way = 'turned',
  cover = 'open',
  more: Record<string, number> = {},
): Case {
  const { excretaDry, waterPerDry, carbon, nitrogen, tan, wastedDry, immobilisationScale, ...columns } = h;
  const bedding = { ...pick(columns), bedShare: 1, ...more };
  const brought = runCase(['bedding'], { columns: bedding, mix: parts }).values;
  return {
    columns: {
      ...columns,
      bedShare: 1,
      bedDropShare: 0.85,
      microbeYieldFraction: 0.35 * immobilisationScale,
      packDryMatterInKg: excretaDry + wastedDry + brought.dryMatterMaterialKg,
      packWaterInKg: excretaDry * waterPerDry + wastedDry * 0.5 + brought.waterMaterialKg,
      packCarbonInKg: excretaDry * carbon + wastedDry * 0.45 + brought.carbonMaterialKg,
      packNitrogenInKg: excretaDry * nitrogen + wastedDry * 0.015 + brought.nitrogenMaterialKg,
      packTanInKg: excretaDry * nitrogen * tan,
      packPhosphorusInKg: excretaDry * 0.007 + wastedDry * 0.002 + brought.phosphorusMaterialKg,
      packPotassiumInKg: excretaDry * 0.03 + wastedDry * 0.02 + brought.potassiumMaterialKg,
      packDryMatterWastedKg: wastedDry,
      dryMatterWastedKg: wastedDry,
      carbonWastedKg: wastedDry * 0.45,
      packNitrogenWastedKg: wastedDry * 0.015,
      ...more,
    },
    mix: parts,
    way,
    cover,
  };
}

const pick = (
  columns: Omit<
    Herd,
    'excretaDry' | 'waterPerDry' | 'carbon' | 'nitrogen' | 'tan' | 'wastedDry' | 'immobilisationScale'
  >,
) => ({
  winterDays: columns.winterDays,
  liveWeightKg: columns.liveWeightKg,
  beddingRateKgPer100Kg: columns.beddingRateKgPer100Kg,
  startDepthM: columns.startDepthM,
  shedLengthM: columns.shedLengthM,
  shedDepthM: columns.shedDepthM,
  stanceDepthM: columns.stanceDepthM,
});

/** A heap of any length, weather, turnings and amendments, by either form. */
const heapOf = fc.record({
  compostDaysGiven: fc.integer({ min: 0, max: 900 }),
  compostTurns: fc.integer({ min: 0, max: 20 }),
  compostCompacted: fc.constantFrom(0, 1),
  cleanOutDay: fc.integer({ min: 1, max: 500 }),
  everyWeekC: between(-25, 30),
  rainPerWeekMm: between(0, 80),
  heapAmmoniaForm: fc.constantFrom(0, 1),
  heapDinitrogenForm: fc.constantFrom(0, 1),
  heapHeatingForm: fc.constantFrom(0, 1),
  amendments: fc.array(
    fc.record({ material: fc.constantFrom('barleyStraw', 'softwoodChips', 'peat'), tonnes: between(0, 60) }),
    { maxLength: 3 },
  ),
});

const ALL = ['bedding', 'bed', 'compost'];
/** A bed as most lie: trodden, never stirred, its rows in their spans. */
const atRest = {
  packDecayAt20CPerDay: 0.008,
  bedTopAirFraction: 0.3,
  bedWetRestFraction: 0.5,
  bedWindMPerS: 0.3,
  bedStirredPerWeek: 0,
} as const;
const close = (a: number, b: number, of: number) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1e-6, Math.abs(of)));

describe('matter through bed and heap', () => {
  it('balances to one part in a thousand million', () => {
    fc.assert(
      fc.property(
        herd,
        mix,
        fc.constantFrom('turned', 'static', 'none'),
        fc.constantFrom('open', 'fleece', 'sheet', 'roof'),
        heapOf,
        (h, parts, way, cover, lies) => {
          const { amendments, ...columns } = lies;
          const laid = toCase(h, parts, way, cover);
          const c = { ...laid, columns: { ...laid.columns, ...columns }, amendments };
          const into = c.columns as Record<string, number>;
          const { values: v } = runCase(ALL, c);
          for (const [name, value] of Object.entries(v)) {
            expect(Number.isFinite(value), name).toBe(true);
            if (!/Lost|CarbonNitrogen|TemperatureC|WarmestC|PeakC$|AirC$/.test(name))
              expect(value, name).toBeGreaterThanOrEqual(-1e-9);
          }
          const nIn = into.packNitrogenInKg;
          close(nIn, v.bedAmmoniaKg + v.bedNitrousKg + v.bedDinitrogenKg + v.packNitrogenKg, nIn);
          const { heapNitrogenAddedKg: nAdded } = v;
          close(
            v.packNitrogenKg + nAdded,
            v.heapAmmoniaKg + v.heapNitrousKg + v.heapDinitrogenKg + v.heapLeachedKg + v.compostNitrogenKg,
            nIn + nAdded,
          );
          expect(v.heapAmmoniaKg + v.heapOtherGasKg + v.heapLeachedKg).toBeLessThanOrEqual(
            v.heapMineralKg + 1e-9 * nIn,
          );
          close(
            into.packTanInKg,
            v.bedAmmoniaKg + v.bedNitrousKg + v.bedDinitrogenKg + v.immobilisedKg + v.packTanKg,
            nIn,
          );
          expect(v.packTanKg).toBeLessThanOrEqual(v.packNitrogenKg + 1e-9 * nIn);
          expect(v.compostTanKg).toBeLessThanOrEqual(v.compostNitrogenKg + 1e-9 * nIn);
          close(into.packPhosphorusInKg, v.packPhosphorusKg, into.packPhosphorusInKg);
          close(
            v.packPhosphorusKg + v.heapPhosphorusAddedKg,
            v.compostPhosphorusKg + v.heapPhosphorusLostKg,
            into.packPhosphorusInKg + v.heapPhosphorusAddedKg,
          );
          close(into.packPotassiumInKg, v.packPotassiumKg, into.packPotassiumInKg);
          close(
            v.packPotassiumKg + v.heapPotassiumAddedKg,
            v.compostPotassiumKg + v.heapPotassiumLostKg,
            into.packPotassiumInKg + v.heapPotassiumAddedKg,
          );
          close(into.packCarbonInKg, v.packCarbonKg + v.bedCarbonLostKg, into.packCarbonInKg);
          close(
            v.packCarbonKg + v.heapCarbonAddedKg,
            v.compostCarbonKg + v.heapCarbonLostKg,
            into.packCarbonInKg + v.heapCarbonAddedKg,
          );
          close(
            v.packDryMatterKg + v.heapDryMatterAddedKg,
            v.compostDryMatterKg + v.heapDryMatterLostKg,
            into.packDryMatterInKg + v.heapDryMatterAddedKg,
          );
          const waterIn = v.packWaterKg + v.heapWaterAddedKg + v.heapRainInKg + 0.55 * v.heapDryMatterLostKg;
          close(waterIn, v.compostWaterKg + v.heapEvaporatedKg + v.heapDrainedKg, waterIn);
          expect(v.bedCarbonLostKg).toBeGreaterThanOrEqual(-1e-9 * into.packCarbonInKg);
          close(into.packDryMatterInKg, v.packDryMatterKg + v.bedDryMatterLostKg, into.packDryMatterInKg);
          expect(v.bedDryMatterLostKg).toBeGreaterThanOrEqual(-1e-9 * into.packDryMatterInKg);
          close(
            into.packWaterInKg + 0.55 * v.bedDryMatterLostKg,
            v.packWaterKg + v.bedEvaporatedKg,
            into.packWaterInKg + into.packDryMatterInKg,
          );
        },
      ),
      { numRuns: 150 },
    );
  });

  it('is the continuous answer where warmth is even: the weekly steps end on (1 − e^(−k·t))/(k·t)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 370 }),
        between(0.001, 0.05),
        between(10, 5000),
        between(-10, 20),
        (days, rate, dry, everyWeekC) => {
          // Dry matter without water and without heat: the rate is that of the air, and one all winter.
          const { values } = runCase(['bed'], {
            columns: {
              winterDays: days,
              packDryMatterInKg: dry,
              packDecayAt20CPerDay: rate / rateByMoisture(0),
              packDecayEvenForm: 0,
              excretaDegradableFraction: 0.4,
              everyWeekC,
              bedAirWarmerC: 0,
              rottingWaterKgPerKg: 0,
              bedHeatMjPerKgOxygen: 0,
              bedStockHeatMjPerM2Day: 0,
              bedWetRestFraction: 0,
            },
          });
          const k = rate * rateByTemperature(everyWeekC);
          const left = 0.6 + (0.4 * -Math.expm1(-k * days)) / (k * days);
          // The curve is read off by quarter degrees.
          expect(values.packDryMatterKg / (dry * left)).toBeCloseTo(1, 4);
        },
      ),
    );
  });
});

describe('an even rate of rotting', () => {
  it('is the continuous answer at any warmth: (1 − e^(−k·t))/(k·t) of what can rot', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 370 }),
        between(0.001, 0.03),
        between(-20, 20),
        (days, rate, everyWeekC) => {
          const { values } = runCase(['bed'], {
            columns: {
              winterDays: days,
              packDryMatterInKg: 1000,
              packDecayEvenPerDay: rate / rateByMoisture(0),
              packDecayEvenForm: 1,
              excretaDegradableFraction: 0.4,
              everyWeekC,
              rottingWaterKgPerKg: 0,
              bedWetRestFraction: 0,
            },
          });
          const left = 0.6 + (0.4 * -Math.expm1(-rate * days)) / (rate * days);
          expect(values.packDryMatterKg / (1000 * left)).toBeCloseTo(1, 6);
        },
      ),
    );
  });
});

describe('more bedding', () => {
  /**
   * Claimed of beds as they are kept, in any cold winter: where the bed is wetter than the added bedding with the
   * water of its own rotting, a higher rate ends no wetter. A warmer bed rots a little more of what is there, which
   * may make up for a thousandth.
   */
  it('never makes a wetter bed, while the bed is wetter than the bedding', () => {
    let tried = 0;
    const kept = fc.record({
      excretaPer100KgDay: between(0.5, 1.2),
      waterPerDry: between(5, 9),
      m2Per100Kg: between(0.7, 1.6),
      rate: between(0.3, 2),
    });
    fc.assert(
      fc.property(herd, mix, between(1.01, 2), kept, (h, parts, times, k) => {
        const { shedDepthM, liveWeightKg } = { shedDepthM: 9, liveWeightKg: Math.max(500, h.liveWeightKg) };
        const usual: Herd = {
          ...h,
          ...atRest,
          everyWeekC: Math.min(8, h.everyWeekC),
          liveWeightKg,
          shedDepthM,
          stanceDepthM: 3,
          shedLengthM: (k.m2Per100Kg * liveWeightKg) / 100 / 6,
          beddingRateKgPer100Kg: k.rate,
          excretaDry: (liveWeightKg / 100) * k.excretaPer100KgDay * h.winterDays,
          waterPerDry: k.waterPerDry,
          wastedDry: 0,
        };
        const [a, b] = runCases(ALL, [
          toCase(usual, parts),
          toCase({ ...usual, beddingRateKgPer100Kg: k.rate * times }, parts),
        ]);
        const dry = b.values.dryMatterMaterialKg - a.values.dryMatterMaterialKg;
        // What the added bedding holds at most once it has rotted as far as it can.
        const rots = b.values.degradableMaterialFraction;
        const water = (b.values.waterMaterialKg - a.values.waterMaterialKg) / dry + 0.55 * rots;
        const wettest = water / (water + 1 - rots);
        if (!(dry > 1e-6) || !(a.values.packMoisture > wettest)) return;
        tried++;
        expect(b.values.packMoisture).toBeLessThanOrEqual(a.values.packMoisture + 1e-3);
      }),
      { numRuns: 300 },
    );
    expect(tried).toBeGreaterThan(50);
  });

  it('of straw never loses more ammonia, and a third more than usual loses clearly less', () => {
    const straw = [{ material: 'barleyStraw', share: 1 }];
    let tried = 0;
    fc.assert(
      fc.property(herd, between(0.3, 2.5), between(1, 3), (h, rate, times) => {
        // As many animals as a bed may hold, and bedding and dung in the proportions of a bed.
        const liveWeightKg = Math.max(500, h.liveWeightKg);
        const kept: Herd = {
          ...h,
          ...atRest,
          // A bed of days dries below the air, and more straw warms that by a hair.
          winterDays: Math.max(28, h.winterDays),
          liveWeightKg,
          shedDepthM: 9,
          stanceDepthM: 3,
          shedLengthM: liveWeightKg / 600,
          everyWeekC: Math.min(12, h.everyWeekC),
          excretaDry: (liveWeightKg / 100) * 0.8 * Math.max(28, h.winterDays),
          waterPerDry: Math.max(4, h.waterPerDry),
          nitrogen: Math.max(0.02, h.nitrogen),
          tan: Math.max(0.35, h.tan),
          bedAmmoniaTanFraction: 0.08 + 0.17 * h.bedAmmoniaTanFraction,
        };
        const [a, b, usual, third] = runCases(ALL, [
          toCase({ ...kept, beddingRateKgPer100Kg: rate }, straw),
          toCase({ ...kept, beddingRateKgPer100Kg: rate * times }, straw),
          toCase({ ...kept, beddingRateKgPer100Kg: 1.3 }, straw),
          toCase({ ...kept, beddingRateKgPer100Kg: 1.3 * 1.33 }, straw),
        ]).map(({ values }) => values.bedAmmoniaKg);
        tried++;
        // Once the cut is whole, more straw only warms the bed: some millionths.
        expect(b).toBeLessThanOrEqual(a * (1 + 1e-5));
        if (usual > 0.01) expect(third / usual).toBeLessThan(0.78);
      }),
      { numRuns: 200 },
    );
    expect(tried).toBe(200);
  });
});

describe('more room', () => {
  it('never raises the bed faster, with the same animals and the same bedding a day', () => {
    fc.assert(
      fc.property(herd, mix, between(1, 4), (h, parts, times) => {
        const cold = { ...h, ...atRest, everyWeekC: Math.min(8, h.everyWeekC) };
        // A first layer grows with the room, and would be more bedding.
        const small = { ...cold, startDepthM: 0, shedLengthM: Math.max(1, h.shedLengthM), stanceDepthM: 0 };
        const [a, b] = runCases(ALL, [
          toCase(small, parts),
          toCase({ ...small, shedLengthM: small.shedLengthM * times }, parts),
        ]);
        for (let w = 0; w < a.weeks.weekPackDepthM.length; w++) {
          if (Number.isNaN(a.weeks.weekPackDepthM[w])) break;
          expect(b.weeks.weekPackDepthM[w]).toBeLessThanOrEqual(
            a.weeks.weekPackDepthM[w] * (1 + 1e-12) + 1e-12,
          );
        }
        expect(b.values.packMoisture).toBeLessThanOrEqual(1);
      }),
      { numRuns: 100 },
    );
  });

  /** Only without a loose first layer, which is trodden down, and in a cold winter: a bed that heats up may sink. */
  it('does not sink once it is laid, when it starts bare and is fed evenly', () => {
    fc.assert(
      fc.property(herd, mix, (h, parts) => {
        const cold = { ...h, ...atRest, everyWeekC: Math.min(3, h.everyWeekC) };
        const bare = { ...cold, startDepthM: 0, shedLengthM: Math.max(1, h.shedLengthM), stanceDepthM: 0 };
        const { weeks } = runCase(ALL, toCase(bare, parts));
        for (let w = 1; w < weeks.weekPackDepthM.length; w++) {
          if (Number.isNaN(weeks.weekPackDepthM[w])) break;
          expect(weeks.weekPackDepthM[w]).toBeGreaterThanOrEqual(weeks.weekPackDepthM[w - 1] * (1 - 1e-12));
        }
      }),
      { numRuns: 100 },
    );
  });
});
