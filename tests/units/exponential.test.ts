import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exponential } from '../../src/units/exponential.ts';

/** Relative difference from the library's, which both may round. */
const off = (x: number) => Math.abs(exponential(x) / Math.exp(x) - 1);

describe('the exponential of the inner loops', () => {
  it('is that of the library to 2 in 10^15 wherever numbers keep all their digits', () => {
    fc.assert(
      fc.property(fc.double({ min: -708, max: 709, noNaN: true }), (x) => off(x) < 2e-15),
      { numRuns: 20_000 },
    );
    for (let x = -60; x <= 60; x += 0.001) expect(off(x)).toBeLessThan(2e-15);
  });

  it('is exact at 0 and close around it', () => {
    expect(exponential(0)).toBe(1);
    expect(exponential(-0)).toBe(1);
    for (const x of [1e-300, 1e-17, 1e-9, 1e-4]) {
      expect(exponential(x) - 1).toBeCloseTo(Math.expm1(x), 15);
      expect(exponential(-x)).toBeLessThanOrEqual(1);
      expect(exponential(x)).toBeGreaterThanOrEqual(1);
    }
  });

  it('ends as the library does', () => {
    for (const x of [-Infinity, -1e4, -745, -720, 710, 1e4, Infinity, Number.NaN])
      expect(exponential(x)).toBe(Math.exp(x));
  });

  it('grows with its argument, across the seams of its table too', () => {
    const seam = Math.LN2 / 1024;
    for (let k = -40_000; k <= 40_000; k++) {
      const x = (k + 0.5) * seam;
      expect(exponential(x + 1e-13)).toBeGreaterThan(exponential(x - 1e-13));
    }
  });
});
