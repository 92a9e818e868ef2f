/** A bed without a roof: the rain and snow that fall on it. What washes out of it is not counted. */
import { quantity } from '../engine/quantity.ts';

export const openBed = {
  bedRainKg: quantity(
    'rain and snow on a bed without a roof',
    'kg',
    'rain and snow of the winter × area of the bed, where there is a bed and no roof; all of it stays in the bed',
    { when: 'packShare' },
  ).of(['rainMm', 'bedM2', 'bedShare', 'roofedShare'], (i, rain, area, bed, roofed) =>
    // A millimetre on a square metre is a kilogram.
    bed[i] > 0 ? rain[i] * area[i] * (1 - roofed[i]) : 0,
  ),
};
