/**
 * Nitrogen of the heap. What can leave is the ammonium it was made with and what rotting sets free of the dung, less
 * what straw that is not yet rotted binds; the rest is organic and stays. The share of it that leaves as ammonia is a
 * table by turning and season (form one) or follows from the days at a temperature and the air in the heap (form two).
 */
import { kg, made } from './heapIn.ts';

export const heapNitrogen = {
  heapMineralisedKg: kg(
    'nitrogen set free in the heap',
    'organic nitrogen of dung and wasted feed × share set free for each part of the carbon lost × share of carbon lost',
    ['thomsen2000'],
  ).of(
    [
      'packNitrogenKg', 'packTanKg', 'nitrogenMaterialKg', 'heapCarbonLostKg', 'heapCarbonInKg', 'heapMineralisedFraction',
    ], // biome-ignore format: one list
    (i, nitrogen, tan, straw, lost, carbon, fraction) =>
      carbon[i] > 0
        ? Math.min(1, (fraction[i] * lost[i]) / carbon[i]) * Math.max(0, nitrogen[i] - tan[i] - straw[i])
        : 0,
  ),
  heapBoundKg: kg(
    'nitrogen bound again in the heap',
    'what bedding and what is mixed in can still bind × share of the carbon that rotted, at most what is free',
    ['kirchmannWitter1989'],
  ).of(
    [
      'packTanKg', 'heapMineralisedKg', 'immobilisationKgPerKg', 'dryMatterMaterialKg', 'immobilisedKg', 'heapBindsAddedKg',
      'heapRottedFraction',
    ], // biome-ignore format: one list
    (i, tan, free, perKg, material, bound, added, rotted) =>
      Math.min(tan[i] + free[i], (Math.max(0, perKg[i] * material[i] - bound[i]) + added[i]) * rotted[i]),
  ),
  heapMineralKg: kg('nitrogen of the heap that can leave', 'TAN of the bed + set free − bound again').of(
    ['packTanKg', 'heapMineralisedKg', 'heapBoundKg'],
    (i, tan, free, bound) => Math.max(0, tan[i] + free[i] - bound[i]),
  ),
  heapAmmoniaTableFraction: made(
    'share of that nitrogen lost as ammonia, by turning and season',
    'fraction',
    'between the four classes by turnings and by the air while it lies, × factors of cover and material',
    ['sommerDahl1999', 'haoChangLarney2004', 'thomsen2000'],
  ).of(
    [
      'heapMade', 'heapAirC', 'heapWinterC', 'heapSummerC', 'heapTurns', 'heapTurnsFull', 'stillWinterAmmoniaFraction',
      'stillSummerAmmoniaFraction', 'turnedWinterAmmoniaFraction', 'turnedSummerAmmoniaFraction', 'heapAmmoniaCoverFactor',
      'heapNitrogenFactor', 'compostDays',
    ], // biome-ignore format: one list
    (i, heap, air, winter, summer, turns, full, stillW, stillS, turnedW, turnedS, cover, material, lies) => {
      if (!(heap[i] > 0 && lies[i] > 0)) return 0;
      const warm = Math.min(1, Math.max(0, (air[i] - winter[i]) / (summer[i] - winter[i])));
      const often = Math.min(1, turns[i] / full[i]);
      const still = stillW[i] + warm * (stillS[i] - stillW[i]);
      const turned = turnedW[i] + warm * (turnedS[i] - turnedW[i]);
      return Math.min(1, (still + often * (turned - still)) * cover[i] * material[i]);
    },
  ),
  heapAmmoniaDaysFraction: made(
    'share of that nitrogen lost as ammonia, by days and temperature',
    'fraction',
    '1 − e^(−rate × air in the heap ÷ that of a loose one × days at 10 °C it stands for × factor of the material)',
    ['sommerDahl1999', 'haoChangLarney2004'],
  ).of(
    [
      'heapAmmoniaDays', 'heapAmmoniaRatePerDay', 'heapAirShare', 'heapReferenceAirFraction', 'heapNitrogenFactor',
    ], // biome-ignore format: one list
    (i, days, rate, air, reference, material) =>
      1 - Math.exp((-rate[i] * days[i] * air[i] * material[i]) / reference[i]),
  ),
  heapAmmoniaKg: kg(
    'ammonia from the heap (N)',
    'nitrogen that can leave × share by turning and season, or by days and temperature',
    ['sommerDahl1999', 'haoChangLarney2004', 'eghball1997'],
  ).of(
    ['heapMineralKg', 'heapAmmoniaForm', 'heapAmmoniaTableFraction', 'heapAmmoniaDaysFraction'],
    (i, mineral, form, table, days) => mineral[i] * ((1 - form[i]) * table[i] + form[i] * days[i]),
  ),
  heapOtherGasKg: kg(
    'nitrous oxide, dinitrogen and NO from the heap (N)',
    'nitrogen of the heap × share as nitrous oxide × (1 + ratio), or that share + a share of the TAN as dinitrogen; at most what ammonia leaves',
    ['ipcc2019', 'emep2019'],
  ).of(
    [
      'heapMade', 'heapNitrogenInKg', 'heapNitrousFraction', 'packDinitrogenPerNitrous', 'packTanKg', 'heapDinitrogenTanFraction',
      'heapDinitrogenForm', 'heapMineralKg', 'heapAmmoniaKg',
    ], // biome-ignore format: one list
    (i, heap, nitrogen, fraction, ratio, tan, ofTan, form, mineral, ammonia) => {
      const nitrous = nitrogen[i] * fraction[i];
      const dinitrogen = (1 - form[i]) * nitrous * ratio[i] + form[i] * tan[i] * ofTan[i];
      return Math.min(heap[i] * (nitrous + dinitrogen), Math.max(0, mineral[i] - ammonia[i]));
    },
  ),
  heapNitrousKg: kg(
    'nitrous oxide from the heap (N)',
    'nitrogen of the heap × share, at most its part of what ammonia leaves',
    ['ipcc2019', 'haoChangLarney2004'],
  ).of(
    [
      'heapOtherGasKg', 'heapNitrogenInKg', 'heapNitrousFraction', 'packDinitrogenPerNitrous', 'packTanKg',
      'heapDinitrogenTanFraction', 'heapDinitrogenForm',
    ], // biome-ignore format: one list
    (i, gas, nitrogen, fraction, ratio, tan, ofTan, form) => {
      const nitrous = nitrogen[i] * fraction[i];
      const all = nitrous + (1 - form[i]) * nitrous * ratio[i] + form[i] * tan[i] * ofTan[i];
      return all > 0 ? (gas[i] * nitrous) / all : 0;
    },
  ),
  heapDinitrogenKg: kg(
    'dinitrogen and NO from the heap (N)',
    'nitrous oxide, dinitrogen and NO − nitrous oxide',
  ).minus('heapOtherGasKg', ['heapNitrousKg']),
  heapLeachedKg: kg(
    'nitrogen leached from the heap',
    'mineral nitrogen that the gases leave × share washed out × how much less of it than of potassium goes',
    ['sommerDahl1999', 'ipcc2019'],
  ).of(
    ['heapMineralKg', 'heapAmmoniaKg', 'heapOtherGasKg', 'heapWashedFraction', 'heapNitrogenWashFactor'],
    (i, mineral, ammonia, other, washed, factor) =>
      Math.max(0, mineral[i] - ammonia[i] - other[i]) * washed[i] * factor[i],
  ),
};
