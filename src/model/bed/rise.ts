/** What follows from what is in the bed, week by week: its height, moisture and C:N, and P and K. */
import { walk } from '../engine/walk.ts';
import { WEEKS, winterDaysInWeek } from '../series.ts';
import { atEndOfWeek, longestDays, weeksOf } from './rotting.ts';

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
