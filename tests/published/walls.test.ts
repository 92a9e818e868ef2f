import { describe, expect, it } from 'vitest';
import { pushWallForce, storedManureForce } from '../../src/model/works/pushWall.ts';
import { sum } from './labels.ts';

describe(sum('a push wall of 1.2 m, 8 kN/m³, K 0.5'), () => {
  // Rankine's earth pressure with a surcharge. Basis: derived, regression. Values of weight and K from memory.
  it.each([
    [0, 2.88, 1.15],
    [10, 8.88, 4.75],
  ])('with %d kPa on top: %d kN/m and %d kNm/m', (surchargeKnPerM2, thrust, moment) => {
    const force = pushWallForce({ heightM: 1.2, earthPressure: 0.5, weightKnPerM3: 8, surchargeKnPerM2 });
    expect(Math.abs(force.thrustKnPerM - thrust)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(force.momentKnmPerM - moment)).toBeLessThanOrEqual(0.01);
  });
  it('presses nothing where nothing lies', () => {
    expect(pushWallForce({ heightM: -1, earthPressure: 0.5, weightKnPerM3: 8, surchargeKnPerM2: 0 })).toEqual(
      { baseKnPerM2: 0, thrustKnPerM: 0, momentKnmPerM: 0 },
    );
  });
});

describe(sum('stored manure on a wall'), () => {
  // NRCS conservation practice standard 313, 60 and 65 lb per square foot per foot (from memory); sums derived.
  it.each([
    [0.9, 9.4, 8.46, 3.81, 1.14],
    [1.2, 9.4, 11.28, 6.77, 2.71],
    [1.5, 9.4, 14.1, 10.58, 5.29],
    [1.2, 10.2, 12.24, 7.34, 2.94],
  ])('%d m at %d kN/m² per m: %d kPa, %d kN/m, %d kNm/m', (depth, load, base, thrust, moment) => {
    const force = storedManureForce(depth, load);
    expect(Math.abs(force.baseKnPerM2 - base)).toBeLessThanOrEqual(0.006);
    expect(Math.abs(force.thrustKnPerM - thrust)).toBeLessThanOrEqual(0.006);
    expect(Math.abs(force.momentKnmPerM - moment)).toBeLessThanOrEqual(0.006);
  });
});
