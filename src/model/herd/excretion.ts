/** Eaten minus retained → nutrients, carbon, dry matter and water in dung and urine. */
import { quantity } from '../engine/quantity.ts';
import { volatileSolidsKg } from './energy.ts';

const kg = (label: string, formula: string, more: { source?: readonly string[] } = {}) =>
  quantity(label, 'kg', formula, more);

/** A ration that cannot feed the gain asked for keeps only the limit share. Weight lost adds. */
const retained = (matter: string, field: string) =>
  kg(
    `${matter} kept in gain, milk and calf`,
    `gain × its ${matter} + milk that leaves the herd × its ${matter} + calves grown × the ${matter} of one, at most the limit share of what is eaten; below 0 where weight is lost`,
  ).of(
    [
      'gainKg', `gain${field}KgPerKg`, 'milkOutKg', `milk${field}KgPerKg`, 'grownCalfCount', `calf${field}Kg`,
      `${matter}EatenKg`, 'retentionLimitFraction',
    ] as const, // biome-ignore format: one list
    (i, gain, inGain, milk, inMilk, calves, inCalf, eaten, limit) =>
      Math.min(gain[i] * inGain[i] + milk[i] * inMilk[i] + calves[i] * inCalf[i], eaten[i] * limit[i]),
  );

export const excretion = {
  milkOutKg: kg(
    'milk that leaves the herd',
    'sum over the groups of head × days × milk − the same of milk drunk, not below 0: what calves of this herd drink is in their gain or in their dung',
  ).of(
    ['group*HeadCount', 'group*MilkKgPerDay', 'group*MilkDrunkKgPerDay', 'winterDays', 'herdFactor'],
    (i, head, given, taken, days, factor) => {
      let milk = 0;
      let drunk = 0;
      for (let g = 0; g < head.length; g++) {
        const animals = head[g][i] * factor[i];
        if (!(animals > 0)) continue;
        milk += animals * given[g][i] * days[i];
        drunk += animals * taken[g][i] * days[i];
      }
      return Math.max(0, milk - drunk);
    },
  ),
  grownCalfCount: quantity(
    'calves grown before birth, as whole calves',
    'head',
    'sum over the groups of head × share with calf × winter days among the days before calving in which a calf grows ÷ those days',
  ).of(
    [
      'group*HeadCount', 'group*PregnantShare', 'group*CalvingDay', 'conceptusGrowthDays', 'winterDays', 'herdFactor',
    ], // biome-ignore format: one list
    (i, head, pregnant, calving, growing, days, factor) => {
      let calves = 0;
      for (let g = 0; g < head.length; g++) {
        const animals = head[g][i] * factor[i];
        if (!(animals > 0)) continue;
        const birth = calving[g][i] === 0 ? days[i] : calving[g][i];
        const grown = Math.min(days[i], birth) - Math.max(0, birth - growing[i]);
        if (grown > 0) calves += animals * pregnant[g][i] * grown;
      }
      return growing[i] > 0 ? calves / growing[i] : 0;
    },
  ),
  nitrogenRetainedKg: retained('nitrogen', 'Nitrogen'),
  phosphorusRetainedKg: retained('phosphorus', 'Phosphorus'),
  potassiumRetainedKg: retained('potassium', 'Potassium'),
  nitrogenExcretedKg: kg(
    'nitrogen excreted',
    'nitrogen eaten − nitrogen kept in gain, in milk that leaves the herd and in the growing calf; at most the limit share of what is eaten is kept',
  ).minus('nitrogenEatenKg', ['nitrogenRetainedKg']),
  tanExcretedKg: kg(
    'of it ammoniacal nitrogen (TAN)',
    'urine nitrogen (excreted − dung nitrogen for each kg eaten) × share of it that turns into TAN, held between a lowest and a highest share of what is excreted',
  ).of(
    [
      'nitrogenExcretedKg', 'dryMatterEatenKg', 'faecalNitrogenKgPerKg', 'urineTanFraction', 'tanLowestFraction',
      'tanHighestFraction',
    ], // biome-ignore format: one list
    (i, nitrogen, eaten, inDung, turned, lowest, highest) => {
      const urine = Math.max(0, nitrogen[i] - inDung[i] * eaten[i]);
      return Math.min(Math.max(turned[i] * urine, lowest[i] * nitrogen[i]), highest[i] * nitrogen[i]);
    },
  ),
  phosphorusExcretedKg: kg(
    'phosphorus excreted',
    'phosphorus eaten − phosphorus kept in gain, milk and calf, with the same limit',
  ).minus('phosphorusEatenKg', ['phosphorusRetainedKg']),
  potassiumExcretedKg: kg(
    'potassium excreted',
    'potassium eaten − potassium kept in gain, milk and calf, with the same limit',
  ).minus('potassiumEatenKg', ['potassiumRetainedKg']),
  dungDryMatterKg: kg('dry matter in dung', 'dry matter eaten × (1 − digestibility)').of(
    ['dryMatterEatenKg', 'digestibility'],
    (i, eaten, digestible) => eaten[i] * (1 - digestible[i]),
  ),
  dungWaterKg: kg('water in dung', 'dry matter in dung × moisture of dung ÷ (1 − moisture of dung)').of(
    ['dungDryMatterKg', 'faecesMoistureFraction'],
    (i, dung, wet) => (wet[i] < 1 ? (dung[i] * wet[i]) / (1 - wet[i]) : 0),
  ),
  skinLungWaterKg: kg(
    'water breathed and sweated out',
    'live weight at mid-winter ÷ 100 × winter days × water from skin and lungs per 100 kg a day',
  ).of(
    ['liveWeightKg', 'winterDays', 'skinLungWaterKgPer100KgDay'],
    (i, weight, days, per100) => (weight[i] / 100) * days[i] * per100[i],
  ),
  waterBalanceKg: kg(
    'water left for dung and urine by what is drunk',
    'water drunk and in feed + water of digestion − water from skin and lungs − water in milk and gain; never less than the water in dung',
  ).of(
    [
      'dungWaterKg', 'dryMatterEatenKg', 'waterIntakeKgPerKg', 'metabolicWaterKgPerKg', 'skinLungWaterKg', 'milkOutKg',
      'milkWaterFraction', 'gainKg', 'gainWaterFraction',
    ], // biome-ignore format: one list
    (i, dung, eaten, drunk, digested, breathed, milk, inMilk, gain, inGain) =>
      Math.max(
        dung[i],
        eaten[i] * (drunk[i] + digested[i]) -
          breathed[i] -
          milk[i] * inMilk[i] -
          Math.max(0, gain[i]) * inGain[i],
      ),
  ),
  urineByPotassiumKg: kg(
    'water in urine, by its potassium',
    'potassium excreted × share of it in urine ÷ potassium in urine, less the solids: animals drink what their ration’s potassium asks',
    { source: ['betteridge1986'] },
  ).of(
    ['potassiumExcretedKg', 'urinePotassiumFraction', 'urinePotassiumKgPerKg', 'urineDryMatterFraction'],
    (i, potassium, inUrine, perKg, solids) =>
      perKg[i] > 0 ? ((potassium[i] * inUrine[i]) / perKg[i]) * (1 - Math.min(1, solids[i])) : 0,
  ),
  waterExcretedKg: kg(
    'water in dung and urine',
    'water left by the balance of what is drunk, or water in dung + urine by its potassium: two forms, each draw takes one',
  ).of(
    ['waterBalanceKg', 'dungWaterKg', 'urineByPotassiumKg', 'urineWaterForm'],
    (i, balance, dung, urine, form) => (1 - form[i]) * balance[i] + form[i] * (dung[i] + urine[i]),
  ),
  urineDryMatterKg: kg(
    'solids in urine',
    '(water in dung and urine − water in dung) × solids of urine ÷ (1 − solids of urine)',
  ).of(['waterExcretedKg', 'dungWaterKg', 'urineDryMatterFraction'], (i, water, inDung, solids) =>
    solids[i] < 1 ? ((water[i] - inDung[i]) * solids[i]) / (1 - solids[i]) : 0,
  ),
  dryMatterExcretedKg: kg(
    'dry matter in dung and urine',
    'dry matter eaten × (1 − digestibility) + solids in the urine that the water balance leaves',
  ).sum(['dungDryMatterKg', 'urineDryMatterKg']),
  carbonExcretedKg: kg(
    'carbon in dung and urine',
    'dung dry matter × its carbon + urine solids × their carbon',
  ).of(
    ['dungDryMatterKg', 'faecesCarbonFraction', 'urineDryMatterKg', 'urineCarbonFraction'],
    (i, dung, inDung, solids, inSolids) => dung[i] * inDung[i] + solids[i] * inSolids[i],
  ),
  volatileSolidsKg: quantity(
    'volatile solids excreted',
    'kg',
    'dry matter eaten × (1 − digestibility + urinary energy) × (1 − ash), IPCC equation 10.24',
    { source: ['ipcc2019'] },
  ).of(
    ['dryMatterEatenKg', 'digestibility', 'urinaryEnergyFraction', 'excretaAshFraction'],
    (i, eaten, digestible, energy, ash) => volatileSolidsKg(eaten[i], digestible[i], energy[i], ash[i]),
  ),
  excretaM3: quantity('dung and urine', 'm³', '(dry matter + water) ÷ density').of(
    ['dryMatterExcretedKg', 'waterExcretedKg', 'excretaDensityKgPerM3'],
    (i, dry, water, density) => (density[i] > 0 ? (dry[i] + water[i]) / density[i] : 0),
  ),
};
