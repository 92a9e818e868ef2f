import { describe, expect, it } from 'vitest';
import { monthlyMethaneFraction } from '../../../src/model/slurry/methane.ts';

describe('the monthly van ’t Hoff form (regression check on worked numbers of the guidelines)', () => {
  it.each([
    ['2006: 15 175 cal/mol, 30 °C', 15_175, 30, [0.1039, 0.1688, 0.2695, 0.4235]],
    ['2019: 19 347 cal/mol, 35 °C', 19_347, 35, [0.0331, 0.0614, 0.1116, 0.1986]],
  ])('%s', (_, activation, reference, expected) => {
    const found = [5, 10, 15, 20].map((celsius) => monthlyMethaneFraction(celsius, activation, reference, 5));
    for (let k = 0; k < found.length; k++) expect(found[k]).toBeCloseTo(expected[k], 4);
  });

  it('is all of it at the reference and above, and falls no further below the lowest', () => {
    expect(monthlyMethaneFraction(50, 19_347, 35, 5)).toBe(1);
    expect(monthlyMethaneFraction(-20, 19_347, 35, 5)).toBe(monthlyMethaneFraction(5, 19_347, 35, 5));
  });
});
