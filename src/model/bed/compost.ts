/**
 * The heap: the bed cleaned out, with what is mixed in, turned or left, open or covered, until it is spread; or spread
 * as it is. How warm it is and what rots is walked in `heapWarmth`; here is what follows for matter, water, nitrogen,
 * phosphorus and potassium, and what there is to spread.
 */
import { heapIn, kg, made } from './heapIn.ts';
import { heapNitrogen } from './heapNitrogen.ts';
import { heapWarmth } from './heapWarmth.ts';
import { heapWater } from './heapWater.ts';

const rotted = {
  heapCarbonLostKg: kg('carbon lost in the heap', 'carbon that can rot × share of it that rotted').product([
    'heapDegradableCarbonKg',
    'heapRottedFraction',
  ]),
  compostCarbonKg: kg('carbon in the compost', 'carbon of the heap when it is made − lost').minus(
    'heapCarbonInKg',
    ['heapCarbonLostKg'],
  ),
  heapDryMatterLostKg: kg(
    'dry matter lost in the heap',
    'carbon lost × matter lost with each kg of carbon; ash is never lost',
    ['haoChangLarney2004'],
  ).of(
    ['heapCarbonLostKg', 'heapMatterPerCarbonKgPerKg', 'heapDryMatterInKg', 'heapAshInKg'],
    (i, carbon, perCarbon, dry, ash) => Math.min(carbon[i] * perCarbon[i], Math.max(0, dry[i] - ash[i])),
  ),
  compostDryMatterKg: kg('dry matter of the compost', 'dry matter of the heap when it is made − lost').minus(
    'heapDryMatterInKg',
    ['heapDryMatterLostKg'],
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
    'nitrogen of the heap when it is made − ammonia − nitrous oxide, dinitrogen and NO − leached',
  ).minus('heapNitrogenInKg', ['heapAmmoniaKg', 'heapOtherGasKg', 'heapLeachedKg']),
  compostTanKg: kg(
    'ammonium nitrogen in the compost',
    'mineral nitrogen the heap still has, at most TAN of the bed × share that stays ammonium',
  ).of(
    ['heapMineralKg', 'heapAmmoniaKg', 'heapOtherGasKg', 'heapLeachedKg', 'packTanKg', 'heapTanKeptFraction'],
    (i, mineral, ammonia, other, leached, tan, fraction) =>
      Math.max(0, Math.min(mineral[i] - ammonia[i] - other[i] - leached[i], tan[i] * fraction[i])),
  ),
  compostPhosphorusKg: kg('phosphorus in the compost', 'phosphorus of the heap − washed out').minus(
    'heapPhosphorusInKg',
    ['heapPhosphorusLostKg'],
  ),
  compostPotassiumKg: kg('potassium in the compost', 'potassium of the heap − washed out').minus(
    'heapPotassiumInKg',
    ['heapPotassiumLostKg'],
  ),
  compostCarbonNitrogen: made('C:N of the compost', ':1', 'carbon ÷ nitrogen').ratio(
    'compostCarbonKg',
    'compostNitrogenKg',
  ),
};

const judged = {
  compostReadyDays: made(
    'days until the compost is ready',
    'd',
    'days until the heap is stable and has cooled, where C:N at the end is below that of finished compost, or of compost rich in wood; 0 where it is not ready when it is spread',
    ['nraes54', 'tmecc'],
  ).of(
    [
      'compostStableDays', 'compostCarbonNitrogen', 'finishedCarbonNitrogen', 'finishedWoodCarbonNitrogen',
      'coarseMaterialKg', 'coarseWoodShare', 'packDryMatterInKg',
    ], // biome-ignore format: one list
    (i, stable, ratio, most, mostWood, coarse, share, laid) =>
      ratio[i] < (coarse[i] > share[i] * laid[i] ? mostWood[i] : most[i]) ? stable[i] : 0,
  ),
  heapSanitisedDays: made(
    'days at 55 °C to be expected',
    'd',
    'days the heap is hot × share of them at 55 °C, where it is high, airy and neither dry nor wet enough; a thermometer proves it',
    ['us40cfr503', 'michel2004'],
  ).of(
    [
      'heapHotDays', 'heapHotAtRuleFraction', 'windrowHeightM', 'smallWindrowHeightM', 'heapAirShare', 'hygieneAirFraction',
      'heapMoistureIn', 'hygieneMoistureLow', 'hygieneMoistureHigh',
    ], // biome-ignore format: one list
    (i, hot, share, height, least, air, airFrom, moisture, wetFrom, wetTo) =>
      height[i] >= least[i] && air[i] >= airFrom[i] && moisture[i] >= wetFrom[i] && moisture[i] <= wetTo[i]
        ? hot[i] * share[i]
        : 0,
  ),
  compostPeakClass: made(
    'heat of the heap (0 cold, 1 warm, 2 composting, 3 likely sanitised)',
    'class',
    'by the warmest it gets; likely sanitised where the days at 55 °C and the turnings of the rule are reached too, and a thermometer proves it',
    ['us40cfr503'],
  ).of(
    [
      'heapPeakC', 'heapWarmFromC', 'heapCompostingFromC', 'heapSanitisedDays', 'windrowSanitisedDays', 'heapTurns', 'sanitisingTurns',
    ], // biome-ignore format: one list
    (i, peak, warm, composting, days, needed, turns, turnsNeeded) =>
      days[i] >= needed[i] && turns[i] >= turnsNeeded[i]
        ? 3
        : peak[i] >= composting[i]
          ? 2
          : peak[i] >= warm[i]
            ? 1
            : 0,
  ),
};

export const compost = [heapIn, heapWarmth, rotted, heapNitrogen, heapWater, finished, judged] as const;
