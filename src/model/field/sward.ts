/** Urine lies in patches: the ground they reach, and how much of their nitrogen the sward there can hold. */
import { quantity } from '../engine/quantity.ts';
import { WEEKS } from '../series.ts';
import { coveredHa, M2_PER_HA } from './patches.ts';

const made = (label: string, unit: string, formula: string, source?: readonly string[]) =>
  quantity(label, unit, formula, { when: 'paddockShare', ...(source && { source }) });

/** Between the value of ground that does not freeze and that of boreal ground: of the place, not of the stay. */
const byFrost = (label: string, unit: string, mild: string, boreal: string, source: readonly string[]) =>
  made(
    label,
    unit,
    'that of ground that does not freeze and that of boreal ground, weighed by how boreal the ground is',
    source,
  ).of(
    [mild, boreal, 'borealWeight'],
    (i, open, hard, weight) => open[i] * (1 - weight[i]) + hard[i] * weight[i],
  );

export const sward = {
  frozenWinterFraction: made(
    'share of the winter with frozen ground',
    'fraction',
    'days of frozen ground ÷ winter days, at most 1',
  ).of(['frozenDays', 'winterDays'], (i, frozen, days) =>
    days[i] > 0 ? Math.min(1, frozen[i] / days[i]) : 0,
  ),
  frozenYearDays: made('days of frozen ground in the year', 'd', 'sum over all weeks of the weather year').of(
    ['weekFrozenDays'],
    (i, frozen) => {
      let days = 0;
      for (let w = i * WEEKS; w < (i + 1) * WEEKS; w++) if (frozen[w] > 0) days += frozen[w];
      return days;
    },
  ),
  borealWeight: made(
    'how boreal the ground is',
    'fraction',
    'days of frozen ground in the year ÷ days from which a sward counts as boreal, at most 1',
  ).of(['frozenYearDays', 'borealFrozenDays'], (i, frozen, from) =>
    from[i] > 0 ? Math.min(1, frozen[i] / from[i]) : 1,
  ),
  urineBoundFraction: byFrost(
    'share of urine nitrogen bound in soil and roots',
    'fraction',
    'urineBoundMildFraction',
    'urineBoundFrozenFraction',
    ['decau2003', 'saarijarvi2009'],
  ),
  patchUptakeKgPerHa: byFrost(
    'most nitrogen herbage takes from urine patches in a growth year',
    'kg/ha',
    'patchUptakeMildKgPerHa',
    'patchUptakeFrozenKgPerHa',
    ['decau2003', 'saarijarvi2009'],
  ),
  urinePatchHa: made(
    'urine patches of the winter laid side by side',
    'ha',
    'livestock units × share of the time on the paddock × winter days × ground wetted by a unit in a day',
    ['moir2010'],
  ).of(
    ['livestockUnits', 'paddockShare', 'winterDays', 'urinePatchM2PerUnitDay'],
    (i, units, share, days, each) => (units[i] * share[i] * days[i] * each[i]) / M2_PER_HA,
  ),
  spotReachedHa: made(
    'ground round the feeding places that urine reaches',
    'ha',
    'their ground × (1 − e^(−urine patches there ÷ their ground)): patches fall at random',
    ['moir2010'],
  ).of(
    ['urinePatchHa', 'paddockHa', 'spotExcretaFraction', 'spotAreaFraction'],
    (i, patch, hectares, share, area) => coveredHa(patch[i] * share[i], hectares[i] * area[i]),
  ),
  restReachedHa: made(
    'ground of the rest of the paddock that urine reaches',
    'ha',
    'its ground × (1 − e^(−urine patches there ÷ its ground)): patches fall at random',
    ['moir2010'],
  ).of(
    ['urinePatchHa', 'paddockHa', 'spotExcretaFraction', 'spotAreaFraction'],
    (i, patch, hectares, share, area) => coveredHa(patch[i] * (1 - share[i]), hectares[i] * (1 - area[i])),
  ),
  spotSwardHa: made(
    'living sward that feeds on urine round the feeding places',
    'ha',
    'ground urine reaches there × edge of the patches × growth left',
    ['shepherdCarlson'],
  ).product(['spotReachedHa', 'urinePatchEdgeFactor', 'spotGrowthLeft']),
  restSwardHa: made(
    'living sward that feeds on urine on the rest of the paddock',
    'ha',
    'ground urine reaches there × edge of the patches × growth left',
    ['shepherdCarlson'],
  ).product(['restReachedHa', 'urinePatchEdgeFactor', 'restGrowthLeft']),
};
