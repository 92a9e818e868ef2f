import { describe, expect, it } from 'vitest';
import { allForms, allPlausible, filler, plausible, stream } from '../../src/uncertainty/random.ts';
import { plausibleShareBelow } from '../reference/plausible.ts';

/** Largest gap between the empirical and the given distribution function. */
function kolmogorovSmirnov(sample: Float64Array, below: (x: number) => number): number {
  const sorted = sample.slice().sort();
  return sorted.reduce((worst, x, k) => {
    const p = below(x);
    return Math.max(worst, Math.abs(p - k / sorted.length), Math.abs((k + 1) / sorted.length - p));
  }, 0);
}

/** Critical value of the one-sample test at 1 %, large n: 1.628/√n (Massey 1951, table; from memory). */
const critical = (n: number) => 1.628 / Math.sqrt(n);

describe('random', () => {
  it('is the same for the same seed and name, and another for another', () => {
    const take = (seed: number, name: string) => Array.from({ length: 5 }, stream(seed, name));
    expect(take(7, 'a')).toEqual(take(7, 'a'));
    expect(take(7, 'a')).not.toEqual(take(8, 'a'));
    expect(take(7, 'a')).not.toEqual(take(7, 'b'));
  });

  it('gives the same numbers many at a time as one at a time', () => {
    const one = stream(3, 'x');
    const many = filler(3, 'x');
    const out = new Float64Array(100);
    for (const count of [1, 16, 17, 100]) {
      many(out, count);
      expect([...out.subarray(0, count)]).toEqual(Array.from({ length: count }, one));
    }
    for (const [low, central, high] of [
      [0, 0.3, 1],
      [2, 2, 5],
      [2, 5, 5],
      [4, 4, 4],
    ]) {
      const drawn = out.slice();
      allPlausible(drawn, 100, low, central, high);
      expect([...drawn]).toEqual(Array.from(out, (u) => plausible(u, low, central, high)));
    }
  });

  it.each([1, 7, 42, 2026])('is uniform by the Kolmogorov–Smirnov test, seed %i', (seed) => {
    const sample = Float64Array.from({ length: 10_000 }, stream(seed, 'bedHeatCapacityMjPerM3C'));
    expect(kolmogorovSmirnov(sample, (x) => x)).toBeLessThan(critical(10_000));
  });

  it.each([
    [2, 2, 5],
    [-1, 4, 4],
  ])('half of the draws are a best guess at an end of its span: %f %f %f', (low, central, high) => {
    const next = stream(11, `${low}`);
    const sample = Float64Array.from({ length: 10_000 }, () => plausible(next(), low, central, high));
    // Four standard errors of a half in 10,000.
    expect(Math.abs(sample.filter((x) => x === central).length / 10_000 - 0.5)).toBeLessThan(0.02);
    const rest = sample.filter((x) => x !== central);
    const share = (x: number) => {
      const below = plausibleShareBelow(x, low, central, high);
      return central === low ? 2 * (below - 0.5) : 2 * below;
    };
    expect(kolmogorovSmirnov(rest, share)).toBeLessThan(critical(rest.length));
  });

  it.each([
    [0, 0.3, 1],
    [0.05, 0.24, 0.35],
  ])('draws reproduce the distribution of %f %f %f', (low, central, high) => {
    const next = stream(11, `${low}`);
    const sample = Float64Array.from({ length: 10_000 }, () => plausible(next(), low, central, high));
    expect(kolmogorovSmirnov(sample, (x) => plausibleShareBelow(x, low, central, high))).toBeLessThan(
      critical(10_000),
    );
  });

  it.each([
    [0, 0.3, 1],
    [60, 90, 150],
    [0.05, 0.24, 0.35],
  ])('has its best guess as the mean of its draws: %f %f %f', (low, central, high) => {
    // Midpoint rule over the probabilities, which knows nothing of the triangles.
    const steps = 200_000;
    let sum = 0;
    for (let k = 0; k < steps; k++) sum += plausible((k + 0.5) / steps, low, central, high);
    expect(Math.abs(sum / steps - central) / (high - low)).toBeLessThan(1e-5);
  });

  it.each([
    [3, 3.9, 15],
    [0, 0.01, 0.1],
    [1, 9.5, 10],
  ])('keeps a best guess close to an end inside its range: %f %f %f', (low, central, high) => {
    expect(plausible(0.1, low, central, high)).toBeLessThan(central);
    expect(plausible(0.9, low, central, high)).toBeGreaterThan(central);
  });

  it('neighbouring streams are not correlated', () => {
    const a = Float64Array.from({ length: 10_000 }, stream(1, 'a'));
    const b = Float64Array.from({ length: 10_000 }, stream(1, 'b'));
    const covariance = a.reduce((sum, x, k) => sum + (x - 0.5) * (b[k] - 0.5), 0) / a.length;
    expect(Math.abs(covariance * 12)).toBeLessThan(0.03);
  });

  it('stands at the best guess when there is no span', () => {
    expect(plausible(0.3, 2, 2, 2)).toBe(2);
  });

  it('takes one of two forms, the second as often as its weight says', () => {
    const drawn = Float64Array.from({ length: 10_000 }, stream(7, 'houseForm'));
    allForms(drawn, drawn.length, 0.3);
    expect(new Set(drawn)).toEqual(new Set([0, 1]));
    // Four standard errors of a share of 0.3 in 10,000.
    expect(Math.abs(drawn.reduce((sum, f) => sum + f, 0) / drawn.length - 0.3)).toBeLessThan(0.0184);
  });
});
