/** Inputs of the bed and its heap. */
import { daysBetween } from '../../units/days.ts';
import type { InputColumn } from './column.ts';

export const BED_INPUTS: readonly InputColumn[] = [
  {
    column: 'startDepthM',
    label: 'bed at the start',
    unit: 'm',
    path: 'bed.startDepthM',
    of: (s) => s.bed.startDepthM,
    min: 0,
    max: 0.6,
    step: 0.05,
  },
  {
    column: 'beddingRateKgPer100Kg',
    label: 'bedding a day per 100 kg live weight',
    unit: 'kg',
    path: 'bed.rateKgPer100Kg',
    of: (s) => s.bed.rateKgPer100Kg,
    min: 0,
    max: 3,
    step: 0.1,
  },
  {
    column: 'cleanOutDay',
    label: 'day of the clean-out, from the first winter day',
    unit: 'd',
    path: 'bed.cleanOut',
    of: (s) => (s.bed.cleanOut === undefined ? Number.NaN : daysBetween(s.farm.winter.start, s.bed.cleanOut)),
  },
  {
    column: 'compostTurns',
    label: 'compost turns',
    unit: 'turns',
    path: 'compost.turns',
    of: (s) => s.compost.turns,
    min: 0,
    max: 12,
    step: 1,
  },
  {
    column: 'compostDaysGiven',
    label: 'days the heap lies, as given',
    unit: 'd',
    path: 'compost.days',
    of: (s) => s.compost.days ?? Number.NaN,
    min: 0,
    max: 400,
    step: 7,
  },
  {
    column: 'compostCompacted',
    label: 'heap pressed down',
    unit: 'fraction',
    path: 'compost.compacted',
    of: (s) => (s.compost.compacted ? 1 : 0),
  },
];
