/**
 * The deep bed, week by week: what falls on it and what is laid on it, how warm it grows, what rots, dries and flies
 * off, and how it rises. What can rot is taken as evenly spread through the bed: as deep as air reaches it rots at the
 * rate of that depth's temperature and gives its heat; below, slowly and almost without heat. The floor is taken as
 * tight and roofed: no P, K or liquid leaves it.
 *
 * Nitrogen: ammonia leaves once, soon after dropping, by the temperature of the surface; straw beyond the usual rate
 * lowers it. Bedding binds ammonium as it rots, or when it is laid: two views, each draw takes one. No weekly measurements of ammonia, temperature or
 * drying of a suckler bed in a cold open shed were found; the figures are derived from warmer sheds and from physics.
 */
import { quantity } from '../engine/quantity.ts';
import { temperatureFactor } from '../slurry/ammonia.ts';
import { freeAirSpace } from './freeAirSpace.ts';
import { heatOf, methaneWarmth } from './heat.ts';
import { bedRise } from './rise.ts';
import { longestDays, rotting } from './rotting.ts';
import { strawFactor } from './straw.ts';
import { oxygenDiffusion } from './temperature.ts';

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
  bedLooseShare: made(
    'share of the time the top of the bed lies loosened',
    'fraction',
    'stirrings a week × days a stirring lasts ÷ 7, at most all of it',
  ).of(['bedStirredPerWeek', 'bedLooseDays'], (i, times, lasts) => Math.min(1, (times[i] * lasts[i]) / 7)),
  bedDiffusionM2PerDay: made(
    'oxygen through the trodden top of the bed',
    'm²/d',
    'in free air × share of air^(10/3) ÷ share of all pores²',
    ['millingtonQuirk1961'],
  ).of(['bedTopAirFraction', 'bedTopPoreFraction'], (i, air, pores) => oxygenDiffusion(air[i], pores[i])),
  bedLooseDiffusionM2PerDay: made(
    'oxygen through the loosened top of the bed',
    'm²/d',
    'in free air × share of air^(10/3) ÷ share of all pores²',
    ['millingtonQuirk1961'],
  ).of(['bedLooseAirFraction', 'bedLoosePoreFraction'], (i, air, pores) => oxygenDiffusion(air[i], pores[i])),
  bedWetFraction: made(
    'share of the surface that is wet',
    'fraction',
    'at rest, and by the share of the time it lies loosened as when stirred',
  ).of(
    ['bedWetRestFraction', 'bedWetStirredFraction', 'bedLooseShare'],
    (i, rest, stirred, loose) => rest[i] + loose[i] * (stirred[i] - rest[i]),
  ),
  bedStrawAmmoniaFactor: made(
    'ammonia for the bedding laid against the usual rate',
    '×',
    '1 at the usual rate; from there down by a share that is reached with a third more and no further; less bedding: up along a gentler line',
    ['gilhespy2009', 'dewes1999'],
  ).of(
    [
      'beddingDailyKgPer100Kg',
      'beddingUsualKgPer100Kg',
      'bedStrawAmmoniaCut',
      'bedStrawMore',
      'bedStrawLackSlope',
    ],
    (i, daily, usual, cut, more, lack) =>
      usual[i] > 0 ? strawFactor(daily[i] / usual[i] - 1, cut[i], more[i], lack[i]) : 1,
  ),
  bedBeyondUsualFraction: made(
    'bedding beyond the usual rate, of all that falls on the bed and can rot',
    'fraction',
    'degradable dry matter of bedding strewn × (1 − usual rate ÷ rate) ÷ that of dung and urine, wasted feed and bedding strewn',
  ).of(
    [
      'beddingDailyKgPer100Kg', 'beddingUsualKgPer100Kg', 'dryMatterMaterialKg', 'startLayerFraction',
      'degradableMaterialFraction', 'bedExcretaDryMatterKg', 'excretaDegradableFraction', 'packDryMatterWastedKg',
      'wastedFeedDegradableFraction',
    ], // biome-ignore format: one list
    (i, daily, usual, material, start, rots, excreta, excretaRots, wasted, wastedRots) => {
      if (!(daily[i] > usual[i])) return 0;
      const strewn = material[i] * (1 - start[i]) * rots[i];
      const all = strewn + excreta[i] * excretaRots[i] + wasted[i] * wastedRots[i];
      return all > 0 ? (strewn * (1 - usual[i] / daily[i])) / all : 0;
    },
  ),
  bedAmmoniaFactor: made(
    'ammonia of this bed against an unstirred straw bed at the usual rate',
    '×',
    'factor of the litter × factor of the bedding laid × factor of stirring, by the share of the time it lies loosened',
    ['fuertes2021'],
  ).of(
    ['litterAmmoniaFactor', 'bedStrawAmmoniaFactor', 'bedStirredAmmoniaFactor', 'bedLooseShare'],
    (i, litter, straw, stirred, loose) => litter[i] * straw[i] * (1 + loose[i] * (stirred[i] - 1)),
  ),
  bedAmmoniaFraction: made(
    'share of the TAN dropped that is lost at the reference temperature',
    'fraction',
    'share lost from a straw bed × factor of this bed',
    ['emep2016', 'emep2019'],
  ).product(['bedAmmoniaTanFraction', 'bedAmmoniaFactor']),
  bedAreaAmmoniaKgPerDay: made(
    'ammonia of the area of the bed at the reference temperature (N)',
    'kg/d',
    'rate a m² × factor of this bed × area ÷ 1000, taken from the temperature it was measured at to the reference',
    ['lithuania2013'],
  ).of(
    [
      'bedAmmoniaGPerM2Day', 'bedAmmoniaFactor', 'bedM2', 'bedAmmoniaSlopePerC', 'bedAmmoniaReferenceC',
      'bedAmmoniaMeasuredC',
    ], // biome-ignore format: one list
    (i, rate, factor, area, slope, reference, measured) =>
      ((rate[i] * factor[i] * area[i]) / 1000) * temperatureFactor(reference[i], slope[i], measured[i]),
  ),
  bedOtherGasMostKg: made(
    'nitrous oxide, dinitrogen and NO of the bed by the inventory (N)',
    'kg',
    'nitrogen excreted on the bed × share as nitrous oxide, by the share of the time it lies loosened that of a mixed bed, × (1 + ratio)',
    ['ipcc2019', 'ipcc2006'],
  ).of(
    [
      'bedExcretedNitrogenKg', 'bedNitrousFraction', 'bedStirredNitrousFraction', 'bedLooseShare', 'packDinitrogenPerNitrous',
    ], // biome-ignore format: one list
    (i, excreted, rest, stirred, loose, ratio) =>
      excreted[i] * (rest[i] + loose[i] * (stirred[i] - rest[i])) * (1 + ratio[i]),
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
  bedNitrousKg: kg('nitrous oxide from the bed (N)', 'nitrous oxide, dinitrogen and NO ÷ (1 + ratio)', [
    'ipcc2019',
  ]).of(['bedOtherGasKg', 'packDinitrogenPerNitrous'], (i, gas, ratio) => gas[i] / (1 + ratio[i])),
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
    'carbon of each × (1 − degradable share + degradable share × what is still there of it)',
    ['haug1993'],
  ).of(
    [
      'bedExcretaCarbonKg', 'excretaDegradableFraction', 'bedWastedCarbonKg', 'wastedFeedDegradableFraction',
      'packFedRemainingFraction',
    ], // biome-ignore format: one list
    (i, excreta, excretaRots, wasted, wastedRots, left) =>
      excreta[i] * (1 - excretaRots[i] * (1 - left[i])) + wasted[i] * (1 - wastedRots[i] * (1 - left[i])),
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
    'heat of the bed (0 cold, 1 warm, 2 composting)',
    'class',
    'by the warmest week inside: 0 up to where it counts as cold, 1 where composting begins, 2 where it composts hot; straight lines between',
    ['own'],
  ).of(['packWarmestC', 'packColdC', 'packCompostingC', 'packHotC'], (i, warmest, cold, composting, hot) =>
    heatOf(warmest[i], cold[i], composting[i], hot[i]),
  ),
  bedMethaneFraction: made(
    'share of the methane it can give that the bed gives',
    'fraction',
    'share up to 10 °C × what the inventory has at the mean of the winter air, or at the mean inside the bed, against 10 °C or less, weighed',
    ['ipcc2006'],
  ).of(
    [
      'packMethaneFraction', 'winterTemperatureC', 'packMeanTemperatureC', 'bedMethaneForm', 'packMethaneAt19CFactor',
      'packMethaneAt28CFactor',
    ], // biome-ignore format: one list
    (i, fraction, air, inside, form, at19, at28) =>
      fraction[i] *
      ((1 - form[i]) * methaneWarmth(air[i], at19[i], at28[i]) +
        form[i] * methaneWarmth(inside[i], at19[i], at28[i])),
  ),
};

export const bed = [laid, rotting, bedRise, cleanOut] as const;
