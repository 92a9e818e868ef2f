/**
 * Heaps against published and derived figures. `derived` rows were worked out by hand from named rows and only
 * guard against change.
 */
import { describe, expect, it } from 'vitest';
import { heapEvaporation } from '../../src/model/bed/windrow.ts';
import { layerDepthMm } from '../../src/model/field/humus.ts';
import { alone, central, cowHeap, runCase } from '../model/bedCase.ts';
import { run } from '../model/nutrientRig.ts';
import { figure, fitted, tableRow } from './labels.ts';
import { type Check, eachCheck } from './packCheck.ts';

const HEAP =
  'worked by hand: bed of one cow that loses 45 % C, 35 % dry matter, 24.1 % N, 5 % K and 1 % P in the heap, no rain';
const RULE = 'trade note: 1000 t at 65 % compost to 500 t at 50 %';
const SPREAD = 'arithmetic on the compost of that cow, 22 kg P/ha of SJVFS 2004:62 recalled';

/** The bed of that cow as worked by hand, at 180 days. */
const pack = {
  packDryMatterInKg: 2224.8,
  packDryMatterKg: 1710.2,
  packWaterKg: 4340.23,
  packTonnes: 6.0504,
  packMoisture: 0.7173,
  packAshKg: 208.3,
  packNitrogenKg: 26.31,
  packM3: 7.774,
  packPhosphorusKg: 6.798,
  packPotassiumKg: 34.36,
  packCarbonKg: 763.06,
  packCarbonNitrogen: 763.06 / 26.31,
};
const heap: Readonly<Record<string, number>> = {
  ...pack,
  ...alone(
    [
      'compostCarbonKg', 'heapDryMatterLostKg', 'compostDryMatterKg', 'heapEvaporatedKg', 'compostWaterKg', 'compostTonnes',
      'compostM3', 'compostMoisture', 'compostNitrogenKg', 'compostCarbonNitrogen', 'heapPhosphorusLostKg',
      'compostPhosphorusKg', 'heapPotassiumLostKg', 'compostPotassiumKg',
    ], // biome-ignore format: one list
    {
      heapDryMatterInKg: pack.packDryMatterKg,
      heapAshInKg: pack.packAshKg,
      heapWaterInKg: pack.packWaterKg,
      heapCarbonInKg: pack.packCarbonKg,
      heapCarbonLostKg: 0.45 * pack.packCarbonKg,
      heapMatterPerCarbonKgPerKg: (0.35 * pack.packDryMatterKg) / (0.45 * pack.packCarbonKg),
      rottingWaterKgPerKg: 0.55,
      heapEvaporationKgPerKg: 4.6,
      heapEvaporationCoverFactor: 1,
      heapNitrogenInKg: pack.packNitrogenKg,
      heapAmmoniaKg: 0.2411 * pack.packNitrogenKg,
      heapPhosphorusInKg: pack.packPhosphorusKg,
      heapPotassiumInKg: pack.packPotassiumKg,
      heapWashedFraction: 0.05,
      heapPhosphorusWashFactor: 0.2,
      compostDensityKgPerM3: central('compostDensityKgPerM3.turned'),
    },
  ),
};
const perTonne = (kg: number) => kg / heap.compostTonnes;
/** Where that compost may go by the limits of the tables. */
const [ground] = run(['spreading'], {
  compostNitrogenKg: heap.compostNitrogenKg,
  compostPhosphorusKg: heap.compostPhosphorusKg,
});

/** 1000 t at 65 % that lose 100 t of matter. */
const ruled = (() => {
  const waterKg = 650_000 + 100_000 * central('rottingWaterKgPerKg');
  const driven = heapEvaporation(
    waterKg,
    250_000,
    100_000,
    central('heapEvaporationKgPerKg.turned'),
    central('heapDriestMoistureFraction'),
  );
  return { waterKg: waterKg - driven, massKg: waterKg - driven + 250_000 };
})();

const CHECKS: readonly Check[] = [
  ['compost dry matter', HEAP, 'derived', () => heap.compostDryMatterKg, 1112, 0.5],
  ['compost water', HEAP, 'derived', () => heap.compostWaterKg, 1916, 0.6],
  ['compost mass', HEAP, 'derived', () => 1000 * heap.compostTonnes, 3028, 0.6],
  ['compost, share of the bed', HEAP, 'derived', () => heap.compostTonnes / heap.packTonnes, 0.5, 0.001],
  ['compost moisture', HEAP, 'derived', () => heap.compostMoisture, 0.633, 5e-4],
  ['compost N', HEAP, 'derived', () => heap.compostNitrogenKg, 19.97, 0.006],
  ['compost P', HEAP, 'derived', () => heap.compostPhosphorusKg, 6.73, 0.005],
  ['compost K', HEAP, 'derived', () => heap.compostPotassiumKg, 32.64, 0.005],
  ['compost C', HEAP, 'derived', () => heap.compostCarbonKg, 419.7, 0.05],
  ['compost C:N', HEAP, 'derived', () => heap.compostCarbonNitrogen, 21, 0.05],
  ['compost N, kg/t', HEAP, 'derived', () => perTonne(heap.compostNitrogenKg), 6.6, 0.006],
  ['compost P, kg/t', HEAP, 'derived', () => perTonne(heap.compostPhosphorusKg), 2.22, 0.005],
  ['compost K, kg/t', HEAP, 'derived', () => perTonne(heap.compostPotassiumKg), 10.78, 0.005],
  ['compost C, kg/t', HEAP, 'derived', () => perTonne(heap.compostCarbonKg), 138.6, 0.06],
  ['volume at the end', HEAP, 'derived', () => heap.compostM3, 4.66, 0.005],
  [
    'volume lost against the loosened bed',
    HEAP,
    'derived',
    () => 1 - heap.compostM3 / ((1000 * heap.packTonnes) / 500),
    0.615,
    5e-4,
  ],
  [
    'volume lost against the trodden bed',
    HEAP,
    'derived',
    () => 1 - heap.compostM3 / heap.packM3,
    0.4,
    0.002,
  ],
  ['mass of 1000 t by our row, t', RULE, 'published', () => ruled.massKg / 1000, 500, 10],
  ['moisture of it', RULE, 'published', () => ruled.waterKg / ruled.massKg, 0.5, 0.01],
  ['t/ha at the P cap', SPREAD, 'derived', () => heap.compostTonnes / ground.areaForPhosphorusHa, 9.9, 0.005],
  ['t/ha at 170 kg N/ha', SPREAD, 'derived', () => heap.compostTonnes / ground.areaForNitrogenHa, 25.8, 0.05],
  [
    'layer at the P cap, mm',
    SPREAD,
    'derived',
    () => layerDepthMm(heap.compostM3, ground.areaForPhosphorusHa),
    1.52,
    0.005,
  ],
  [
    'N at the P cap',
    SPREAD,
    'derived',
    () => heap.compostNitrogenKg / ground.areaForPhosphorusHa,
    65.3,
    0.06,
  ],
  ['C at the P cap', SPREAD, 'derived', () => heap.compostCarbonKg / ground.areaForPhosphorusHa, 1372, 1],
];

describe('heaps, figure by figure', () => eachCheck(CHECKS));

describe(tableRow('rows of the heap'), () => {
  it(`water driven off a kilogram lost follows from the rule (${RULE}; published)`, () => {
    // 650 t of water, 100 t of matter lost and its water of rotting, 250 t of water left.
    const driven = (650 - 250 + 100 * central('rottingWaterKgPerKg')) / 100;
    expect(Math.abs(central('heapEvaporationKgPerKg.turned') - driven)).toBeLessThanOrEqual(0.06);
  });
  // Hao, Chang & Larney 2004: 301 kg dry matter and 174 kg carbon per t with straw, 268 and 154 with chips. Published.
  it('dry matter lost with a kilogram of carbon is that of both manures', () => {
    for (const perCarbon of [301 / 174, 268 / 154])
      expect(Math.abs(central('heapMatterPerCarbonKgPerKg') - perCarbon)).toBeLessThanOrEqual(0.02);
  });
  // Thomsen 2000: 46 % of dung nitrogen set free at 53 % of carbon lost; 24 % of carbon lost without air. Published.
  it('nitrogen set free and rotting without air follow from one trial', () => {
    expect(Math.abs(central('heapMineralisedFraction') - 0.46 / 0.53)).toBeLessThanOrEqual(0.005);
    const rate = (lost: number) => -Math.log(1 - lost / central('heapDegradableFraction')) / 86;
    expect(Math.abs(central('heapAirlessFactor') - rate(0.24) / rate(0.53))).toBeLessThanOrEqual(0.1);
  });
});

describe('heaps as measured', () => {
  const of = (way: string, cover: string, columns: Record<string, number> = {}) =>
    runCase(['bed', 'compost'], {
      columns: { ...cowHeap(), rainPerWeekMm: 12, ...columns },
      way,
      cover,
    }).values;
  const lost = (v: Readonly<Record<string, number>>) => 1 - v.compostNitrogenKg / v.packNitrogenKg;
  const summer = { compostTurns: 7, everyWeekC: 18, compostDaysGiven: 99 };

  // Michel et al. 2004: 2–38 % of N from turned windrows of bedded dairy manure of C:N 25 to 50. Published. The 19–42 %
  // of Eghball et al. 1997 are of feedlot manure of C:N 10 to 14 without straw, so no band for a bed of straw.
  it(figure('turned and open in summer, loses what turned windrows of bedded manure lost'), () => {
    expect(of('turned', 'open', summer).packCarbonNitrogen).toBeGreaterThan(20);
    expect(lost(of('turned', 'open', summer))).toBeGreaterThan(0.02);
    expect(lost(of('turned', 'open', summer))).toBeLessThan(0.38);
  });

  // Eghball et al. 1997: over 92 % of the loss was ammonia, by difference, from turned summer windrows. Published; the
  // two inventories we take dinitrogen from give more of it.
  it(figure('turned in summer, loses its gas mostly as ammonia'), () => {
    const { heapAmmoniaKg, heapOtherGasKg } = of('turned', 'open', summer);
    expect(heapAmmoniaKg / (heapAmmoniaKg + heapOtherGasKg)).toBeGreaterThan(0.7);
  });

  // Sommer & Dahl 1999: 10–19 % of carbon and 5–19 % of N, as printed, from static deep-litter heaps in a winter. The rates were
  // calibrated on it, so this only says that the parts still work together.
  it(fitted('left alone in winter, loses far less'), () => {
    const still = of('static', 'open', { everyWeekC: 5, compostDaysGiven: 197 });
    expect(lost(still)).toBeLessThan(0.15);
    expect(lost(still)).toBeGreaterThan(0.01);
    expect(still.heapCarbonLostKg / still.heapCarbonInKg).toBeGreaterThan(0.05);
    expect(still.heapCarbonLostKg / still.heapCarbonInKg).toBeLessThan(0.19);
    expect(lost(still)).toBeLessThan(lost(of('turned', 'open', summer)));
  });

  // NRAES-54 and Hao et al. 2004: C:N of finished manure compost 10–20, rich in wood to 28.
  it(figure('ends near the C:N of finished compost'), () => {
    expect(of('turned', 'fleece', summer).compostCarbonNitrogen).toBeGreaterThan(10);
    expect(of('turned', 'fleece', summer).compostCarbonNitrogen).toBeLessThan(28);
  });
});

/** The trials the rates were calibrated on: these hold the parts together and prove nothing. */
describe(fitted('heaps of the calibration'), () => {
  interface Trial {
    readonly carbonPerTonne: number;
    readonly nitrogenPerTonne: number;
    readonly columns: Readonly<Record<string, number>>;
    readonly way: string;
  }
  /** 100 t of dry matter at two thirds of water, a fifth of its nitrogen ammonium and a tenth of straw. */
  const trial = ({ carbonPerTonne, nitrogenPerTonne, columns, way }: Trial) => {
    const { values: v } = runCase(['compost'], {
      columns: {
        packDryMatterKg: 100_000,
        packDryMatterInKg: 100_000,
        packWaterKg: 200_000,
        packAshKg: 100_000 - (100 * carbonPerTonne) / 0.45,
        packCarbonKg: 100 * carbonPerTonne,
        packNitrogenKg: 100 * nitrogenPerTonne,
        packTanKg: 22 * nitrogenPerTonne,
        nitrogenMaterialKg: 10 * nitrogenPerTonne,
        compostLossFactor: 1,
        heapNitrogenFactor: 1,
        cleanOutDay: 180,
        ...columns,
      },
      way,
    });
    return {
      carbon: v.heapCarbonLostKg / v.heapCarbonInKg,
      ammonia: v.heapAmmoniaKg / v.heapNitrogenInKg,
    };
  };
  const winter = { everyWeekC: 5, compostDaysGiven: 197, rainPerWeekMm: 12 };
  it.each([
    ['untreated', { compostTurns: 0 }, 'static', 0.1],
    ['mixed once', { compostTurns: 1 }, 'turned', 0.19],
    ['compacted', { compostTurns: 0, compostCompacted: 1 }, 'static', 0.12],
  ] as const)('Sommer & Dahl 1999, %s: carbon lost', (_, how, way, lost) => {
    const made = trial({ carbonPerTonne: 400, nitrogenPerTonne: 22, columns: { ...winter, ...how }, way });
    // Within 0.03 by diffusion alone, on which the rates were set; warm air rising through the heap is half a form more.
    expect(Math.abs(made.carbon - lost)).toBeLessThanOrEqual(0.05);
  });
  it('Hao, Chang & Larney 2004, straw, 330.5 kg C/t to begin with: 52.8 % of carbon and 41.6 % of nitrogen, of which we give four fifths', () => {
    const columns = { everyWeekC: 18, compostDaysGiven: 99, compostTurns: 7, rainPerWeekMm: 10 };
    const made = trial({ carbonPerTonne: 330.5, nitrogenPerTonne: 19.95, columns, way: 'turned' });
    expect(made.carbon / 0.528).toBeGreaterThan(0.75);
    expect(made.carbon / 0.528).toBeLessThan(1);
    expect(made.ammonia / 0.416).toBeGreaterThan(0.6);
    expect(made.ammonia / 0.416).toBeLessThan(1);
  });
});
