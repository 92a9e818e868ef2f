/** The weeks of the deep bed: the walk that follows what is in it, and what is read off that walk week by week. */
import { walk } from '../engine/walk.ts';
import { WEEKS, week, winterDaysInWeek } from '../series.ts';
import { remainingShare } from './decay.ts';

/** A winter longer than the weekly series is spread over the weeks there are, so that nothing is lost. */
export const longestDays = (winterDays: number) => Math.min(winterDays, WEEKS * 7);

/** Weeks that lie in the winter, wholly or in part. */
const weeksOf = (winterDays: number) => Math.max(0, Math.min(WEEKS, Math.ceil(winterDays / 7)));

const atEndOfWeek = <const Reads extends string>(
  label: string,
  unit: string,
  formula: string,
  from: readonly Reads[],
) => week(label, unit, `${formula}; at the end of each week of the winter`, { from, when: 'packShare' });
const inBed = { unit: 'kg', when: 'packShare' } as const;

const TIME = ['winterDays', 'startLayerFraction', 'packDecayPerDay'] as const;
const DRY = [
  ...TIME, 'bedExcretaDryMatterKg', 'packDryMatterWastedKg', 'dryMatterMaterialKg', 'excretaDegradableFraction',
  'wastedFeedDegradableFraction', 'degradableMaterialFraction',
] as const; // biome-ignore format: one list
const CARBON = [
  ...TIME, 'bedExcretaCarbonKg', 'bedWastedCarbonKg', 'carbonMaterialKg', 'degradableCarbonMaterialKg',
  'excretaDegradableFraction', 'wastedFeedDegradableFraction',
] as const; // biome-ignore format: one list
const WATER = [
  ...DRY, 'packWaterInKg', 'waterMaterialKg', 'rottingWaterKgPerKg', 'bedEvaporationKgPerM2Day', 'bedM2',
  'bedDriestMoistureFraction',
] as const; // biome-ignore format: one list
const TAN = [
  ...TIME, 'packTanInKg', 'bedPromptAmmoniaFraction', 'bedSlowAmmoniaFraction', 'bedOtherGasKg', 'dryMatterMaterialKg',
  'immobilisationKgPerKg',
] as const; // biome-ignore format: one list

export const rotting = walk({
  name: 'bed',
  about: 'Dry matter, water, carbon and nitrogen of the deep bed by week, and what it loses.',
  reads: [
    ...DRY, 'bedExcretaCarbonKg', 'bedWastedCarbonKg', 'carbonMaterialKg', 'degradableCarbonMaterialKg', 'packWaterInKg',
    'waterMaterialKg', 'rottingWaterKgPerKg', 'bedEvaporationKgPerM2Day', 'bedM2', 'bedDriestMoistureFraction',
    'packTanInKg', 'bedPromptAmmoniaFraction', 'bedSlowAmmoniaFraction', 'bedOtherGasKg', 'immobilisationKgPerKg',
    'packNitrogenInKg', 'nitrogenMaterialKg',
  ], // biome-ignore format: one list
  makes: {
    bedAmmoniaKg: {
      ...inBed,
      label: 'ammonia from the bed (N)',
      formula:
        'each week: TAN dropped × share lost at once + TAN still free in the bed × share lost a week, both × factor of the litter',
      from: TAN,
      source: ['emep2016', 'emep2019', 'jeppsson1999'],
    },
    immobilisedKg: {
      ...inBed,
      label: 'nitrogen bound by bedding',
      formula:
        'each week the lower of the TAN left and what the bedding that has rotted so far can still bind',
      from: TAN,
      source: ['emep2019', 'kirchmannWitter1989'],
    },
    packDryMatterKg: {
      ...inBed,
      label: 'dry matter of the bed',
      formula:
        'all dry matter in × (1 − degradable share + degradable share × mean share still there after first-order decay)',
      from: DRY,
      source: ['haug1993'],
    },
    packWaterKg: {
      ...inBed,
      label: 'water in the bed',
      formula:
        'water in + water formed by rotting − water given to the air, by week; the bed dries no further than air-dry bedding',
      from: WATER,
    },
    bedEvaporatedKg: {
      ...inBed,
      label: 'water given to the air by the bed',
      formula: 'rate per m² and day × area × days, as far as there is water',
      from: WATER,
    },
    packCarbonKg: {
      ...inBed,
      label: 'carbon in the bed',
      formula: 'carbon in − carbon of the dry matter that rotted',
      from: CARBON,
    },
    packTanKg: {
      ...inBed,
      label: 'ammonium nitrogen in the bed',
      formula: 'TAN in − ammonia − nitrous oxide − dinitrogen − bound by bedding',
      from: TAN,
    },
    weekPackDryMatterKg: atEndOfWeek(
      'dry matter of the bed',
      'kg',
      'resistant + degradable still there',
      DRY,
    ),
    weekPackWaterKg: atEndOfWeek(
      'water in the bed',
      'kg',
      'water in + formed by rotting − evaporated',
      WATER,
    ),
    weekPackCarbonKg: atEndOfWeek('carbon in the bed', 'kg', 'carbon in − carbon rotted', CARBON),
    weekPackNitrogenKg: atEndOfWeek('nitrogen in the bed', 'kg', 'nitrogen in − losses', [
      ...TAN,
      'packNitrogenInKg',
      'nitrogenMaterialKg',
    ]),
    weekPackTanKg: atEndOfWeek(
      'ammonium nitrogen in the bed',
      'kg',
      'TAN in − losses − bound by bedding',
      TAN,
    ),
  },
  // Long: one walk through the weeks; its states hang on each other, and cut apart they would be walked several times.
  run({ count, read, write }) {
    for (let i = 0; i < count; i++) {
      const materialDry = read.dryMatterMaterialKg[i];
      const wastedDry = read.packDryMatterWastedKg[i];
      const excretaDry = read.bedExcretaDryMatterKg[i];
      const excretaCarbon = read.bedExcretaCarbonKg[i];
      const winterWeeks = weeksOf(read.winterDays[i]);
      const row = i * WEEKS;
      write.weekPackDryMatterKg.fill(Number.NaN, row + winterWeeks, row + WEEKS);
      write.weekPackWaterKg.fill(Number.NaN, row + winterWeeks, row + WEEKS);
      write.weekPackCarbonKg.fill(Number.NaN, row + winterWeeks, row + WEEKS);
      write.weekPackNitrogenKg.fill(Number.NaN, row + winterWeeks, row + WEEKS);
      write.weekPackTanKg.fill(Number.NaN, row + winterWeeks, row + WEEKS);
      if (
        materialDry === 0 &&
        wastedDry === 0 &&
        excretaDry === 0 &&
        excretaCarbon === 0 &&
        read.packWaterInKg[i] === 0 &&
        read.packNitrogenInKg[i] === 0 &&
        read.packTanInKg[i] === 0
      ) {
        // Nothing falls on a bed, or there is none: all of it is 0, and the weeks need not be walked.
        write.bedAmmoniaKg[i] = 0;
        write.immobilisedKg[i] = 0;
        write.packDryMatterKg[i] = 0;
        write.packWaterKg[i] = 0;
        write.bedEvaporatedKg[i] = 0;
        write.packCarbonKg[i] = 0;
        write.packTanKg[i] = 0;
        write.weekPackDryMatterKg.fill(0, row, row + winterWeeks);
        write.weekPackWaterKg.fill(0, row, row + winterWeeks);
        write.weekPackCarbonKg.fill(0, row, row + winterWeeks);
        write.weekPackNitrogenKg.fill(0, row, row + winterWeeks);
        write.weekPackTanKg.fill(0, row, row + winterWeeks);
        continue;
      }
      const days = longestDays(read.winterDays[i]);
      const perDay = days > 0 ? 1 / days : 0;
      const k = read.packDecayPerDay[i];
      const startShare = read.startLayerFraction[i];
      const dailyShare = 1 - startShare;
      const wastedCarbon = read.bedWastedCarbonKg[i];
      const materialCarbon = read.carbonMaterialKg[i];

      const dE = read.excretaDegradableFraction[i];
      const dW = read.wastedFeedDegradableFraction[i];
      const dM = read.degradableMaterialFraction[i];
      const degradableIn = (excretaDry * dE + wastedDry * dW + materialDry * dailyShare * dM) * perDay;
      const resistantIn =
        (excretaDry * (1 - dE) + wastedDry * (1 - dW) + materialDry * dailyShare * (1 - dM)) * perDay;
      const materialRotting = read.degradableCarbonMaterialKg[i];
      const rottingCarbonIn =
        (excretaCarbon * dE + wastedCarbon * dW + materialRotting * dailyShare) * perDay;
      const restingCarbonIn =
        (excretaCarbon * (1 - dE) +
          wastedCarbon * (1 - dW) +
          (materialCarbon - materialRotting) * dailyShare) *
        perDay;
      const waterIn = (read.packWaterInKg[i] - read.waterMaterialKg[i] * startShare) * perDay;
      const nitrogenIn = (read.packNitrogenInKg[i] - read.nitrogenMaterialKg[i] * startShare) * perDay;
      const tanIn = read.packTanInKg[i] * perDay;
      const bindsPerKg = read.immobilisationKgPerKg[i];
      const bindsIn = materialDry * dailyShare * bindsPerKg * perDay;
      const atOnce = read.bedPromptAmmoniaFraction[i];
      const perWeek = read.bedSlowAmmoniaFraction[i];
      const waterPerDryLeft = read.bedDriestMoistureFraction[i] / (1 - read.bedDriestMoistureFraction[i]);
      const rottingWater = read.rottingWaterKgPerKg[i];
      const driesPerDay = read.bedEvaporationKgPerM2Day[i] * read.bedM2[i];
      const gasPerDay = read.bedOtherGasKg[i] * perDay;

      let degradable = materialDry * startShare * dM;
      let resistant = materialDry * startShare * (1 - dM);
      let rottingCarbon = materialRotting * startShare;
      let restingCarbon = (materialCarbon - materialRotting) * startShare;
      let water = read.waterMaterialKg[i] * startShare;
      let nitrogen = read.nitrogenMaterialKg[i] * startShare;
      let tan = 0;
      // Microbes bind nitrogen as they eat: what the bedding can bind in all, and what they still lack.
      let binds = materialDry * startShare * bindsPerKg;
      let hungry = 0;
      let ammonia = 0;
      let bound = 0;
      let evaporated = 0;
      let keepWeek = Number.NaN;
      let keptDays = -1;

      for (let w = 0; w < winterWeeks; w++) {
        const at = row + w;
        const inWeek = winterDaysInWeek(w, days);
        if (inWeek !== keptDays) {
          keepWeek = remainingShare(k, inWeek);
          keptDays = inWeek;
        }
        // Even additions over the step leave (1 − e^(−k·t))/k days' worth behind.
        const fed = k > 0 ? (1 - keepWeek) / k : inWeek;
        const degradableNext = degradable * keepWeek + degradableIn * fed;
        const rotted = degradable + degradableIn * inWeek - degradableNext;
        degradable = degradableNext;
        resistant += resistantIn * inWeek;
        rottingCarbon = rottingCarbon * keepWeek + rottingCarbonIn * fed;
        restingCarbon += restingCarbonIn * inWeek;
        const dry = degradable + resistant;

        water += waterIn * inWeek + rotted * rottingWater;
        const dries = Math.min(driesPerDay * inWeek, Math.max(0, water - dry * waterPerDryLeft));
        water -= dries;
        evaporated += dries;

        const tanDropped = tanIn * inWeek;
        const prompt = tanDropped * atOnce;
        tan += tanDropped - prompt;
        const bindsNext = binds * keepWeek + bindsIn * fed;
        hungry += binds + bindsIn * inWeek - bindsNext;
        binds = bindsNext;
        const asGas = Math.min(tan, gasPerDay * inWeek);
        tan -= asGas;
        const taken = Math.min(hungry, tan);
        hungry -= taken;
        tan -= taken;
        bound += taken;
        const slow = tan * (inWeek === 7 ? perWeek : 1 - (1 - perWeek) ** (inWeek / 7));
        tan -= slow;
        ammonia += prompt + slow;
        nitrogen += nitrogenIn * inWeek - prompt - slow - asGas;

        write.weekPackDryMatterKg[at] = dry;
        write.weekPackWaterKg[at] = water;
        write.weekPackCarbonKg[at] = rottingCarbon + restingCarbon;
        write.weekPackNitrogenKg[at] = nitrogen;
        write.weekPackTanKg[at] = tan;
      }

      write.bedAmmoniaKg[i] = ammonia;
      write.immobilisedKg[i] = bound;
      write.packDryMatterKg[i] = degradable + resistant;
      write.packWaterKg[i] = water;
      write.bedEvaporatedKg[i] = evaporated;
      write.packCarbonKg[i] = rottingCarbon + restingCarbon;
      write.packTanKg[i] = tan;
    }
  },
});

const WHOLE = ['winterDays', 'startLayerFraction'] as const;

export const bedRise = walk({
  name: 'bed by week',
  about: 'What follows, week by week, from what is in the bed: its height, moisture and C:N, and P and K.',
  reads: [
    ...WHOLE, 'weekPackDryMatterKg', 'weekPackWaterKg', 'weekPackCarbonKg', 'weekPackNitrogenKg', 'packDryDensityKgPerM3', 'bedM2', 'startLooseM',
    'startLayerSettlingDays', 'packPhosphorusInKg', 'phosphorusMaterialKg', 'packPotassiumInKg', 'potassiumMaterialKg',
  ], // biome-ignore format: one list
  makes: {
    weekPackDepthM: atEndOfWeek(
      'height of the bed',
      'm',
      'dry matter ÷ dry density ÷ area + what is left of the loose first layer',
      [
        'winterDays',
        'weekPackDryMatterKg',
        'packDryDensityKgPerM3',
        'bedM2',
        'startLooseM',
        'startLayerSettlingDays',
      ],
    ),
    weekPackPhosphorusKg: atEndOfWeek('phosphorus in the bed', 'kg', 'all that came in', [
      ...WHOLE,
      'packPhosphorusInKg',
      'phosphorusMaterialKg',
    ]),
    weekPackPotassiumKg: atEndOfWeek('potassium in the bed', 'kg', 'all that came in', [
      ...WHOLE,
      'packPotassiumInKg',
      'potassiumMaterialKg',
    ]),
    weekPackMoisture: atEndOfWeek('moisture of the bed', 'fraction', 'water ÷ (water + dry matter)', [
      'winterDays',
      'weekPackWaterKg',
      'weekPackDryMatterKg',
    ]),
    weekPackCarbonNitrogen: atEndOfWeek('C:N of the bed', ':1', 'carbon ÷ nitrogen', [
      'winterDays',
      'weekPackCarbonKg',
      'weekPackNitrogenKg',
    ]),
  },
  run({ count, read, write }) {
    const { weekPackDryMatterKg, weekPackWaterKg, weekPackCarbonKg, weekPackNitrogenKg } = read;
    for (let i = 0; i < count; i++) {
      const row = i * WEEKS;
      const days = longestDays(read.winterDays[i]);
      const weeks = weeksOf(days);
      const perDay = days > 0 ? 1 / days : 0;
      const startShare = read.startLayerFraction[i];
      const area = read.bedM2[i];
      const density = read.packDryDensityKgPerM3[i];
      const depthPerKg = area > 0 && density > 0 ? 1 / density / area : 0;
      const looseM = read.startLooseM[i];
      const settlesPerDay = 1 / read.startLayerSettlingDays[i];
      let phosphorus = read.phosphorusMaterialKg[i] * startShare;
      let potassium = read.potassiumMaterialKg[i] * startShare;
      const phosphorusIn = (read.packPhosphorusInKg[i] - phosphorus) * perDay;
      const potassiumIn = (read.packPotassiumInKg[i] - potassium) * perDay;
      for (let w = 0; w < weeks; w++) {
        const at = row + w;
        const inWeek = winterDaysInWeek(w, days);
        const dry = weekPackDryMatterKg[at];
        const water = weekPackWaterKg[at];
        const nitrogen = weekPackNitrogenKg[at];
        const stillLooseM = looseM > 0 ? looseM * Math.exp(-(w * 7 + inWeek) * settlesPerDay) : 0;
        phosphorus += phosphorusIn * inWeek;
        potassium += potassiumIn * inWeek;
        write.weekPackDepthM[at] = dry * depthPerKg + stillLooseM;
        write.weekPackPhosphorusKg[at] = phosphorus;
        write.weekPackPotassiumKg[at] = potassium;
        write.weekPackMoisture[at] = water + dry > 0 ? water / (water + dry) : 0;
        write.weekPackCarbonNitrogen[at] = nitrogen > 0 ? weekPackCarbonKg[at] / nitrogen : 0;
      }
      write.weekPackDepthM.fill(Number.NaN, row + weeks, row + WEEKS);
      write.weekPackPhosphorusKg.fill(Number.NaN, row + weeks, row + WEEKS);
      write.weekPackPotassiumKg.fill(Number.NaN, row + weeks, row + WEEKS);
      write.weekPackMoisture.fill(Number.NaN, row + weeks, row + WEEKS);
      write.weekPackCarbonNitrogen.fill(Number.NaN, row + weeks, row + WEEKS);
    }
  },
});
