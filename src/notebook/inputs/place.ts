/** Inputs of where the animals are and what is there: shares of the day, paddock, slats and tank, spreading. */
import { dayNumber, dayOf, partsOf } from '../../units/days.ts';
import type { InputColumn } from './column.ts';

/** Days from the first day of the winter to the middle of a month in the year that follows. */
function dayOfMonthMiddle(start: string, month: number): number {
  const begin = dayNumber(start);
  const { year } = partsOf(begin);
  const middle = (y: number) => dayOf(y, month - 1, 15);
  return (middle(year) >= begin ? middle(year) : middle(year + 1)) - begin;
}

export const PLACE_INPUTS: readonly InputColumn[] = [
  {
    column: 'bedShare',
    label: 'share of the day on the bed',
    unit: 'fraction',
    path: 'placement.bedShare',
    of: (s) => s.placement.bedShare,
  },
  {
    column: 'slatsShare',
    label: 'share of the day on slats',
    unit: 'fraction',
    path: 'placement.slatsShare',
    of: (s) => s.placement.slatsShare,
  },
  {
    column: 'yardShare',
    label: 'share of the day on stance or yard',
    unit: 'fraction',
    path: 'placement.yardShare',
    of: (s) => s.placement.yardShare,
  },
  {
    column: 'pastureShare',
    label: 'share of the day on pasture',
    unit: 'fraction',
    path: 'placement.pastureShare',
    of: (s) => s.placement.pastureShare,
  },
  {
    column: 'yardToPackShare',
    label: 'yard scrapings that go to the pack',
    unit: 'fraction',
    path: 'placement.yardTo',
    of: (s) => (s.placement.yardTo === 'pack' ? 1 : 0),
  },
  {
    column: 'paddockHa',
    label: 'wintering paddock',
    unit: 'ha',
    path: 'paddock.areaHa',
    of: (s) => s.paddock.areaHa,
    min: 0.5,
    max: 100,
    step: 0.5,
  },
  {
    column: 'slatsM2',
    label: 'slatted area',
    unit: 'm²',
    path: 'slats.areaM2',
    of: (s) => s.slats.areaM2 ?? Number.NaN,
    min: 10,
    max: 1000,
    step: 5,
  },
  {
    column: 'tankDepthM',
    label: 'tank depth',
    unit: 'm',
    path: 'slats.tankDepthM',
    of: (s) => s.slats.tankDepthM,
    min: 1,
    max: 4,
    step: 0.1,
  },
  {
    column: 'washLitresPerDay',
    label: 'wash water',
    unit: 'L/d',
    path: 'slats.washLitresPerDay',
    of: (s) => s.slats.washLitresPerDay,
  },
  {
    column: 'openStoreM2',
    label: 'open store that catches rain',
    unit: 'm²',
    path: 'slats.openStoreM2',
    of: (s) => s.slats.openStoreM2,
  },
  {
    column: 'openYardM2',
    label: 'fouled yard that drains to the store',
    unit: 'm²',
    path: 'slats.openYardM2',
    of: (s) => s.slats.openYardM2,
  },
  {
    column: 'spreadDay',
    label: 'spreading day',
    unit: 'd',
    path: 'spreading.month',
    of: (s) => dayOfMonthMiddle(s.farm.winter.start, s.spreading.month),
  },
];
