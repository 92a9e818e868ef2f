/** Slats, house and store → slurry leaving the store, its losses and the room it needs. EMEP/EEA 3.B, tier 2. */
import { quantity } from '../engine/quantity.ts';
import { lossLimit, mineralisedTanKg } from './ammonia.ts';
import { slattedHouse } from './house.ts';
import { storeNeededM3 } from './storage.ts';
import { outsideStore } from './store.ts';

const made = (label: string, unit: string, formula: string, source?: readonly string[]) =>
  quantity(label, unit, formula, { when: 'slurryShare', ...(source && { source }) });
const kg = (label: string, formula: string, source?: readonly string[]) => made(label, 'kg', formula, source);

const quantities = {
  slatsUsedM2: made(
    'slatted area',
    'm²',
    'the area given, or else head × slatted area a head of the class; none where no time is spent on slats',
    ['teagascHousing'],
  ).of(
    ['slatsM2', 'slatsShare', 'group*HeadCount', 'group*SlatsM2', 'herdFactor'],
    (i, given, share, head, each, factor) => {
      if (!(share[i] > 0)) return 0;
      // Not given stands as NaN.
      if (given[i] > 0) return given[i];
      let sum = 0;
      for (let g = 0; g < head.length; g++) sum += head[g][i] * factor[i] * each[g][i];
      return sum;
    },
  ),

  storeTanKg: kg(
    'TAN in the slurry store',
    'TAN after house losses + share of the organic nitrogen that turns into TAN during storage',
    ['emep2019'],
  ).of(
    ['slurryTanInKg', 'slurryNitrogenInKg', 'houseAmmoniaKg', 'storeMineralisedFraction'],
    (i, tan, nitrogen, house, fraction) =>
      mineralisedTanKg(tan[i] - house[i], nitrogen[i] - house[i], fraction[i]),
  ),
  storeGasFraction: made(
    'TAN in the store lost as nitrous oxide, N2 and NO',
    'fraction',
    'share of nitrous oxide + of N2 + of NO, at most all of it',
    ['emep2019'],
  ).of(
    ['storeNitrousFraction', 'storeDinitrogenFraction', 'storeNitricOxideFraction'],
    (i, nitrous, dinitrogen, nitric) => Math.min(1, nitrous[i] + dinitrogen[i] + nitric[i]),
  ),
  storeLossLimit: made(
    'what the shares lost from the store as nitrous oxide, N2 and NO are held down by',
    'fraction',
    '1; less where they come to more than all TAN there is',
  ).of(
    ['storeNitrousFraction', 'storeDinitrogenFraction', 'storeNitricOxideFraction'],
    (i, nitrous, dinitrogen, nitric) => lossLimit(nitrous[i] + dinitrogen[i] + nitric[i]),
  ),
  storeCoverFactor: made(
    'ammonia of the store for its cover and stirring',
    '×',
    'factor of the cover + (1 − factor) × what stirring breaks of it × part of the time it lies broken: each stirring until the cover has closed again, the last one just before spreading',
    ['sommer1993', 'loyon2016', 'unece2014'],
  ).of(
    [
      'storeAmmoniaFactor', 'storeCoverBrokenFraction', 'timesStirred', 'storeCrustWeeks', 'winterDays', 'spreadDay',
    ], // biome-ignore format: one list
    (i, cover, broken, times, closes, winter, spread) => {
      const weeks = Math.max(winter[i], spread[i]) / 7;
      const open = Math.min(1, times[i]) + Math.max(0, times[i] - 1) * (1 + closes[i]);
      return cover[i] + (1 - cover[i]) * broken[i] * (weeks > 0 ? Math.min(1, open / weeks) : 0);
    },
  ),
  storeSurfaceM2: made(
    'surface of the outside store',
    'm²',
    'the surface given; or else the open store that catches rain; or else slurry ÷ depth of the store; none where slurry stays under the slats',
  ).of(
    ['storeSurfaceGivenM2', 'openStoreM2', 'slurryM3', 'storeDepthM', 'pitStoreShare'],
    (i, given, open, volume, depth, inPit) => {
      // Not given stands as NaN.
      const byDepth = depth[i] > 0 ? volume[i] / depth[i] : 0;
      return (given[i] > 0 ? given[i] : open[i] > 0 ? open[i] : byDepth) * (1 - inPit[i]);
    },
  ),
  storeNitrousKg: kg('nitrous oxide from the slurry store (N)', 'TAN in the store × share of the cover', [
    'emep2019',
  ]).product(['storeTanKg', 'storeNitrousFraction', 'storeLossLimit']),
  storeDinitrogenKg: kg(
    'N2 and NO from the slurry store (N)',
    'TAN in the store × (share as N2 + share as NO)',
    ['emep2019'],
  ).of(
    ['storeTanKg', 'storeDinitrogenFraction', 'storeNitricOxideFraction', 'storeLossLimit'],
    (i, tan, dinitrogen, nitric, limit) => tan[i] * (dinitrogen[i] + nitric[i]) * limit[i],
  ),

  slurryNitrogenKg: kg(
    'nitrogen in slurry leaving the store',
    'nitrogen into slats and slurry − house and store losses',
  ).minus('slurryNitrogenInKg', ['houseAmmoniaKg', 'storeAmmoniaKg', 'storeNitrousKg', 'storeDinitrogenKg']),
  slurryTanKg: kg('TAN in slurry leaving the store', 'TAN in the store − store losses', ['emep2019']).minus(
    'storeTanKg',
    ['storeAmmoniaKg', 'storeNitrousKg', 'storeDinitrogenKg'],
  ),
  slurryPhosphorusLostKg: kg(
    'phosphorus left in the store',
    'phosphorus into slurry × share left as sediment',
  ).product(['slurryPhosphorusInKg', 'slurryPhosphorusLossFraction']),
  slurryPotassiumLostKg: kg('potassium left in the store', 'potassium into slurry × share left').product([
    'slurryPotassiumInKg',
    'slurryPotassiumLossFraction',
  ]),
  slurryPhosphorusKg: kg(
    'phosphorus in slurry leaving the store',
    'phosphorus into slurry − left in the store',
  ).minus('slurryPhosphorusInKg', ['slurryPhosphorusLostKg']),
  slurryPotassiumKg: kg(
    'potassium in slurry leaving the store',
    'potassium into slurry − left in the store',
  ).minus('slurryPotassiumInKg', ['slurryPotassiumLostKg']),
  slurryCarbonKg: kg(
    'carbon in slurry leaving the store',
    'carbon into slurry × (1 − share of solids lost in the store)',
  ).of(
    ['slurryCarbonInKg', 'storeDryMatterLossFraction'],
    (i, carbon, fraction) => carbon[i] * (1 - fraction[i]),
  ),
  slurryDryMatterKg: kg(
    'dry matter in slurry leaving the store',
    'dry matter into slurry × (1 − share of solids lost in the store)',
  ).of(
    ['slurryDryMatterInKg', 'storeDryMatterLossFraction'],
    (i, dry, fraction) => dry[i] * (1 - fraction[i]),
  ),

  slurryWashM3: made(
    'wash water in the slurry',
    'm³',
    'wash water a day × winter days; none where nothing ends in slurry',
  ).of(['slurryShare', 'washLitresPerDay', 'winterDays'], (i, share, litres, days) =>
    share[i] > 0 ? (litres[i] * days[i]) / 1000 : 0,
  ),
  slurryRainM3: made(
    'rain in the slurry',
    'm³',
    'rain × (open store + open yard × share of its rain that runs in); none where nothing ends in slurry',
  ).of(
    ['slurryShare', 'openStoreM2', 'openYardM2', 'yardRunoffFraction', 'rainMm'],
    (i, share, store, yard, fraction, rain) =>
      share[i] > 0 ? ((store[i] + yard[i] * fraction[i]) * rain[i]) / 1000 : 0,
  ),
  slurryM3: made(
    'slurry',
    'm³',
    '(dry matter left + water of dung, urine and wasted feed) ÷ density + wash water + rain on open store and yard; drying off the surface is not counted',
  ).of(
    ['slurryDryMatterKg', 'slurryWaterInKg', 'slurryDensityKgPerM3', 'slurryWashM3', 'slurryRainM3'],
    (i, dry, water, density, wash, rain) =>
      (density[i] > 0 ? (dry[i] + water[i]) / density[i] : 0) + wash[i] + rain[i],
  ),
  storeRuleM3: made(
    'slurry by the rule of volume',
    'm³',
    'head × volume a head and week of the class × weeks × share that ends in slurry',
    ['irishGap2022'],
  ).of(
    ['group*HeadCount', 'group*StoreM3PerWeek', 'herdFactor', 'winterDays', 'slurryShare'],
    (i, head, each, factor, days, share) => {
      let sum = 0;
      for (let g = 0; g < head.length; g++) sum += head[g][i] * factor[i] * each[g][i] * (days[i] / 7);
      return sum * share[i];
    },
  ),
  storeNeededM3: made(
    'store room needed',
    'm³',
    '(head × volume a head and week of the class × weeks × share that ends in slurry + wash water + rain of a wet year on open store and yard) × (1 + buffer); freeboard comes on top: check the local rule',
    ['irishGap2022'],
  ).of(
    ['storeRuleM3', 'slurryWashM3', 'slurryRainM3', 'wetYearRainFactor', 'storeBufferFraction'],
    (i, rule, wash, rain, wet, buffer) => storeNeededM3(rule[i], wash[i], rain[i] * wet[i], buffer[i]),
  ),
};

export const slurry = [quantities, slattedHouse, outsideStore] as const;
