import { describe, expect, it } from 'vitest';
import { roofSnowKnPerM2, snowShape } from '../../src/model/works/snowLoad.ts';
import { figure, recalled, sum } from './labels.ts';

describe('snow on a roof', () => {
  it(
    figure(
      '0.65 kN/m² on the ground gives 0.52 on a roof of 5.7° (worked example to EN 1991-1-3; published)',
    ),
    () => {
      expect(roofSnowKnPerM2(0.65, 5.7)).toBeCloseTo(0.52, 12);
    },
  );

  // EN 1991-1-3 table 5.2 with Ce = Ct = 1. Basis: derived, regression.
  it.each([
    [2.5, 22, 2.0],
    [2.0, 15, 1.6],
    [3.0, 35, 2.0],
    [2.0, 45, 0.8],
  ])(sum('%d kN/m² at %d° gives %d'), (ground, pitch, load) => {
    expect(roofSnowKnPerM2(ground, pitch)).toBeCloseTo(load, 9);
  });

  it(figure('has the shape coefficients of EN 1991-1-3 table 5.2 (published)'), () => {
    expect([0, 30, 60, 75].map((pitch) => snowShape(pitch))).toEqual([0.8, 0.8, 0, 0]);
    expect(snowShape(35)).toBeCloseTo(0.667, 3);
    expect(snowShape(45)).toBeCloseTo(0.4, 12);
  });

  it(recalled('does not let held snow slide (EN 1991-1-3 5.3.2; from memory)'), () => {
    expect(snowShape(55, true)).toBe(0.8);
  });

  it(figure('scales with exposure and never goes below nothing (table 5.1; published)'), () => {
    expect(roofSnowKnPerM2(2, 10, 1.2)).toBeCloseTo(1.92, 12);
    expect(roofSnowKnPerM2(2, 10, 0.8)).toBeCloseTo(1.28, 12);
    expect(roofSnowKnPerM2(-1, 10)).toBe(0);
  });
});
