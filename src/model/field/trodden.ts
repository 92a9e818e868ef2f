/** The wintering paddock under hooves and dung: growth lost, ground to be sown again, spring grass lost, grass returned. */
import { quantity } from '../engine/quantity.ts';
import { walk } from '../engine/walk.ts';
import { WEEKS, winterDaysInWeek } from '../series.ts';
import { M2_PER_HA } from './patches.ts';
import { reseedFraction, smotheredFraction, springGrassKgPerHa, treadingLossFraction } from './treading.ts';

const made = (label: string, unit: string, formula: string, source?: readonly string[]) =>
  quantity(label, unit, formula, { when: 'paddockShare', ...(source && { source }) });

const TREADING =
  'share of it the whole year loses × (1 − e^(−rate × wet cow-days a hectare there ÷ 100)); the form is our own';

const under = {
  paddockUnitsPerHa: made(
    'livestock units a hectare of paddock',
    'LU/ha',
    'livestock units × share of the time on the paddock ÷ paddock',
  ).of(['livestockUnits', 'paddockShare', 'paddockHa'], (i, units, share, hectares) =>
    hectares[i] > 0 ? (units[i] * share[i]) / hectares[i] : 0,
  ),
  wetCowDaysPerHa: made('wet cow-days a hectare', 'LU d/ha', 'livestock units a hectare × wet days').product([
    'paddockUnitsPerHa',
    'wetDays',
  ]),
  spotTreadingLoss: made("year's growth lost to treading round the feeding places", 'fraction', TREADING, [
    'teagascPoaching2009',
  ]).of(
    [
      'wetCowDaysPerHa', 'spotExcretaFraction', 'spotAreaFraction', 'treadingRatePerHundredCowDays', 'treadingYearFraction',
    ], // biome-ignore format: one list
    (i, cowDays, share, area, rate, ofYear) =>
      area[i] > 0 ? ofYear[i] * treadingLossFraction((cowDays[i] * share[i]) / area[i], rate[i]) : 0,
  ),
  restTreadingLoss: made("year's growth lost to treading on the rest of the paddock", 'fraction', TREADING, [
    'teagascPoaching2009',
  ]).of(
    [
      'wetCowDaysPerHa', 'spotExcretaFraction', 'spotAreaFraction', 'treadingRatePerHundredCowDays', 'treadingYearFraction',
    ], // biome-ignore format: one list
    (i, cowDays, share, area, rate, ofYear) =>
      area[i] < 1
        ? ofYear[i] * treadingLossFraction((cowDays[i] * (1 - share[i])) / (1 - area[i]), rate[i])
        : 0,
  ),
  spotCoverKgPerM2: made(
    'dung and left feed on frozen ground round the feeding places (dry matter)',
    'kg/m²',
    'dry matter dropped × share round the feeding places × share of frozen days ÷ their ground',
  ).of(
    ['paddockDryMatterInKg', 'spotExcretaFraction', 'frozenWinterFraction', 'paddockHa', 'spotAreaFraction'],
    (i, dropped, share, frozen, hectares, area) => {
      const m2 = hectares[i] * area[i] * M2_PER_HA;
      return m2 > 0 ? (dropped[i] * share[i] * frozen[i]) / m2 : 0;
    },
  ),
  spotSmotheredFraction: made(
    'ground of the feeding places smothered',
    'fraction',
    'e^(−cover under which grass dies ÷ mean cover): much cover is rare, little is common (our own rule)',
  ).of(['spotCoverKgPerM2', 'smotherKgPerM2'], (i, cover, smother) =>
    smotheredFraction(cover[i], smother[i]),
  ),
  reseedHa: made(
    'ground to be sown again',
    'ha',
    'round feeders and gateways: their share of the paddock, less at a stocking the sward survives; and ground that lost more growth to treading than the reseeding line (our own rule)',
  ).of(
    [
      'paddockHa', 'spotAreaFraction', 'spotTreadingLoss', 'restTreadingLoss', 'reseedLossFrom', 'reseedLossAll',
      'reseedFraction', 'lowRiskUnitsPerHa', 'paddockUnitsPerHa',
    ], // biome-ignore format: one list
    (i, hectares, area, spot, rest, from, all, gateway, lowRisk, units) => {
      const ruined =
        area[i] * reseedFraction(spot[i], from[i], all[i]) +
        (1 - area[i]) * reseedFraction(rest[i], from[i], all[i]);
      const gateways = gateway[i] * (lowRisk[i] > 0 ? Math.min(1, units[i] / lowRisk[i]) : 0);
      return hectares[i] * Math.min(1, Math.max(gateways, ruined));
    },
  ),
  spotReseededFraction: made(
    'share of the feeding places sown again',
    'fraction',
    'ground to be sown again ÷ ground of the feeding places, at most 1: they are sown first',
  ).of(['reseedHa', 'paddockHa', 'spotAreaFraction'], (i, sown, hectares, area) => {
    const spotHa = hectares[i] * area[i];
    return spotHa > 0 ? Math.min(1, sown[i] / spotHa) : 0;
  }),
  restReseededFraction: made(
    'share of the rest of the paddock sown again',
    'fraction',
    '(ground to be sown again − ground of the feeding places) ÷ ground of the rest, not below 0',
  ).of(['reseedHa', 'paddockHa', 'spotAreaFraction'], (i, sown, hectares, area) => {
    const restHa = hectares[i] * (1 - area[i]);
    return restHa > 0 ? Math.max(0, Math.min(1, (sown[i] - hectares[i] * area[i]) / restHa)) : 0;
  }),
  spotGrowthLeft: made(
    'growth left round the feeding places',
    'fraction',
    '(1 − lost to treading) × (1 − smothered × its loss, at most 1) × (1 − sown again × its loss)',
  ).of(
    [
      'spotTreadingLoss', 'spotSmotheredFraction', 'smotheredLossFraction', 'spotReseededFraction', 'reseedLostFraction',
    ], // biome-ignore format: one list
    (i, trodden, smothered, ofSmothered, sown, ofSown) =>
      (1 - trodden[i]) * (1 - Math.min(1, smothered[i] * ofSmothered[i])) * (1 - sown[i] * ofSown[i]),
  ),
  restGrowthLeft: made(
    'growth left on the rest of the paddock',
    'fraction',
    '(1 − lost to treading) × (1 − sown again × its loss)',
  ).of(
    ['restTreadingLoss', 'restReseededFraction', 'reseedLostFraction'],
    (i, trodden, sown, ofSown) => (1 - trodden[i]) * (1 - sown[i] * ofSown[i]),
  ),
};

const open = walk({
  name: 'open sward',
  about: 'Counts the days of the winter in which grass could have grown, had the sward been closed.',
  reads: ['winterDays', 'growthBaseC', 'weekTemperatureC'],
  makes: {
    openGrowingDays: {
      label: 'days of growth the sward was kept open',
      unit: 'd',
      formula: 'winter days of the weeks as warm as the growth temperature',
      source: ['looney2021'],
      when: 'paddockShare',
    },
  },
  run({ count, read, write, repeats }) {
    const { weekTemperatureC } = read;
    for (let i = 0; i < count; i++) {
      if (repeats(i)) continue;
      const days = read.winterDays[i];
      const base = read.growthBaseC[i];
      let open = 0;
      for (let w = 0; w < WEEKS && w * 7 < days; w++)
        if (weekTemperatureC[i * WEEKS + w] >= base) open += winterDaysInWeek(w, days);
      write.openGrowingDays[i] = open;
    }
  },
});

const lost = {
  swardLostTonnes: made(
    'grass lost to treading, cover and reseeding (dry matter)',
    't',
    'yield × area × (1 − growth left), feeding places and the rest apart',
  ).of(
    ['paddockYieldTonnesPerHa', 'paddockHa', 'spotAreaFraction', 'spotGrowthLeft', 'restGrowthLeft'],
    (i, perHa, hectares, area, spot, rest) =>
      perHa[i] * hectares[i] * (area[i] * (1 - spot[i]) + (1 - area[i]) * (1 - rest[i])),
  ),
  springGrassLostTonnes: made(
    'spring grass lost by keeping the sward open (dry matter)',
    't',
    'loss for each day of growth kept open, at most the limit, less what is regained, × ground × growth left; less where few animals leave grass standing',
    ['looney2021'],
  ).of(
    [
      'openGrowingDays', 'springGrassKgPerHaDay', 'springGrassMostKgPerHa', 'springGrassRegainedFraction', 'paddockHa',
      'spotAreaFraction', 'spotGrowthLeft', 'restGrowthLeft', 'paddockUnitsPerHa', 'lowRiskUnitsPerHa',
    ], // biome-ignore format: one list
    (i, days, perDay, most, regained, hectares, area, spot, rest, units, lowRisk) => {
      const grazed = lowRisk[i] > 0 ? Math.min(1, units[i] / lowRisk[i]) : 0;
      const swardHa = hectares[i] * (area[i] * spot[i] + (1 - area[i]) * rest[i]);
      return (springGrassKgPerHa(days[i], perDay[i], most[i], regained[i]) * swardHa * grazed) / 1000;
    },
  ),
  grassLostTonnes: made(
    'grass lost (dry matter)',
    't',
    'grass lost to treading, cover and reseeding + spring grass lost by keeping the sward open',
  ).sum(['swardLostTonnes', 'springGrassLostTonnes']),
  grassReturnedTonnes: made(
    'grass grown on nitrogen of the winter (dry matter)',
    't',
    'nitrogen the pasture uses × grass grown for each kg; its worth is already that of the nitrogen, so it is shown and not priced',
    ['ahdbGrassNitrogen'],
  ).of(['paddockNitrogenUsedKg', 'herbageResponseKgPerKg'], (i, used, each) => (used[i] * each[i]) / 1000),
};

export const trodden = [under, open, lost] as const;
