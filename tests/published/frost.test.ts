/**
 * Depth of frost against the manual's own constants and against Neumann's exact answer for ground that freezes (Carslaw
 * and Jaeger, Conduction of Heat in Solids; from memory), found here by halving and sharing no code with ours.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  designFreezingIndexCD,
  frostClimateOf,
  frostDepthM,
  frostOf,
} from '../../src/model/weather/frostDepth.ts';
import { figure, sum } from './labels.ts';

const SILT = {
  surfaceFactor: 1,
  conductivityWPerMK: 1.3,
  dryDensityKgPerM3: 1602,
  waterFraction: 0.15,
};
const FOOT_M = 0.3048;

/** The error function by its series. */
function erf(x: number): number {
  let term = x;
  let total = x;
  for (let n = 1; n < 60; n++) {
    term *= (-x * x) / n;
    total += term / (2 * n + 1);
  }
  return (2 / Math.sqrt(Math.PI)) * total;
}

/** Neumann: ground at `startC` whose surface drops to −`belowC` for `days`; frozen and unfrozen ground alike. */
function neumannM(belowC: number, startC: number, days: number, soil: typeof SILT): number {
  const heat = soil.dryDensityKgPerM3 * 4187 * (0.17 + 0.75 * soil.waterFraction);
  const latent = soil.dryDensityKgPerM3 * soil.waterFraction * 334_000;
  const spread = soil.conductivityWPerMK / heat;
  const rest = (x: number) =>
    Math.exp(-x * x) * (belowC / erf(x) - startC / (1 - erf(x))) - (x * Math.sqrt(Math.PI) * latent) / heat;
  let [low, high] = [1e-6, 3];
  for (let k = 0; k < 80; k++) {
    const middle = (low + high) / 2;
    if (rest(middle) > 0) low = middle;
    else high = middle;
  }
  return 2 * low * Math.sqrt(spread * days * 86_400);
}

describe('depth of frost', () => {
  it(
    figure(
      'is 6.67 ft times the coefficient for 2000 °F·d, 1 BTU/(h·ft·°F), 100 lb/ft³ and 15 % water (derived)',
    ),
    () => {
      // 144 × 100 × 0.15 = 2160 BTU/ft³; √(48 × 1 × 2000 / 2160) = 6.667 ft. Over many days the coefficient nears 1.
      const depth = frostDepthM(
        { freezingIndexCD: 2000 / 1.8, days: 1e7, meanYearC: 0 },
        { ...SILT, conductivityWPerMK: 1.730_735 },
      );
      expect(depth / FOOT_M).toBeCloseTo(6.667, 1);
    },
  );

  it(
    figure(
      'has the coefficient of Aldrich and Paynter: 0.926 at a fusion parameter of 0.2 and a ratio of 0.33 (derived)',
    ),
    () => {
      // 2500 °F·d over 160 days, mean of the year 37.2 °F: 15.6 °F below; 28.25 × 15.6 / 2160 = 0.204; 5.2 / 15.6 = 0.333.
      const season = { freezingIndexCD: 2500 / 1.8, days: 160, meanYearC: 5.2 / 1.8 };
      const stefanFt = Math.sqrt((48 * 0.75 * 2500) / 2160);
      const depth = frostDepthM(season, { ...SILT, conductivityWPerMK: 0.75 * 1.730_735 });
      expect(depth / FOOT_M / stefanFt).toBeCloseTo(1 / Math.sqrt(1 + 0.2044 * (0.3328 + 0.5)), 2);
    },
  );

  it(sum('lies within 15 % of Neumann’s exact answer wherever cattle are wintered'), () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 12, noNaN: true }),
        fc.double({ min: 1, max: 9, noNaN: true }),
        fc.integer({ min: 40, max: 190 }),
        fc.double({ min: 0.1, max: 0.25, noNaN: true }),
        (belowC, meanYearC, days, waterFraction) => {
          const soil = { ...SILT, waterFraction };
          const ours = frostDepthM({ freezingIndexCD: belowC * days, days, meanYearC }, soil);
          const exact = neumannM(belowC, meanYearC, days, soil);
          // Our form leaves out how warm ground slows frost beyond first order: it is the deeper one, the safe side.
          expect(ours / exact).toBeGreaterThan(0.97);
          if (meanYearC < belowC) expect(ours / exact).toBeLessThan(1.15);
        },
      ),
    );
  });

  it(sum('is nothing where it does not freeze, and deeper in colder or drier ground'), () => {
    const season = { freezingIndexCD: 400, days: 100, meanYearC: 5 };
    expect(frostDepthM({ ...season, freezingIndexCD: 0 }, SILT)).toBe(0);
    expect(frostDepthM({ ...season, days: 0 }, SILT)).toBe(0);
    expect(frostDepthM({ ...season, freezingIndexCD: 800 }, SILT)).toBeGreaterThan(frostDepthM(season, SILT));
    expect(frostDepthM(season, { ...SILT, waterFraction: 0.08 })).toBeGreaterThan(frostDepthM(season, SILT));
  });
});

describe(sum('freezing index of a winter (ISO 13793, annex A.2)'), () => {
  it('is the fall of the running sum from its highest to its lowest after it, thaws taken off', () => {
    // 10 days at +5, 20 at −10, 5 at +4, 10 at −6, then spring: 200 − 20 + 60 = 240 in 35 days.
    const days = [
      ...Array<number>(10).fill(5),
      ...Array<number>(20).fill(-10),
      ...Array<number>(5).fill(4),
      ...Array<number>(10).fill(-6),
      ...Array<number>(60).fill(8),
    ];
    expect(frostOf(days)).toEqual({ freezingIndexCD: 240, days: 35 });
  });
  it('leaves out an early frost that thaws whole', () => {
    const days = [-5, -5, 6, 6, 6, -10, -10, -10, 9, 9, 9, 9];
    expect(frostOf(days).freezingIndexCD).toBe(30);
  });
});

describe(sum('index exceeded once in so many years (Gumbel by moments)'), () => {
  it('is mean + 2.592 standard deviations for 50 years and mean + 1.305 for 10', () => {
    const climate = frostClimateOf([[-100], [-200], [-300]]);
    expect(climate.indexCD).toBe(200);
    expect(climate.spreadCD).toBe(100);
    expect(designFreezingIndexCD(climate, 50)).toBeCloseTo(200 + 259.2, 0);
    expect(designFreezingIndexCD(climate, 10)).toBeCloseTo(200 + 130.5, 0);
  });
});
