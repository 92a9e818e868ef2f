/** The heap: the bed cleaned out, turned or left, open or covered, until it is finished; or spread as it is. */
import { quantity } from '../engine/quantity.ts';
import { WEEKS } from '../series.ts';
import { freeAirSpace } from './freeAirSpace.ts';
import { heatClass } from './heat.ts';
import { heapEvaporation, windrowFootprintM2, windrowNitrogenLoss } from './windrow.ts';

const made = (label: string, unit: string, formula: string, source?: readonly string[]) =>
  quantity(label, unit, formula, { when: 'packShare', ...(source && { source }) });
const kg = (label: string, formula: string, source?: readonly string[]) => made(label, 'kg', formula, source);

/** The week after clean-out, when the heap is put up. */
const firstHeapWeek = (winterDays: number) => Math.min(WEEKS - 1, Math.ceil(winterDays / 7));

/** What rain takes of a substance, when it has fallen `washings` times as in the measurement. */
const washedOut = (
  label: string,
  element: string,
  column: string,
  share: string,
  source: readonly string[],
) =>
  kg(
    label,
    `${element} of the bed × (1 − (1 − share)^(rain on the heap ÷ rain of the measurement))`,
    source,
  ).of(
    [column, share, 'heapWashings'],
    (i, inBed, fraction, washings) => inBed[i] * (1 - (1 - fraction[i]) ** washings[i]),
  );

const lying = {
  heapCoarseFactor: made(
    'how much longer coarse wood takes in the heap',
    '×',
    'factor for coarse wood when it is more than a share of the dry matter laid, or else 1',
    ['nraes54'],
  ).of(
    ['coarseMaterialKg', 'coarseWoodShare', 'packDryMatterInKg', 'coarseWoodFactor'],
    (i, coarse, share, laid, factor) => (coarse[i] > share[i] * laid[i] ? factor[i] : 1),
  ),
  heapFrostFactor: made(
    'how much longer a small heap started in frost takes',
    '×',
    'factor for a small heap started in frost, or else 1',
    ['nraes54'],
  ).of(
    ['windrowHeightM', 'smallWindrowHeightM', 'weekTemperatureC', 'winterDays', 'heapWinterFactor'],
    (i, height, small, weekC, days, factor) =>
      height[i] < small[i] && weekC[i * WEEKS + firstHeapWeek(days[i])] < 0 ? factor[i] : 1,
  ),
  compostDays: made(
    'days to finished compost',
    'd',
    '(days active + days curing) × factor for coarse wood when it is more than a share of the dry matter laid × factor for a small heap started in frost',
    ['nraes54'],
  ).of(
    ['packDryMatterKg', 'heapMade', 'heapActiveDays', 'heapCureDays', 'heapCoarseFactor', 'heapFrostFactor'],
    (i, dry, heap, active, cure, coarse, frost) =>
      dry[i] > 0 ? heap[i] * (active[i] + cure[i]) * coarse[i] * frost[i] : 0,
  ),
  heapRainMm: made(
    'rain on the heap',
    'mm',
    'rain from clean-out until the compost is finished, as far as the weather reaches',
  ).of(['winterDays', 'compostDays', 'weekRainMm'], (i, winter, lies, weekRain) => {
    const firstWeek = firstHeapWeek(winter[i]);
    const lastWeek = Math.min(WEEKS, firstWeek + lies[i] / 7);
    let rain = 0;
    for (let w = firstWeek; w < lastWeek; w++) {
      // The last week counts by the part of it the heap still lies.
      const fell = weekRain[i * WEEKS + w];
      if (fell > 0) rain += fell * Math.min(1, lastWeek - w);
    }
    return rain;
  }),
  heapWashings: made(
    'how often the rain of the measurement has fallen on the heap',
    '×',
    'rain on the heap ÷ rain of the measurement; 0 where no heap is made',
  ).of(
    ['heapMade', 'heapRainMm', 'heapReferenceRainMm'],
    (i, heap, rain, reference) => heap[i] * (rain[i] / reference[i]),
  ),
};

const lost = {
  heapLeachedKg: washedOut(
    'nitrogen leached from the heap',
    'nitrogen',
    'packNitrogenKg',
    'heapLeachFraction',
    ['sommerDahl1999', 'ipcc2019'],
  ),
  heapPhosphorusLostKg: washedOut(
    'phosphorus washed from the heap',
    'phosphorus',
    'packPhosphorusKg',
    'heapPhosphorusLossFraction',
    ['eghball1997'],
  ),
  heapPotassiumLostKg: washedOut(
    'potassium washed from the heap',
    'potassium',
    'packPotassiumKg',
    'heapPotassiumLossFraction',
    ['eghball1997', 'chadwick2005'],
  ),
  heapNitrogenLossFraction: made(
    'share of the nitrogen a turned heap loses as gas',
    'fraction',
    'intercept − slope × C:N, held in its span',
    ['haoChangLarney2004', 'michel2004'],
  ).of(
    [
      'packCarbonNitrogen', 'heapNitrogenLossIntercept', 'heapNitrogenLossSlope', 'heapNitrogenLossLeast',
      'heapNitrogenLossMost',
    ], // biome-ignore format: one list
    (i, ratio, intercept, slope, least, most) =>
      windrowNitrogenLoss(ratio[i], intercept[i], slope[i], least[i], most[i]),
  ),
  heapGasKg: kg(
    'nitrogen lost from the heap as gas',
    'nitrogen of the bed × share a turned heap loses × way × cover × material, at most what leaching leaves',
    ['haoChangLarney2004', 'michel2004', 'eghball1997'],
  ).of(
    [
      'packNitrogenKg', 'heapLeachedKg', 'heapMade', 'heapNitrogenLossFraction', 'heapNitrogenWayFactor',
      'heapNitrogenCoverFactor', 'heapNitrogenFactor',
    ], // biome-ignore format: one list
    (i, nitrogen, leached, heap, fraction, way, cover, material) =>
      Math.min(
        nitrogen[i] - leached[i],
        nitrogen[i] * heap[i] * fraction[i] * way[i] * cover[i] * material[i],
      ),
  ),
  heapOtherGasKg: kg(
    'nitrous oxide, dinitrogen and NO from the heap (N)',
    'nitrogen of the bed × share as nitrous oxide × (1 + ratio), at most a share of all nitrogen lost as gas',
    ['haoChangLarney2004', 'eghball1997'],
  ).of(
    [
      'packNitrogenKg', 'heapMade', 'heapNitrousFraction', 'packDinitrogenPerNitrous', 'heapGasKg', 'heapOtherGasMostShare',
    ], // biome-ignore format: one list
    (i, nitrogen, heap, fraction, ratio, gas, most) =>
      Math.min(nitrogen[i] * heap[i] * fraction[i] * (1 + ratio[i]), gas[i] * most[i]),
  ),
  heapAmmoniaKg: kg(
    'ammonia from the heap (N)',
    'nitrogen of the bed × (intercept − slope × C:N, held in its span) × way × cover × material, at most what leaching leaves, less nitrous oxide and dinitrogen',
    ['haoChangLarney2004', 'michel2004', 'eghball1997'],
  ).minus('heapGasKg', ['heapOtherGasKg']),
  heapNitrousKg: kg(
    'nitrous oxide from the heap (N)',
    'nitrogen of the bed × share, with its dinitrogen never more than a share of all nitrogen lost as gas',
    ['haoChangLarney2004', 'eghball1997'],
  ).of(['heapOtherGasKg', 'packDinitrogenPerNitrous'], (i, gas, ratio) => gas[i] / (1 + ratio[i])),
  heapDinitrogenKg: kg('dinitrogen and NO from the heap (N)', 'nitrous oxide × ratio', ['ipcc2019']).minus(
    'heapOtherGasKg',
    ['heapNitrousKg'],
  ),
};

const solids = {
  compostDryMatterKg: kg(
    'dry matter of the compost',
    'dry matter of the bed × (1 − share lost × factor of the bedding); ash is never lost',
    ['haoChangLarney2004', 'sommerDahl1999'],
  ).of(
    ['packDryMatterKg', 'packAshKg', 'heapMade', 'heapDryMatterLossFraction', 'compostLossFactor'],
    (i, dry, ash, heap, fraction, factor) =>
      dry[i] - Math.min(Math.max(0, dry[i] - ash[i]), dry[i] * heap[i] * fraction[i] * factor[i]),
  ),
  heapDryMatterLostKg: kg('dry matter lost in the heap', 'dry matter of the bed − of the compost').minus(
    'packDryMatterKg',
    ['compostDryMatterKg'],
  ),
  compostCarbonKg: kg(
    'carbon in the compost',
    'carbon of the bed × (1 − share lost × factor of the bedding)',
    ['haoChangLarney2004', 'sommerDahl1999'],
  ).of(
    ['packCarbonKg', 'heapMade', 'heapCarbonLossFraction', 'compostLossFactor'],
    (i, carbon, heap, fraction, factor) =>
      carbon[i] - carbon[i] * Math.min(1, heap[i] * fraction[i] * factor[i]),
  ),
  heapCarbonLostKg: kg('carbon lost in the heap', 'carbon of the bed − of the compost').minus(
    'packCarbonKg',
    ['compostCarbonKg'],
  ),
};

const water = {
  heapRainKeptKg: kg(
    'rain kept by the heap',
    'rain on the heap × ground under it × share kept; the ground by the volume of the loosened bed and the height',
    ['nraes54'],
  ).of(
    [
      'heapMade', 'heapRainMm', 'packTonnes', 'loosenedPackDensityKgPerM3', 'windrowHeightM', 'heapRainKeptFraction',
    ], // biome-ignore format: one list
    (i, heap, rain, tonnes, density, height, fraction) =>
      heap[i] * rain[i] * windrowFootprintM2((tonnes[i] * 1000) / density[i], height[i]) * fraction[i],
  ),
  heapWaterInKg: kg(
    'water of the heap before it dries',
    'water of the bed + formed by rotting + rain kept',
  ).of(
    ['packWaterKg', 'heapDryMatterLostKg', 'rottingWaterKgPerKg', 'heapRainKeptKg'],
    (i, bed, rotted, perKg, rain) => bed[i] + rotted[i] * perKg[i] + rain[i],
  ),
  heapEvaporatedKg: kg(
    'water driven off by the heat of the heap',
    'dry matter lost × water driven off by it, until the heap is too dry to work',
  ).of(
    [
      'heapWaterInKg', 'compostDryMatterKg', 'heapDryMatterLostKg', 'heapEvaporationKgPerKg', 'heapDriestMoistureFraction',
    ], // biome-ignore format: one list
    (i, wet, dry, rotted, perKg, driest) => heapEvaporation(wet[i], dry[i], rotted[i], perKg[i], driest[i]),
  ),
  compostWaterKg: kg(
    'water in the compost',
    'water of the bed + formed by rotting + rain kept − driven off by the heat, which stops where the heap is too dry to work; what a heap cannot hold runs off',
  ).of(
    [
      'heapWaterInKg', 'heapEvaporatedKg', 'heapRainKeptKg', 'compostDryMatterKg', 'heapWettestMoistureFraction',
    ], // biome-ignore format: one list
    (i, wet, driven, rain, dry, wettest) => {
      const left = wet[i] - driven[i];
      const holds = (dry[i] * wettest[i]) / (1 - wettest[i]);
      // Rain beyond what the heap can hold runs off; a bed that was wetter than that stays as wet as it was.
      return Math.min(left, Math.max(holds, left - rain[i]));
    },
  ),
};

const finished = {
  compostTonnes: made('compost', 't', 'dry matter + water').of(
    ['compostDryMatterKg', 'compostWaterKg'],
    (i, dry, wet) => (dry[i] + wet[i]) / 1000,
  ),
  compostM3: made('compost, loose', 'm³', 'mass ÷ density by the way it was kept').of(
    ['compostTonnes', 'compostDensityKgPerM3'],
    (i, tonnes, density) => (tonnes[i] * 1000) / density[i],
  ),
  compostMoisture: made('moisture of the compost', 'fraction', 'water ÷ (water + dry matter)').of(
    ['compostWaterKg', 'compostDryMatterKg'],
    (i, wet, dry) => (wet[i] + dry[i] > 0 ? wet[i] / (wet[i] + dry[i]) : 0),
  ),
  compostNitrogenKg: kg(
    'nitrogen in the compost',
    'nitrogen of the bed − ammonia − nitrous oxide − dinitrogen − leached',
  ).minus('packNitrogenKg', ['heapLeachedKg', 'heapGasKg']),
  compostTanKg: kg(
    'ammonium nitrogen in the compost',
    'TAN of the bed × share still there, at most all nitrogen of the compost',
  ).of(['compostNitrogenKg', 'packTanKg', 'heapTanKeptFraction'], (i, nitrogen, tan, fraction) =>
    Math.min(nitrogen[i], tan[i] * fraction[i]),
  ),
  compostPhosphorusKg: kg('phosphorus in the compost', 'phosphorus of the bed − washed out').minus(
    'packPhosphorusKg',
    ['heapPhosphorusLostKg'],
  ),
  compostPotassiumKg: kg('potassium in the compost', 'potassium of the bed − washed out').minus(
    'packPotassiumKg',
    ['heapPotassiumLostKg'],
  ),
  compostCarbonNitrogen: made('C:N of the compost', ':1', 'carbon ÷ nitrogen').ratio(
    'compostCarbonKg',
    'compostNitrogenKg',
  ),
};

const heat = {
  loosenedFreeAirSpace: made(
    'air in the loosened bed',
    'fraction',
    '1 − wet density when loosened × volume of water, organic and mineral matter per kg',
    ['agnewLeonard2003', 'vanGinkel1999'],
  ).of(
    ['packDryMatterKg', 'loosenedPackDensityKgPerM3', 'packMoisture', 'packAshKg'],
    (i, dry, density, moisture, ash) =>
      dry[i] > 0 ? freeAirSpace(density[i], moisture[i], Math.max(0, 1 - ash[i] / dry[i])) : 0,
  ),
  heapHeatClass: made(
    'heat of the heap by its points (0 cold, 1 warm, 2 composting)',
    'class',
    'a point each for moisture passed through, air when loosened, available C:N, turning and height in their spans: a derived, uncalibrated rule of thumb; cold where no heap is made',
  ).of(
    [
      'heapMade', 'packDryMatterKg', 'packMoisture', 'compostMoisture', 'loosenedFreeAirSpace', 'packAvailableCarbonNitrogen',
      'heapLoosened', 'compostTurns', 'windrowHeightM', 'heatMoistureLow', 'heatMoistureHigh', 'heatFreeAirSpace',
      'heatAvailableCarbonNitrogenLow', 'heatAvailableCarbonNitrogenHigh', 'heatDepthM',
    ], // biome-ignore format: one list
    (
      i,
      heap,
      dry,
      bed,
      compost,
      air,
      available,
      loosened,
      turns,
      height,
      wetFrom,
      wetTo,
      airFrom,
      carbonFrom,
      carbonTo,
      depthFrom,
    ) => {
      if (!(dry[i] > 0 && heap[i] > 0)) return 0;
      return heatClass(
        {
          driest: Math.min(compost[i], bed[i]),
          wettest: Math.max(compost[i], bed[i]),
          airSpace: air[i],
          availableCarbonNitrogen: available[i],
          loosened: loosened[i] > 0 && turns[i] >= 1,
          depthM: height[i],
        },
        {
          moistureLow: wetFrom[i],
          moistureHigh: wetTo[i],
          airSpace: airFrom[i],
          availableCarbonNitrogenLow: carbonFrom[i],
          availableCarbonNitrogenHigh: carbonTo[i],
          depthM: depthFrom[i],
        },
      );
    },
  ),
  compostPeakClass: made(
    'heat of the heap (0 cold, 1 warm, 2 composting, 3 likely sanitised)',
    'class',
    'a point each for moisture passed through, air when loosened, available C:N, turning and height in their spans, five compost: a derived, uncalibrated rule of thumb; sanitised needs the turnings of the rule too, and a thermometer to prove it',
    ['us40cfr503'],
  ).of(['heapHeatClass', 'compostTurns', 'sanitisingTurns'], (i, points, turns, needed) =>
    points[i] === 2 && turns[i] >= needed[i] ? 3 : points[i],
  ),
};

export const compost = { ...lying, ...lost, ...solids, ...water, ...finished, ...heat };
