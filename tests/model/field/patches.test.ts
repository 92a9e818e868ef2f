import { describe, expect, it } from 'vitest';
import { coveredHa } from '../../../src/model/field/patches.ts';

describe('ground covered by patches', () => {
  it('is the patches themselves while they are few', () => {
    expect(coveredHa(0.001, 10)).toBeCloseTo(0.001, 6);
  });

  it('is 1 − 1/e of the ground when the patches add up to it (Poisson; own arithmetic)', () => {
    expect(coveredHa(2, 2)).toBeCloseTo(2 * (1 - 1 / Math.E), 12);
  });

  it('never exceeds the ground, and is nothing on none', () => {
    expect(coveredHa(1e6, 3)).toBe(3);
    expect(coveredHa(1, 0)).toBe(0);
    expect(coveredHa(0, 3)).toBe(0);
  });
});
