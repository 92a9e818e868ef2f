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
import { quantity } from '../engine/quantity.ts';
import { fedRemainingShare } from './decay.ts';
import { freeAirSpace } from './freeAirSpace.ts';
import { heatClass } from './heat.ts';
import { bedRise, longestDays, rotting } from './rotting.ts';

const made = (label: string, unit: string, formula: string, source?: readonly string[]) =>
  quantity(label, unit, formula, { when: 'packShare', ...(source && { source }) });
const kg = (label: string, formula: string, source?: readonly string[]) => made(label, 'kg', formula, source);

const laid = {
  startLayerFraction: made(
    'share of the bedding laid as first layer',
    'fraction',
    'dry matter of the first layer ÷ dry matter of all bedding, at most all of it',
  ).of(['startDryMatterKg', 'dryMatterMaterialKg'], (i, start, material) =>
    material[i] > 0 ? Math.min(1, start[i] / material[i]) : 0,
  ),
  bedExcretaDryMatterKg: kg(
    'dry matter of dung and urine on the bed',
    'dry matter in − of bedding − of wasted feed',
  ).of(['packDryMatterInKg', 'dryMatterMaterialKg', 'packDryMatterWastedKg'], (i, all, material, wasted) =>
    Math.max(0, all[i] - material[i] - wasted[i]),
  ),
  bedWastedCarbonKg: kg(
    'carbon of wasted feed on the bed',
    'carbon of all wasted feed × share of its dry matter that falls on the bed',
  ).of(['carbonWastedKg', 'packDryMatterWastedKg', 'dryMatterWastedKg'], (i, carbon, onBed, all) =>
    all[i] > 0 ? (carbon[i] * onBed[i]) / all[i] : 0,
  ),
  bedExcretaCarbonKg: kg(
    'carbon of dung and urine on the bed',
    'carbon in − of bedding − of wasted feed',
  ).minus('packCarbonInKg', ['carbonMaterialKg', 'bedWastedCarbonKg']),
  bedExcretedNitrogenKg: kg('nitrogen excreted on the bed', 'nitrogen in − of bedding − of wasted feed').of(
    ['packNitrogenInKg', 'nitrogenMaterialKg', 'packNitrogenWastedKg'],
    (i, all, material, wasted) => Math.max(0, all[i] - material[i] - wasted[i]),
  ),
  bedPromptAmmoniaFraction: made(
    'share of the TAN dropped that is lost at once',
    'fraction',
    'share lost at once × factor of the litter, at most all of it',
    ['emep2016'],
  ).of(['bedAmmoniaTanFraction', 'litterAmmoniaFactor'], (i, fraction, factor) =>
    Math.min(1, fraction[i] * factor[i]),
  ),
  bedSlowAmmoniaFraction: made(
    'share of the TAN free in the bed that is lost in a week',
    'fraction',
    'share lost a week × factor of the litter, at most all of it',
  ).of(['bedTanLossPerWeekFraction', 'litterAmmoniaFactor'], (i, fraction, factor) =>
    Math.min(1, fraction[i] * factor[i]),
  ),
  bedOtherGasKg: kg(
    'nitrous oxide, dinitrogen and NO from the bed (N)',
    'nitrogen excreted on the bed × share as nitrous oxide × (1 + ratio), at most the TAN not lost at once',
    ['ipcc2019'],
  ).of(
    [
      'packTanInKg', 'bedPromptAmmoniaFraction', 'bedExcretedNitrogenKg', 'bedNitrousFraction', 'packDinitrogenPerNitrous',
    ], // biome-ignore format: one list
    (i, tan, prompt, excreted, fraction, ratio) =>
      Math.min(tan[i] * (1 - prompt[i]), excreted[i] * fraction[i] * (1 + ratio[i])),
  ),
  startLooseM: made(
    'how much higher the first layer lies when fresh than when trodden',
    'm',
    'its depth − its dry matter ÷ dry density of a trodden bed ÷ area',
  ).of(
    ['startDepthM', 'startLayerFraction', 'dryMatterMaterialKg', 'packDryDensityKgPerM3', 'bedM2'],
    (i, depth, fraction, material, density, area) =>
      area[i] > 0 && fraction[i] > 0 && density[i] > 0
        ? Math.max(0, depth[i] - (material[i] * fraction[i]) / density[i] / area[i])
        : 0,
  ),
};

const cleanOut = {
  bedNitrousKg: kg(
    'nitrous oxide from the bed (N)',
    'nitrogen excreted on the bed × share, as far as there is TAN',
    ['ipcc2019'],
  ).of(['bedOtherGasKg', 'packDinitrogenPerNitrous'], (i, gas, ratio) => gas[i] / (1 + ratio[i])),
  bedDinitrogenKg: kg('dinitrogen and NO from the bed (N)', 'nitrous oxide × ratio, as far as there is TAN', [
    'ipcc2019',
  ]).minus('bedOtherGasKg', ['bedNitrousKg']),
  bedDryMatterLostKg: kg('dry matter rotted in the bed', 'dry matter in − dry matter of the bed').minus(
    'packDryMatterInKg',
    ['packDryMatterKg'],
  ),
  packTonnes: made('bed at clean-out', 't', 'dry matter + water').of(
    ['packDryMatterKg', 'packWaterKg'],
    (i, dry, water) => (dry[i] + water[i]) / 1000,
  ),
  bedLooseM: made(
    'what is left of the loose first layer',
    'm',
    'how much higher the first layer lay when fresh × e^(−winter days ÷ days of settling)',
  ).of(['startLooseM', 'winterDays', 'startLayerSettlingDays'], (i, fresh, days, settling) =>
    fresh[i] > 0 ? fresh[i] * Math.exp(-Math.max(0, longestDays(days[i])) / settling[i]) : 0,
  ),
  packM3: made(
    'volume of the trodden bed',
    'm³',
    'dry matter ÷ dry density of a trodden bed + what is left of the loose first layer',
  ).of(['packDryMatterKg', 'packDryDensityKgPerM3', 'bedLooseM', 'bedM2'], (i, dry, density, loose, area) =>
    density[i] > 0 ? dry[i] / density[i] + loose[i] * area[i] : 0,
  ),
  packDepthM: made('height of the bed above the floor', 'm', 'volume of the bed ÷ its area').ratio(
    'packM3',
    'bedM2',
  ),
  packMoisture: made('moisture of the bed', 'fraction', 'water ÷ (water + dry matter)').of(
    ['packWaterKg', 'packDryMatterKg'],
    (i, water, dry) => (water[i] + dry[i] > 0 ? water[i] / (water[i] + dry[i]) : 0),
  ),
  bedCarbonLostKg: kg('carbon lost from the bed', 'carbon in − carbon in the bed').minus('packCarbonInKg', [
    'packCarbonKg',
  ]),
  packNitrogenKg: kg('nitrogen in the bed', 'nitrogen in − ammonia − nitrous oxide − dinitrogen').minus(
    'packNitrogenInKg',
    ['bedAmmoniaKg', 'bedNitrousKg', 'bedDinitrogenKg'],
  ),
  packPhosphorusKg: kg('phosphorus in the bed', 'all that came in').same('packPhosphorusInKg'),
  packPotassiumKg: kg('potassium in the bed', 'all that came in').same('packPotassiumInKg'),
  packAshKg: kg('ash in the bed', 'ash of dung and urine, wasted feed and bedding; none is lost').of(
    [
      'bedExcretaDryMatterKg', 'packExcretaAshFraction', 'packDryMatterWastedKg', 'wastedFeedAshFraction', 'ashMaterialKg',
    ], // biome-ignore format: one list
    (i, excreta, ashOfExcreta, wasted, ashOfWasted, material) =>
      excreta[i] * ashOfExcreta[i] + wasted[i] * ashOfWasted[i] + material[i],
  ),
  packCarbonNitrogen: made('C:N of the bed', ':1', 'carbon ÷ nitrogen').ratio(
    'packCarbonKg',
    'packNitrogenKg',
  ),
  bedAnimalCarbonKg: kg(
    'carbon of dung, urine and wasted feed still in the bed',
    'carbon of each × (1 − degradable share + degradable share × mean share still there after first-order decay)',
    ['haug1993'],
  ).of(
    [
      'bedExcretaCarbonKg', 'excretaDegradableFraction', 'bedWastedCarbonKg', 'wastedFeedDegradableFraction',
      'packDecayPerDay', 'winterDays',
    ], // biome-ignore format: one list
    (i, excreta, excretaRots, wasted, wastedRots, rate, days) =>
      excreta[i] * fedRemainingShare(excretaRots[i], rate[i], longestDays(days[i])) +
      wasted[i] * fedRemainingShare(wastedRots[i], rate[i], longestDays(days[i])),
  ),
  packAvailableCarbonKg: kg(
    'available carbon in the bed',
    'carbon still in the bed, each kind × its available share as when fresh: an upper value for an old bed',
  ).of(
    [
      'bedAnimalCarbonKg', 'excretaAvailableCarbonFraction', 'packCarbonKg', 'availableCarbonMaterialKg', 'carbonMaterialKg',
    ], // biome-ignore format: one list
    (i, animal, ofExcreta, carbon, available, material) =>
      animal[i] * ofExcreta[i] + (carbon[i] - animal[i]) * (material[i] > 0 ? available[i] / material[i] : 0),
  ),
  packAvailableCarbonNitrogen: made(
    'available C:N of the bed',
    ':1',
    'carbon still in the bed, each kind × its available share as when fresh, ÷ nitrogen: an upper value for an old bed',
  ).ratio('packAvailableCarbonKg', 'packNitrogenKg'),
  packFreeAirSpace: made(
    'air in the trodden bed',
    'fraction',
    '1 − wet density × volume of water, organic and mineral matter per kg',
    ['agnewLeonard2003', 'vanGinkel1999'],
  ).of(
    ['packDryMatterKg', 'packDryDensityKgPerM3', 'packMoisture', 'packAshKg'],
    (i, dry, density, moisture, ash) =>
      dry[i] > 0
        ? freeAirSpace(density[i] / (1 - moisture[i]), moisture[i], Math.max(0, 1 - ash[i] / dry[i]))
        : 0,
  ),
  packHeatClass: made(
    'heat of the undisturbed bed (0 cold, 1 warm, 2 composting)',
    'class',
    'a point each for moisture, air, available C:N and depth in their spans, none for loosening: a derived, uncalibrated rule of thumb',
  ).of(
    [
      'packMoisture', 'packFreeAirSpace', 'packAvailableCarbonNitrogen', 'packDepthM', 'heatMoistureLow', 'heatMoistureHigh',
      'heatFreeAirSpace', 'heatAvailableCarbonNitrogenLow', 'heatAvailableCarbonNitrogenHigh', 'heatDepthM',
    ], // biome-ignore format: one list
    (i, moisture, air, available, depth, wetFrom, wetTo, airFrom, carbonFrom, carbonTo, depthFrom) =>
      heatClass(
        {
          driest: moisture[i],
          wettest: moisture[i],
          airSpace: air[i],
          availableCarbonNitrogen: available[i],
          loosened: false,
          depthM: depth[i],
        },
        {
          moistureLow: wetFrom[i],
          moistureHigh: wetTo[i],
          airSpace: airFrom[i],
          availableCarbonNitrogenLow: carbonFrom[i],
          availableCarbonNitrogenHigh: carbonTo[i],
          depthM: depthFrom[i],
        },
      ),
  ),
};

export const bed = [laid, rotting, bedRise, cleanOut] as const;
