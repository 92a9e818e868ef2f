/** Groups of animals → head, live weight, livestock units, gain. */
import { quantity } from '../engine/quantity.ts';

export const herd = {
  headCount: quantity('animals', 'head', 'sum of the head of all groups × herd factor').of(
    ['group*HeadCount', 'herdFactor'],
    (i, head, factor) => {
      let sum = 0;
      for (let g = 0; g < head.length; g++) sum += head[g][i] * factor[i];
      return sum;
    },
  ),
  liveWeightKg: quantity(
    'live weight at mid-winter',
    'kg',
    'sum over the groups of head × (weight at the start + half of the gain of the winter) × herd factor',
  ).of(
    ['group*HeadCount', 'group*WeightKg', 'group*GainKgPerDay', 'winterDays', 'herdFactor'],
    (i, head, weight, gain, days, factor) => {
      let sum = 0;
      for (let g = 0; g < head.length; g++)
        sum += head[g][i] * factor[i] * (weight[g][i] + (gain[g][i] * days[i]) / 2);
      return sum;
    },
  ),
  livestockUnits: quantity(
    'livestock units',
    'LU',
    'sum over the groups of head × livestock units a head of the class × herd factor',
    { source: ['eurostatLsu'] },
  ).of(['group*HeadCount', 'group*LivestockUnits', 'herdFactor'], (i, head, units, factor) => {
    let sum = 0;
    for (let g = 0; g < head.length; g++) sum += head[g][i] * factor[i] * units[g][i];
    return sum;
  }),
  gainKg: quantity(
    'live weight gained',
    'kg',
    'sum over the groups of head × daily gain × winter days × herd factor',
  ).of(
    ['group*HeadCount', 'group*GainKgPerDay', 'winterDays', 'herdFactor'],
    (i, head, gain, days, factor) => {
      let sum = 0;
      for (let g = 0; g < head.length; g++) sum += head[g][i] * factor[i] * (gain[g][i] * days[i]);
      return sum;
    },
  ),
};
