/** Slurry and compost in the soil → nitrate leached, gases, what stays; humus, depth of the layer, water held. */
import { quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';
import { WEEKS } from '../series.ts';
import { dinitrogenAskedKg, gasLimit } from './denitrification.ts';
import { FIELD_READS, leachedFromWeekKg } from './fieldNitrogen.ts';
import { layerDepthMm, waterHeldMm } from './humus.ts';

const kg = (label: string, formula: string, source?: readonly string[]) =>
  quantity(label, 'kg', formula, source && { source });

const inflow = new Float64Array(WEEKS);
const leachedByWeek = new Float64Array(WEEKS);

const beforeLeaching = {
  spreadNitrogenKg: kg('nitrogen spread', 'nitrogen in slurry leaving the store + in compost').sum([
    'slurryNitrogenKg',
    'compostNitrogenKg',
  ]),
  soilNitrogenInKg: kg(
    'nitrogen into the soil',
    'nitrogen of slurry + of compost that enters the soil, after the ammonia of spreading',
  ).sum(['slurrySoilNitrogenKg', 'compostSoilNitrogenKg']),
  soilTanInKg: kg('TAN into the soil', 'TAN of slurry + of compost, at most all nitrogen into the soil').of(
    ['soilNitrogenInKg', 'slurrySoilTanKg', 'compostSoilTanKg'],
    (i, nitrogen, slurry, compost) => Math.min(nitrogen[i], slurry[i] + compost[i]),
  ),
  // The published factors are shares of what is spread, before the ammonia of spreading.
  soilGasLimit: quantity(
    'what the shares lost from the soil as gas are held down by',
    'fraction',
    '1; less where nitrous oxide, nitrogen gas and nitric oxide come to more than the nitrogen in the soil',
  ).of(
    [
      'spreadNitrogenKg', 'soilNitrogenInKg', 'soilNitrousFraction', 'soilDinitrogenPerNitrous', 'soilNitricFraction',
    ], // biome-ignore format: one list
    (i, spread, soil, nitrous, perNitrous, nitric) =>
      gasLimit(spread[i], soil[i], nitrous[i], perNitrous[i], nitric[i]),
  ),
  soilNitrousKg: kg(
    'nitrous oxide after spreading (N)',
    'nitrogen spread × share, at most the nitrogen in the soil',
    ['ipcc2019'],
  ).product(['spreadNitrogenKg', 'soilNitrousFraction', 'soilGasLimit']),
  soilDinitrogenKg: kg(
    'nitrogen gas and nitric oxide after spreading (N)',
    'nitrous oxide × nitrogen gas for each kg of it + nitrogen spread × share of nitric oxide, at most the nitrogen in the soil',
    ['ipcc2019', 'emep2019d'],
  ).of(
    [
      'spreadNitrogenKg',
      'soilNitrousFraction',
      'soilDinitrogenPerNitrous',
      'soilNitricFraction',
      'soilGasLimit',
    ],
    (i, spread, nitrous, perNitrous, nitric, limit) =>
      dinitrogenAskedKg(spread[i], nitrous[i], perNitrous[i], nitric[i]) * limit[i],
  ),
  soilAmmoniumKg: kg(
    'ammonium that stays to turn into nitrate (N)',
    'TAN into the soil − gases, which come out of it first',
  ).of(['soilTanInKg', 'soilNitrousKg', 'soilDinitrogenKg'], (i, tan, nitrous, dinitrogen) =>
    Math.max(0, tan[i] - nitrous[i] - dinitrogen[i]),
  ),
};

const leaching = walk({
  name: 'soil',
  about: 'Follows the ammonium of spread slurry and compost through the drainage after spreading.',
  reads: ['soilAmmoniumKg', 'receivingHa', 'spreadDay', ...FIELD_READS],
  makes: {
    soilLeachedKg: {
      label: 'nitrate leached after spreading (N)',
      unit: 'kg',
      formula:
        'from the week of spreading part of the ammonium nitrifies each week; of that nitrate the Burns share of the drainage in the year that follows leaves the root zone, less and less as growing grass takes it up',
      source: ['burns1975'],
    },
  },
  run({ count, read, write }) {
    for (let i = 0; i < count; i++) {
      const ammonium = read.soilAmmoniumKg[i];
      const hectares = read.receivingHa[i];
      let leached = 0;
      if (ammonium > 0) {
        const week = Math.max(0, Math.floor(read.spreadDay[i] / 7)) % WEEKS;
        const poolKgPerHa = hectares > 0 ? ammonium / hectares : 0;
        inflow[0] = ammonium;
        leached = leachedFromWeekKg(i, week, WEEKS, inflow, poolKgPerHa, read, leachedByWeek);
      }
      write.soilLeachedKg[i] = leached;
    }
  },
});

const afterLeaching = {
  soilNitrogenKeptKg: kg(
    'nitrogen left from slurry and compost',
    'nitrogen into the soil − nitrous oxide − nitrogen gas − leached',
  ).minus('soilNitrogenInKg', ['soilNitrousKg', 'soilDinitrogenKg', 'soilLeachedKg']),
  soilMineralKg: kg(
    'of it mineral nitrogen',
    'TAN into the soil − gases, which come out of it first − leached',
  ).minus('soilAmmoniumKg', ['soilLeachedKg']),
  soilPhosphorusKeptKg: kg('phosphorus into the soil', 'phosphorus in slurry + in compost').sum([
    'slurryPhosphorusKg',
    'compostPhosphorusKg',
  ]),
  soilPotassiumKeptKg: kg('potassium into the soil', 'potassium in slurry + in compost').sum([
    'slurryPotassiumKg',
    'compostPotassiumKg',
  ]),
  soilCarbonKeptKg: kg('carbon into the soil', 'carbon in slurry + in compost').sum([
    'slurryCarbonKg',
    'compostCarbonKg',
  ]),
  spreadHumusCarbonKg: kg(
    'stable carbon of slurry and compost',
    'carbon of slurry and compost, each × the share that turns to humus',
    ['heninDupuis'],
  ).of(
    ['slurryCarbonKg', 'slurryIsohumicFraction', 'compostCarbonKg', 'compostIsohumicFraction'],
    (i, slurry, ofSlurry, compost, ofCompost) => slurry[i] * ofSlurry[i] + compost[i] * ofCompost[i],
  ),
  humusCarbonKg: kg(
    'stable carbon',
    'carbon of slurry, compost and paddock, each × the share that turns to humus',
    ['heninDupuis'],
  ).of(
    ['spreadHumusCarbonKg', 'paddockCarbonKeptKg', 'dungIsohumicFraction'],
    (i, spread, paddock, ofDung) => spread[i] + paddock[i] * ofDung[i],
  ),
  layerDepthMm: quantity(
    'depth of compost over the ground that takes it',
    'mm',
    'compost volume ÷ (10 × hectares)',
    { when: 'packShare' },
  ).of(['compostM3', 'receivingHa'], (i, volume, hectares) => layerDepthMm(volume[i], hectares[i])),
  waterHeldMm: quantity(
    'water held by the humus of slurry and compost',
    'mm',
    'gain for 100 mm and percent of carbon × mixed depth × rise of the carbon percent on the ground that takes it',
    { source: ['minasnyMcBratney2018'] },
  ).of(
    ['spreadHumusCarbonKg', 'receivingHa', 'mixingDepthMm', 'bulkDensityTPerM3', 'waterGainMm'],
    (i, carbon, hectares, depth, density, gain) =>
      hectares[i] > 0 ? waterHeldMm(carbon[i] / hectares[i], depth[i], density[i], gain[i]) : 0,
  ),
};

export const soil = [beforeLeaching, leaching, afterLeaching] as const;
