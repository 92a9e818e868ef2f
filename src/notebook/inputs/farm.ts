/** Inputs of the farm: winter, weather, herd, soil, land and what hours and money are worth. */
import { daysBetween } from '../../units/days.ts';
import type { InputColumn } from './column.ts';

/** 1 where the soil needs it, 0 where it has enough, NaN where no test is known. */
const needed = (needs: readonly string[] | undefined, nutrient: string): number =>
  needs === undefined ? Number.NaN : Number(needs.includes(nutrient));

export const FARM_INPUTS: readonly InputColumn[] = [
  {
    column: 'winterDays',
    label: 'winter days',
    unit: 'd',
    path: 'farm.winter',
    of: (s) => daysBetween(s.farm.winter.start, s.farm.winter.end),
    min: 30,
    max: 300,
    step: 1,
  },
  {
    column: 'rainFactor',
    label: 'rain against this weather',
    unit: '×',
    path: 'farm.weather.rainFactor',
    of: (s) => s.farm.weather.rainFactor,
    min: 0,
    max: 2.5,
    step: 0.05,
  },
  {
    column: 'herdFactor',
    label: 'herd against this herd',
    unit: '×',
    path: 'farm.herd',
    of: () => 1,
    min: 0.1,
    max: 4,
    step: 0.05,
  },
  {
    column: 'latitudeDeg',
    label: 'latitude',
    unit: '°',
    path: 'farm.place.latitudeDeg',
    of: (s) => s.farm.place.latitudeDeg,
  },
  {
    column: 'rootDepthMm',
    label: 'rooting depth',
    unit: 'mm',
    path: 'farm.soil.rootDepthMm',
    of: (s) => s.farm.soil.rootDepthMm,
    min: 200,
    max: 1500,
    step: 50,
  },
  {
    column: 'phosphorusNeeded',
    label: 'whether the soil needs phosphorus',
    unit: 'fraction',
    path: 'farm.soil.needs',
    of: (s) => needed(s.farm.soil.needs, 'phosphorus'),
  },
  {
    column: 'potassiumNeeded',
    label: 'whether the soil needs potassium',
    unit: 'fraction',
    path: 'farm.soil.needs',
    of: (s) => needed(s.farm.soil.needs, 'potassium'),
  },
  {
    column: 'receivingHa',
    label: 'ground for manure or compost',
    unit: 'ha',
    path: 'farm.land.receivingHa',
    of: (s) => s.farm.land.receivingHa,
    min: 1,
    max: 200,
    step: 1,
  },
  {
    column: 'labourPricePerHour',
    label: "own labour's worth",
    unit: 'money/h',
    path: 'farm.money.labourPerHour',
    of: (s) => s.farm.money.labourPerHour,
    min: 0,
    max: 60,
    step: 1,
  },
  {
    column: 'interestRate',
    label: 'interest rate',
    unit: 'fraction',
    path: 'farm.money.interestRate',
    of: (s) => s.farm.money.interestRate,
    min: 0,
    max: 0.15,
    step: 0.005,
  },
];
