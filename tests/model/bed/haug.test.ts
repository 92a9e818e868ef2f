import { describe, expect, it } from 'vitest';
import { rateByMoisture, rateByTemperature } from '../../../src/model/bed/haug.ts';

/** Haug 1993, the practical handbook of compost engineering: his rate curves, as recalled; values by hand. */
describe('rates by Haug', () => {
  it.each([
    [0, 0.2785],
    [5, 0.3834],
    [10, 0.5277],
    [20, 0.9995],
    [45, 4.885],
    [55, 8.979],
    [65, 15.15],
  ])('at %d °C the rate is %d of that at 20 °C', (celsius, factor) => {
    expect(rateByTemperature(celsius) / factor).toBeCloseTo(1, 3);
  });
  it('ends where heat kills', () => {
    expect(rateByTemperature(82)).toBe(0);
  });
  it.each([
    [0.4, 0.503],
    [0.5, 0.856],
    [0.6, 0.972],
    [0.7, 0.995],
  ])('at moisture %d the rate is %d of that of wet matter', (moisture, factor) => {
    expect(rateByMoisture(moisture)).toBeCloseTo(factor, 3);
  });
});
