import { describe, expect, it } from 'vitest';
import {
  heatNumber,
  heatPerLossC,
  litShare,
  rateByCarbonNitrogen,
  respirationMgPerGDay,
  restingRiseC,
  warmStart,
  windrowSurfacePerVolume,
} from '../../../src/model/bed/heapRates.ts';

describe('the rate of a heap', () => {
  it('slows only where carbon is in excess', () => {
    expect(rateByCarbonNitrogen(29, 30)).toBe(1);
    expect(rateByCarbonNitrogen(120, 30)).toBeCloseTo(0.5, 12);
  });
});

/** Heat made against heat lost, both states by hand from the same equations. Regression checks. */
describe('whether a heap heats (regression)', () => {
  const perLoss = heatPerLossC({
    heatMjPerKg: 19.5,
    ratePerDay: 0.0033,
    degradableKgPerM3: 100,
    airShare: 0.45,
    lossWPerM2K: 1,
    surfacePerVolume: 1.37,
    evaporationShare: 1.3,
  });
  it.each([
    [-5, -2.4],
    [-2, 1.3],
    [0, 3.8],
    [4, 9.5],
    [8, 16.6],
  ])('in air of %d °C it rests at %d °C unless it is lit', (air, rests) => {
    const number = heatNumber(perLoss, air);
    expect(number).toBeLessThan(1);
    expect(Math.abs(air + restingRiseC(number) - rests)).toBeLessThanOrEqual(0.15);
  });
  it('heats from any start in air of 12 °C', () => {
    expect(heatNumber(perLoss, 12)).toBeGreaterThan(1);
  });
  it('rests where heat made and heat lost are equal', () => {
    for (const airC of [-10, 0, 5, 9]) {
      const restsC = airC + restingRiseC(heatNumber(perLoss, airC));
      const made = perLoss * Math.exp(Math.log(1.066) * (restsC - 20));
      expect(made).toBeCloseTo(restsC - airC, 4);
    }
  });
  it('lights by degrees about the point of touch, and sooner from a warm bed', () => {
    expect(litShare(0.69, 0.3)).toBe(0);
    expect(litShare(1, 0.3)).toBeCloseTo(0.5, 12);
    expect(litShare(1.31, 0.3)).toBe(1);
    expect(warmStart(10)).toBe(1);
    // e^(s·x − 1) ÷ (s·x) at 31 °C above the air, s = ln 1.066.
    expect(warmStart(31)).toBeCloseTo(Math.exp(31 * Math.log(1.066) - 1) / (31 * Math.log(1.066)), 12);
  });
  it('has the skin of a parabola of 3 by 1.5 m', () => {
    // Arc by Simpson's rule over y = 1.5·(1 − (x/1.5)²), a check outside the closed form.
    const steps = 2000;
    let arc = 0;
    for (let k = 0; k < steps; k++) {
      const x = -1.5 + (3 * (k + 0.5)) / steps;
      arc += Math.hypot(1, (-2 * x) / 1.5) * (3 / steps);
    }
    expect(windrowSurfacePerVolume(3, 1.5)).toBeCloseTo(arc / 3, 5);
  });
  it('breathes 4 mg at the limit of the worked example', () => {
    expect(respirationMgPerGDay(0.02, 0.2)).toBeCloseTo(4, 12);
    expect(respirationMgPerGDay(0.01, 0.2)).toBeCloseTo(2, 12);
  });
});
