/** The wintering paddock under the hooves: growth lost, and ground to be sown again. */
import { quantity } from '../engine/quantity.ts';
import { reseedFraction, treadingLossFraction } from './treading.ts';

const made = (label: string, unit: string, formula: string) =>
  quantity(label, unit, formula, { when: 'paddockShare' });

export const trodden = {
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
  spotTreadingLoss: made(
    'growth lost round the feeding places',
    'fraction',
    'loss for 100 wet cow-days a hectare × wet cow-days there, at most the limit (our own rule)',
  ).of(
    [
      'wetCowDaysPerHa', 'spotExcretaFraction', 'spotAreaFraction', 'treadingLossPerHundredCowDays', 'treadingLossLimit',
    ], // biome-ignore format: one list
    (i, cowDays, share, area, perHundred, limit) =>
      area[i] > 0 ? treadingLossFraction((cowDays[i] * share[i]) / area[i], perHundred[i], limit[i]) : 0,
  ),
  restTreadingLoss: made(
    'growth lost on the rest of the paddock',
    'fraction',
    'loss for 100 wet cow-days a hectare × wet cow-days there, at most the limit (our own rule)',
  ).of(
    [
      'wetCowDaysPerHa', 'spotExcretaFraction', 'spotAreaFraction', 'treadingLossPerHundredCowDays', 'treadingLossLimit',
    ], // biome-ignore format: one list
    (i, cowDays, share, area, perHundred, limit) =>
      area[i] < 1
        ? treadingLossFraction((cowDays[i] * (1 - share[i])) / (1 - area[i]), perHundred[i], limit[i])
        : 0,
  ),
  grassLostTonnes: made(
    'grass lost to treading (dry matter)',
    't',
    'yield × area × share lost, feeding places and the rest apart: loss for 100 wet cow-days a hectare × wet cow-days, at most the limit (our own rule)',
  ).of(
    ['paddockYieldTonnesPerHa', 'paddockHa', 'spotAreaFraction', 'spotTreadingLoss', 'restTreadingLoss'],
    (i, perHa, hectares, area, spot, rest) =>
      perHa[i] * hectares[i] * (area[i] * spot[i] + (1 - area[i]) * rest[i]),
  ),
  reseedHa: made(
    'ground to be sown again',
    'ha',
    'round feeders and gateways: their share of the paddock, less at a stocking the sward survives; and ground that lost more growth than the reseeding line (our own rule)',
  ).of(
    [
      'paddockHa', 'spotAreaFraction', 'spotTreadingLoss', 'restTreadingLoss', 'reseedLossFrom', 'treadingLossLimit',
      'reseedFraction', 'lowRiskUnitsPerHa', 'paddockUnitsPerHa',
    ], // biome-ignore format: one list
    (i, hectares, area, spot, rest, from, limit, gateway, lowRisk, units) => {
      const ruined =
        area[i] * reseedFraction(spot[i], from[i], limit[i]) +
        (1 - area[i]) * reseedFraction(rest[i], from[i], limit[i]);
      const gateways = gateway[i] * (lowRisk[i] > 0 ? Math.min(1, units[i] / lowRisk[i]) : 0);
      return hectares[i] * Math.min(1, Math.max(gateways, ruined));
    },
  ),
};
