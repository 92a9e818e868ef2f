/** Slurry and compost in the soil → nitrate leached, gases, what stays; humus, depth of the layer, water held. */

import { defineStage, WEEKS } from '../stage.ts';
import { FIELD_READS, FIELD_TRACKS, leachedFromWeekKg } from './fieldNitrogen.ts';
import { layerDepthMm, waterHeldMm } from './humus.ts';

const GAS = [
  'slurryNitrogenKg', 'compostNitrogenKg', 'slurrySoilNitrogenKg', 'compostSoilNitrogenKg', 'soilNitrousFraction',
  'soilDinitrogenPerNitrous', 'soilNitricFraction',
] as const; // biome-ignore format: one list

const inflow = new Float64Array(WEEKS);
const leachedByWeek = new Float64Array(WEEKS);

export const soilStage = defineStage({
  name: 'soil',
  about:
    'Follows spread slurry and compost through the drainage after spreading, and counts the humus they leave.',
  reads: [
    'weatherIndex', 'slurryNitrogenKg', 'compostNitrogenKg', 'slurrySoilNitrogenKg', 'slurrySoilTanKg', 'compostSoilNitrogenKg',
    'compostSoilTanKg', 'slurryPhosphorusKg', 'compostPhosphorusKg', 'slurryPotassiumKg', 'compostPotassiumKg',
    'slurryCarbonKg', 'compostCarbonKg', 'paddockCarbonKeptKg', 'compostM3', 'receivingHa', 'spreadDay',
    'soilNitrousFraction', 'soilDinitrogenPerNitrous', 'soilNitricFraction', 'slurryIsohumicFraction',
    'compostIsohumicFraction', 'dungIsohumicFraction', 'mixingDepthMm', 'waterGainMm', 'bulkDensityTPerM3',
    ...FIELD_READS,
  ], // biome-ignore format: one list
  readsTracks: FIELD_TRACKS,
  makes: {
    soilLeachedKg: {
      label: 'nitrate leached after spreading (N)',
      unit: 'kg',
      formula:
        'from the week of spreading part of the ammonium nitrifies each week; of that nitrate the Burns share of the drainage in the year that follows leaves the root zone, less and less as growing grass takes it up',
      from: [
        'slurrySoilTanKg',
        'compostSoilTanKg',
        'soilNitrousKg',
        'soilDinitrogenKg',
        'spreadDay',
        'receivingHa',
        ...FIELD_READS,
        ...FIELD_TRACKS,
      ],
      source: ['burns1975'],
    },
    soilNitrousKg: {
      label: 'nitrous oxide after spreading (N)',
      unit: 'kg',
      formula: 'nitrogen spread × share, at most the nitrogen in the soil',
      from: GAS,
      source: ['ipcc2019'],
    },
    soilDinitrogenKg: {
      label: 'nitrogen gas and nitric oxide after spreading (N)',
      unit: 'kg',
      formula:
        'nitrous oxide × nitrogen gas for each kg of it + nitrogen spread × share of nitric oxide, at most the nitrogen in the soil',
      from: GAS,
      source: ['ipcc2019', 'emep2019d'],
    },
    soilNitrogenKeptKg: {
      label: 'nitrogen left from slurry and compost',
      unit: 'kg',
      formula: 'nitrogen into the soil − nitrous oxide − nitrogen gas − leached',
      from: [
        'slurrySoilNitrogenKg',
        'compostSoilNitrogenKg',
        'soilNitrousKg',
        'soilDinitrogenKg',
        'soilLeachedKg',
      ],
    },
    soilMineralKg: {
      label: 'of it mineral nitrogen',
      unit: 'kg',
      formula: 'TAN into the soil − gases, which come out of it first − leached',
      from: ['slurrySoilTanKg', 'compostSoilTanKg', 'soilNitrousKg', 'soilDinitrogenKg', 'soilLeachedKg'],
    },
    soilPhosphorusKeptKg: {
      label: 'phosphorus into the soil',
      unit: 'kg',
      formula: 'phosphorus in slurry + in compost',
      from: ['slurryPhosphorusKg', 'compostPhosphorusKg'],
    },
    soilPotassiumKeptKg: {
      label: 'potassium into the soil',
      unit: 'kg',
      formula: 'potassium in slurry + in compost',
      from: ['slurryPotassiumKg', 'compostPotassiumKg'],
    },
    soilCarbonKeptKg: {
      label: 'carbon into the soil',
      unit: 'kg',
      formula: 'carbon in slurry + in compost',
      from: ['slurryCarbonKg', 'compostCarbonKg'],
    },
    humusCarbonKg: {
      label: 'stable carbon',
      unit: 'kg',
      formula: 'carbon of slurry, compost and paddock, each × the share that turns to humus',
      from: [
        'slurryCarbonKg', 'compostCarbonKg', 'paddockCarbonKeptKg', 'slurryIsohumicFraction', 'compostIsohumicFraction',
        'dungIsohumicFraction',
      ], // biome-ignore format: one list
      source: ['heninDupuis'],
    },
    layerDepthMm: {
      label: 'depth of compost over the ground that takes it',
      unit: 'mm',
      formula: 'compost volume ÷ (10 × hectares)',
      from: ['compostM3', 'receivingHa'],
      route: 'pack',
    },
    waterHeldMm: {
      label: 'water held by the humus of slurry and compost',
      unit: 'mm',
      formula:
        'gain for 100 mm and percent of carbon × mixed depth × rise of the carbon percent on the ground that takes it',
      from: [
        'slurryCarbonKg', 'compostCarbonKg', 'slurryIsohumicFraction', 'compostIsohumicFraction', 'receivingHa', 'waterGainMm',
        'mixingDepthMm', 'bulkDensityTPerM3',
      ], // biome-ignore format: one list
      source: ['minasnyMcBratney2018'],
    },
  },
  run({ count, read, readTrack, write, weather }) {
    for (let i = 0; i < count; i++) {
      const nitrogen = read.slurrySoilNitrogenKg[i] + read.compostSoilNitrogenKg[i];
      const tan = Math.min(nitrogen, read.slurrySoilTanKg[i] + read.compostSoilTanKg[i]);
      // The published factors are shares of what is spread, before the ammonia of spreading.
      const spread = read.slurryNitrogenKg[i] + read.compostNitrogenKg[i];
      const nitrousAsked = spread * read.soilNitrousFraction[i];
      const dinitrogenAsked =
        nitrousAsked * read.soilDinitrogenPerNitrous[i] + spread * read.soilNitricFraction[i];
      const asked = nitrousAsked + dinitrogenAsked;
      const limit = asked > nitrogen ? nitrogen / asked : 1;
      const nitrous = nitrousAsked * limit;
      const dinitrogen = dinitrogenAsked * limit;
      const mineral = Math.max(0, tan - nitrous - dinitrogen);

      const hectares = read.receivingHa[i];
      let leached = 0;
      if (mineral > 0) {
        const week = Math.floor(read.spreadDay[i] / 7);
        inflow[0] = mineral;
        leached = leachedFromWeekKg(
          i,
          Math.max(0, week) % WEEKS,
          WEEKS,
          inflow,
          hectares > 0 ? mineral / hectares : 0,
          weather[read.weatherIndex[i]].days,
          read,
          readTrack,
          leachedByWeek,
        );
      }
      const spreadHumus =
        read.slurryCarbonKg[i] * read.slurryIsohumicFraction[i] +
        read.compostCarbonKg[i] * read.compostIsohumicFraction[i];

      write.soilLeachedKg[i] = leached;
      write.soilNitrousKg[i] = nitrous;
      write.soilDinitrogenKg[i] = dinitrogen;
      write.soilNitrogenKeptKg[i] = nitrogen - nitrous - dinitrogen - leached;
      write.soilMineralKg[i] = mineral - leached;
      write.soilPhosphorusKeptKg[i] = read.slurryPhosphorusKg[i] + read.compostPhosphorusKg[i];
      write.soilPotassiumKeptKg[i] = read.slurryPotassiumKg[i] + read.compostPotassiumKg[i];
      write.soilCarbonKeptKg[i] = read.slurryCarbonKg[i] + read.compostCarbonKg[i];
      write.humusCarbonKg[i] = spreadHumus + read.paddockCarbonKeptKg[i] * read.dungIsohumicFraction[i];
      write.layerDepthMm[i] = layerDepthMm(read.compostM3[i], hectares);
      write.waterHeldMm[i] =
        hectares > 0
          ? waterHeldMm(
              spreadHumus / hectares,
              read.mixingDepthMm[i],
              read.bulkDensityTPerM3[i],
              read.waterGainMm[i],
            )
          : 0;
    }
  },
});
