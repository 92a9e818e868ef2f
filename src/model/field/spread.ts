/** Slurry and compost on the field → ammonia by technique and incorporation, what enters the soil, area needed. */
import { quantity } from '../engine/quantity.ts';

const intoSoil = (manure: string, matter: string, when: string) =>
  quantity(`${manure} ${matter} into the soil`, 'kg', `${matter} in ${manure} − ammonia at spreading`, {
    when,
  });

export const spreading = {
  slurrySpreadAmmoniaKg: quantity(
    'ammonia from spread slurry (N)',
    'kg',
    'TAN in slurry × share lost when broadcast and left × factor of the technique × factor of the incorporation, at most all of it',
    { source: ['emep2019', 'unece2014'], when: 'slurryShare' },
  ).of(
    ['slurryTanKg', 'slurrySpreadAmmoniaFraction', 'spreadTechniqueFactor', 'spreadIncorporationFactor'],
    (i, tan, lost, technique, incorporation) =>
      tan[i] * Math.min(1, lost[i] * technique[i] * incorporation[i]),
  ),
  compostSpreadAmmoniaKg: quantity(
    'ammonia from spread compost or litter (N)',
    'kg',
    'TAN in compost × share lost when broadcast and left × factor of the incorporation, at most all of it',
    { source: ['emep2019', 'unece2014'], when: 'packShare' },
  ).of(
    ['compostTanKg', 'compostSpreadAmmoniaFraction', 'spreadIncorporationFactor'],
    (i, tan, lost, incorporation) => tan[i] * Math.min(1, lost[i] * incorporation[i]),
  ),
  spreadAmmoniaKg: quantity(
    'ammonia at spreading (N)',
    'kg',
    'ammonia from spread slurry + from spread compost',
  ).sum(['slurrySpreadAmmoniaKg', 'compostSpreadAmmoniaKg']),
  slurrySoilNitrogenKg: intoSoil('slurry', 'nitrogen', 'slurryShare').minus('slurryNitrogenKg', [
    'slurrySpreadAmmoniaKg',
  ]),
  slurrySoilTanKg: intoSoil('slurry', 'TAN', 'slurryShare').minus('slurryTanKg', ['slurrySpreadAmmoniaKg']),
  compostSoilNitrogenKg: intoSoil('compost', 'nitrogen', 'packShare').minus('compostNitrogenKg', [
    'compostSpreadAmmoniaKg',
  ]),
  compostSoilTanKg: intoSoil('compost', 'TAN', 'packShare').minus('compostTanKg', ['compostSpreadAmmoniaKg']),
  areaForNitrogenHa: quantity(
    'ground needed under the nitrogen limit',
    'ha',
    '(nitrogen in slurry + in compost, as spread) ÷ nitrogen limit a hectare; losses in house and store count, those at spreading do not: check the local rule',
    { source: ['euNitrates1991'] },
  ).of(['slurryNitrogenKg', 'compostNitrogenKg', 'nitrogenCapKgPerHa'], (i, slurry, compost, cap) =>
    cap[i] > 0 ? (slurry[i] + compost[i]) / cap[i] : 0,
  ),
  areaForPhosphorusHa: quantity(
    'ground needed under the phosphorus limit',
    'ha',
    '(phosphorus in slurry + in compost) ÷ phosphorus limit a hectare: check the local rule',
    { source: ['sjvfs200462'] },
  ).of(['slurryPhosphorusKg', 'compostPhosphorusKg', 'phosphorusCapKgPerHa'], (i, slurry, compost, cap) =>
    cap[i] > 0 ? (slurry[i] + compost[i]) / cap[i] : 0,
  ),
  areaNeededHa: quantity(
    'ground needed for spreading',
    'ha',
    'the larger of the ground needed under the nitrogen and the phosphorus limit',
  ).of(['areaForNitrogenHa', 'areaForPhosphorusHa'], (i, nitrogen, phosphorus) =>
    Math.max(nitrogen[i], phosphorus[i]),
  ),
};
