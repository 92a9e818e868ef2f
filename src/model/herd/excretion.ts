/** Eaten minus retained → nutrients, carbon, dry matter and water in dung and urine. */

import { defineStage } from '../stage.ts';
import { volatileSolidsKg } from './energy.ts';

const RETAINED = [
  'group*HeadCount', 'group*GainKgPerDay', 'group*PregnantShare', 'group*MilkKgPerDay', 'group*MilkDrunkKgPerDay',
  'conceptusGrowthDays', 'retentionLimitFraction', 'winterDays', 'herdFactor',
] as const; // biome-ignore format: one list
const WATER = [
  'dryMatterEatenKg', 'digestibility', 'waterIntakeKgPerKg', 'metabolicWaterKgPerKg', 'skinLungWaterKgPer100KgDay',
  'milkWaterFraction', 'gainWaterFraction', 'faecesMoistureFraction', 'group*HeadCount', 'group*WeightKg',
  'group*GainKgPerDay', 'group*MilkKgPerDay', 'group*MilkDrunkKgPerDay', 'winterDays', 'herdFactor',
] as const; // biome-ignore format: one list

export const excretionStage = defineStage({
  name: 'excretion',
  about: 'What is eaten and not kept in gain, milk and calf leaves in dung and urine.',
  reads: [
    'herdFactor', 'winterDays', 'dryMatterEatenKg', 'digestibility', 'nitrogenEatenKg', 'phosphorusEatenKg',
    'potassiumEatenKg', 'gainNitrogenKgPerKg', 'gainPhosphorusKgPerKg', 'gainPotassiumKgPerKg', 'milkNitrogenKgPerKg',
    'milkPhosphorusKgPerKg', 'milkPotassiumKgPerKg', 'calfNitrogenKg', 'calfPhosphorusKg', 'calfPotassiumKg',
    'conceptusGrowthDays', 'retentionLimitFraction', 'faecalNitrogenKgPerKg', 'urineTanFraction', 'tanLowestFraction',
    'tanHighestFraction', 'faecesCarbonFraction', 'urineCarbonFraction', 'faecesMoistureFraction', 'urineDryMatterFraction',
    'waterIntakeKgPerKg', 'metabolicWaterKgPerKg', 'skinLungWaterKgPer100KgDay', 'milkWaterFraction', 'gainWaterFraction',
    'urinaryEnergyFraction', 'excretaAshFraction', 'excretaDensityKgPerM3',
  ], // biome-ignore format: one list
  families: {
    group: ['HeadCount', 'WeightKg', 'GainKgPerDay', 'PregnantShare', 'MilkKgPerDay', 'MilkDrunkKgPerDay'],
  },
  makes: {
    nitrogenExcretedKg: {
      label: 'nitrogen excreted',
      unit: 'kg',
      formula:
        'nitrogen eaten − nitrogen kept in gain, in milk that leaves the herd and in the growing calf; at most the limit share of what is eaten is kept',
      from: ['nitrogenEatenKg', 'gainNitrogenKgPerKg', 'milkNitrogenKgPerKg', 'calfNitrogenKg', ...RETAINED],
    },
    tanExcretedKg: {
      label: 'of it ammoniacal nitrogen (TAN)',
      unit: 'kg',
      formula:
        'urine nitrogen (excreted − dung nitrogen for each kg eaten) × share of it that turns into TAN, held between a lowest and a highest share of what is excreted',
      from: [
        'nitrogenExcretedKg', 'dryMatterEatenKg', 'faecalNitrogenKgPerKg', 'urineTanFraction', 'tanLowestFraction',
        'tanHighestFraction',
      ], // biome-ignore format: one list
    },
    phosphorusExcretedKg: {
      label: 'phosphorus excreted',
      unit: 'kg',
      formula: 'phosphorus eaten − phosphorus kept in gain, milk and calf, with the same limit',
      from: [
        'phosphorusEatenKg',
        'gainPhosphorusKgPerKg',
        'milkPhosphorusKgPerKg',
        'calfPhosphorusKg',
        ...RETAINED,
      ],
    },
    potassiumExcretedKg: {
      label: 'potassium excreted',
      unit: 'kg',
      formula: 'potassium eaten − potassium kept in gain, milk and calf, with the same limit',
      from: [
        'potassiumEatenKg',
        'gainPotassiumKgPerKg',
        'milkPotassiumKgPerKg',
        'calfPotassiumKg',
        ...RETAINED,
      ],
    },
    waterExcretedKg: {
      label: 'water in dung and urine',
      unit: 'kg',
      formula:
        'water drunk and in feed + water of digestion − water from skin and lungs − water in milk and gain; never less than the water in dung',
      from: WATER,
    },
    dryMatterExcretedKg: {
      label: 'dry matter in dung and urine',
      unit: 'kg',
      formula: 'dry matter eaten × (1 − digestibility) + solids in the urine that the water balance leaves',
      from: [
        'dryMatterEatenKg',
        'digestibility',
        'waterExcretedKg',
        'faecesMoistureFraction',
        'urineDryMatterFraction',
      ],
    },
    carbonExcretedKg: {
      label: 'carbon in dung and urine',
      unit: 'kg',
      formula: 'dung dry matter × its carbon + urine solids × their carbon',
      from: [
        'dryMatterExcretedKg',
        'dryMatterEatenKg',
        'digestibility',
        'faecesCarbonFraction',
        'urineCarbonFraction',
      ],
    },
    volatileSolidsKg: {
      label: 'volatile solids excreted',
      unit: 'kg',
      formula: 'dry matter eaten × (1 − digestibility + urinary energy) × (1 − ash), IPCC equation 10.24',
      from: ['dryMatterEatenKg', 'digestibility', 'urinaryEnergyFraction', 'excretaAshFraction'],
      source: ['ipcc2019'],
    },
    excretaM3: {
      label: 'dung and urine',
      unit: 'm³',
      formula: '(dry matter + water) ÷ density',
      from: ['dryMatterExcretedKg', 'waterExcretedKg', 'excretaDensityKgPerM3'],
    },
  },
  run({ count, read, family: { group }, write }) {
    for (let i = 0; i < count; i++) {
      const days = read.winterDays[i];
      let weight = 0;
      let gain = 0;
      let milk = 0;
      let drunk = 0;
      let calves = 0;
      for (let g = 0; g < group.length; g++) {
        const head = group[g].HeadCount[i] * read.herdFactor[i];
        if (!(head > 0)) continue;
        const perDay = group[g].GainKgPerDay[i];
        weight += head * (group[g].WeightKg[i] + (perDay * days) / 2);
        gain += head * perDay * days;
        milk += head * group[g].MilkKgPerDay[i] * days;
        drunk += head * group[g].MilkDrunkKgPerDay[i] * days;
        calves += head * group[g].PregnantShare[i];
      }
      // Milk that calves of this herd drink stays in the balance: it is in their gain or in their dung.
      const milkOut = Math.max(0, milk - drunk);
      const grown =
        read.conceptusGrowthDays[i] > 0 ? calves * Math.min(1, days / read.conceptusGrowthDays[i]) : 0;

      const limit = read.retentionLimitFraction[i];
      const nitrogen = left(
        read.nitrogenEatenKg[i],
        gain * read.gainNitrogenKgPerKg[i] +
          milkOut * read.milkNitrogenKgPerKg[i] +
          grown * read.calfNitrogenKg[i],
        limit,
      );
      const eaten = read.dryMatterEatenKg[i];
      const urineNitrogen = Math.max(0, nitrogen - read.faecalNitrogenKgPerKg[i] * eaten);
      const tan = Math.min(
        Math.max(read.urineTanFraction[i] * urineNitrogen, read.tanLowestFraction[i] * nitrogen),
        read.tanHighestFraction[i] * nitrogen,
      );

      const dung = eaten * (1 - read.digestibility[i]);
      const wet = read.faecesMoistureFraction[i];
      const dungWater = wet < 1 ? (dung * wet) / (1 - wet) : 0;
      const water = Math.max(
        dungWater,
        eaten * (read.waterIntakeKgPerKg[i] + read.metabolicWaterKgPerKg[i]) -
          (weight / 100) * days * read.skinLungWaterKgPer100KgDay[i] -
          milkOut * read.milkWaterFraction[i] -
          Math.max(0, gain) * read.gainWaterFraction[i],
      );
      const solids = read.urineDryMatterFraction[i];
      const urineSolids = solids < 1 ? ((water - dungWater) * solids) / (1 - solids) : 0;

      write.nitrogenExcretedKg[i] = nitrogen;
      write.tanExcretedKg[i] = tan;
      write.phosphorusExcretedKg[i] = left(
        read.phosphorusEatenKg[i],
        gain * read.gainPhosphorusKgPerKg[i] +
          milkOut * read.milkPhosphorusKgPerKg[i] +
          grown * read.calfPhosphorusKg[i],
        limit,
      );
      write.potassiumExcretedKg[i] = left(
        read.potassiumEatenKg[i],
        gain * read.gainPotassiumKgPerKg[i] +
          milkOut * read.milkPotassiumKgPerKg[i] +
          grown * read.calfPotassiumKg[i],
        limit,
      );
      write.waterExcretedKg[i] = water;
      write.dryMatterExcretedKg[i] = dung + urineSolids;
      write.carbonExcretedKg[i] =
        dung * read.faecesCarbonFraction[i] + urineSolids * read.urineCarbonFraction[i];
      write.volatileSolidsKg[i] = volatileSolidsKg(
        eaten,
        read.digestibility[i],
        read.urinaryEnergyFraction[i],
        read.excretaAshFraction[i],
      );
      write.excretaM3[i] =
        read.excretaDensityKgPerM3[i] > 0 ? (dung + urineSolids + water) / read.excretaDensityKgPerM3[i] : 0;
    }
  },
});

/** Eaten minus kept; a ration that cannot feed the gain asked for keeps only the limit share. Weight lost adds. */
function left(eatenKg: number, keptKg: number, limit: number): number {
  return eatenKg - Math.min(keptKg, eatenKg * limit);
}
