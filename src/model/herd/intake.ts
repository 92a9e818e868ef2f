/** The ration, and what is eaten of it → nutrients eaten, feed put out and wasted, condition a head. */
import { quantity } from '../engine/quantity.ts';
import { coldStress } from './coldStress.ts';
import { feeding } from './feeding.ts';

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

const ration = {
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
};

const eaten = {
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
  conditionKgPerHead: quantity(
    'condition gained or lost a head',
    'kg/head',
    '(condition gained − condition lost) ÷ head; beside the gain asked for',
  ).of(['conditionGainedKg', 'conditionLostKg', 'headCount'], (i, gained, lost, head) =>
    head[i] > 0 ? (gained[i] - lost[i]) / head[i] : 0,
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

export const intake = [coldStress[0], coldStress[1], ration, feeding, eaten] as const;
