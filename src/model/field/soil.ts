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
  soilReleasedKg: kg(
    'organic nitrogen of slurry and compost released in the first year',
    'that of slurry + that of compost, before gases and drainage',
  ).sum(['slurryNitrogenReleasedKg', 'compostNitrogenReleasedKg']),
  soilMineralInKg: kg(
    'nitrogen that is mineral in the soil in the first year',
    'TAN into the soil + organic nitrogen released in the first year',
  ).sum(['soilTanInKg', 'soilReleasedKg']),
  // The published factors are shares of what is spread, before the ammonia of spreading.
  soilGasLimit: quantity(
    'what the shares lost from the soil as gas are held down by',
    'fraction',
    '1; less where nitrous oxide, nitrogen gas and nitric oxide come to more than the mineral nitrogen in the soil',
  ).of(
    [
      'spreadNitrogenKg', 'soilMineralInKg', 'soilNitrousFraction', 'soilDinitrogenPerNitrous', 'soilNitricFraction',
    ], // biome-ignore format: one list
    (i, spread, mineral, nitrous, perNitrous, nitric) =>
      gasLimit(spread[i], mineral[i], nitrous[i], perNitrous[i], nitric[i]),
  ),
  soilNitrousKg: kg(
    'nitrous oxide after spreading (N)',
    'nitrogen spread × share, at most the mineral nitrogen in the soil',
    ['ipcc2019'],
  ).product(['spreadNitrogenKg', 'soilNitrousFraction', 'soilGasLimit']),
  soilDinitrogenKg: kg(
    'nitrogen gas and nitric oxide after spreading (N)',
    'nitrous oxide × nitrogen gas for each kg of it + nitrogen spread × share of nitric oxide, at most the mineral nitrogen in the soil',
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
  soilLeftAfterGasFraction: quantity(
    'mineral nitrogen of the soil that does not leave as gas',
    'fraction',
    '1 − (nitrous oxide + nitrogen gas and nitric oxide) ÷ mineral nitrogen: TAN and what is released give their part of the gases alike',
  ).of(['soilMineralInKg', 'soilNitrousKg', 'soilDinitrogenKg'], (i, mineral, nitrous, dinitrogen) =>
    mineral[i] > 0 ? Math.max(0, 1 - (nitrous[i] + dinitrogen[i]) / mineral[i]) : 0,
  ),
  soilAmmoniumKg: kg(
    'ammonium that stays to turn into nitrate (N)',
    'TAN into the soil less its part of the gases',
  ).product(['soilTanInKg', 'soilLeftAfterGasFraction']),
  soilLaterAmmoniumKg: kg(
    'ammonium released in the first year that stays to turn into nitrate (N)',
    'organic nitrogen released in the first year less its part of the gases',
  ).product(['soilReleasedKg', 'soilLeftAfterGasFraction']),
};

/**
 * Puts `kg` of nitrogen that is released through the year after spreading into `inflow`, by week from `first` on, as
 * the warmth above 0 °C of each week is to that of all; in a year of frost none is released.
 */
function releaseByWarmth(weekTemperatureC: Float64Array, row: number, first: number, kg: number): void {
  let all = 0;
  for (let k = 0; k < WEEKS; k++) {
    const celsius = weekTemperatureC[row + ((first + k) % WEEKS)];
    inflow[k] = kg > 0 && celsius > 0 ? celsius : 0;
    all += inflow[k];
  }
  if (all > 0) for (let k = 0; k < WEEKS; k++) inflow[k] *= kg / all;
}

const leaching = walk({
  name: 'soil',
  about: 'Follows the ammonium of spread slurry and compost through the drainage after spreading.',
  reads: ['soilAmmoniumKg', 'soilLaterAmmoniumKg', 'receivingHa', 'spreadDay', ...FIELD_READS],
  makes: {
    soilLeachedKg: {
      label: 'nitrate leached after spreading (N)',
      unit: 'kg',
      formula:
        'the ammonium spread is there from the week of spreading, that of the organic part comes through the year after by the warmth of each week; part of it nitrifies each week; of that nitrate the Burns share of the drainage in the year that follows leaves the root zone, less and less as growing grass takes it up',
      source: ['burns1975'],
    },
  },
  run({ count, read, write }) {
    for (let i = 0; i < count; i++) {
      const ammonium = read.soilAmmoniumKg[i];
      const later = read.soilLaterAmmoniumKg[i];
      const hectares = read.receivingHa[i];
      let leached = 0;
      if (ammonium + later > 0) {
        const week = Math.max(0, Math.floor(read.spreadDay[i] / 7)) % WEEKS;
        const poolKgPerHa = hectares > 0 ? (ammonium + later) / hectares : 0;
        releaseByWarmth(read.weekTemperatureC, i * WEEKS, week, later);
        inflow[0] += ammonium;
        leached = leachedFromWeekKg(i, week, WEEKS, inflow, poolKgPerHa, read, leachedByWeek);
      }
      write.soilLeachedKg[i] = leached;
    }
  },
});

const afterLeaching = {
  soilOrganicLeachedKg: kg(
    'organic nitrogen leached after spreading',
    'nitrate leached × dissolved organic nitrogen for each kg of it, at most the organic nitrogen not released',
    ['vanKessel2009'],
  ).of(
    ['soilLeachedKg', 'leachedOrganicKgPerKg', 'soilNitrogenInKg', 'soilMineralInKg'],
    (i, nitrate, perKg, all, mineral) => Math.min(nitrate[i] * perKg[i], Math.max(0, all[i] - mineral[i])),
  ),
  soilNitrogenKeptKg: kg(
    'nitrogen left from slurry and compost',
    'nitrogen into the soil − nitrous oxide − nitrogen gas − leached as nitrate and as organic nitrogen',
  ).minus('soilNitrogenInKg', [
    'soilNitrousKg', 'soilDinitrogenKg', 'soilLeachedKg', 'soilOrganicLeachedKg',
  ]), // biome-ignore format: one list
  soilMineralKg: kg(
    'of it mineral nitrogen',
    'TAN into the soil + organic nitrogen released in the first year − gases − leached',
  ).of(
    ['soilAmmoniumKg', 'soilLaterAmmoniumKg', 'soilLeachedKg'],
    (i, ammonium, later, leached) => ammonium[i] + later[i] - leached[i],
  ),
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
