/** The shape behind a published mean: held against numerical sums over the normal density, which share no code with it. */
import { describe, expect, it } from 'vitest';
import { LEAST_PLACE, shapeAt, shapeOfMean } from '../../src/tables/publishedMean.ts';
import { allOfShape } from '../../src/uncertainty/random.ts';
import { normalAt } from '../../src/units/normal.ts';

const density = (z: number) => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Sum over −10 … 10 by the trapezium, which for a bell is good to rounding. */
function overNormal(of: (z: number) => number): number {
  const step = 1 / 256;
  let sum = 0;
  for (let z = -10; z <= 10; z += step) sum += of(z) * density(z) * step;
  return sum;
}

describe('the normal point', () => {
  // Wichura 1988, the algorithm's own check values, from memory; and the share below each point summed up.
  it.each([
    [0.25, -0.6744897501960817],
    [0.001, -3.090232306167814],
    [1e-20, -9.26234009],
  ])('at %f is %f', (u, z) => {
    expect(normalAt(u)).toBeCloseTo(z, 5);
    expect(normalAt(0.5)).toBe(0);
  });

  it('has its share below it, all the way', () => {
    for (let u = 0.01; u < 1; u += 0.03) {
      const z = normalAt(u);
      let below = 0;
      const step = 1 / 4096;
      for (let at = z - step / 2; at > -9; at -= step) below += density(at) * step;
      expect(below).toBeCloseTo(u, 6);
    }
  });
});

describe('a published mean with a 95 % range', () => {
  const cases = [
    [0, 0.006, 0.027],
    [0, 0.002, 0.007],
    [0.01, 0.24, 0.73],
    [0, 0.011, 0.02],
    [0.001, 0.006, 0.011],
    [-5, 2, 4],
  ] as const;

  it.each(cases)('keeps both ends and the mean: %f, %f, %f', (low, mean, high) => {
    const shape = shapeOfMean(low, mean, high);
    if (!shape) throw new Error('no shape');
    const span = high - low;
    expect((shapeAt(shape, -1.959963985) - low) / span).toBeCloseTo(0, 7);
    expect((shapeAt(shape, 1.959963985) - high) / span).toBeCloseTo(0, 7);
    expect((overNormal((z) => shapeAt(shape, z)) - mean) / span).toBeCloseTo(0, 6);
    expect(shapeAt(shape, 0)).toBe(shape.middle);
    // The middle lies on the side of the mean where the short end is.
    expect(Math.sign(Number((mean - shape.middle).toFixed(9)))).toBe(
      Math.sign(Number(((low + high) / 2 - mean).toFixed(9))),
    );
  });

  it('is drawn so, and never beyond what its unit allows', () => {
    const shape = shapeOfMean(0, 0.006, 0.027);
    if (!shape) throw new Error('no shape');
    const count = 100_000;
    const drawn = Float64Array.from({ length: count }, (_, k) => (k + 0.5) / count);
    allOfShape(drawn, count, shape, { low: 0, high: 1 });
    expect(drawn.every((value) => value >= 0 && value <= 1)).toBe(true);
    expect(drawn.filter((value) => value > 0.027).length / count).toBeCloseTo(0.025, 3);
    // What lies below nothing is drawn as nothing, which lifts the mean by less than a thousandth.
    const mean = drawn.reduce((sum, value) => sum + value, 0) / count;
    expect(mean / 0.006).toBeGreaterThan(1);
    expect(mean / 0.006).toBeLessThan(1.001);
    expect(drawn[count / 2]).toBeCloseTo(shape.middle, 6);
  });

  it('has none where the mean lies at an end', () => {
    expect(shapeOfMean(0, 0.0047, 0.1)).toBeNull();
    expect(shapeOfMean(0, LEAST_PLACE * 1.001, 1)).not.toBeNull();
    expect(shapeOfMean(0, 1 - LEAST_PLACE * 0.999, 1)).toBeNull();
  });
});
