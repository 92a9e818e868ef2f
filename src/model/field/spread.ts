/** Slurry and compost on the field → ammonia by technique and incorporation, what enters the soil, area needed. */
import { defineStage } from '../stage.ts';

export const spreadStage = defineStage({
  name: 'spread',
  about: 'Ammonia at spreading, and the ground that takes the manure under nitrogen and phosphorus limits.',
  reads: [
    'slurryNitrogenKg', 'slurryTanKg', 'slurryPhosphorusKg', 'compostNitrogenKg', 'compostTanKg', 'compostPhosphorusKg',
    'slurrySpreadAmmoniaFraction', 'compostSpreadAmmoniaFraction', 'spreadTechniqueFactor', 'spreadIncorporationFactor',
    'nitrogenCapKgPerHa', 'phosphorusCapKgPerHa',
  ], // biome-ignore format: one list
  makes: {
    slurrySpreadAmmoniaKg: {
      label: 'ammonia from spread slurry (N)',
      unit: 'kg',
      formula:
        'TAN in slurry × share lost when broadcast and left × factor of the technique × factor of the incorporation, at most all of it',
      from: [
        'slurryTanKg',
        'slurrySpreadAmmoniaFraction',
        'spreadTechniqueFactor',
        'spreadIncorporationFactor',
      ],
      source: ['emep2019', 'unece2014'],
      route: 'slurry',
    },
    compostSpreadAmmoniaKg: {
      label: 'ammonia from spread compost or litter (N)',
      unit: 'kg',
      formula:
        'TAN in compost × share lost when broadcast and left × factor of the incorporation, at most all of it',
      from: ['compostTanKg', 'compostSpreadAmmoniaFraction', 'spreadIncorporationFactor'],
      source: ['emep2019', 'unece2014'],
      route: 'pack',
    },
    spreadAmmoniaKg: {
      label: 'ammonia at spreading (N)',
      unit: 'kg',
      formula: 'ammonia from spread slurry + from spread compost',
      from: ['slurrySpreadAmmoniaKg', 'compostSpreadAmmoniaKg'],
    },
    slurrySoilNitrogenKg: {
      label: 'slurry nitrogen into the soil',
      unit: 'kg',
      formula: 'nitrogen in slurry − ammonia at spreading',
      from: ['slurryNitrogenKg', 'slurrySpreadAmmoniaKg'],
      route: 'slurry',
    },
    slurrySoilTanKg: {
      label: 'slurry TAN into the soil',
      unit: 'kg',
      formula: 'TAN in slurry − ammonia at spreading',
      from: ['slurryTanKg', 'slurrySpreadAmmoniaKg'],
      route: 'slurry',
    },
    compostSoilNitrogenKg: {
      label: 'compost nitrogen into the soil',
      unit: 'kg',
      formula: 'nitrogen in compost − ammonia at spreading',
      from: ['compostNitrogenKg', 'compostSpreadAmmoniaKg'],
      route: 'pack',
    },
    compostSoilTanKg: {
      label: 'compost TAN into the soil',
      unit: 'kg',
      formula: 'TAN in compost − ammonia at spreading',
      from: ['compostTanKg', 'compostSpreadAmmoniaKg'],
      route: 'pack',
    },
    areaForNitrogenHa: {
      label: 'ground needed under the nitrogen limit',
      unit: 'ha',
      formula:
        '(nitrogen in slurry + in compost, as spread) ÷ nitrogen limit a hectare; losses in house and store count, those at spreading do not: check the local rule',
      from: ['slurryNitrogenKg', 'compostNitrogenKg', 'nitrogenCapKgPerHa'],
      source: ['euNitrates1991'],
    },
    areaForPhosphorusHa: {
      label: 'ground needed under the phosphorus limit',
      unit: 'ha',
      formula: '(phosphorus in slurry + in compost) ÷ phosphorus limit a hectare: check the local rule',
      from: ['slurryPhosphorusKg', 'compostPhosphorusKg', 'phosphorusCapKgPerHa'],
      source: ['sjvfs200462'],
    },
    areaNeededHa: {
      label: 'ground needed for spreading',
      unit: 'ha',
      formula: 'the larger of the ground needed under the nitrogen and the phosphorus limit',
      from: ['areaForNitrogenHa', 'areaForPhosphorusHa'],
    },
  },
  run({ count, read, write }) {
    for (let i = 0; i < count; i++) {
      const incorporation = read.spreadIncorporationFactor[i];
      const slurryLoss =
        read.slurryTanKg[i] *
        Math.min(1, read.slurrySpreadAmmoniaFraction[i] * read.spreadTechniqueFactor[i] * incorporation);
      const compostLoss =
        read.compostTanKg[i] * Math.min(1, read.compostSpreadAmmoniaFraction[i] * incorporation);
      write.slurrySpreadAmmoniaKg[i] = slurryLoss;
      write.compostSpreadAmmoniaKg[i] = compostLoss;
      write.spreadAmmoniaKg[i] = slurryLoss + compostLoss;
      write.slurrySoilNitrogenKg[i] = read.slurryNitrogenKg[i] - slurryLoss;
      write.slurrySoilTanKg[i] = read.slurryTanKg[i] - slurryLoss;
      write.compostSoilNitrogenKg[i] = read.compostNitrogenKg[i] - compostLoss;
      write.compostSoilTanKg[i] = read.compostTanKg[i] - compostLoss;

      const nitrogenCap = read.nitrogenCapKgPerHa[i];
      const phosphorusCap = read.phosphorusCapKgPerHa[i];
      const forNitrogen =
        nitrogenCap > 0 ? (read.slurryNitrogenKg[i] + read.compostNitrogenKg[i]) / nitrogenCap : 0;
      const forPhosphorus =
        phosphorusCap > 0 ? (read.slurryPhosphorusKg[i] + read.compostPhosphorusKg[i]) / phosphorusCap : 0;
      write.areaForNitrogenHa[i] = forNitrogen;
      write.areaForPhosphorusHa[i] = forPhosphorus;
      write.areaNeededHa[i] = Math.max(forNitrogen, forPhosphorus);
    }
  },
});
