/**
 * The deep bed, week by week: what falls on it and what is laid on it, what rots, dries and flies off, and how
 * it rises. Degradable matter decays at one rate, so each weekly step is the exact answer to even daily
 * additions. The floor is taken as tight and roofed: no P, K or liquid leaves it.
 *
 * Nitrogen: bedding binds ammonium as it rots, not when it is laid. On central rows a straw bed of suckler cows
 * loses about a quarter of what they excrete on it, where reviews span 15–40 % and inventories alone say about
 * 10 %, and a seventh of the nitrogen left is ammonium (fresh farmyard manure: a fifth). The prompt share
 * follows the 2016 edition of the EMEP/EEA guidebook, because deep litter is named as losing more than the 2019
 * value for all solid manure; what the bed still holds as ammonium then leaks slowly. No measured suckler bed
 * stands behind it: turn both rows.
 */

import { defineStage, type Quantity, type Track, WEEKS, winterDaysInWeek } from '../stage.ts';
import { fedRemainingShare, remainingShare } from './decay.ts';
import { freeAirSpace } from './freeAirSpace.ts';
import { heatClass } from './heat.ts';

const q = (
  label: string,
  unit: string,
  formula: string,
  from: readonly string[],
  source: readonly string[] = [],
): Quantity => ({
  label,
  unit,
  formula,
  from,
  route: 'pack',
  ...(source.length > 0 ? { source } : {}),
});

const track = (label: string, unit: string, formula: string, from: readonly string[]): Track => ({
  label,
  unit,
  formula: `${formula}; at the end of each week of the winter`,
  from,
  route: 'pack',
});

const DECAY = [
  'packDecayPerDay',
  'excretaDegradableFraction',
  'wastedFeedDegradableFraction',
  'degradableMaterialFraction',
] as const;
const DRY = [
  'winterDays',
  'packDryMatterInKg',
  'packDryMatterWastedKg',
  'dryMatterMaterialKg',
  'startDryMatterKg',
  ...DECAY,
] as const;
const TAN = [
  'packTanInKg', 'packNitrogenInKg', 'nitrogenMaterialKg', 'packNitrogenWastedKg', 'winterDays', 'bedAmmoniaTanFraction',
  'litterAmmoniaFactor', 'immobilisationKgPerKg', 'dryMatterMaterialKg', 'startDryMatterKg', 'bedNitrousFraction',
  'packDinitrogenPerNitrous', 'bedTanLossPerWeekFraction', 'packDecayPerDay',
] as const; // biome-ignore format: one list
const HEAT = [
  'heatMoistureLow', 'heatMoistureHigh', 'heatFreeAirSpace', 'heatAvailableCarbonNitrogenLow',
  'heatAvailableCarbonNitrogenHigh', 'heatDepthM',
] as const; // biome-ignore format: one list

export const bedStage = defineStage({
  name: 'bed',
  about:
    'Dry matter, water, carbon, N, P and K of the deep bed by week; ammonia and other losses; how high it stands.',
  reads: [
    'winterDays', 'bedM2', 'startDepthM', 'packTanInKg', 'packNitrogenInKg', 'packPhosphorusInKg', 'packPotassiumInKg',
    'packCarbonInKg', 'packDryMatterInKg', 'packWaterInKg', 'packNitrogenWastedKg', 'packDryMatterWastedKg',
    'dryMatterWastedKg', 'carbonWastedKg', 'dryMatterMaterialKg', 'startDryMatterKg', 'waterMaterialKg',
    'nitrogenMaterialKg', 'phosphorusMaterialKg', 'potassiumMaterialKg', 'carbonMaterialKg', 'ashMaterialKg',
    'availableCarbonMaterialKg', 'degradableCarbonMaterialKg', 'degradableMaterialFraction', 'immobilisationKgPerKg',
    'litterAmmoniaFactor', 'packDecayPerDay', 'excretaDegradableFraction', 'wastedFeedDegradableFraction',
    'excretaAvailableCarbonFraction', 'packExcretaAshFraction', 'wastedFeedAshFraction', 'rottingWaterKgPerKg',
    'bedEvaporationKgPerM2Day', 'bedDriestMoistureFraction', 'packDryDensityKgPerM3', 'startLayerSettlingDays',
    'bedAmmoniaTanFraction', 'bedTanLossPerWeekFraction', 'bedNitrousFraction', 'packDinitrogenPerNitrous', ...HEAT,
  ], // biome-ignore format: one list
  makes: {
    bedAmmoniaKg: q(
      'ammonia from the bed (N)',
      'kg',
      'each week: TAN dropped × share lost at once + TAN still free in the bed × share lost a week, both × factor of the litter',
      TAN,
      ['emep2016', 'emep2019', 'jeppsson1999'],
    ),
    bedNitrousKg: q(
      'nitrous oxide from the bed (N)',
      'kg',
      'nitrogen excreted on the bed × share, as far as there is TAN',
      TAN,
      ['ipcc2019'],
    ),
    bedDinitrogenKg: q(
      'dinitrogen and NO from the bed (N)',
      'kg',
      'nitrous oxide × ratio, as far as there is TAN',
      TAN,
      ['ipcc2019'],
    ),
    immobilisedKg: q(
      'nitrogen bound by bedding',
      'kg',
      'each week the lower of the TAN left and what the bedding that has rotted so far can still bind',
      TAN,
      ['emep2019', 'kirchmannWitter1989'],
    ),
    packDryMatterKg: q(
      'dry matter of the bed',
      'kg',
      'all dry matter in × (1 − degradable share + degradable share × mean share still there after first-order decay)',
      DRY,
      ['haug1993'],
    ),
    bedDryMatterLostKg: q('dry matter rotted in the bed', 'kg', 'dry matter in − dry matter of the bed', [
      'packDryMatterInKg',
      'packDryMatterKg',
    ]),
    packWaterKg: q(
      'water in the bed',
      'kg',
      'water in + water formed by rotting − water given to the air, by week; the bed dries no further than air-dry bedding',
      [
        'packWaterInKg', 'waterMaterialKg', 'startDryMatterKg', 'dryMatterMaterialKg', 'bedDryMatterLostKg', 'rottingWaterKgPerKg',
        'bedEvaporationKgPerM2Day', 'bedM2', 'winterDays', 'bedDriestMoistureFraction',
      ], // biome-ignore format: one list
    ),
    bedEvaporatedKg: q('water given to the air by the bed', 'kg', 'rate per m² and day × area × days, as far as there is water', [
      'bedEvaporationKgPerM2Day', 'bedM2', 'winterDays', 'packWaterInKg', 'bedDriestMoistureFraction',
    ]), // biome-ignore format: one list
    packTonnes: q('bed at clean-out', 't', 'dry matter + water', ['packDryMatterKg', 'packWaterKg']),
    packM3: q('volume of the trodden bed', 'm³', 'dry matter ÷ dry density of a trodden bed + what is left of the loose first layer', [
      'packDryMatterKg', 'packDryDensityKgPerM3', 'bedM2', 'startDepthM', 'startLayerSettlingDays',
    ]), // biome-ignore format: one list
    packDepthM: q('height of the bed above the floor', 'm', 'volume of the bed ÷ its area', [
      'packM3',
      'bedM2',
    ]),
    packMoisture: q('moisture of the bed', 'fraction', 'water ÷ (water + dry matter)', [
      'packWaterKg',
      'packDryMatterKg',
    ]),
    packCarbonKg: q('carbon in the bed', 'kg', 'carbon in − carbon of the dry matter that rotted', [
      'packCarbonInKg', 'carbonWastedKg', 'degradableCarbonMaterialKg', 'carbonMaterialKg', ...DRY,
    ]), // biome-ignore format: one list
    bedCarbonLostKg: q('carbon lost from the bed', 'kg', 'carbon in − carbon in the bed', [
      'packCarbonInKg',
      'packCarbonKg',
    ]),
    packNitrogenKg: q('nitrogen in the bed', 'kg', 'nitrogen in − ammonia − nitrous oxide − dinitrogen', [
      'packNitrogenInKg', 'bedAmmoniaKg', 'bedNitrousKg', 'bedDinitrogenKg',
    ]), // biome-ignore format: one list
    packTanKg: q('ammonium nitrogen in the bed', 'kg', 'TAN in − ammonia − nitrous oxide − dinitrogen − bound by bedding', [
      'packTanInKg', 'bedAmmoniaKg', 'bedNitrousKg', 'bedDinitrogenKg', 'immobilisedKg',
    ]), // biome-ignore format: one list
    packPhosphorusKg: q('phosphorus in the bed', 'kg', 'all that came in', ['packPhosphorusInKg']),
    packPotassiumKg: q('potassium in the bed', 'kg', 'all that came in', ['packPotassiumInKg']),
    packAshKg: q('ash in the bed', 'kg', 'ash of dung and urine, wasted feed and bedding; none is lost', [
      'packDryMatterInKg', 'packDryMatterWastedKg', 'ashMaterialKg', 'packExcretaAshFraction', 'wastedFeedAshFraction',
    ]), // biome-ignore format: one list
    packCarbonNitrogen: q('C:N of the bed', ':1', 'carbon ÷ nitrogen', ['packCarbonKg', 'packNitrogenKg']),
    packAvailableCarbonNitrogen: q(
      'available C:N of the bed',
      ':1',
      'carbon still in the bed, each kind × its available share as when fresh, ÷ nitrogen: an upper value for an old bed',
      [
        'packCarbonKg',
        'packNitrogenKg',
        'excretaAvailableCarbonFraction',
        'availableCarbonMaterialKg',
        'carbonMaterialKg',
      ],
    ),
    packFreeAirSpace: q(
      'air in the trodden bed',
      'fraction',
      '1 − wet density × volume of water, organic and mineral matter per kg',
      ['packMoisture', 'packAshKg', 'packDryMatterKg', 'packDryDensityKgPerM3'],
      ['agnewLeonard2003', 'vanGinkel1999'],
    ),
    packHeatClass: q(
      'heat of the undisturbed bed (0 cold, 1 warm, 2 composting)',
      'class',
      'a point each for moisture, air, available C:N and depth in their spans, none for loosening: a derived, uncalibrated rule of thumb',
      ['packMoisture', 'packFreeAirSpace', 'packAvailableCarbonNitrogen', 'packDepthM', ...HEAT],
    ),
  },
  tracks: {
    bedDepthM: track('height of the bed', 'm', 'dry matter ÷ dry density ÷ area + what is left of the loose first layer', [
      'bedDryMatterKg', 'packDryDensityKgPerM3', 'bedM2', 'startDepthM', 'startLayerSettlingDays',
    ]), // biome-ignore format: one list
    bedDryMatterKg: track('dry matter of the bed', 'kg', 'resistant + degradable still there', DRY),
    bedWaterKg: track('water in the bed', 'kg', 'water in + formed by rotting − evaporated', [
      'packWaterInKg', 'rottingWaterKgPerKg', 'bedEvaporationKgPerM2Day', 'bedM2', 'bedDryMatterKg',
    ]), // biome-ignore format: one list
    bedCarbonKg: track('carbon in the bed', 'kg', 'carbon in − carbon rotted', ['packCarbonInKg', ...DRY]),
    bedNitrogenKg: track('nitrogen in the bed', 'kg', 'nitrogen in − losses', TAN),
    bedTanKg: track('ammonium nitrogen in the bed', 'kg', 'TAN in − losses − bound by bedding', TAN),
    bedPhosphorusKg: track('phosphorus in the bed', 'kg', 'all that came in', ['packPhosphorusInKg']),
    bedPotassiumKg: track('potassium in the bed', 'kg', 'all that came in', ['packPotassiumInKg']),
    bedMoisture: track('moisture of the bed', 'fraction', 'water ÷ (water + dry matter)', [
      'bedWaterKg',
      'bedDryMatterKg',
    ]),
    bedCarbonNitrogen: track('C:N of the bed', ':1', 'carbon ÷ nitrogen', ['bedCarbonKg', 'bedNitrogenKg']),
  },
  run({ count, read, write, track }) {
    const results = Object.values(write);
    const weekly = Object.values(track);
    const spans = {
      moistureLow: 0,
      moistureHigh: 0,
      airSpace: 0,
      availableCarbonNitrogenLow: 0,
      availableCarbonNitrogenHigh: 0,
      depthM: 0,
    };
    const signs = {
      driest: 0,
      wettest: 0,
      airSpace: 0,
      availableCarbonNitrogen: 0,
      loosened: false,
      depthM: 0,
    };
    for (let i = 0; i < count; i++) {
      if (
        read.packDryMatterInKg[i] === 0 &&
        read.packWaterInKg[i] === 0 &&
        read.packCarbonInKg[i] === 0 &&
        read.packNitrogenInKg[i] === 0
      ) {
        // Nothing falls on a bed, or there is none: all of it is 0, and the weeks need not be walked.
        for (const result of results) result[i] = 0;
        const weeks = weeksOf(read.winterDays[i]);
        for (const series of weekly)
          series.fill(0, i * WEEKS, i * WEEKS + weeks).fill(Number.NaN, i * WEEKS + weeks, (i + 1) * WEEKS);
        continue;
      }
      // A winter longer than the weekly series is spread over the weeks there are, so that nothing is lost.
      const days = Math.min(read.winterDays[i], WEEKS * 7);
      const perDay = days > 0 ? 1 / days : 0;
      const k = read.packDecayPerDay[i];
      const area = read.bedM2[i];
      const density = read.packDryDensityKgPerM3[i];

      const materialDry = read.dryMatterMaterialKg[i];
      const startShare = materialDry > 0 ? Math.min(1, read.startDryMatterKg[i] / materialDry) : 0;
      const dailyShare = 1 - startShare;
      const wastedDry = read.packDryMatterWastedKg[i];
      const excretaDry = Math.max(0, read.packDryMatterInKg[i] - materialDry - wastedDry);
      const wastedCarbon =
        read.dryMatterWastedKg[i] > 0 ? (read.carbonWastedKg[i] * wastedDry) / read.dryMatterWastedKg[i] : 0;
      const materialCarbon = read.carbonMaterialKg[i];
      const excretaCarbon = read.packCarbonInKg[i] - materialCarbon - wastedCarbon;

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
      const phosphorusIn = (read.packPhosphorusInKg[i] - read.phosphorusMaterialKg[i] * startShare) * perDay;
      const potassiumIn = (read.packPotassiumInKg[i] - read.potassiumMaterialKg[i] * startShare) * perDay;
      const tanIn = read.packTanInKg[i] * perDay;
      const excretedIn =
        Math.max(0, read.packNitrogenInKg[i] - read.nitrogenMaterialKg[i] - read.packNitrogenWastedKg[i]) *
        perDay;
      const bindsPerKg = read.immobilisationKgPerKg[i];
      const bindsIn = materialDry * dailyShare * bindsPerKg * perDay;
      const atOnce = Math.min(1, read.bedAmmoniaTanFraction[i] * read.litterAmmoniaFactor[i]);
      const perWeek = Math.min(1, read.bedTanLossPerWeekFraction[i] * read.litterAmmoniaFactor[i]);
      const waterPerDryLeft = read.bedDriestMoistureFraction[i] / (1 - read.bedDriestMoistureFraction[i]);

      const rottingWater = read.rottingWaterKgPerKg[i];
      const driesPerDay = read.bedEvaporationKgPerM2Day[i] * area;
      const perNitrous = 1 + read.packDinitrogenPerNitrous[i];
      const gasPerDay = excretedIn * read.bedNitrousFraction[i] * perNitrous;
      const settlesPerDay = 1 / read.startLayerSettlingDays[i];
      const depthPerKg = area > 0 && density > 0 ? 1 / density / area : 0;

      let degradable = materialDry * startShare * dM;
      let resistant = materialDry * startShare * (1 - dM);
      let rottingCarbon = materialRotting * startShare;
      let restingCarbon = (materialCarbon - materialRotting) * startShare;
      let water = read.waterMaterialKg[i] * startShare;
      let nitrogen = read.nitrogenMaterialKg[i] * startShare;
      let phosphorus = read.phosphorusMaterialKg[i] * startShare;
      let potassium = read.potassiumMaterialKg[i] * startShare;
      let tan = 0;
      // Microbes bind nitrogen as they eat: what the bedding can bind in all, and what they still lack.
      let binds = materialDry * startShare * bindsPerKg;
      let hungry = 0;
      let ammonia = 0;
      let nitrous = 0;
      let dinitrogen = 0;
      let bound = 0;
      let evaporated = 0;
      // How much higher the first layer lies when fresh than when trodden to the density of the bed.
      const looseM =
        area > 0 && startShare > 0 && density > 0
          ? Math.max(0, read.startDepthM[i] - (materialDry * startShare) / density / area)
          : 0;
      let stillLooseM = looseM;
      let keepWeek = Number.NaN;
      let keptDays = -1;

      for (let w = 0; w < WEEKS; w++) {
        const at = i * WEEKS + w;
        const inWeek = winterDaysInWeek(w, days);
        if (inWeek <= 0) {
          track.bedDepthM[at] = Number.NaN;
          track.bedDryMatterKg[at] = Number.NaN;
          track.bedWaterKg[at] = Number.NaN;
          track.bedCarbonKg[at] = Number.NaN;
          track.bedNitrogenKg[at] = Number.NaN;
          track.bedTanKg[at] = Number.NaN;
          track.bedPhosphorusKg[at] = Number.NaN;
          track.bedPotassiumKg[at] = Number.NaN;
          track.bedMoisture[at] = Number.NaN;
          track.bedCarbonNitrogen[at] = Number.NaN;
          continue;
        }
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
        const asNitrous = asGas / perNitrous;
        tan -= asGas;
        nitrous += asNitrous;
        dinitrogen += asGas - asNitrous;
        const taken = Math.min(hungry, tan);
        hungry -= taken;
        tan -= taken;
        bound += taken;
        const slow = tan * (inWeek === 7 ? perWeek : 1 - (1 - perWeek) ** (inWeek / 7));
        tan -= slow;
        ammonia += prompt + slow;
        nitrogen += nitrogenIn * inWeek - prompt - slow - asGas;
        phosphorus += phosphorusIn * inWeek;
        potassium += potassiumIn * inWeek;

        if (looseM > 0) stillLooseM = looseM * Math.exp(-(w * 7 + inWeek) * settlesPerDay);
        track.bedDepthM[at] = dry * depthPerKg + stillLooseM;
        track.bedDryMatterKg[at] = dry;
        track.bedWaterKg[at] = water;
        track.bedCarbonKg[at] = rottingCarbon + restingCarbon;
        track.bedNitrogenKg[at] = nitrogen;
        track.bedTanKg[at] = tan;
        track.bedPhosphorusKg[at] = phosphorus;
        track.bedPotassiumKg[at] = potassium;
        track.bedMoisture[at] = water + dry > 0 ? water / (water + dry) : 0;
        track.bedCarbonNitrogen[at] = nitrogen > 0 ? (rottingCarbon + restingCarbon) / nitrogen : 0;
      }

      const dry = degradable + resistant;
      const carbon = rottingCarbon + restingCarbon;
      const volume = density > 0 ? dry / density + stillLooseM * area : 0;
      const depth = area > 0 ? volume / area : 0;
      const moisture = water + dry > 0 ? water / (water + dry) : 0;
      const ash =
        excretaDry * read.packExcretaAshFraction[i] +
        wastedDry * read.wastedFeedAshFraction[i] +
        read.ashMaterialKg[i];
      const airSpace =
        dry > 0 ? freeAirSpace(density / (1 - moisture), moisture, Math.max(0, 1 - ash / dry)) : 0;
      // What came with the excreta and the wasted feed, and what with the bedding, as far as each is still there.
      const animalCarbon =
        excretaCarbon * fedRemainingShare(dE, k, days) + wastedCarbon * fedRemainingShare(dW, k, days);
      const availableOfMaterial = materialCarbon > 0 ? read.availableCarbonMaterialKg[i] / materialCarbon : 0;
      const available =
        animalCarbon * read.excretaAvailableCarbonFraction[i] + (carbon - animalCarbon) * availableOfMaterial;
      const availableCarbonNitrogen = nitrogen > 0 ? available / nitrogen : 0;

      write.bedAmmoniaKg[i] = ammonia;
      write.bedNitrousKg[i] = nitrous;
      write.bedDinitrogenKg[i] = dinitrogen;
      write.immobilisedKg[i] = bound;
      write.packDryMatterKg[i] = dry;
      write.bedDryMatterLostKg[i] = read.packDryMatterInKg[i] - dry;
      write.packWaterKg[i] = water;
      write.bedEvaporatedKg[i] = evaporated;
      write.packTonnes[i] = (dry + water) / 1000;
      write.packM3[i] = volume;
      write.packDepthM[i] = depth;
      write.packMoisture[i] = moisture;
      write.packCarbonKg[i] = carbon;
      write.bedCarbonLostKg[i] = read.packCarbonInKg[i] - carbon;
      write.packNitrogenKg[i] = nitrogen;
      write.packTanKg[i] = tan;
      write.packPhosphorusKg[i] = phosphorus;
      write.packPotassiumKg[i] = potassium;
      write.packAshKg[i] = ash;
      write.packCarbonNitrogen[i] = nitrogen > 0 ? carbon / nitrogen : 0;
      write.packAvailableCarbonNitrogen[i] = availableCarbonNitrogen;
      write.packFreeAirSpace[i] = airSpace;
      spans.moistureLow = read.heatMoistureLow[i];
      spans.moistureHigh = read.heatMoistureHigh[i];
      spans.airSpace = read.heatFreeAirSpace[i];
      spans.availableCarbonNitrogenLow = read.heatAvailableCarbonNitrogenLow[i];
      spans.availableCarbonNitrogenHigh = read.heatAvailableCarbonNitrogenHigh[i];
      spans.depthM = read.heatDepthM[i];
      signs.driest = moisture;
      signs.wettest = moisture;
      signs.airSpace = airSpace;
      signs.availableCarbonNitrogen = availableCarbonNitrogen;
      signs.depthM = depth;
      write.packHeatClass[i] = dry > 0 ? heatClass(signs, spans) : 0;
    }
  },
});

/** Weeks that lie in the winter, wholly or in part. */
const weeksOf = (winterDays: number) => Math.max(0, Math.min(WEEKS, Math.ceil(winterDays / 7)));
