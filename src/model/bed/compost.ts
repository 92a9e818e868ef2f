/** The heap: the bed cleaned out, turned or left, open or covered, until it is finished; or spread as it is. */

import { defineStage, type Quantity, WEEKS } from '../stage.ts';
import { freeAirSpace } from './freeAirSpace.ts';
import { heatClass } from './heat.ts';
import { heapEvaporation, windrowFootprintM2, windrowNitrogenLoss } from './windrow.ts';

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

const NITROGEN_LOST = [
  'packNitrogenKg', 'packCarbonNitrogen', 'heapMade', 'heapNitrogenLossIntercept', 'heapNitrogenLossSlope',
  'heapNitrogenLossLeast', 'heapNitrogenLossMost', 'heapNitrogenWayFactor', 'heapNitrogenCoverFactor', 'heapNitrogenFactor',
] as const; // biome-ignore format: one list
const OTHER_GAS = ['heapNitrousFraction', 'packDinitrogenPerNitrous', 'heapOtherGasMostShare'] as const;
const RAIN = ['heapRainMm', 'heapReferenceRainMm', 'heapMade'] as const;
const HEAT = [
  'heatMoistureLow', 'heatMoistureHigh', 'heatFreeAirSpace', 'heatAvailableCarbonNitrogenLow',
  'heatAvailableCarbonNitrogenHigh', 'heatDepthM',
] as const; // biome-ignore format: one list

export const compostStage = defineStage({
  name: 'compost',
  about: 'What the heap loses while it heats and lies in the rain, and the compost that is left.',
  reads: [
    'winterDays', 'compostTurns', 'packDryMatterInKg', 'packDryMatterKg', 'packWaterKg', 'packCarbonKg', 'packNitrogenKg',
    'packTanKg', 'packPhosphorusKg', 'packPotassiumKg', 'packAshKg', 'packMoisture', 'packCarbonNitrogen',
    'packAvailableCarbonNitrogen', 'packTonnes', 'coarseMaterialKg', 'compostLossFactor', 'heapNitrogenFactor', 'heapMade',
    'heapLoosened', 'heapNitrogenLossIntercept', 'heapNitrogenLossSlope', 'heapNitrogenLossLeast', 'heapNitrogenLossMost',
    'heapNitrogenWayFactor', 'heapNitrogenCoverFactor', ...OTHER_GAS, 'heapLeachFraction', 'heapPhosphorusLossFraction',
    'heapPotassiumLossFraction', 'heapReferenceRainMm', 'heapRainKeptFraction', 'heapDryMatterLossFraction',
    'heapCarbonLossFraction', 'heapEvaporationKgPerKg', 'rottingWaterKgPerKg', 'heapDriestMoistureFraction',
    'heapWettestMoistureFraction', 'heapTanKeptFraction', 'loosenedPackDensityKgPerM3', 'compostDensityKgPerM3',
    'windrowHeightM', 'smallWindrowHeightM', 'heapActiveDays', 'heapCureDays', 'heapWinterFactor', 'coarseWoodFactor',
    'coarseWoodShare', 'sanitisingTurns', ...HEAT,
  ], // biome-ignore format: one list
  readsTracks: ['weekRainMm', 'weekTemperatureC'],
  makes: {
    compostDays: q(
      'days to finished compost',
      'd',
      '(days active + days curing) × factor for coarse wood when it is more than a share of the dry matter laid × factor for a small heap started in frost',
      [
        'heapActiveDays', 'heapCureDays', 'coarseWoodFactor', 'coarseWoodShare', 'coarseMaterialKg', 'packDryMatterInKg',
        'heapWinterFactor', 'windrowHeightM', 'smallWindrowHeightM', 'weekTemperatureC', 'winterDays', 'heapMade',
      ], // biome-ignore format: one list
      ['nraes54'],
    ),
    heapRainMm: q('rain on the heap', 'mm', 'rain from clean-out until the compost is finished, as far as the weather reaches', [
      'weekRainMm', 'winterDays', 'compostDays',
    ]), // biome-ignore format: one list
    heapAmmoniaKg: q(
      'ammonia from the heap (N)',
      'kg',
      'nitrogen of the bed × (intercept − slope × C:N, held in its span) × way × cover × material, less nitrous oxide and dinitrogen',
      [...NITROGEN_LOST, ...OTHER_GAS],
      ['haoChangLarney2004', 'michel2004', 'eghball1997'],
    ),
    heapNitrousKg: q(
      'nitrous oxide from the heap (N)',
      'kg',
      'nitrogen of the bed × share, with its dinitrogen never more than a share of all nitrogen lost as gas',
      [...NITROGEN_LOST, ...OTHER_GAS],
      ['haoChangLarney2004', 'eghball1997'],
    ),
    heapDinitrogenKg: q(
      'dinitrogen and NO from the heap (N)',
      'kg',
      'nitrous oxide × ratio',
      [...NITROGEN_LOST, ...OTHER_GAS],
      ['ipcc2019'],
    ),
    heapLeachedKg: q(
      'nitrogen leached from the heap',
      'kg',
      'nitrogen of the bed × (1 − (1 − share)^(rain on the heap ÷ rain of the measurement))',
      ['packNitrogenKg', 'heapLeachFraction', ...RAIN],
      ['sommerDahl1999', 'ipcc2019'],
    ),
    heapPhosphorusLostKg: q(
      'phosphorus washed from the heap',
      'kg',
      'phosphorus of the bed × (1 − (1 − share)^(rain on the heap ÷ rain of the measurement))',
      ['packPhosphorusKg', 'heapPhosphorusLossFraction', ...RAIN],
      ['eghball1997'],
    ),
    heapPotassiumLostKg: q(
      'potassium washed from the heap',
      'kg',
      'potassium of the bed × (1 − (1 − share)^(rain on the heap ÷ rain of the measurement))',
      ['packPotassiumKg', 'heapPotassiumLossFraction', ...RAIN],
      ['eghball1997', 'chadwick2005'],
    ),
    compostDryMatterKg: q(
      'dry matter of the compost',
      'kg',
      'dry matter of the bed × (1 − share lost × factor of the bedding); ash is never lost',
      ['packDryMatterKg', 'packAshKg', 'heapDryMatterLossFraction', 'compostLossFactor', 'heapMade'],
      ['haoChangLarney2004', 'sommerDahl1999'],
    ),
    heapDryMatterLostKg: q('dry matter lost in the heap', 'kg', 'dry matter of the bed − of the compost', [
      'packDryMatterKg',
      'compostDryMatterKg',
    ]),
    compostCarbonKg: q(
      'carbon in the compost',
      'kg',
      'carbon of the bed × (1 − share lost × factor of the bedding)',
      ['packCarbonKg', 'heapCarbonLossFraction', 'compostLossFactor', 'heapMade'],
      ['haoChangLarney2004', 'sommerDahl1999'],
    ),
    heapCarbonLostKg: q('carbon lost in the heap', 'kg', 'carbon of the bed − of the compost', [
      'packCarbonKg',
      'compostCarbonKg',
    ]),
    compostWaterKg: q(
      'water in the compost',
      'kg',
      'water of the bed + formed by rotting + rain kept − driven off by the heat, which stops where the heap is too dry to work; what a heap cannot hold runs off',
      [
        'packWaterKg', 'heapDryMatterLostKg', 'rottingWaterKgPerKg', 'heapEvaporationKgPerKg', 'heapDriestMoistureFraction',
        'heapWettestMoistureFraction', 'heapRainMm', 'heapRainKeptFraction', 'windrowHeightM', 'loosenedPackDensityKgPerM3',
        'packTonnes', 'heapMade',
      ], // biome-ignore format: one list
    ),
    compostTonnes: q('compost', 't', 'dry matter + water', ['compostDryMatterKg', 'compostWaterKg']),
    compostM3: q('compost, loose', 'm³', 'mass ÷ density by the way it was kept', [
      'compostTonnes',
      'compostDensityKgPerM3',
    ]),
    compostMoisture: q('moisture of the compost', 'fraction', 'water ÷ (water + dry matter)', [
      'compostWaterKg',
      'compostDryMatterKg',
    ]),
    compostNitrogenKg: q('nitrogen in the compost', 'kg', 'nitrogen of the bed − ammonia − nitrous oxide − dinitrogen − leached', [
      'packNitrogenKg', 'heapAmmoniaKg', 'heapNitrousKg', 'heapDinitrogenKg', 'heapLeachedKg',
    ]), // biome-ignore format: one list
    compostTanKg: q('ammonium nitrogen in the compost', 'kg', 'TAN of the bed × share still there, at most all nitrogen of the compost', [
      'packTanKg', 'heapTanKeptFraction', 'compostNitrogenKg',
    ]), // biome-ignore format: one list
    compostPhosphorusKg: q('phosphorus in the compost', 'kg', 'phosphorus of the bed − washed out', [
      'packPhosphorusKg',
      'heapPhosphorusLostKg',
    ]),
    compostPotassiumKg: q('potassium in the compost', 'kg', 'potassium of the bed − washed out', [
      'packPotassiumKg',
      'heapPotassiumLostKg',
    ]),
    compostCarbonNitrogen: q('C:N of the compost', ':1', 'carbon ÷ nitrogen', [
      'compostCarbonKg',
      'compostNitrogenKg',
    ]),
    compostPeakClass: q(
      'heat of the heap (0 cold, 1 warm, 2 composting, 3 likely sanitised)',
      'class',
      'a point each for moisture passed through, air when loosened, available C:N, turning and height in their spans, five compost: a derived, uncalibrated rule of thumb; sanitised needs the turnings of the rule too, and a thermometer to prove it',
      [
        'packMoisture', 'compostMoisture', 'packAshKg', 'packDryMatterKg', 'loosenedPackDensityKgPerM3',
        'packAvailableCarbonNitrogen', 'heapLoosened', 'compostTurns', 'windrowHeightM', 'sanitisingTurns', 'heapMade', ...HEAT,
      ], // biome-ignore format: one list
      ['us40cfr503'],
    ),
  },
  run({ count, read, readTrack, write }) {
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
      const made = read.heapMade[i];
      const dry = read.packDryMatterKg[i];
      const nitrogen = read.packNitrogenKg[i];
      const height = read.windrowHeightM[i];

      const firstWeek = Math.min(WEEKS - 1, Math.ceil(read.winterDays[i] / 7));
      const coarse =
        dry > 0 && read.coarseMaterialKg[i] > read.coarseWoodShare[i] * read.packDryMatterInKg[i];
      const frosty =
        height < read.smallWindrowHeightM[i] && readTrack.weekTemperatureC[i * WEEKS + firstWeek] < 0;
      const heapDays =
        dry > 0
          ? made *
            (read.heapActiveDays[i] + read.heapCureDays[i]) *
            (coarse ? read.coarseWoodFactor[i] : 1) *
            (frosty ? read.heapWinterFactor[i] : 1)
          : 0;
      let rain = 0;
      const lastWeek = Math.min(WEEKS, firstWeek + heapDays / 7);
      for (let w = firstWeek; w < lastWeek; w++) {
        // The last week counts by the part of it the heap still lies.
        const fell = readTrack.weekRainMm[i * WEEKS + w];
        if (fell > 0) rain += fell * Math.min(1, lastWeek - w);
      }
      const washes = made * (rain / read.heapReferenceRainMm[i]);

      const leached = nitrogen * (1 - (1 - read.heapLeachFraction[i]) ** washes);
      const line = windrowNitrogenLoss(
        read.packCarbonNitrogen[i],
        read.heapNitrogenLossIntercept[i],
        read.heapNitrogenLossSlope[i],
        read.heapNitrogenLossLeast[i],
        read.heapNitrogenLossMost[i],
      );
      const gas = Math.min(
        nitrogen - leached,
        nitrogen *
          made *
          line *
          read.heapNitrogenWayFactor[i] *
          read.heapNitrogenCoverFactor[i] *
          read.heapNitrogenFactor[i],
      );
      const perNitrous = 1 + read.packDinitrogenPerNitrous[i];
      const other = Math.min(
        nitrogen * made * read.heapNitrousFraction[i] * perNitrous,
        gas * read.heapOtherGasMostShare[i],
      );
      const nitrous = other / perNitrous;

      const dryLost = Math.min(
        Math.max(0, dry - read.packAshKg[i]),
        dry * made * read.heapDryMatterLossFraction[i] * read.compostLossFactor[i],
      );
      const carbonLost =
        read.packCarbonKg[i] * Math.min(1, made * read.heapCarbonLossFraction[i] * read.compostLossFactor[i]);
      const dryLeft = dry - dryLost;
      const loosenedM3 = (read.packTonnes[i] * 1000) / read.loosenedPackDensityKgPerM3[i];
      const rainKept = made * rain * windrowFootprintM2(loosenedM3, height) * read.heapRainKeptFraction[i];
      const wet = read.packWaterKg[i] + dryLost * read.rottingWaterKgPerKg[i] + rainKept;
      const driven = heapEvaporation(
        wet,
        dryLeft,
        dryLost,
        read.heapEvaporationKgPerKg[i],
        read.heapDriestMoistureFraction[i],
      );
      const holds =
        (dryLeft * read.heapWettestMoistureFraction[i]) / (1 - read.heapWettestMoistureFraction[i]);
      // Rain beyond what the heap can hold runs off; a bed that was wetter than that stays as wet as it was.
      const water = Math.min(wet - driven, Math.max(holds, wet - driven - rainKept));
      const mass = dryLeft + water;
      const moisture = mass > 0 ? water / mass : 0;
      const kept = nitrogen - leached - gas;
      const phosphorusLost =
        read.packPhosphorusKg[i] * (1 - (1 - read.heapPhosphorusLossFraction[i]) ** washes);
      const potassiumLost = read.packPotassiumKg[i] * (1 - (1 - read.heapPotassiumLossFraction[i]) ** washes);
      const carbon = read.packCarbonKg[i] - carbonLost;

      write.compostDays[i] = heapDays;
      write.heapRainMm[i] = rain;
      write.heapAmmoniaKg[i] = gas - other;
      write.heapNitrousKg[i] = nitrous;
      write.heapDinitrogenKg[i] = other - nitrous;
      write.heapLeachedKg[i] = leached;
      write.heapPhosphorusLostKg[i] = phosphorusLost;
      write.heapPotassiumLostKg[i] = potassiumLost;
      write.compostDryMatterKg[i] = dryLeft;
      write.heapDryMatterLostKg[i] = dryLost;
      write.compostCarbonKg[i] = carbon;
      write.heapCarbonLostKg[i] = carbonLost;
      write.compostWaterKg[i] = water;
      write.compostTonnes[i] = mass / 1000;
      write.compostM3[i] = mass / read.compostDensityKgPerM3[i];
      write.compostMoisture[i] = moisture;
      write.compostNitrogenKg[i] = kept;
      write.compostTanKg[i] = Math.min(kept, read.packTanKg[i] * read.heapTanKeptFraction[i]);
      write.compostPhosphorusKg[i] = read.packPhosphorusKg[i] - phosphorusLost;
      write.compostPotassiumKg[i] = read.packPotassiumKg[i] - potassiumLost;
      write.compostCarbonNitrogen[i] = kept > 0 ? carbon / kept : 0;

      spans.moistureLow = read.heatMoistureLow[i];
      spans.moistureHigh = read.heatMoistureHigh[i];
      spans.airSpace = read.heatFreeAirSpace[i];
      spans.availableCarbonNitrogenLow = read.heatAvailableCarbonNitrogenLow[i];
      spans.availableCarbonNitrogenHigh = read.heatAvailableCarbonNitrogenHigh[i];
      spans.depthM = read.heatDepthM[i];
      signs.driest = Math.min(moisture, read.packMoisture[i]);
      signs.wettest = Math.max(moisture, read.packMoisture[i]);
      signs.airSpace =
        dry > 0
          ? freeAirSpace(
              read.loosenedPackDensityKgPerM3[i],
              read.packMoisture[i],
              Math.max(0, 1 - read.packAshKg[i] / dry),
            )
          : 0;
      signs.availableCarbonNitrogen = read.packAvailableCarbonNitrogen[i];
      signs.loosened = read.heapLoosened[i] > 0 && read.compostTurns[i] >= 1;
      signs.depthM = height;
      const heat = dry > 0 && made > 0 ? heatClass(signs, spans) : 0;
      write.compostPeakClass[i] = heat === 2 && read.compostTurns[i] >= read.sanitisingTurns[i] ? 3 : heat;
    }
  },
});
