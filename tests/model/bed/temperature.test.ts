/** The heat of a bed: hand-worked examples (regression checks of the forms), and what must hold of any bed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airDepthM,
  BED,
  BED_PLACES,
  convection,
  dryingPerKPa,
  oxygenDiffusion,
  saturationKPa,
  warm,
} from '../../../src/model/bed/temperature.ts';

const CASE = {
  perDay: 0.008, degradableKgPerM3: 80, depthM: 0.8, airC: 2, humidity: 0.85, oxygenKgPerKg: 1.4, heatMjPerKgOxygen: 14,
  airlessRate: 0.2, airlessHeat: 0.1, conductivity: 0.4, windMPerS: 0.3, wet: 0.5, stockMj: 0, diffusion: 0.0556,
  looseDiffusion: 0.268, looseShare: 0, looseDepthM: 0.28, hottestC: 65, holds: 0, days: 7,
}; // biome-ignore format: one list

function bedOf(given: Partial<typeof CASE>, rounds = 200) {
  const { windMPerS, wet, ...places } = { ...CASE, ...given };
  const bed = new Float64Array(BED_PLACES);
  for (const [name, value] of Object.entries(places)) bed[BED[name as keyof typeof BED]] = value;
  bed[BED.convection] = convection(windMPerS);
  bed[BED.dries] = dryingPerKPa(windMPerS, wet);
  for (const place of [BED.surfaceC, BED.topC, BED.coreC]) bed[place] = places.airC;
  warm(bed, rounds);
  return (name: keyof typeof BED) => bed[BED[name]];
}

describe('curves of the textbooks, worked by hand (regression)', () => {
  it.each([
    [2, 0.7056],
    [8, 1.0728],
  ])('vapour at %f °C', (at, want) => expect(saturationKPa(at)).toBeCloseTo(want, 4));

  it('depth of air: 17 cm trodden, 9 cm dense, 37 cm loosened', () => {
    expect(oxygenDiffusion(0.3, 0.75)).toBeCloseTo(0.05559, 5);
    expect(airDepthM(oxygenDiffusion(0.3, 0.75), 1.12)).toBeCloseTo(0.1682, 4);
    expect(airDepthM(oxygenDiffusion(0.2, 0.75), 1.12)).toBeCloseTo(0.0856, 4);
    expect(airDepthM(oxygenDiffusion(0.5, 0.8), 1.12)).toBeCloseTo(0.3694, 4);
  });
});

describe('a bed in its steady state, worked apart from the program (regression)', () => {
  it.each([
    [-5, 0.8, -3.44, 1.57, 3.65, 0.339, 1.35, 0.175],
    [2, 0.3, 3.58, 8.4, 10.02, 0.272, 1.632, 0.286],
    [2, 0.8, 3.69, 8.8, 11.29, 0.269, 1.726, 0.296],
    [10, 0.8, 11.77, 17.04, 20.42, 0.207, 2.299, 0.511],
  ])('at %f °C and %f m', (airC, depthM, surface, top, core, reach, heat, evaporates) => {
    const bed = bedOf({ airC, depthM });
    expect(Math.abs(bed('surfaceC') - surface)).toBeLessThan(0.006);
    expect(Math.abs(bed('topC') - top)).toBeLessThan(0.006);
    expect(Math.abs(bed('coreC') - core)).toBeLessThan(0.006);
    expect(Math.abs(bed('airDepthM') - reach)).toBeLessThan(6e-4);
    expect(Math.abs(bed('heatMj') - heat)).toBeLessThan(6e-4);
    expect(Math.abs(bed('evaporatesKg') - evaporates)).toBeLessThan(6e-4);
  });

  it.each([
    [0, 2, 0.85, 0.3, 0.5, 1.49, 0.122],
    [2.64, -5, 0.85, 0.3, 0.5, -1.68, 0.275],
    [2.64, 2, 0.85, 0.3, 0.5, 4.82, 0.395],
    [2.64, 2, 0.85, 1, 0.5, 3.95, 0.422],
    [2.64, 2, 0.85, 0.3, 1, 3.88, 0.624],
    [5.27, 2, 0.85, 0.3, 0.5, 7.97, 0.712],
    [2.64, 10, 0.75, 0.5, 0.5, 11.39, 0.704],
  ])('dries with %f MJ of heat at %f °C', (stockMj, airC, humidity, windMPerS, wet, surface, evaporates) => {
    const bed = bedOf({ perDay: 0, stockMj, airC, humidity, windMPerS, wet });
    expect(Math.abs(bed('surfaceC') - surface)).toBeLessThan(0.01);
    expect(Math.abs(bed('evaporatesKg') - evaporates)).toBeLessThan(0.0015);
  });

  it('gives away what it makes: heat in = convection + drying', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -25, max: 22, noNaN: true }),
        fc.double({ min: 0.02, max: 2, noNaN: true }),
        fc.double({ min: 0.002, max: 0.012, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (airC, depthM, perDay, looseShare) => {
          const bed = bedOf({ airC, depthM, perDay, looseShare, stockMj: 0.5 }, 400);
          const out = convection(0.3) * (bed('surfaceC') - airC) + 2.45 * bed('evaporatesKg');
          expect(Math.abs(bed('heatMj') + 0.5 - out)).toBeLessThan(0.01 * (1 + out));
          // No more water than its heat, that of the animals and that of a warmer air can drive off.
          const most = bed('heatMj') + 0.5 + convection(0.3) * Math.max(0, airC - bed('surfaceC'));
          expect(2.45 * bed('evaporatesKg')).toBeLessThanOrEqual(most * 1.01 + 0.01);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('what warms a bed', () => {
  const core = (given: Partial<typeof CASE>) => bedOf(given)('coreC');

  it('is air, depth, faster rotting and air in its top', () => {
    expect(core({ airC: 6 })).toBeGreaterThan(core({}));
    expect(core({ depthM: 1.2 })).toBeGreaterThan(core({ depthM: 0.2 }));
    expect(core({ perDay: 0.012 })).toBeGreaterThan(core({}));
    expect(core({ diffusion: 0.1 })).toBeGreaterThan(core({}));
    expect(core({ looseShare: 1 })).toBeGreaterThan(core({}));
  });

  it('is slow in a deep bed: a week brings a metre a small part of the way', () => {
    const slow = (depthM: number) => {
      const [after, end] = [core({ depthM, holds: 3.1 }), core({ depthM })];
      return (after - 2) / (end - 2);
    };
    expect(slow(0.1)).toBeGreaterThan(0.9);
    expect(slow(1)).toBeGreaterThan(0.05);
    expect(slow(1)).toBeLessThan(0.4);
  });

  it('stays under the heat at which compost stops', () => {
    expect(core({ airC: 25, looseShare: 1, depthM: 2, perDay: 0.05 })).toBeLessThanOrEqual(65);
  });
});
