/**
 * The bed against published, derived and common-practice figures. `derived` rows were worked out by hand from
 * named rows and only guard against change; where two readings of depth can be had, they outrank all of these.
 */
import { describe, expect, it } from 'vitest';
import { freeAirSpace } from '../../src/model/bed/freeAirSpace.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { scenarioOf, weatherOf } from '../farm.ts';
import { cowOnStraw, runCase, tables } from '../model/bedCase.ts';
import { beddingForMoisture } from '../reference/beddingDemand.ts';
import { tables as worldTables } from '../shippedTables.ts';
import { figure, recalled, sum } from './labels.ts';
import { type Check, eachCheck } from './packCheck.ts';

const PACK =
  'worked by hand: what a 650 kg cow of ASABE D384.2 (2005) drops, 70 % on 7 m², with 9 kg of straw a day';
const AIR = 'worked from the form of Agnew & Leonard 2003';

const cow = runCase(['bed'], { columns: cowOnStraw() });
const { values } = cow;

const CHECKS: readonly Check[] = [
  ['pack P', PACK, 'derived', () => values.packPhosphorusKg, 6.8, 0.005],
  ['pack K', PACK, 'derived', () => values.packPotassiumKg, 34.36, 0.005],
  ['air at 600 kg/m³, 65 %', AIR, 'derived', () => freeAirSpace(600, 0.65, 0.85), 0.486, 5e-4],
  ['air at 500 kg/m³, 70 %', AIR, 'derived', () => freeAirSpace(500, 0.7, 0.85), 0.561, 5e-4],
  [
    'air in a trodden bed of 778 kg/m³, 71.7 %',
    AIR,
    'derived',
    () => freeAirSpace(778, 0.717, 0.85),
    0.312,
    5e-4,
  ],
  [
    'air in a trodden bed of 900 kg/m³, 75 %',
    AIR,
    'derived',
    () => freeAirSpace(900, 0.75, 0.85),
    0.192,
    5e-4,
  ],
  [
    'air in finished compost of 650 kg/m³, 60 %',
    AIR,
    'derived',
    () => freeAirSpace(650, 0.6, 0.7),
    0.465,
    5e-4,
  ],
];

describe('the bed, figure by figure', () => eachCheck(CHECKS));

describe(sum('the water balance of the bed read backwards'), () => {
  // The reference solves for the bedding that holds a bed at a moisture; asked for the moisture the stage reached, it
  // must answer with the bedding the stage was given.
  it.each([60, 120, 180])('gives back the 9 kg of straw a day laid over %i days', (days) => {
    const columns = cowOnStraw(days);
    const v = runCase(['bed'], { columns: { ...columns, everyWeekC: 3 } }).values;
    const { packDryMatterKg, packMoisture } = v;
    const dryMatterLoss = 1 - packDryMatterKg / columns.packDryMatterInKg;
    const rotted = (columns.packDryMatterInKg * dryMatterLoss * columns.rottingWaterKgPerKg) / days;
    const bed = {
      excretaWaterKg: (columns.packWaterInKg - columns.waterMaterialKg) / days,
      excretaDryMatterKg: (columns.packDryMatterInKg - columns.dryMatterMaterialKg) / days,
      evaporatedKg: v.bedEvaporatedKg / days - rotted,
      dryMatterLoss,
    };
    expect(beddingForMoisture(bed, 0.14, packMoisture)).toBeCloseTo(9, 6);
  });
});

/** 16 made-up cows of 620 kg on about 1 m² per 100 kg, all rows central; `share` of ASABE excreta on the bed. */
const herd = (share: number, startDepthM = 0.3, everyWeekC = 0, form: Record<string, number> = {}) => {
  const days = 180;
  const head = 16;
  const dry = share * 6.6 * head * days;
  const water = share * (57 - 6.6) * head * days;
  const base = {
    winterDays: days,
    liveWeightKg: head * 620,
    bedShare: share,
    beddingRateKgPer100Kg: 1.3,
    startDepthM,
    shedLengthM: 16.5,
    shedDepthM: 9,
    stanceDepthM: 3,
  };
  const bedding = runCase(['bedding'], {
    columns: base,
    mix: [{ material: 'barleyStraw', share: 1 }],
  }).values;
  return runCase(['bedding', 'bed'], {
    columns: {
      ...base,
      everyWeekC,
      ...form,
      packDryMatterInKg: dry + bedding.dryMatterMaterialKg,
      packWaterInKg: water + bedding.waterMaterialKg,
      packCarbonInKg: 0.44 * dry + bedding.carbonMaterialKg,
      packNitrogenInKg: share * 0.19 * head * days + bedding.nitrogenMaterialKg,
      packTanInKg: 0.6 * share * 0.19 * head * days,
    },
    mix: [{ material: 'barleyStraw', share: 1 }],
  });
};

/**
 * Shares of the ASABE excreta on the bed. All of it, 57 kg a cow and day on 1 m² per 100 kg with 1.3 kg of straw, is more
 * than a bed holds: 79 % moisture, above the 78 % at which farmyard manure drains, where the model has a tight floor.
 * Such a bed rises 0.95 cm a day in the model, above what keepers know: a known miss, stated here and not tested away.
 */
const SHARES = [0.5, 0.7];

describe('the bed as keepers know it', () => {
  // Common practice, no source: a bed started 0.3 m deep stands about 0.9 m above the floor after a six-month
  // winter at usual stocking, at times 1.2–1.5 m.
  it.each(SHARES)(recalled('stands 0.9–1.5 m after six months with %s of the excreta on it'), (share) => {
    const { packDepthM } = herd(share).values;
    expect(packDepthM).toBeGreaterThan(0.9);
    expect(packDepthM).toBeLessThan(1.5);
  });

  // County Administrative Board of Jämtland 2020: 0.5 cm a day for a well-kept warm bed at about 1 m² per 100 kg
  // (published); its range 0.4–0.9 is derived. Common practice has the same figure without a source.
  it(figure('rises about half a centimetre a day at 1 m² per 100 kg'), () => {
    for (const share of SHARES) {
      const perDay = herd(share, 0).values.packDepthM / 180;
      expect(perDay).toBeGreaterThan(tables.coefficients.get('checkBedGrowthMPerDay')?.low ?? Number.NaN);
      expect(perDay).toBeLessThan(tables.coefficients.get('checkBedGrowthMPerDay')?.high ?? Number.NaN);
    }
  });

  // RB209 farmyard manure: 25 % dry matter, 6.0 kg N/t (published); deep litter 65–78 % moisture is recalled.
  it(figure('is as wet and as rich as farmyard manure'), () => {
    for (const share of SHARES) {
      const { packMoisture, packNitrogenKg, packTonnes } = herd(share).values;
      expect(packMoisture).toBeGreaterThan(0.6);
      expect(packMoisture).toBeLessThan(0.8);
      expect(packNitrogenKg / packTonnes).toBeGreaterThan(3.5);
      expect(packNitrogenKg / packTonnes).toBeLessThan(8);
    }
  });

  // RB209: 1.2 kg of readily available N a tonne of cattle farmyard manure spread from the building. Published; the span
  // of a fifth is ours. Held where the bed rots by its warmth. At the even rate more straw rots in a bed at 0 °C and
  // binds more: with it weighed in, a bed that takes half of what is dropped misses the fifth. A known miss: it speaks
  // against the even rate in the cold, and is not tested away. So does straw that binds at once, as the guidebook has it:
  // of hay-fed cows it would leave less than half of the fifth, of cows on silage and grain more than it.
  it(
    figure(
      'holds as much ammonium as fresh farmyard manure where it rots by its warmth, less at an even rate',
    ),
    () => {
      for (const share of SHARES) {
        const held = (packDecayEvenForm: number, bedBindingForm = 0) => {
          const { packTanKg, packTonnes } = herd(share, 0.3, 0, { packDecayEvenForm, bedBindingForm }).values;
          return packTanKg / packTonnes / 1.2;
        };
        expect(held(0)).toBeGreaterThan(0.8);
        expect(held(0)).toBeLessThan(1.2);
        expect(held(1)).toBeLessThan(held(0));
        expect(held(0, 1)).toBeLessThan(held(0));
      }
    },
  );

  // EMEP/EEA guidebook chapter 3.B: 0.08 (2019) to 0.23 kg ammonia N per kg TAN of solid-manure housing over a year.
  // From memory. Held at the yearly mean of north-west Europe; a winter gives less.
  it(recalled('gives the ammonia of the inventories at the mean of a year'), () => {
    for (const share of SHARES) {
      const lost = herd(share, 0.3, 9).values.bedAmmoniaKg / (0.6 * share * 0.19 * 16 * 180);
      expect(lost).toBeGreaterThan(0.08);
      expect(lost).toBeLessThan(0.23);
    }
  });
});

describe(sum('a bed that takes all that is dropped'), () => {
  it('is too wet to be one', () => {
    expect(herd(1).values.packMoisture).toBeGreaterThan(
      tables.coefficients.get('mixMoistureMost')?.high ?? Number.NaN,
    );
  });
});

describe(recalled('drying of beds (from memory)'), () => {
  // Pack drying studies, recalled: unstirred in winter 0.5 to 2 kg/m² a day, stirred and warm 2 to 4. The derivation
  // behind the model gives an unstirred winter bed 0.2 to 0.9; no measurement of one was found.
  const dries = (everyWeekC: number, bedStirredPerWeek: number) =>
    runCase(['bed'], { columns: { ...cowOnStraw(), everyWeekC, bedStirredPerWeek } }).values.bedEvaporatedKg /
    (7 * 180);
  it('lies at 0.2 to 0.9 unstirred in winter, at 2 to 4 stirred in mild air', () => {
    for (const air of [-5, 0, 5, 9]) {
      expect(dries(air, 0), String(air)).toBeGreaterThan(0.15);
      expect(dries(air, 0), String(air)).toBeLessThan(0.9);
    }
    expect(dries(12, 7)).toBeGreaterThan(2);
    expect(dries(12, 7)).toBeLessThan(4);
  });
});

describe(figure('warmth of beds'), () => {
  const warmest = (everyWeekC: number, bedStirredPerWeek: number) =>
    runCase(['bed'], { columns: { ...cowOnStraw(), everyWeekC, bedStirredPerWeek } }).values.packWarmestC;
  // 43.3 to 65 °C at 15 to 30 cm in stirred packs (Kentucky). Published.
  it('composts when stirred every day in mild air', () => {
    expect(warmest(12, 7)).toBeGreaterThan(43);
    expect(warmest(12, 7)).toBeLessThanOrEqual(65);
  });
  // Coarse wood does not heat (Bioforsk, deep litter of wood chips in northern Norway): nothing that rots, no heat.
  // Published in words.
  it('stays cold where little can rot', () => {
    const cow = cowOnStraw();
    const chips = {
      ...cow,
      degradableMaterialFraction: 0.08,
      degradableCarbonMaterialKg: 0.08 * cow.carbonMaterialKg,
    };
    const of = (columns: Record<string, number>) => runCase(['bed'], { columns }).values.packWarmestC;
    expect(of(chips)).toBeLessThan(of(cow));
    expect(of(chips)).toBeLessThan(25);
  });
});

describe(recalled('the bed at the end of the whole chain (common practice, no source)'), () => {
  // 16 cows of 620 kg fed hay or haylage, 99 m², straw at the default rate, every row central. Common practice,
  // no source: about 0.9 m, at times 1.2–1.5 m, from a 0.3 m start after six months.
  it.each(['hay', 'haylage', 'grassSilage'])('stands 0.9–1.5 m on %s', (feed) => {
    const scenario = scenarioOf(
      'deep-bedded',
      { bed: { mix: [{ material: 'barleyStraw', share: 1 }] }, shed: { lengthM: 16.5, depthM: 9 } },
      { feed: [{ feed, share: 1 }] },
    );
    const { results } = evaluate({ scenarios: [scenario], overrides: [] }, worldTables, () => weatherOf());
    const { values } = results[0];
    expect(values.packDepthM).toBeGreaterThan(0.9);
    expect(values.packDepthM).toBeLessThan(1.5);
    expect(values.packMoisture).toBeGreaterThan(0.6);
    expect(values.packMoisture).toBeLessThan(0.8);
  });
});
