import { describe, expect, it } from 'vitest';
import { peakWindKnPerM2 } from '../../src/model/works/windLoad.ts';
import { recalled, sum } from './labels.ts';

describe('wind on a shed', () => {
  const place = { basicMPerS: 24, airKgPerM3: 1.25, leastHeightM: 2 };
  const basic = 0.5 * 1.25 * 24 ** 2 * 1e-3;
  // Exposure factor ce(10 m) of open ground (terrain II) and of villages (III), EN 1991-1-4 figure 4.2, from memory.
  it.each([
    [0.05, 2.35],
    [0.3, 1.71],
  ])(
    recalled('roughness %d m: 10 m up the peak is %d times the basic pressure (EN 1991-1-4, from memory)'),
    (roughnessM, factor) =>
      expect(peakWindKnPerM2({ ...place, roughnessM }, 10) / basic).toBeCloseTo(factor, 2),
  );
  it(sum('still air presses nothing, and near the ground the least height holds'), () => {
    expect(peakWindKnPerM2({ ...place, basicMPerS: 0, roughnessM: 0.05 }, 5)).toBe(0);
    expect(peakWindKnPerM2({ ...place, roughnessM: 0.05 }, 0)).toBe(
      peakWindKnPerM2({ ...place, roughnessM: 0.05 }, 2),
    );
  });
});
