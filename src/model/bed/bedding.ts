/** Bedding: what the mix is made of, and how much of each thing it brings into the bed over the winter. */

import { defineStage, type Quantity } from '../stage.ts';
import { absorbencyAtMoisture } from './absorbency.ts';
import { immobilisedPerKg } from './immobilisation.ts';

/** What every amount of bedding hangs on. */
const LAID = [
  'beddingRateKgPer100Kg', 'liveWeightKg', 'winterDays', 'startMaterialKg', 'bedShare', 'material*Share', 'material*MoistureFraction',
] as const; // biome-ignore format: one list

const brought = (matter: string, field: string): Quantity => ({
  label: `${matter} in bedding`,
  unit: 'kg',
  formula: `dry matter of each material × its ${matter}`,
  from: [...LAID, `material*${field}`],
  route: 'pack',
});

const ofMix = (label: string, unit: string, words: string, from: readonly string[]): Quantity => ({
  label,
  unit,
  formula: words,
  from: ['material*Share', 'material*MoistureFraction', ...from],
  route: 'pack',
});

const withWaste = (matter: string, name: string): Quantity => ({
  label: `${matter} in bedding and wasted feed`,
  unit: 'kg',
  formula: `${matter} in bedding + ${matter} in wasted feed`,
  from: [`${name}MaterialKg`, `${name}WastedKg`],
});

export const beddingStage = defineStage({
  name: 'bedding',
  about:
    'The bedding of the winter: a loose layer at the start, then a rate by live weight, of the mix given.',
  reads: [
    'winterDays', 'liveWeightKg', 'bedShare', 'beddingRateKgPer100Kg', 'startDepthM', 'shedLengthM', 'shedDepthM',
    'stanceDepthM', 'nitrogenWastedKg', 'phosphorusWastedKg', 'potassiumWastedKg', 'absorbencyTestMoistureFraction',
    'microbeYieldFraction', 'microbeCarbonNitrogen',
  ], // biome-ignore format: one list
  families: {
    material: [
      'Share', 'MoistureFraction', 'CarbonFraction', 'NitrogenFraction', 'PhosphorusFraction', 'PotassiumFraction',
      'AshFraction', 'DegradableFraction', 'AvailableCarbonFraction', 'AbsorbencyKgPerKg', 'ImmobilisationKgPerKg',
      'AmmoniaFactor', 'HeapNitrogenFactor', 'CompostLossFactor', 'LooseDensityKgPerM3', 'CoarseFraction',
    ], // biome-ignore format: one list
  },
  makes: {
    bedM2: {
      label: 'area of the bed',
      unit: 'm²',
      formula: 'length of the shed × (depth of the shed − depth of the feed stance)',
      from: ['shedLengthM', 'shedDepthM', 'stanceDepthM'],
      route: 'pack',
    },
    startMaterialKg: {
      label: 'bedding laid at the start, as it lies',
      unit: 'kg',
      formula: 'depth of the first layer × area of the bed × loose density of the mix',
      from: ['startDepthM', 'bedM2', 'bedShare', 'material*Share', 'material*LooseDensityKgPerM3'],
      route: 'pack',
    },
    beddingTonnes: {
      label: 'bedding, as it lies',
      unit: 't',
      formula: 'first layer + rate per 100 kg live weight × live weight × winter days; none without a bed',
      from: LAID,
      route: 'pack',
    },
    beddingM3: {
      label: 'bedding, loose',
      unit: 'm³',
      formula: 'each material as it lies ÷ its loose density',
      from: [...LAID, 'material*LooseDensityKgPerM3'],
      route: 'pack',
    },
    dryMatterMaterialKg: {
      label: 'dry matter in bedding',
      unit: 'kg',
      formula: 'each material as it lies × (1 − its moisture)',
      from: LAID,
      route: 'pack',
    },
    startDryMatterKg: {
      label: 'dry matter in the first layer',
      unit: 'kg',
      formula: 'first layer × (1 − moisture of the mix)',
      from: ['startMaterialKg', 'material*Share', 'material*MoistureFraction'],
      route: 'pack',
    },
    waterMaterialKg: {
      label: 'water in bedding',
      unit: 'kg',
      formula: 'each material as it lies × its moisture',
      from: LAID,
      route: 'pack',
    },
    nitrogenMaterialKg: brought('nitrogen', 'NitrogenFraction'),
    phosphorusMaterialKg: brought('phosphorus', 'PhosphorusFraction'),
    potassiumMaterialKg: brought('potassium', 'PotassiumFraction'),
    carbonMaterialKg: brought('carbon', 'CarbonFraction'),
    ashMaterialKg: brought('ash', 'AshFraction'),
    coarseMaterialKg: {
      label: 'coarse wood in bedding, dry matter',
      unit: 'kg',
      formula: 'dry matter of each material × the part of it that is coarse wood',
      from: [...LAID, 'material*CoarseFraction'],
      route: 'pack',
    },
    availableCarbonMaterialKg: {
      label: 'carbon in bedding that a season can use',
      unit: 'kg',
      formula: 'carbon of each material × its available share',
      from: [...LAID, 'material*CarbonFraction', 'material*AvailableCarbonFraction'],
      route: 'pack',
    },
    degradableCarbonMaterialKg: {
      label: 'carbon in the degradable dry matter of bedding',
      unit: 'kg',
      formula: 'carbon of each material × the degradable share of its dry matter',
      from: [...LAID, 'material*CarbonFraction', 'material*DegradableFraction'],
      route: 'pack',
    },
    degradableMaterialFraction: ofMix(
      'degradable share of bedding',
      'fraction',
      'mean of the degradable shares of the materials, by dry matter',
      ['material*DegradableFraction'],
    ),
    absorbencyKgPerKg: ofMix(
      'water the mix can take up, per kg as it lies',
      'kg/kg',
      'soak value of each material, corrected from the moisture of the test to its own, mean by mass',
      ['material*AbsorbencyKgPerKg', 'absorbencyTestMoistureFraction'],
    ),
    immobilisationKgPerKg: {
      ...ofMix(
        'nitrogen the mix can bind, per kg dry matter',
        'kg/kg',
        'for each material the lower of its row and what microbes can build from its available carbon (available carbon × yield ÷ C:N of microbes − nitrogen set free), mean by dry matter',
        [
          'material*ImmobilisationKgPerKg', 'material*CarbonFraction', 'material*NitrogenFraction',
          'material*AvailableCarbonFraction', 'microbeYieldFraction', 'microbeCarbonNitrogen',
        ], // biome-ignore format: one list
      ),
      source: ['emep2019', 'kirchmannWitter1989'],
    },
    litterAmmoniaFactor: ofMix(
      'ammonia from the bed against a straw bed',
      '×',
      'mean of the factors of the materials, by dry matter; 1 without bedding',
      ['material*AmmoniaFactor'],
    ),
    heapNitrogenFactor: ofMix(
      'nitrogen lost in the heap against straw',
      '×',
      'mean of the factors of the materials, by dry matter; 1 without bedding',
      ['material*HeapNitrogenFactor'],
    ),
    compostLossFactor: ofMix(
      'dry matter and carbon lost in the heap against straw',
      '×',
      'mean of the factors of the materials, by dry matter; 1 without bedding',
      ['material*CompostLossFactor'],
    ),
    nitrogenBeddingKg: withWaste('nitrogen', 'nitrogen'),
    phosphorusBeddingKg: withWaste('phosphorus', 'phosphorus'),
    potassiumBeddingKg: withWaste('potassium', 'potassium'),
  },
  run({ count, read, family, write }) {
    const microbes = { yieldFraction: 0, carbonNitrogen: 1 };
    for (let i = 0; i < count; i++) {
      const bedded = read.bedShare[i] > 0;
      const bedM2 = read.shedLengthM[i] * Math.max(0, read.shedDepthM[i] - read.stanceDepthM[i]);
      microbes.yieldFraction = read.microbeYieldFraction[i];
      microbes.carbonNitrogen = read.microbeCarbonNitrogen[i];
      let shares = 0;
      let loose = 0;
      let dry = 0;
      let nitrogen = 0;
      let phosphorus = 0;
      let potassium = 0;
      let carbon = 0;
      let ash = 0;
      let coarse = 0;
      let available = 0;
      let degradableCarbon = 0;
      let degradable = 0;
      let absorbency = 0;
      let immobilisation = 0;
      let ammonia = 0;
      let heapNitrogen = 0;
      let compostLoss = 0;
      // Per kg of the mix as it lies; a sweep may move one share alone, so the shares are made to sum to 1.
      for (const material of family.material) shares += Math.max(0, material.Share[i]);
      for (const material of family.material) {
        if (!(material.Share[i] > 0)) continue;
        const mass = material.Share[i] / shares;
        const moisture = material.MoistureFraction[i];
        const dm = mass * (1 - moisture);
        const c = material.CarbonFraction[i];
        loose += mass / material.LooseDensityKgPerM3[i];
        dry += dm;
        nitrogen += dm * material.NitrogenFraction[i];
        phosphorus += dm * material.PhosphorusFraction[i];
        potassium += dm * material.PotassiumFraction[i];
        carbon += dm * c;
        ash += dm * material.AshFraction[i];
        coarse += dm * material.CoarseFraction[i];
        available += dm * c * material.AvailableCarbonFraction[i];
        degradableCarbon += dm * c * material.DegradableFraction[i];
        degradable += dm * material.DegradableFraction[i];
        absorbency +=
          mass *
          absorbencyAtMoisture(
            material.AbsorbencyKgPerKg[i],
            read.absorbencyTestMoistureFraction[i],
            moisture,
          );
        const most = immobilisedPerKg(
          c,
          material.NitrogenFraction[i],
          material.AvailableCarbonFraction[i],
          microbes,
        );
        immobilisation += dm * Math.min(material.ImmobilisationKgPerKg[i], most);
        ammonia += dm * material.AmmoniaFactor[i];
        heapNitrogen += dm * material.HeapNitrogenFactor[i];
        compostLoss += dm * material.CompostLossFactor[i];
      }
      const any = bedded && shares > 0;
      const start = any && loose > 0 ? (read.startDepthM[i] * bedM2) / loose : 0;
      const daily = any
        ? (read.beddingRateKgPer100Kg[i] / 100) * read.liveWeightKg[i] * read.winterDays[i]
        : 0;
      const mass = start + daily;
      write.bedM2[i] = bedM2;
      write.startMaterialKg[i] = start;
      write.beddingTonnes[i] = mass / 1000;
      write.beddingM3[i] = mass * loose;
      write.dryMatterMaterialKg[i] = mass * dry;
      write.startDryMatterKg[i] = start * dry;
      write.waterMaterialKg[i] = any ? mass * (1 - dry) : 0;
      write.nitrogenMaterialKg[i] = mass * nitrogen;
      write.phosphorusMaterialKg[i] = mass * phosphorus;
      write.potassiumMaterialKg[i] = mass * potassium;
      write.carbonMaterialKg[i] = mass * carbon;
      write.ashMaterialKg[i] = mass * ash;
      write.coarseMaterialKg[i] = mass * coarse;
      write.availableCarbonMaterialKg[i] = mass * available;
      write.degradableCarbonMaterialKg[i] = mass * degradableCarbon;
      write.degradableMaterialFraction[i] = dry > 0 ? degradable / dry : 0;
      write.absorbencyKgPerKg[i] = absorbency;
      write.immobilisationKgPerKg[i] = dry > 0 ? immobilisation / dry : 0;
      write.litterAmmoniaFactor[i] = dry > 0 ? ammonia / dry : 1;
      write.heapNitrogenFactor[i] = dry > 0 ? heapNitrogen / dry : 1;
      write.compostLossFactor[i] = dry > 0 ? compostLoss / dry : 1;
      write.nitrogenBeddingKg[i] = mass * nitrogen + read.nitrogenWastedKg[i];
      write.phosphorusBeddingKg[i] = mass * phosphorus + read.phosphorusWastedKg[i];
      write.potassiumBeddingKg[i] = mass * potassium + read.potassiumWastedKg[i];
    }
  },
});
