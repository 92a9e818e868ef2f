/** One boundary for every system: losses by kind, what is kept, the ladder between, and greenhouse gases. */

import { defineStage } from '../stage.ts';
import { indirectNitrousKg, manureMethaneKg } from './managed.ts';

/** Molar mass of N2O over that of its nitrogen. */
const NITROUS_PER_NITROGEN = 44 / 28;

const sum = (names: readonly string[]) => `sum of ${names.length} places it is lost`;
const AMMONIA = [
  'yardAmmoniaKg', 'paddockAmmoniaKg', 'houseAmmoniaKg', 'storeAmmoniaKg', 'bedAmmoniaKg', 'heapAmmoniaKg', 'spreadAmmoniaKg',
] as const; // biome-ignore format: one list
const NITROUS = [
  'paddockNitrousKg',
  'storeNitrousKg',
  'bedNitrousKg',
  'heapNitrousKg',
  'soilNitrousKg',
] as const;
const DINITROGEN = [
  'paddockDinitrogenKg', 'storeDinitrogenKg', 'bedDinitrogenKg', 'heapDinitrogenKg', 'soilDinitrogenKg',
] as const; // biome-ignore format: one list
const LEACHED = ['paddockLeachedKg', 'heapLeachedKg', 'soilLeachedKg'] as const;

export const ledgerStage = defineStage({
  name: 'ledger',
  about: 'Adds up what every route loses and keeps, so that "kept" means the same in every system.',
  reads: [
    'nitrogenExcretedKg', 'nitrogenBeddingKg', ...AMMONIA, ...NITROUS, ...DINITROGEN, ...LEACHED, 'paddockRunoffKg',
    'paddockNitrogenKeptKg', 'soilNitrogenKeptKg', 'paddockPhosphorusLostKg', 'slurryPhosphorusLostKg',
    'heapPhosphorusLostKg', 'paddockPhosphorusKeptKg', 'soilPhosphorusKeptKg', 'paddockPotassiumLostKg',
    'slurryPotassiumLostKg', 'heapPotassiumLostKg', 'paddockPotassiumKeptKg', 'soilPotassiumKeptKg', 'paddockCarbonKeptKg',
    'soilCarbonKeptKg', 'volatileSolidsKg', 'paddockShare', 'slurryShare', 'packShare', 'methaneCapacityM3PerKg',
    'pastureMethaneCapacityM3PerKg', 'pastureMethaneFraction', 'slurryMethaneFraction', 'packMethaneFraction',
    'compostMethaneFraction', 'indirectAmmoniaFraction', 'indirectLeachedFraction', 'methaneWarmingFactor',
    'nitrousWarmingFactor',
  ], // biome-ignore format: one list
  makes: {
    nitrogenAmmoniaKg: {
      label: 'nitrogen lost as ammonia',
      unit: 'kg',
      formula: sum(AMMONIA),
      from: AMMONIA,
    },
    nitrogenNitrousKg: {
      label: 'nitrogen lost as nitrous oxide',
      unit: 'kg',
      formula: sum(NITROUS),
      from: NITROUS,
    },
    nitrogenDinitrogenKg: {
      label: 'nitrogen lost as N2 and NO',
      unit: 'kg',
      formula: sum(DINITROGEN),
      from: DINITROGEN,
    },
    nitrogenLeachedKg: { label: 'nitrogen leached', unit: 'kg', formula: sum(LEACHED), from: LEACHED },
    nitrogenRunoffKg: {
      label: 'nitrogen in surface run-off',
      unit: 'kg',
      formula: 'run-off from the paddock',
      from: ['paddockRunoffKg'],
    },
    nitrogenKeptKg: {
      label: 'nitrogen kept',
      unit: 'kg',
      formula: 'still in the soil and plants of paddock and spreading ground after the drainage season',
      from: ['paddockNitrogenKeptKg', 'soilNitrogenKeptKg'],
    },
    phosphorusLostKg: {
      label: 'phosphorus lost',
      unit: 'kg',
      formula: 'run off the paddock + left in the store + lost from the heap',
      from: ['paddockPhosphorusLostKg', 'slurryPhosphorusLostKg', 'heapPhosphorusLostKg'],
    },
    phosphorusKeptKg: {
      label: 'phosphorus kept',
      unit: 'kg',
      formula: 'on the paddock + on the spreading ground',
      from: ['paddockPhosphorusKeptKg', 'soilPhosphorusKeptKg'],
    },
    potassiumLostKg: {
      label: 'potassium lost',
      unit: 'kg',
      formula: 'lost from the paddock + left in the store + lost from the heap',
      from: ['paddockPotassiumLostKg', 'slurryPotassiumLostKg', 'heapPotassiumLostKg'],
    },
    potassiumKeptKg: {
      label: 'potassium kept',
      unit: 'kg',
      formula: 'on the paddock + on the spreading ground',
      from: ['paddockPotassiumKeptKg', 'soilPotassiumKeptKg'],
    },
    carbonKeptKg: {
      label: 'carbon brought to the soil',
      unit: 'kg',
      formula: 'on the paddock + on the spreading ground; part of it will be respired in the years after',
      from: ['paddockCarbonKeptKg', 'soilCarbonKeptKg'],
    },
    nitrogenInKg: {
      label: 'nitrogen excreted and in bedding and wasted feed',
      unit: 'kg',
      formula: 'nitrogen excreted + in bedding and wasted feed',
      from: ['nitrogenExcretedKg', 'nitrogenBeddingKg'],
    },
    nitrogenOutOfHousingKg: {
      label: 'nitrogen out of the shed or on the paddock',
      unit: 'kg',
      formula: 'nitrogen in − ammonia of yard, paddock and slatted house − losses of the bed',
      from: [
        'nitrogenInKg', 'yardAmmoniaKg', 'paddockAmmoniaKg', 'houseAmmoniaKg', 'bedAmmoniaKg', 'bedNitrousKg',
        'bedDinitrogenKg',
      ], // biome-ignore format: one list
    },
    nitrogenOutOfStoreKg: {
      label: 'nitrogen out of store or heap',
      unit: 'kg',
      formula: 'nitrogen out of the shed − losses of slurry store and heap',
      from: [
        'nitrogenOutOfHousingKg', 'storeAmmoniaKg', 'storeNitrousKg', 'storeDinitrogenKg', 'heapAmmoniaKg', 'heapNitrousKg',
        'heapDinitrogenKg', 'heapLeachedKg',
      ], // biome-ignore format: one list
    },
    nitrogenIntoSoilKg: {
      label: 'nitrogen into the soil',
      unit: 'kg',
      formula: 'nitrogen out of the store − ammonia at spreading − run-off from the paddock',
      from: ['nitrogenOutOfStoreKg', 'spreadAmmoniaKg', 'paddockRunoffKg'],
    },
    methaneKg: {
      label: 'methane of manure',
      unit: 'kg',
      formula:
        'volatile solids × methane they can give × share given on pasture, in the slurry store, in bed and heap; methane from the animals themselves and from bedding is left out',
      from: [
        'volatileSolidsKg', 'paddockShare', 'slurryShare', 'packShare', 'methaneCapacityM3PerKg',
        'pastureMethaneCapacityM3PerKg', 'pastureMethaneFraction', 'slurryMethaneFraction', 'packMethaneFraction',
        'compostMethaneFraction',
      ], // biome-ignore format: one list
      source: ['ipcc2019', 'ipcc2006'],
    },
    greenhouseGasTonnes: {
      label: 'greenhouse gases of manure, CO2 equivalent',
      unit: 't',
      formula:
        'methane of manure × its warming + (nitrous oxide + nitrous oxide that follows from ammonia and from leaching and run-off) × its warming; methane from the animals, fuel and building are left out',
      from: [
        'methaneKg', 'nitrogenNitrousKg', 'nitrogenAmmoniaKg', 'nitrogenLeachedKg', 'nitrogenRunoffKg',
        'indirectAmmoniaFraction', 'indirectLeachedFraction', 'methaneWarmingFactor', 'nitrousWarmingFactor',
      ], // biome-ignore format: one list
      source: ['ipcc2019', 'ipccAr6'],
    },
  },
  run({ count, read, write }) {
    for (let i = 0; i < count; i++) {
      const ammonia =
        read.yardAmmoniaKg[i] +
        read.paddockAmmoniaKg[i] +
        read.houseAmmoniaKg[i] +
        read.storeAmmoniaKg[i] +
        read.bedAmmoniaKg[i] +
        read.heapAmmoniaKg[i] +
        read.spreadAmmoniaKg[i];
      const nitrous =
        read.paddockNitrousKg[i] +
        read.storeNitrousKg[i] +
        read.bedNitrousKg[i] +
        read.heapNitrousKg[i] +
        read.soilNitrousKg[i];
      const leached = read.paddockLeachedKg[i] + read.heapLeachedKg[i] + read.soilLeachedKg[i];
      write.nitrogenAmmoniaKg[i] = ammonia;
      write.nitrogenNitrousKg[i] = nitrous;
      write.nitrogenDinitrogenKg[i] =
        read.paddockDinitrogenKg[i] +
        read.storeDinitrogenKg[i] +
        read.bedDinitrogenKg[i] +
        read.heapDinitrogenKg[i] +
        read.soilDinitrogenKg[i];
      write.nitrogenLeachedKg[i] = leached;
      write.nitrogenRunoffKg[i] = read.paddockRunoffKg[i];
      write.nitrogenKeptKg[i] = read.paddockNitrogenKeptKg[i] + read.soilNitrogenKeptKg[i];
      write.phosphorusLostKg[i] =
        read.paddockPhosphorusLostKg[i] + read.slurryPhosphorusLostKg[i] + read.heapPhosphorusLostKg[i];
      write.phosphorusKeptKg[i] = read.paddockPhosphorusKeptKg[i] + read.soilPhosphorusKeptKg[i];
      write.potassiumLostKg[i] =
        read.paddockPotassiumLostKg[i] + read.slurryPotassiumLostKg[i] + read.heapPotassiumLostKg[i];
      write.potassiumKeptKg[i] = read.paddockPotassiumKeptKg[i] + read.soilPotassiumKeptKg[i];
      write.carbonKeptKg[i] = read.paddockCarbonKeptKg[i] + read.soilCarbonKeptKg[i];

      const nitrogenIn = read.nitrogenExcretedKg[i] + read.nitrogenBeddingKg[i];
      const outOfHousing =
        nitrogenIn -
        read.yardAmmoniaKg[i] -
        read.paddockAmmoniaKg[i] -
        read.houseAmmoniaKg[i] -
        read.bedAmmoniaKg[i] -
        read.bedNitrousKg[i] -
        read.bedDinitrogenKg[i];
      const outOfStore =
        outOfHousing -
        read.storeAmmoniaKg[i] -
        read.storeNitrousKg[i] -
        read.storeDinitrogenKg[i] -
        read.heapAmmoniaKg[i] -
        read.heapNitrousKg[i] -
        read.heapDinitrogenKg[i] -
        read.heapLeachedKg[i];
      write.nitrogenInKg[i] = nitrogenIn;
      write.nitrogenOutOfHousingKg[i] = outOfHousing;
      write.nitrogenOutOfStoreKg[i] = outOfStore;
      write.nitrogenIntoSoilKg[i] = outOfStore - read.spreadAmmoniaKg[i] - read.paddockRunoffKg[i];

      const solids = read.volatileSolidsKg[i];
      const capacity = read.methaneCapacityM3PerKg[i];
      const methane =
        manureMethaneKg(
          solids * read.paddockShare[i],
          read.pastureMethaneCapacityM3PerKg[i],
          read.pastureMethaneFraction[i],
        ) +
        manureMethaneKg(solids * read.slurryShare[i], capacity, read.slurryMethaneFraction[i]) +
        manureMethaneKg(
          solids * read.packShare[i],
          capacity,
          read.packMethaneFraction[i] + read.compostMethaneFraction[i],
        );
      const indirect = indirectNitrousKg(
        ammonia,
        leached + read.paddockRunoffKg[i],
        read.indirectAmmoniaFraction[i],
        read.indirectLeachedFraction[i],
      );
      write.methaneKg[i] = methane;
      write.greenhouseGasTonnes[i] =
        (methane * read.methaneWarmingFactor[i] +
          (nitrous + indirect) * NITROUS_PER_NITROGEN * read.nitrousWarmingFactor[i]) /
        1000;
    }
  },
});
