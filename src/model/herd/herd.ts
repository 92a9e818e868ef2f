/** Groups of animals → head, live weight, livestock units, gain. */
import { defineStage } from '../stage.ts';

export const herdStage = defineStage({
  name: 'herd',
  about: 'Adds up the groups of the herd.',
  reads: ['herdFactor', 'winterDays'],
  families: { group: ['HeadCount', 'WeightKg', 'GainKgPerDay', 'LivestockUnits'] },
  makes: {
    headCount: {
      label: 'animals',
      unit: 'head',
      formula: 'sum of the head of all groups × herd factor',
      from: ['group*HeadCount', 'herdFactor'],
    },
    liveWeightKg: {
      label: 'live weight at mid-winter',
      unit: 'kg',
      formula:
        'sum over the groups of head × (weight at the start + half of the gain of the winter) × herd factor',
      from: ['group*HeadCount', 'group*WeightKg', 'group*GainKgPerDay', 'winterDays', 'herdFactor'],
    },
    livestockUnits: {
      label: 'livestock units',
      unit: 'LU',
      formula: 'sum over the groups of head × livestock units a head of the class × herd factor',
      from: ['group*HeadCount', 'group*LivestockUnits', 'herdFactor'],
      source: ['eurostatLsu'],
    },
    gainKg: {
      label: 'live weight gained',
      unit: 'kg',
      formula: 'sum over the groups of head × daily gain × winter days × herd factor',
      from: ['group*HeadCount', 'group*GainKgPerDay', 'winterDays', 'herdFactor'],
    },
  },
  run({ count, read, family: { group }, write }) {
    for (let i = 0; i < count; i++) {
      const days = read.winterDays[i];
      let head = 0;
      let weight = 0;
      let units = 0;
      let gain = 0;
      for (let g = 0; g < group.length; g++) {
        const n = group[g].HeadCount[i] * read.herdFactor[i];
        const perHead = group[g].GainKgPerDay[i] * days;
        head += n;
        weight += n * (group[g].WeightKg[i] + perHead / 2);
        units += n * group[g].LivestockUnits[i];
        gain += n * perHead;
      }
      write.headCount[i] = head;
      write.liveWeightKg[i] = weight;
      write.livestockUnits[i] = units;
      write.gainKg[i] = gain;
    }
  },
});
