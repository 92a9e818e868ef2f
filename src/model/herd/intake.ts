/** Weight, ration, cold and feeder → dry matter and nutrients eaten, and feed put out and wasted. */
import { quantity } from '../engine/quantity.ts';
import { WEEKS, winterDaysInWeek } from '../series.ts';
import { dryMatterKg, grossEnergyMj, growthMj, maintenanceInCold, maintenanceMj, milkMj } from './energy.ts';

/** Mean of the feeds by share; a feed that a shorter scenario does not have stands at share 0 with no numbers. */
const ofRation = (label: string, field: string, formula = 'mean of the feeds by share of dry matter') =>
  quantity(label, 'fraction', formula).of(['feed*Share', `feed*${field}`] as const, (i, shares, contents) => {
    let sum = 0;
    for (let f = 0; f < shares.length; f++) {
      const share = shares[f][i];
      if (share > 0) sum += share * contents[f][i];
    }
    return sum;
  });

/** Protein is 6.25 times its nitrogen. */
const PROTEIN_PER_NITROGEN = 6.25;

const kg = (label: string, formula: string) => quantity(label, 'kg', formula);

export const intake = {
  coldIntakeFactor: quantity(
    'feed for the cold',
    '×',
    '1 + mean over the winter weeks of the degrees the week is colder than the lower critical temperature of coat and exposure × extra need for each degree',
    { source: ['ndsuCold'] },
  ).of(
    ['weekTemperatureC', 'lowerCriticalTemperatureC', 'coldIntakePerC', 'winterDays'],
    (i, temperature, lowest, perC, days) => {
      let degreeDays = 0;
      for (let w = 0; w < WEEKS; w++) {
        const inWeek = winterDaysInWeek(w, days[i]);
        if (inWeek <= 0) break;
        const below = lowest[i] - temperature[i * WEEKS + w];
        if (below > 0) degreeDays += inWeek * below;
      }
      return 1 + (days[i] > 0 ? (degreeDays / days[i]) * perC[i] : 0);
    },
  ),
  dryMatterEatenKg: quantity(
    'dry matter eaten',
    'kg',
    'sum over the groups of head × days × (share of live weight × mid-winter weight + feed for milk) × feed for the cold',
    { source: ['hibberdThrift1992', 'buskirk2003'] },
  ).of(
    [
      'group*HeadCount', 'group*WeightKg', 'group*GainKgPerDay', 'group*MilkKgPerDay', 'group*IntakeFraction',
      'intakePerMilkKg', 'coldIntakeFactor', 'winterDays', 'herdFactor',
    ], // biome-ignore format: one list
    (i, head, weight, gain, milk, part, perMilk, cold, days, factor) => {
      let perDay = 0;
      for (let g = 0; g < head.length; g++) {
        const animals = head[g][i] * factor[i];
        if (animals > 0)
          perDay +=
            animals * (part[g][i] * (weight[g][i] + (gain[g][i] * days[i]) / 2) + perMilk[i] * milk[g][i]);
      }
      return perDay * days[i] * cold[i];
    },
  ),
  digestibility: ofRation('digestibility of the ration', 'DigestibilityFraction'),
  rationProteinFraction: ofRation('crude protein of the ration', 'CrudeProteinFraction'),
  rationPhosphorusFraction: ofRation('phosphorus of the ration', 'PhosphorusFraction'),
  rationPotassiumFraction: ofRation('potassium of the ration', 'PotassiumFraction'),
  rationCarbonFraction: ofRation('carbon of the ration', 'CarbonFraction'),
  rationFreshKgPerKg: quantity(
    'feed as it lies, per kg dry matter',
    'kg/kg',
    'sum over the feeds of share ÷ dry matter of the feed',
  ).of(['feed*Share', 'feed*DryMatterFraction'], (i, shares, dryMatter) => {
    let fresh = 0;
    for (let f = 0; f < shares.length; f++)
      if (shares[f][i] > 0 && dryMatter[f][i] > 0) fresh += shares[f][i] / dryMatter[f][i];
    return fresh;
  }),
  nitrogenEatenKg: kg('nitrogen eaten', 'dry matter eaten × crude protein of the ration ÷ 6.25').of(
    ['dryMatterEatenKg', 'rationProteinFraction'],
    (i, eaten, protein) => (eaten[i] * protein[i]) / PROTEIN_PER_NITROGEN,
  ),
  phosphorusEatenKg: kg(
    'phosphorus eaten',
    'dry matter eaten × phosphorus of the ration; mineral licks are not counted',
  ).product(['dryMatterEatenKg', 'rationPhosphorusFraction']),
  potassiumEatenKg: kg('potassium eaten', 'dry matter eaten × potassium of the ration').product([
    'dryMatterEatenKg',
    'rationPotassiumFraction',
  ]),
  upkeepEnergyMjPerDay: quantity(
    'net energy for maintenance, movement, calf and milk',
    'MJ/d',
    'sum over the groups of head × (maintenance at mid-winter weight in the cold × (1 + movement on pasture + calf) + milk), by the IPCC equations',
    { source: ['ipcc2019'] },
  ).of(
    [
      'group*HeadCount', 'group*WeightKg', 'group*GainKgPerDay', 'group*PregnantShare', 'group*MilkKgPerDay',
      'group*MaintenanceMjPerKg', 'lactatingMaintenanceMjPerKg', 'activityPastureFraction', 'pastureShare',
      'pregnancyEnergyFraction', 'milkFatPercent', 'energyColdMjPerKgC', 'winterTemperatureC', 'winterDays', 'herdFactor',
    ], // biome-ignore format: one list
    (
      i, head, weight, gain, pregnant, milk, dryPerKg, milkingPerKg, moving, pasture, calf, fat, cold, temperature,
      days, factor,
    ) => {
      let energy = 0;
      for (let g = 0; g < head.length; g++) {
        const animals = head[g][i] * factor[i];
        if (!(animals > 0)) continue;
        const perKg = milk[g][i] > 0 ? milkingPerKg[i] : dryPerKg[g][i];
        const rest = maintenanceMj(
          weight[g][i] + (gain[g][i] * days[i]) / 2,
          maintenanceInCold(perKg, temperature[i], cold[i]),
        );
        const upkeep = rest * (1 + moving[i] * pasture[i] + calf[i] * pregnant[g][i]);
        energy += animals * (upkeep + milkMj(milk[g][i], fat[i]));
      }
      return energy;
    }, // biome-ignore format: one list
  ),
  growthEnergyMjPerDay: quantity(
    'net energy for gain',
    'MJ/d',
    'sum over the groups of head × growth at mid-winter weight, by the IPCC equations; none for a group that does not gain',
    { source: ['ipcc2019'] },
  ).of(
    [
      'group*HeadCount', 'group*WeightKg', 'group*GainKgPerDay', 'group*GrowthSexFactor', 'group*MatureWeightKg',
      'winterDays', 'herdFactor',
    ], // biome-ignore format: one list
    (i, head, weight, gain, sex, mature, days, factor) => {
      let energy = 0;
      for (let g = 0; g < head.length; g++) {
        const animals = head[g][i] * factor[i];
        const midWinter = weight[g][i] + (gain[g][i] * days[i]) / 2;
        if (animals > 0) energy += animals * growthMj(midWinter, gain[g][i], mature[g][i], sex[g][i]);
      }
      return energy;
    },
  ),
  dryMatterByEnergyKg: quantity(
    'dry matter eaten, energy method',
    'kg',
    'second method, for comparison: net energy for maintenance, movement, calf, milk and gain by the IPCC equations ÷ 18.45 MJ/kg',
    { source: ['ipcc2019'] },
  ).of(
    ['upkeepEnergyMjPerDay', 'growthEnergyMjPerDay', 'digestibility', 'winterDays'],
    (i, upkeep, growth, digestible, days) =>
      dryMatterKg(grossEnergyMj(upkeep[i], growth[i], digestible[i] * 100)) * days[i],
  ),
  dryMatterOfferedKg: quantity(
    'dry matter put out',
    'kg',
    'dry matter eaten ÷ (1 − share wasted at the feeder)',
    { source: ['buskirk2003', 'oklahomaFeeders2024'] },
  ).of(
    ['dryMatterEatenKg', 'feedWasteFraction'],
    (i, eaten, waste) => eaten[i] / (1 - Math.min(waste[i], 0.99)),
  ),
  feedTonnes: quantity(
    'feed put out, as it lies',
    't',
    'dry matter put out, each feed by its share ÷ its dry matter',
  ).of(['dryMatterOfferedKg', 'rationFreshKgPerKg'], (i, offered, fresh) => (offered[i] * fresh[i]) / 1000),
  dryMatterWastedKg: kg('dry matter refused and wasted', 'dry matter put out − dry matter eaten').minus(
    'dryMatterOfferedKg',
    ['dryMatterEatenKg'],
  ),
  nitrogenWastedKg: kg(
    'nitrogen in wasted feed',
    'dry matter wasted × crude protein of the ration ÷ 6.25',
  ).of(
    ['dryMatterWastedKg', 'rationProteinFraction'],
    (i, wasted, protein) => (wasted[i] * protein[i]) / PROTEIN_PER_NITROGEN,
  ),
  phosphorusWastedKg: kg('phosphorus in wasted feed', 'dry matter wasted × phosphorus of the ration').product(
    ['dryMatterWastedKg', 'rationPhosphorusFraction'],
  ),
  potassiumWastedKg: kg('potassium in wasted feed', 'dry matter wasted × potassium of the ration').product([
    'dryMatterWastedKg',
    'rationPotassiumFraction',
  ]),
  carbonWastedKg: kg('carbon in wasted feed', 'dry matter wasted × carbon of the ration').product([
    'dryMatterWastedKg',
    'rationCarbonFraction',
  ]),
  waterWastedKg: kg(
    'water in wasted feed',
    'dry matter wasted, each feed by its share × (1 ÷ its dry matter − 1)',
  ).of(
    ['dryMatterWastedKg', 'rationFreshKgPerKg'],
    (i, wasted, fresh) => wasted[i] * Math.max(0, fresh[i] - 1),
  ),
};
