/** Weight, ration, cold and feeder → dry matter and nutrients eaten, and feed put out and wasted. */

import { defineStage, WEEKS, winterDaysInWeek } from '../stage.ts';
import { dryMatterKg, grossEnergyMj, growthMj, maintenanceInCold, maintenanceMj, milkMj } from './energy.ts';

const EATEN = [
  'group*HeadCount',
  'group*WeightKg',
  'group*GainKgPerDay',
  'group*MilkKgPerDay',
  'group*IntakeFraction',
  'intakePerMilkKg',
  'coldIntakeFactor',
  'winterDays',
  'herdFactor',
] as const;

export const intakeStage = defineStage({
  name: 'intake',
  about: 'Feed eaten as a share of live weight, more in the cold; feed wasted by the kind of feeder.',
  reads: [
    'herdFactor', 'winterDays', 'pastureShare', 'winterTemperatureC', 'feedWasteFraction', 'lowerCriticalTemperatureC',
    'coldIntakePerC', 'intakePerMilkKg', 'lactatingMaintenanceMjPerKg', 'activityPastureFraction', 'pregnancyEnergyFraction',
    'milkFatPercent', 'energyColdMjPerKgC',
  ], // biome-ignore format: one list
  families: {
    group: [
      'HeadCount', 'WeightKg', 'GainKgPerDay', 'PregnantShare', 'MilkKgPerDay', 'IntakeFraction', 'MaintenanceMjPerKg',
      'GrowthSexFactor', 'MatureWeightKg',
    ], // biome-ignore format: one list
    feed: [
      'Share', 'CrudeProteinFraction', 'PhosphorusFraction', 'PotassiumFraction', 'DigestibilityFraction',
      'DryMatterFraction', 'CarbonFraction',
    ], // biome-ignore format: one list
  },
  readsTracks: ['weekTemperatureC'],
  makes: {
    coldIntakeFactor: {
      label: 'feed for the cold',
      unit: '×',
      formula:
        '1 + mean over the winter weeks of the degrees the week is colder than the lower critical temperature of coat and exposure × extra need for each degree',
      from: ['weekTemperatureC', 'lowerCriticalTemperatureC', 'coldIntakePerC', 'winterDays'],
      source: ['ndsuCold'],
    },
    dryMatterEatenKg: {
      label: 'dry matter eaten',
      unit: 'kg',
      formula:
        'sum over the groups of head × days × (share of live weight × mid-winter weight + feed for milk) × feed for the cold',
      from: EATEN,
      source: ['hibberdThrift1992', 'buskirk2003'],
    },
    digestibility: {
      label: 'digestibility of the ration',
      unit: 'fraction',
      formula: 'mean of the feeds by share of dry matter',
      from: ['feed*Share', 'feed*DigestibilityFraction'],
    },
    nitrogenEatenKg: {
      label: 'nitrogen eaten',
      unit: 'kg',
      formula: 'dry matter eaten × crude protein of the ration ÷ 6.25',
      from: ['dryMatterEatenKg', 'feed*Share', 'feed*CrudeProteinFraction'],
    },
    phosphorusEatenKg: {
      label: 'phosphorus eaten',
      unit: 'kg',
      formula: 'dry matter eaten × phosphorus of the ration; mineral licks are not counted',
      from: ['dryMatterEatenKg', 'feed*Share', 'feed*PhosphorusFraction'],
    },
    potassiumEatenKg: {
      label: 'potassium eaten',
      unit: 'kg',
      formula: 'dry matter eaten × potassium of the ration',
      from: ['dryMatterEatenKg', 'feed*Share', 'feed*PotassiumFraction'],
    },
    dryMatterByEnergyKg: {
      label: 'dry matter eaten, energy method',
      unit: 'kg',
      formula:
        'second method, for comparison: net energy for maintenance, movement, calf, milk and gain by the IPCC equations ÷ 18.45 MJ/kg',
      from: [
        'group*HeadCount', 'group*WeightKg', 'group*GainKgPerDay', 'group*PregnantShare', 'group*MilkKgPerDay',
        'group*MaintenanceMjPerKg', 'group*GrowthSexFactor', 'group*MatureWeightKg', 'lactatingMaintenanceMjPerKg',
        'activityPastureFraction', 'pastureShare', 'pregnancyEnergyFraction', 'milkFatPercent', 'energyColdMjPerKgC',
        'winterTemperatureC', 'digestibility', 'winterDays', 'herdFactor',
      ], // biome-ignore format: one list
      source: ['ipcc2019'],
    },
    dryMatterOfferedKg: {
      label: 'dry matter put out',
      unit: 'kg',
      formula: 'dry matter eaten ÷ (1 − share wasted at the feeder)',
      from: ['dryMatterEatenKg', 'feedWasteFraction'],
      source: ['buskirk2003', 'oklahomaFeeders2024'],
    },
    feedTonnes: {
      label: 'feed put out, as it lies',
      unit: 't',
      formula: 'dry matter put out, each feed by its share ÷ its dry matter',
      from: ['dryMatterOfferedKg', 'feed*Share', 'feed*DryMatterFraction'],
    },
    dryMatterWastedKg: {
      label: 'dry matter refused and wasted',
      unit: 'kg',
      formula: 'dry matter put out − dry matter eaten',
      from: ['dryMatterOfferedKg', 'dryMatterEatenKg'],
    },
    nitrogenWastedKg: {
      label: 'nitrogen in wasted feed',
      unit: 'kg',
      formula: 'dry matter wasted × crude protein of the ration ÷ 6.25',
      from: ['dryMatterWastedKg', 'feed*Share', 'feed*CrudeProteinFraction'],
    },
    phosphorusWastedKg: {
      label: 'phosphorus in wasted feed',
      unit: 'kg',
      formula: 'dry matter wasted × phosphorus of the ration',
      from: ['dryMatterWastedKg', 'feed*Share', 'feed*PhosphorusFraction'],
    },
    potassiumWastedKg: {
      label: 'potassium in wasted feed',
      unit: 'kg',
      formula: 'dry matter wasted × potassium of the ration',
      from: ['dryMatterWastedKg', 'feed*Share', 'feed*PotassiumFraction'],
    },
    carbonWastedKg: {
      label: 'carbon in wasted feed',
      unit: 'kg',
      formula: 'dry matter wasted × carbon of the ration',
      from: ['dryMatterWastedKg', 'feed*Share', 'feed*CarbonFraction'],
    },
    waterWastedKg: {
      label: 'water in wasted feed',
      unit: 'kg',
      formula: 'dry matter wasted, each feed by its share × (1 ÷ its dry matter − 1)',
      from: ['dryMatterWastedKg', 'feed*Share', 'feed*DryMatterFraction'],
    },
  },
  run({ count, read, family: { group, feed }, readTrack, write }) {
    for (let i = 0; i < count; i++) {
      const days = read.winterDays[i];
      let protein = 0;
      let phosphorus = 0;
      let potassium = 0;
      let digestible = 0;
      let carbon = 0;
      let fresh = 0;
      for (let f = 0; f < feed.length; f++) {
        const share = feed[f].Share[i];
        // Feeds a shorter scenario does not have stand at share 0 with no dry matter.
        if (!(share > 0)) continue;
        protein += share * feed[f].CrudeProteinFraction[i];
        phosphorus += share * feed[f].PhosphorusFraction[i];
        potassium += share * feed[f].PotassiumFraction[i];
        digestible += share * feed[f].DigestibilityFraction[i];
        carbon += share * feed[f].CarbonFraction[i];
        if (feed[f].DryMatterFraction[i] > 0) fresh += share / feed[f].DryMatterFraction[i];
      }

      let coldDegreeDays = 0;
      for (let w = 0; w < WEEKS; w++) {
        const inWeek = winterDaysInWeek(w, days);
        if (inWeek <= 0) break;
        const below = read.lowerCriticalTemperatureC[i] - readTrack.weekTemperatureC[i * WEEKS + w];
        if (below > 0) coldDegreeDays += inWeek * below;
      }
      const cold = 1 + (days > 0 ? (coldDegreeDays / days) * read.coldIntakePerC[i] : 0);

      let perDay = 0;
      let byEnergy = 0;
      for (let g = 0; g < group.length; g++) {
        const head = group[g].HeadCount[i] * read.herdFactor[i];
        if (!(head > 0)) continue;
        const gain = group[g].GainKgPerDay[i];
        const weight = group[g].WeightKg[i] + (gain * days) / 2;
        const milk = group[g].MilkKgPerDay[i];
        perDay += head * (group[g].IntakeFraction[i] * weight + read.intakePerMilkKg[i] * milk);

        const perKg = milk > 0 ? read.lactatingMaintenanceMjPerKg[i] : group[g].MaintenanceMjPerKg[i];
        const rest = maintenanceMj(
          weight,
          maintenanceInCold(perKg, read.winterTemperatureC[i], read.energyColdMjPerKgC[i]),
        );
        const upkeep =
          rest *
            (1 +
              read.activityPastureFraction[i] * read.pastureShare[i] +
              read.pregnancyEnergyFraction[i] * group[g].PregnantShare[i]) +
          milkMj(milk, read.milkFatPercent[i]);
        const growth = growthMj(weight, gain, group[g].MatureWeightKg[i], group[g].GrowthSexFactor[i]);
        byEnergy += head * dryMatterKg(grossEnergyMj(upkeep, growth, digestible * 100));
      }

      const eaten = perDay * days * cold;
      const waste = Math.min(read.feedWasteFraction[i], 0.99);
      const offered = eaten / (1 - waste);
      const wasted = offered - eaten;
      write.coldIntakeFactor[i] = cold;
      write.dryMatterEatenKg[i] = eaten;
      write.digestibility[i] = digestible;
      write.nitrogenEatenKg[i] = (eaten * protein) / 6.25;
      write.phosphorusEatenKg[i] = eaten * phosphorus;
      write.potassiumEatenKg[i] = eaten * potassium;
      write.dryMatterByEnergyKg[i] = byEnergy * days;
      write.dryMatterOfferedKg[i] = offered;
      write.feedTonnes[i] = (offered * fresh) / 1000;
      write.dryMatterWastedKg[i] = wasted;
      write.nitrogenWastedKg[i] = (wasted * protein) / 6.25;
      write.phosphorusWastedKg[i] = wasted * phosphorus;
      write.potassiumWastedKg[i] = wasted * potassium;
      write.carbonWastedKg[i] = wasted * carbon;
      write.waterWastedKg[i] = wasted * Math.max(0, fresh - 1);
    }
  },
});
