/** Inputs of the bed and its heap. */
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
    of: (s) => s.bed.rateKgPer100Kg ?? Number.NaN,
    min: 0,
    max: 3,
    step: 0.1,
  },
  {
    column: 'bedStirredPerWeek',
    label: 'times the bed is stirred a week',
    unit: 'times',
    path: 'bed.stirredPerWeek',
    of: (s) => s.bed.stirredPerWeek,
    min: 0,
    max: 14,
    step: 1,
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
];
