/** Bedding: what the mix is made of, and how much of each thing it brings into the bed over the winter. */
import { quantity } from '../engine/quantity.ts';
import { absorbencyAtMoisture } from './absorbency.ts';
import { immobilisedPerKg } from './immobilisation.ts';

type Column = Float64Array;
type Family = readonly Float64Array[];

/** The mix: what a sum over its materials needs, per kg of the mix as it lies. */
const MIX = ['mixShareSum', 'material*Share', 'material*MoistureFraction'] as const;

/** Sum over the materials of dry matter × one of their numbers, per kg of the mix as it lies. */
function byDryMatter(i: number, sum: Column, shares: Family, moisture: Family, field: Family): number {
  let total = 0;
  for (let m = 0; m < shares.length; m++)
    if (shares[m][i] > 0) total += (shares[m][i] / sum[i]) * (1 - moisture[m][i]) * field[m][i];
  return total;
}

/** The same for the product of two of their numbers. */
function byDryMatterOfTwo(
  i: number,
  sum: Column,
  shares: Family,
  moisture: Family,
  one: Family,
  other: Family,
): number {
  let total = 0;
  for (let m = 0; m < shares.length; m++)
    if (shares[m][i] > 0) total += (shares[m][i] / sum[i]) * (1 - moisture[m][i]) * one[m][i] * other[m][i];
  return total;
}

const inBedding = (label: string, formula: string) => quantity(label, 'kg', formula, { when: 'packShare' });

const partOf = (label: string, formula: string, field: string) =>
  inBedding(label, formula).of(
    ['beddingKg', ...MIX, `material*${field}`] as const,
    (i, kg, sum, shares, moisture, part) => kg[i] * byDryMatter(i, sum, shares, moisture, part),
  );

const brought = (matter: string, field: string) =>
  partOf(`${matter} in bedding`, `dry matter of each material × its ${matter}`, field);

const carbonOf = (label: string, formula: string, field: string) =>
  inBedding(label, formula).of(
    ['beddingKg', ...MIX, 'material*CarbonFraction', `material*${field}`] as const,
    (i, kg, sum, shares, moisture, carbon, part) =>
      kg[i] * byDryMatterOfTwo(i, sum, shares, moisture, carbon, part),
  );

/** Mean of the materials by dry matter; `none` where there is no dry matter. */
const ofMix = (label: string, unit: string, formula: string, field: string, none: number) =>
  quantity(label, unit, formula, { when: 'packShare' }).of(
    ['mixDryFraction', ...MIX, `material*${field}`] as const,
    (i, dry, sum, shares, moisture, part) =>
      dry[i] > 0 ? byDryMatter(i, sum, shares, moisture, part) / dry[i] : none,
  );

const againstStraw = (label: string, field: string) =>
  ofMix(label, '×', 'mean of the factors of the materials, by dry matter; 1 without bedding', field, 1);

const withWaste = (matter: string) =>
  quantity(
    `${matter} in bedding and wasted feed`,
    'kg',
    `${matter} in bedding + ${matter} in wasted feed`,
  ).sum([`${matter}MaterialKg`, `${matter}WastedKg`]);

export const bedding = {
  bedM2: quantity(
    'area of the bed',
    'm²',
    'length of the shed × (depth of the shed − depth of the feed stance)',
    { when: 'packShare' },
  ).of(
    ['shedLengthM', 'shedDepthM', 'stanceDepthM'],
    (i, length, depth, stance) => length[i] * Math.max(0, depth[i] - stance[i]),
  ),
  // A sweep may move one share alone, so the shares are made to sum to 1.
  mixShareSum: quantity(
    'sum of the shares of the mix',
    'fraction',
    'sum of the shares of the materials as given; each then counts by its part of the sum',
    { when: 'packShare' },
  ).of(['material*Share'], (i, shares) => {
    let sum = 0;
    for (let m = 0; m < shares.length; m++) sum += Math.max(0, shares[m][i]);
    return sum;
  }),
  mixVolumeM3PerKg: quantity(
    'room a kilogram of the mix takes, loose',
    'm³/kg',
    'sum over the materials of share ÷ loose density',
    { when: 'packShare' },
  ).of(['mixShareSum', 'material*Share', 'material*LooseDensityKgPerM3'], (i, sum, shares, density) => {
    let volume = 0;
    for (let m = 0; m < shares.length; m++)
      if (shares[m][i] > 0) volume += shares[m][i] / sum[i] / density[m][i];
    return volume;
  }),
  mixDryFraction: quantity(
    'dry matter of the mix as it lies',
    'fraction',
    'sum over the materials of share × (1 − moisture)',
    { when: 'packShare' },
  ).of(MIX, (i, sum, shares, moisture) => {
    let dry = 0;
    for (let m = 0; m < shares.length; m++)
      if (shares[m][i] > 0) dry += (shares[m][i] / sum[i]) * (1 - moisture[m][i]);
    return dry;
  }),
  startMaterialKg: inBedding(
    'bedding laid at the start, as it lies',
    'depth of the first layer × area of the bed × loose density of the mix',
  ).of(['startDepthM', 'bedM2', 'bedShare', 'mixVolumeM3PerKg'], (i, depth, area, onBed, volume) =>
    onBed[i] > 0 && volume[i] > 0 ? (depth[i] * area[i]) / volume[i] : 0,
  ),
  beddingDietFactor: quantity(
    'bedding for this ration against silage',
    '×',
    'mean of the factors of the feeds by their share of the dry matter',
    { source: ['irishFarmersJournal', 'farmersWeekly2024'], when: 'packShare' },
  ).of(['feed*Share', 'feed*BeddingFactor'], (i, shares, factors) => {
    let sum = 0;
    let all = 0;
    for (let f = 0; f < shares.length; f++) {
      if (!(shares[f][i] > 0)) continue;
      sum += shares[f][i] * factors[f][i];
      all += shares[f][i];
    }
    return all > 0 ? sum / all : 1;
  }),
  beddingUsualKgPer100Kg: quantity(
    'usual bedding a day per 100 kg live weight, of this mix',
    'kg',
    'rate on silage × factor of the ration × share of the day on the bed ÷ share the rate holds for × water straw takes up ÷ water the mix takes up, at most what is ever strewn',
    { source: ['handbook'], when: 'packShare' },
  ).of(
    [
      'beddingSilageKgPer100Kg', 'beddingDietFactor', 'bedDropShare', 'beddingReferenceShare', 'beddingStrawAbsorbencyKgPerKg',
      'absorbencyKgPerKg', 'beddingMostKgPer100Kg',
    ], // biome-ignore format: one list
    (i, silage, diet, onBed, reference, straw, mix, most) => {
      const ofStraw = (silage[i] * diet[i] * onBed[i]) / reference[i];
      return Math.min(most[i], mix[i] > 0 ? (ofStraw * straw[i]) / mix[i] : ofStraw > 0 ? most[i] : 0);
    },
  ),
  beddingDailyKgPer100Kg: quantity(
    'bedding strewn a day per 100 kg live weight',
    'kg',
    'as the notebook says; where it is silent the usual rate for ration, place and mix',
    { when: 'packShare' },
  ).of(['beddingRateKgPer100Kg', 'beddingUsualKgPer100Kg'], (i, given, usual) =>
    Number.isNaN(given[i]) ? usual[i] : given[i],
  ),
  strewnMaterialKg: inBedding(
    'bedding strewn over the winter, as it lies',
    'rate per 100 kg live weight × live weight × winter days; none without a bed',
  ).of(
    ['beddingDailyKgPer100Kg', 'liveWeightKg', 'winterDays', 'bedShare', 'mixShareSum'],
    (i, rate, weight, days, onBed, mix) =>
      onBed[i] > 0 && mix[i] > 0 ? (rate[i] / 100) * weight[i] * days[i] : 0,
  ),
  beddingKg: inBedding('bedding, as it lies', 'first layer + bedding strewn over the winter').sum([
    'startMaterialKg',
    'strewnMaterialKg',
  ]),
  beddingTonnes: quantity(
    'bedding, as it lies',
    't',
    'first layer + rate per 100 kg live weight × live weight × winter days; none without a bed',
    { when: 'packShare' },
  ).of(['beddingKg'], (i, kg) => kg[i] / 1000),
  beddingM3: quantity('bedding, loose', 'm³', 'each material as it lies ÷ its loose density', {
    when: 'packShare',
  }).product(['beddingKg', 'mixVolumeM3PerKg']),
  dryMatterMaterialKg: inBedding(
    'dry matter in bedding',
    'each material as it lies × (1 − its moisture)',
  ).product(['beddingKg', 'mixDryFraction']),
  startDryMatterKg: inBedding(
    'dry matter in the first layer',
    'first layer × (1 − moisture of the mix)',
  ).product(['startMaterialKg', 'mixDryFraction']),
  waterMaterialKg: inBedding('water in bedding', 'each material as it lies × its moisture').of(
    ['beddingKg', 'mixDryFraction'],
    (i, kg, dry) => kg[i] * (1 - dry[i]),
  ),
  nitrogenMaterialKg: brought('nitrogen', 'NitrogenFraction'),
  phosphorusMaterialKg: brought('phosphorus', 'PhosphorusFraction'),
  potassiumMaterialKg: brought('potassium', 'PotassiumFraction'),
  carbonMaterialKg: brought('carbon', 'CarbonFraction'),
  ashMaterialKg: brought('ash', 'AshFraction'),
  coarseMaterialKg: partOf(
    'coarse wood in bedding, dry matter',
    'dry matter of each material × the part of it that is coarse wood',
    'CoarseFraction',
  ),
  availableCarbonMaterialKg: carbonOf(
    'carbon in bedding that a season can use',
    'carbon of each material × its available share',
    'AvailableCarbonFraction',
  ),
  degradableCarbonMaterialKg: carbonOf(
    'carbon in the degradable dry matter of bedding',
    'carbon of each material × the degradable share of its dry matter',
    'DegradableFraction',
  ),
  degradableMaterialFraction: ofMix(
    'degradable share of bedding',
    'fraction',
    'mean of the degradable shares of the materials, by dry matter',
    'DegradableFraction',
    0,
  ),
  absorbencyKgPerKg: quantity(
    'water the mix can take up, per kg as it lies',
    'kg/kg',
    'soak value of each material, corrected from the moisture of the test to its own, mean by mass',
    { when: 'packShare' },
  ).of(
    [...MIX, 'material*AbsorbencyKgPerKg', 'absorbencyTestMoistureFraction'],
    (i, sum, shares, moisture, soak, test) => {
      let taken = 0;
      for (let m = 0; m < shares.length; m++)
        if (shares[m][i] > 0)
          taken += (shares[m][i] / sum[i]) * absorbencyAtMoisture(soak[m][i], test[i], moisture[m][i]);
      return taken;
    },
  ),
  immobilisationKgPerKg: quantity(
    'nitrogen the mix can bind, per kg dry matter',
    'kg/kg',
    'for each material the lower of its row and what microbes can build from its available carbon (available carbon × yield ÷ C:N of microbes − nitrogen set free), mean by dry matter',
    { source: ['emep2019', 'kirchmannWitter1989'], when: 'packShare' },
  ).of(
    [
      'mixDryFraction', ...MIX, 'material*ImmobilisationKgPerKg', 'material*CarbonFraction', 'material*NitrogenFraction',
      'material*AvailableCarbonFraction', 'microbeYieldFraction', 'microbeCarbonNitrogen',
    ], // biome-ignore format: one list
    (i, dry, sum, shares, moisture, bound, carbon, nitrogen, available, yields, carbonNitrogen) => {
      if (!(dry[i] > 0)) return 0;
      const microbes = { yieldFraction: yields[i], carbonNitrogen: carbonNitrogen[i] };
      let total = 0;
      for (let m = 0; m < shares.length; m++) {
        if (!(shares[m][i] > 0)) continue;
        const most = immobilisedPerKg(carbon[m][i], nitrogen[m][i], available[m][i], microbes);
        total += (shares[m][i] / sum[i]) * (1 - moisture[m][i]) * Math.min(bound[m][i], most);
      }
      return total / dry[i];
    },
  ),
  litterAmmoniaFactor: againstStraw('ammonia from the bed against a straw bed', 'AmmoniaFactor'),
  heapNitrogenFactor: againstStraw('nitrogen lost in the heap against straw', 'HeapNitrogenFactor'),
  compostLossFactor: againstStraw(
    'dry matter and carbon lost in the heap against straw',
    'CompostLossFactor',
  ),
  nitrogenBeddingKg: withWaste('nitrogen'),
  phosphorusBeddingKg: withWaste('phosphorus'),
  potassiumBeddingKg: withWaste('potassium'),
};
