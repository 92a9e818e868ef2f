/**
 * Group by group: what the animals need, what they could eat, what they are given, and what becomes of the
 * difference. Net energy by the equations of the IPCC guidelines; nothing that is eaten beyond need vanishes.
 */
import { walk } from '../engine/walk.ts';
import {
  dryMatterKg,
  gestationMj,
  grossEnergyMj,
  growthMj,
  milkMj,
  netEnergyMjPerKg,
  threeQuarters,
} from './energy.ts';

const HERD = ['group*HeadCount', 'group*WeightKg', 'group*GainKgPerDay', 'winterDays', 'herdFactor'] as const;
const GROWTH = [...HERD, 'group*GrowthSexFactor', 'group*MatureWeightKg'] as const;
const APPETITE = [
  ...HERD, 'group*IntakeFraction', 'group*MilkKgPerDay', 'intakePerMilkKg', 'appetiteFactor',
] as const; // biome-ignore format: one list
const UPKEEP = [
  ...HERD, 'group*MaintenanceMjPerKg', 'group*PregnantShare', 'group*CalvingDay', 'group*MilkKgPerDay',
  'group*MilkDrunkKgPerDay', 'lactatingMaintenanceMjPerKg', 'milkFatPercent', 'milkDrunkEnergyFraction',
  'pregnancyEnergyFraction', 'pregnancyEnergyForm', 'calfBirthWeightKg', 'activityPastureFraction', 'paddockShare',
  'coldNeedFraction', 'coldMaintenanceMjPerKg', 'mudShare', 'mudNeedFraction',
] as const; // biome-ignore format: one list
const NEED = [...UPKEEP, ...GROWTH, 'digestibility'] as const;
const EATEN = [...NEED, ...APPETITE, 'group*AppetiteShare', 'group*FedKgPerDay'] as const;

const unique = <const Names extends string>(names: readonly Names[]): Names[] => [...new Set(names)];
const EVERY = unique([...EATEN, 'conditionMjPerKg']);

const words = {
  need: 'sum over the groups of head × days × (maintenance at mid-winter weight, in the cold and in mud + movement on pasture + calf + milk given − milk drunk, over the ration’s ratio for maintenance + gain over its ratio for growth) ÷ digestibility ÷ 18.45 MJ/kg',
  appetite:
    'sum over the groups of head × days × (share of live weight × mid-winter weight × appetite in cold and mud + feed for milk)',
  eaten:
    'group by group the need, at most the appetite; or the appetite where it is fed to appetite; or what the keeper says it is given',
  condition:
    'net energy for maintenance in what is eaten beyond need, or short of it, ÷ net energy of a kilogram of live weight; gain that was asked for is not in it',
};

export const feeding = walk({
  name: 'feeding',
  about: 'Need, appetite, feed eaten and condition, group by group.',
  reads: EVERY,
  makes: {
    upkeepEnergyMjPerDay: {
      label: 'net energy for maintenance, movement, cold, calf and milk',
      unit: 'MJ/d',
      formula:
        'sum over the groups of head × (maintenance at mid-winter weight × (1 + movement on pasture) + cold and mud + calf by its weight and day of gestation, or as a share of maintenance + milk given − milk drunk)',
      source: ['ipcc2019', 'nasem2016'],
      from: unique(UPKEEP),
    },
    growthEnergyMjPerDay: {
      label: 'net energy for gain',
      unit: 'MJ/d',
      formula:
        'sum over the groups of head × growth at mid-winter weight, by the IPCC equations; none for a group that does not gain',
      source: ['ipcc2019'],
      from: unique(GROWTH),
    },
    dryMatterNeedKg: {
      label: 'dry matter needed',
      unit: 'kg',
      formula: words.need,
      source: ['ipcc2019', 'nasem2016'],
      from: unique(NEED),
    },
    dryMatterAppetiteKg: {
      label: 'dry matter the animals would eat',
      unit: 'kg',
      formula: words.appetite,
      source: ['buskirk2003', 'hibberdThrift1992', 'nrc1987'],
      from: unique(APPETITE),
    },
    needUnmetKg: {
      label: 'dry matter needed that cannot be eaten',
      unit: 'kg',
      formula: 'sum over the groups of need − appetite, where need is more',
      from: unique([...NEED, ...APPETITE]),
    },
    dryMatterEatenKg: {
      label: 'dry matter eaten',
      unit: 'kg',
      formula: words.eaten,
      source: ['ipcc2019', 'buskirk2003'],
      from: unique(EATEN),
    },
    conditionGainedKg: {
      label: 'condition gained',
      unit: 'kg',
      formula: `sum over the groups that eat more than they need: ${words.condition}`,
      source: ['agabriel2017'],
      from: EVERY,
    },
    conditionLostKg: {
      label: 'condition lost',
      unit: 'kg',
      formula: `sum over the groups that eat less than they need: ${words.condition}`,
      source: ['agabriel2017'],
      from: EVERY,
    },
  },
  // Long: one pass over the groups of a row; cut apart, each group's need would be worked out several times.
  run({ count, read, write }) {
    const { winterDays, herdFactor, digestibility } = read;
    const heads = read['group*HeadCount'];
    const weights = read['group*WeightKg'];
    const gains = read['group*GainKgPerDay'];
    const shares = read['group*PregnantShare'];
    const calvings = read['group*CalvingDay'];
    const given = read['group*MilkKgPerDay'];
    const drunk = read['group*MilkDrunkKgPerDay'];
    const perKgs = read['group*MaintenanceMjPerKg'];
    const sexes = read['group*GrowthSexFactor'];
    const matures = read['group*MatureWeightKg'];
    const parts = read['group*IntakeFraction'];
    const toAppetite = read['group*AppetiteShare'];
    const known = read['group*FedKgPerDay'];
    for (let i = 0; i < count; i++) {
      const days = winterDays[i];
      const factor = herdFactor[i];
      const inPercent = digestibility[i] * 100;
      const form = read.pregnancyEnergyForm[i];
      const stressed = read.coldNeedFraction[i] + read.mudShare[i] * read.mudNeedFraction[i];
      const moving = read.activityPastureFraction[i] * read.paddockShare[i];
      const coldPerKg = read.coldMaintenanceMjPerKg[i];
      const fat = read.milkFatPercent[i];
      const perCondition = read.conditionMjPerKg[i];
      const netPerKg = perCondition > 0 ? netEnergyMjPerKg(inPercent) / perCondition : 0;
      let milk = 0;
      let thirst = 0;
      for (let g = 0; g < heads.length; g++) {
        if (!(heads[g][i] > 0)) continue;
        milk += heads[g][i] * given[g][i];
        thirst += heads[g][i] * drunk[g][i];
      }
      // Calves drink no more than the cows of this herd give.
      const perDrunk =
        thirst > 0 ? milkMj(Math.min(1, milk / thirst), fat) * read.milkDrunkEnergyFraction[i] : 0;
      let upkeepMj = 0;
      let gainMj = 0;
      let needed = 0;
      let wanted = 0;
      let unmet = 0;
      let eaten = 0;
      let gained = 0;
      let lost = 0;
      for (let g = 0; g < heads.length; g++) {
        const animals = heads[g][i] * factor;
        if (!(animals > 0)) continue;
        const weight = Math.max(0, weights[g][i] + (gains[g][i] * days) / 2);
        const metabolic = threeQuarters(weight);
        const perKg = given[g][i] > 0 ? read.lactatingMaintenanceMjPerKg[i] : perKgs[g][i];
        const rest = (perKg + coldPerKg) * metabolic;
        const birth = calvings[g][i] === 0 ? days : calvings[g][i];
        const calf =
          (1 - form) * read.pregnancyEnergyFraction[i] * rest +
          form * gestationMj(read.calfBirthWeightKg[i], birth, days);
        const upkeep = Math.max(
          0,
          rest * (1 + moving) +
            perKg * metabolic * stressed +
            shares[g][i] * calf +
            milkMj(given[g][i], fat) -
            drunk[g][i] * perDrunk,
        );
        const growth = growthMj(weight, gains[g][i], matures[g][i], sexes[g][i]);
        const need = dryMatterKg(grossEnergyMj(upkeep, growth, inPercent));
        const most = parts[g][i] * weight * read.appetiteFactor[i] + read.intakePerMilkKg[i] * given[g][i];
        const free = toAppetite[g][i];
        const own = known[g][i];
        const taken = own > 0 ? own : (1 - free) * Math.min(need, most) + free * most;
        const over = (taken - need) * netPerKg;
        upkeepMj += animals * upkeep;
        gainMj += animals * growth;
        needed += animals * need;
        wanted += animals * most;
        if (need > most) unmet += animals * (need - most);
        eaten += animals * taken;
        if (over > 0) gained += animals * over;
        else lost -= animals * over;
      }
      write.upkeepEnergyMjPerDay[i] = upkeepMj;
      write.growthEnergyMjPerDay[i] = gainMj;
      write.dryMatterNeedKg[i] = needed * days;
      write.dryMatterAppetiteKg[i] = wanted * days;
      write.needUnmetKg[i] = unmet * days;
      write.dryMatterEatenKg[i] = eaten * days;
      write.conditionGainedKg[i] = gained * days;
      write.conditionLostKg[i] = lost * days;
    }
  },
});
