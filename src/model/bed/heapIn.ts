/** What a heap is made of: the bed as it is cleaned out and what is mixed in, how long it lies, and how air reaches it. */
import { quantity } from '../engine/quantity.ts';
import { DAYS } from '../series.ts';
import { freeAirSpace } from './freeAirSpace.ts';
import { rateByMoisture } from './haug.ts';
import { heatPerLossC, rateByCarbonNitrogen, windrowSurfacePerVolume } from './heapRates.ts';

export const made = (label: string, unit: string, formula: string, source?: readonly string[]) =>
  quantity(label, unit, formula, { when: 'packShare', ...(source && { source }) });
export const kg = (label: string, formula: string, source?: readonly string[]) =>
  made(label, 'kg', formula, source);

const KG_PER_TONNE = 1000;

const addedDry = [
  'heapMade', 'packDryMatterKg', 'amendment*Tonnes', 'amendment*MoistureFraction',
] as const; // biome-ignore format: one list

const mixedIn = <const Field extends string>(label: string, words: string, field: Field) =>
  kg(label, `tonnes of each × (1 − moisture) × ${words}; none where no heap is made`).of(
    [...addedDry, `amendment*${field}`] as const,
    (i, heap, pack, tonnes, moisture, part) => {
      let sum = 0;
      if (heap[i] > 0 && pack[i] > 0)
        for (let k = 0; k < tonnes.length; k++)
          if (tonnes[k][i] > 0) sum += KG_PER_TONNE * tonnes[k][i] * (1 - moisture[k][i]) * part[k][i];
      return sum;
    },
  );

const mixed = {
  heapAddedKg: kg('mixed into the heap, as it lies', 'tonnes of each; none where no heap is made').of(
    ['heapMade', 'packDryMatterKg', 'amendment*Tonnes'],
    (i, heap, pack, tonnes) => {
      let sum = 0;
      if (heap[i] > 0 && pack[i] > 0)
        for (let k = 0; k < tonnes.length; k++) sum += Math.max(0, tonnes[k][i]);
      return KG_PER_TONNE * sum;
    },
  ),
  heapDryMatterAddedKg: kg(
    'dry matter mixed into the heap',
    'tonnes of each × (1 − moisture); none where no heap is made',
  ).of(addedDry, (i, heap, pack, tonnes, moisture) => {
    let sum = 0;
    if (heap[i] > 0 && pack[i] > 0)
      for (let k = 0; k < tonnes.length; k++)
        if (tonnes[k][i] > 0) sum += KG_PER_TONNE * tonnes[k][i] * (1 - moisture[k][i]);
    return sum;
  }),
  heapWaterAddedKg: kg('water mixed into the heap', 'as it lies − dry matter').minus('heapAddedKg', [
    'heapDryMatterAddedKg',
  ]),
  heapNitrogenAddedKg: mixedIn('nitrogen mixed into the heap', 'nitrogen', 'NitrogenFraction'),
  heapPhosphorusAddedKg: mixedIn('phosphorus mixed into the heap', 'phosphorus', 'PhosphorusFraction'),
  heapPotassiumAddedKg: mixedIn('potassium mixed into the heap', 'potassium', 'PotassiumFraction'),
  heapCarbonAddedKg: mixedIn('carbon mixed into the heap', 'carbon', 'CarbonFraction'),
  heapAshAddedKg: mixedIn('ash mixed into the heap', 'ash', 'AshFraction'),
  heapBindsAddedKg: mixedIn(
    'nitrogen that what is mixed in can bind as it rots',
    'nitrogen each binds',
    'ImmobilisationKgPerKg',
  ),
  heapDegradableAddedKg: kg(
    'degradable carbon mixed into the heap',
    'tonnes of each × (1 − moisture) × carbon × degradable share',
  ).of(
    [...addedDry, 'amendment*CarbonFraction', 'amendment*DegradableFraction'],
    (i, heap, pack, tonnes, moisture, carbon, rots) => {
      let sum = 0;
      if (heap[i] > 0 && pack[i] > 0)
        for (let k = 0; k < tonnes.length; k++)
          if (tonnes[k][i] > 0)
            sum += KG_PER_TONNE * tonnes[k][i] * (1 - moisture[k][i]) * carbon[k][i] * rots[k][i];
      return sum;
    },
  ),
  heapAvailableAddedKg: kg(
    'available carbon mixed into the heap',
    'tonnes of each × (1 − moisture) × carbon × available share',
  ).of(
    [...addedDry, 'amendment*CarbonFraction', 'amendment*AvailableCarbonFraction'],
    (i, heap, pack, tonnes, moisture, carbon, available) => {
      let sum = 0;
      if (heap[i] > 0 && pack[i] > 0)
        for (let k = 0; k < tonnes.length; k++)
          if (tonnes[k][i] > 0)
            sum += KG_PER_TONNE * tonnes[k][i] * (1 - moisture[k][i]) * carbon[k][i] * available[k][i];
      return sum;
    },
  ),
};

const start = (label: string, matter: string) =>
  kg(`${label} of the heap when it is made`, `${label} of the bed + mixed in`).sum([
    `pack${matter}Kg`,
    `heap${matter}AddedKg`,
  ]);

const heaped = {
  heapDryMatterInKg: start('dry matter', 'DryMatter'),
  heapWaterInKg: start('water', 'Water'),
  heapNitrogenInKg: start('nitrogen', 'Nitrogen'),
  heapPhosphorusInKg: start('phosphorus', 'Phosphorus'),
  heapPotassiumInKg: start('potassium', 'Potassium'),
  heapCarbonInKg: start('carbon', 'Carbon'),
  heapAshInKg: start('ash', 'Ash'),
  heapMoistureIn: made('moisture of the heap when it is made', 'fraction', 'water ÷ (water + dry matter)').of(
    ['heapWaterInKg', 'heapDryMatterInKg'],
    (i, wet, dry) => (wet[i] + dry[i] > 0 ? wet[i] / (wet[i] + dry[i]) : 0),
  ),
  heapDegradableCarbonKg: kg(
    'carbon of the heap that can rot',
    'carbon of the bed × degradable share of a bed of straw as it is heaped × factor of the bedding + degradable carbon mixed in',
    ['thomsen2000', 'haoChangLarney2004', 'sommerDahl1999'],
  ).of(
    ['heapMade', 'packCarbonKg', 'heapDegradableFraction', 'compostLossFactor', 'heapDegradableAddedKg'],
    (i, heap, carbon, fraction, factor, added) =>
      heap[i] * (carbon[i] * Math.min(1, fraction[i] * factor[i]) + added[i]),
  ),
  heapVolumeM3: made('heap when it is made', 'm³', 'mass ÷ density of a bed loosened into a windrow', [
    'nraes54',
  ]).of(['heapMade', 'heapDryMatterInKg', 'heapWaterInKg', 'loosenedPackDensityKgPerM3'], (i, heap, dry, wet, density) =>
    (heap[i] * (dry[i] + wet[i])) / density[i],
  ), // biome-ignore format: one list
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
};

const lying = {
  heapDay: made(
    'day the heap is made, from the first winter day',
    'd',
    'day of the clean-out where one is named, or else the end of the winter and the days until the shed is emptied',
  ).of(['cleanOutDay', 'winterDays', 'cleanOutAfterDays'], (i, named, winter, after) =>
    Number.isNaN(named[i]) ? winter[i] + after[i] : named[i],
  ),
  compostDays: made(
    'days the heap lies',
    'd',
    'as given, or else from the day it is made to the middle of the month of spreading; to that of the next year where it would lie less than the least; none where no heap is made',
  ).of(
    ['packDryMatterKg', 'heapMade', 'compostDaysGiven', 'heapDay', 'spreadDay', 'heapLeastDays'],
    (i, dry, heap, given, day, spread, least) => {
      if (!(dry[i] > 0 && heap[i] > 0)) return 0;
      if (!Number.isNaN(given[i])) return Math.max(0, given[i]);
      const until = spread[i] - day[i];
      return until >= least[i] ? until : until + (DAYS - 1) * Math.ceil((least[i] - until) / (DAYS - 1));
    },
  ),
  heapTurns: made('times the heap is turned', 'turns', 'turns as given, where it is turned at all').product([
    'heapLoosened',
    'compostTurns',
  ]),
  heapAirShare: made(
    'share of the heap that air reaches',
    'fraction',
    'of a loosened straw heap × factor of the cover × factor of pressing it down, at most all of it',
    ['millingtonQuirk1961'],
  ).of(
    ['heapLoosenedAirFraction', 'heapCoverAirFactor', 'compostCompacted', 'heapCompactedAirFactor'],
    (i, loose, cover, compacted, factor) =>
      Math.min(1, loose[i] * cover[i] * (1 + compacted[i] * (factor[i] - 1))),
  ),
  heapDraughtShare: made(
    'share of the rest of the heap that warm air rising through it keeps aired while it is hot',
    'fraction',
    'of a loose open heap × factor of the cover; none where it is pressed down',
    ['nraes54'],
  ).of(
    ['heapDraughtForm', 'heapCoverAirFactor', 'compostCompacted'],
    (i, draught, cover, compacted) => draught[i] * Math.min(1, cover[i]) * (1 - compacted[i]),
  ),
  heapSlowFactor: made(
    'how much slower it rots for its moisture and carbon',
    '×',
    'by moisture (Haug) × root of 30 over available C:N where that is above it',
    ['haug1993'],
  ).of(
    [
      'heapMoistureIn', 'packAvailableCarbonKg', 'heapAvailableAddedKg', 'heapNitrogenInKg', 'heapEnoughNitrogenRatio',
    ], // biome-ignore format: one list
    (i, moisture, available, added, nitrogen, enough) =>
      rateByMoisture(moisture[i]) *
      (nitrogen[i] > 0 ? rateByCarbonNitrogen((available[i] + added[i]) / nitrogen[i], enough[i]) : 1),
  ),
  heapSurfacePerVolume: made(
    'skin of the heap for its volume',
    '1/m',
    'arc ÷ cross-section of a parabolic windrow',
    ['nraes54'],
  ).of(['windrowBaseM', 'windrowHeightM'], (i, base, height) => windrowSurfacePerVolume(base[i], height[i])),
  heapLossWPerM2K: made(
    'heat that leaves through the skin of the heap',
    'W/m²/K',
    'of a loose heap, × factor where it is pressed down',
  ).of(
    ['heapSkinLossWPerM2K', 'compostCompacted', 'heapCompactedLossFactor'],
    (i, loss, compacted, factor) => loss[i] * (1 + compacted[i] * (factor[i] - 1)),
  ),
  heapEvaporationShare: made(
    'heat that leaves the heap with water and air, for each part through its skin',
    '×',
    'of an open heap × factor of the cover',
  ).product(['heapEvaporationHeatRatio', 'heapEvaporationCoverFactor']),
  heapHeatPerLossC: made(
    'heat the heap makes at 20 °C over what it loses for each °C above the air',
    '°C',
    'heat of a kg rotted × first rate × slowed × degradable matter in a m³ × aired share ÷ loss through the skin and with water and air',
    ['haug1993'],
  ).of(
    [
      'heapHeatMjPerKg', 'heapFirstRatePerDay', 'heapSlowFactor', 'heapDegradableCarbonKg', 'heapMatterPerCarbonKgPerKg',
      'heapVolumeM3', 'heapAirShare', 'heapLossWPerM2K', 'heapSurfacePerVolume', 'heapEvaporationShare',
    ], // biome-ignore format: one list
    (i, heat, rate, slow, carbon, perCarbon, volume, air, loss, skin, vapour) =>
      volume[i] > 0
        ? heatPerLossC({
            heatMjPerKg: heat[i],
            ratePerDay: rate[i] * slow[i],
            degradableKgPerM3: (carbon[i] * perCarbon[i]) / volume[i],
            airShare: air[i],
            lossWPerM2K: loss[i],
            surfacePerVolume: skin[i],
            evaporationShare: vapour[i],
          })
        : 0,
  ),
};

export const heapIn = { ...mixed, ...heaped, ...lying };
