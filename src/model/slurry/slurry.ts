/** Slats, house and store → slurry leaving the store, its losses and the room it needs. EMEP/EEA 3.B, tier 2. */

import { defineStage } from '../stage.ts';
import { lossLimit, mineralisedTanKg, temperatureFactor } from './ammonia.ts';
import { storeNeededM3 } from './storage.ts';

const HOUSE = [
  'slatsTanKg', 'houseAmmoniaTanFraction', 'houseAmmoniaSlopePerC', 'houseWarmerC', 'pitLowestC', 'ammoniaReferenceC',
  'winterTemperatureC',
] as const; // biome-ignore format: one list
const INTO_STORE = [
  'slurryTanInKg',
  'slurryNitrogenInKg',
  'houseAmmoniaKg',
  'storeMineralisedFraction',
] as const;
const STORE = [
  ...INTO_STORE, 'storeAmmoniaTanFraction', 'storeAmmoniaFactor', 'storeNitrousFraction', 'storeNitricOxideFraction',
  'storeDinitrogenFraction',
] as const; // biome-ignore format: one list
const RUN_IN = [
  'rainMm',
  'openStoreM2',
  'openYardM2',
  'yardRunoffFraction',
  'washLitresPerDay',
  'winterDays',
] as const;

const TAN_IN_STORE =
  'TAN in the store = TAN after house losses + share of the organic nitrogen that turns into TAN during storage';

export const slurryStage = defineStage({
  name: 'slurry',
  about:
    'Nitrogen mass flow through slatted house and store; volume by water balance; store room by the rule of volume.',
  reads: [
    'winterDays', 'herdFactor', 'slurryShare', 'slatsShare', 'slatsTanKg', 'slurryTanInKg', 'slurryNitrogenInKg',
    'slurryPhosphorusInKg', 'slurryPotassiumInKg', 'slurryCarbonInKg', 'slurryDryMatterInKg', 'slurryWaterInKg', 'slatsM2',
    'washLitresPerDay', 'openStoreM2', 'openYardM2', 'rainMm', 'winterTemperatureC', 'houseAmmoniaTanFraction',
    'houseAmmoniaSlopePerC', 'houseWarmerC', 'pitLowestC', 'ammoniaReferenceC', 'storeMineralisedFraction',
    'storeAmmoniaTanFraction', 'storeAmmoniaFactor', 'storeNitrousFraction', 'storeNitricOxideFraction',
    'storeDinitrogenFraction', 'storeDryMatterLossFraction', 'slurryPhosphorusLossFraction', 'slurryPotassiumLossFraction',
    'slurryDensityKgPerM3', 'yardRunoffFraction', 'storeBufferFraction', 'wetYearRainFactor',
  ], // biome-ignore format: one list
  families: { group: ['HeadCount', 'StoreM3PerWeek', 'SlatsM2'] },
  makes: {
    slatsUsedM2: {
      label: 'slatted area',
      unit: 'm²',
      formula:
        'the area given, or else head × slatted area a head of the class; none where no time is spent on slats',
      from: ['slatsM2', 'slatsShare', 'group*HeadCount', 'group*SlatsM2', 'herdFactor'],
      source: ['teagascHousing'],
      route: 'slurry',
    },
    houseAmmoniaKg: {
      label: 'ammonia from the slatted house (N)',
      unit: 'kg',
      formula:
        'TAN dropped on slats × share lost in the house × e^(house slope × (pit temperature − reference)); pit temperature = winter temperature + warmth of the house, not below the lowest of a pit; the slope is 0 unless changed, since the share is a mean of houses in use in winter',
      from: HOUSE,
      source: ['emep2019', 'sommer2019'],
      route: 'slurry',
    },
    storeAmmoniaKg: {
      label: 'ammonia from the slurry store (N)',
      unit: 'kg',
      formula: `${TAN_IN_STORE}; × share lost from a store × factor of the cover`,
      from: STORE,
      source: ['emep2019', 'unece2014'],
      route: 'slurry',
    },
    storeNitrousKg: {
      label: 'nitrous oxide from the slurry store (N)',
      unit: 'kg',
      formula: 'TAN in the store × share of the cover',
      from: STORE,
      source: ['emep2019'],
      route: 'slurry',
    },
    storeDinitrogenKg: {
      label: 'N2 and NO from the slurry store (N)',
      unit: 'kg',
      formula: 'TAN in the store × (share as N2 + share as NO)',
      from: STORE,
      source: ['emep2019'],
      route: 'slurry',
    },
    slurryNitrogenKg: {
      label: 'nitrogen in slurry leaving the store',
      unit: 'kg',
      formula: 'nitrogen into slats and slurry − house and store losses',
      from: ['slurryNitrogenInKg', 'houseAmmoniaKg', 'storeAmmoniaKg', 'storeNitrousKg', 'storeDinitrogenKg'],
      route: 'slurry',
    },
    slurryTanKg: {
      label: 'TAN in slurry leaving the store',
      unit: 'kg',
      formula: 'TAN in the store − store losses',
      from: [...INTO_STORE, 'storeAmmoniaKg', 'storeNitrousKg', 'storeDinitrogenKg'],
      source: ['emep2019'],
      route: 'slurry',
    },
    slurryPhosphorusLostKg: {
      label: 'phosphorus left in the store',
      unit: 'kg',
      formula: 'phosphorus into slurry × share left as sediment',
      from: ['slurryPhosphorusInKg', 'slurryPhosphorusLossFraction'],
      route: 'slurry',
    },
    slurryPotassiumLostKg: {
      label: 'potassium left in the store',
      unit: 'kg',
      formula: 'potassium into slurry × share left',
      from: ['slurryPotassiumInKg', 'slurryPotassiumLossFraction'],
      route: 'slurry',
    },
    slurryPhosphorusKg: {
      label: 'phosphorus in slurry leaving the store',
      unit: 'kg',
      formula: 'phosphorus into slurry − left in the store',
      from: ['slurryPhosphorusInKg', 'slurryPhosphorusLostKg'],
      route: 'slurry',
    },
    slurryPotassiumKg: {
      label: 'potassium in slurry leaving the store',
      unit: 'kg',
      formula: 'potassium into slurry − left in the store',
      from: ['slurryPotassiumInKg', 'slurryPotassiumLostKg'],
      route: 'slurry',
    },
    slurryCarbonKg: {
      label: 'carbon in slurry leaving the store',
      unit: 'kg',
      formula: 'carbon into slurry × (1 − share of solids lost in the store)',
      from: ['slurryCarbonInKg', 'storeDryMatterLossFraction'],
      route: 'slurry',
    },
    slurryDryMatterKg: {
      label: 'dry matter in slurry leaving the store',
      unit: 'kg',
      formula: 'dry matter into slurry × (1 − share of solids lost in the store)',
      from: ['slurryDryMatterInKg', 'storeDryMatterLossFraction'],
      route: 'slurry',
    },
    slurryM3: {
      label: 'slurry',
      unit: 'm³',
      formula:
        '(dry matter left + water of dung, urine and wasted feed + wash water + rain on open store and yard) ÷ density; drying off the surface is not counted',
      from: ['slurryDryMatterKg', 'slurryWaterInKg', 'slurryShare', 'slurryDensityKgPerM3', ...RUN_IN],
      route: 'slurry',
    },
    storeNeededM3: {
      label: 'store room needed',
      unit: 'm³',
      formula:
        '(head × volume a head and week of the class × weeks × share that ends in slurry + wash water + rain of a wet year on open store and yard) × (1 + buffer); freeboard comes on top: check the local rule',
      from: [
        'group*HeadCount', 'group*StoreM3PerWeek', 'herdFactor', 'slurryShare', 'storeBufferFraction', 'wetYearRainFactor',
        ...RUN_IN,
      ], // biome-ignore format: one list
      source: ['irishGap2022'],
      route: 'slurry',
    },
  },
  run({ count, read, family: { group }, write }) {
    for (let i = 0; i < count; i++) {
      const days = read.winterDays[i];
      const share = read.slurryShare[i];
      let rule = 0;
      let slats = 0;
      for (let g = 0; g < group.length; g++) {
        const head = group[g].HeadCount[i] * read.herdFactor[i];
        if (!(head > 0)) continue;
        rule += head * group[g].StoreM3PerWeek[i] * (days / 7);
        slats += head * group[g].SlatsM2[i];
      }
      // Not given stands as NaN.
      const given = read.slatsM2[i] > 0;
      write.slatsUsedM2[i] = read.slatsShare[i] > 0 ? (given ? read.slatsM2[i] : slats) : 0;

      const pitC = Math.max(read.pitLowestC[i], read.winterTemperatureC[i] + read.houseWarmerC[i]);
      const house =
        read.slatsTanKg[i] *
        Math.min(
          1,
          read.houseAmmoniaTanFraction[i] *
            temperatureFactor(pitC, read.houseAmmoniaSlopePerC[i], read.ammoniaReferenceC[i]),
        );
      const nitrogenToStore = read.slurryNitrogenInKg[i] - house;
      const tan = mineralisedTanKg(
        read.slurryTanInKg[i] - house,
        nitrogenToStore,
        read.storeMineralisedFraction[i],
      );

      const ammonia = read.storeAmmoniaTanFraction[i] * read.storeAmmoniaFactor[i];
      const nitrous = read.storeNitrousFraction[i];
      const dinitrogen = read.storeDinitrogenFraction[i] + read.storeNitricOxideFraction[i];
      const limit = lossLimit(ammonia + nitrous + dinitrogen);
      const storeAmmonia = tan * ammonia * limit;
      const storeNitrous = tan * nitrous * limit;
      const storeDinitrogen = tan * dinitrogen * limit;
      const lost = storeAmmonia + storeNitrous + storeDinitrogen;

      write.houseAmmoniaKg[i] = house;
      write.storeAmmoniaKg[i] = storeAmmonia;
      write.storeNitrousKg[i] = storeNitrous;
      write.storeDinitrogenKg[i] = storeDinitrogen;
      write.slurryNitrogenKg[i] = nitrogenToStore - lost;
      write.slurryTanKg[i] = tan - lost;

      const phosphorusLost = read.slurryPhosphorusInKg[i] * read.slurryPhosphorusLossFraction[i];
      const potassiumLost = read.slurryPotassiumInKg[i] * read.slurryPotassiumLossFraction[i];
      write.slurryPhosphorusLostKg[i] = phosphorusLost;
      write.slurryPotassiumLostKg[i] = potassiumLost;
      write.slurryPhosphorusKg[i] = read.slurryPhosphorusInKg[i] - phosphorusLost;
      write.slurryPotassiumKg[i] = read.slurryPotassiumInKg[i] - potassiumLost;

      const dry = read.slurryDryMatterInKg[i] * (1 - read.storeDryMatterLossFraction[i]);
      write.slurryDryMatterKg[i] = dry;
      write.slurryCarbonKg[i] = read.slurryCarbonInKg[i] * (1 - read.storeDryMatterLossFraction[i]);

      const used = share > 0;
      const washM3 = used ? (read.washLitresPerDay[i] * days) / 1000 : 0;
      const rainM3 = used
        ? ((read.openStoreM2[i] + read.openYardM2[i] * read.yardRunoffFraction[i]) * read.rainMm[i]) / 1000
        : 0;
      const density = read.slurryDensityKgPerM3[i];
      const wet = density > 0 ? (dry + read.slurryWaterInKg[i]) / density : 0;
      write.slurryM3[i] = wet + washM3 + rainM3;
      write.storeNeededM3[i] = storeNeededM3(
        rule * share,
        washM3,
        rainM3 * read.wetYearRainFactor[i],
        read.storeBufferFraction[i],
      );
    }
  },
});
