import { sampleRankCorrelation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { stream } from '../../src/uncertainty/random.ts';
import { groupsAlong, rankCorrelation, sharesTogether } from '../../src/uncertainty/varianceShares.ts';
import { varianceShare, worthOfMeasuring } from '../reference/fromGroups.ts';

const N = 20_000;
const uniform = (name: string, low: number, high: number) => {
  const next = stream(3, name);
  return Float64Array.from({ length: N }, () => low + (high - low) * next());
};

describe('shares together', () => {
  const along = (xs: readonly Float64Array[]) => xs.map((x) => groupsAlong(x));
  const a = uniform('a', -1, 1);
  const b = uniform('b', -1, 1);
  const noise = uniform('noise', -1, 1);

  it('are the sum where numbers have nothing to do with each other, curved or not', () => {
    const y = a.map((value, k) => value + Math.abs(b[k]) * 2 + noise[k]);
    // Variances 1/3, 4/12 and 1/3 (own arithmetic).
    expect(sharesTogether(along([a, b]), y)).toBeCloseTo(2 / 3, 1.5);
    expect(sharesTogether(along([a, b, noise]), y)).toBeGreaterThan(0.98);
  });

  it('are hardly more than one where one drives all', () => {
    // Each holds the common part and a little of its own; y is the common part and as much again of something else.
    const near = [0, 1, 2, 3].map((k) => {
      const own = uniform(`own ${k}`, -0.2, 0.2);
      return a.map((value, at) => value + own[at]);
    });
    const y = a.map((value, k) => value + noise[k]);
    const single = near.map((x) => varianceShare(x, y));
    expect(single.reduce((sum, share) => sum + share, 0)).toBeGreaterThan(1.5);
    const all = sharesTogether(along(near), y);
    expect(all).toBeGreaterThanOrEqual(Math.max(...single));
    expect(all).toBeLessThan(0.53);
    expect(sharesTogether(along([a, a]), y)).toBeCloseTo(varianceShare(a, y), 2);
  });

  it('of numbers that have nothing to do with it are about none', () => {
    const none = Array.from({ length: 8 }, (_, k) => uniform(`none ${k}`, 0, 1));
    expect(sharesTogether(along(none), noise)).toBeLessThan(0.02);
    expect(sharesTogether([], noise)).toBe(0);
  });
});

describe('variance share', () => {
  // Ishigami & Homma 1990, a = 7, b = 0.1: S1 = 0.3139, S2 = 0.4424, S3 = 0 (analytical; from memory, and
  // recomputed here from the closed form V = a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2).
  const x = ['x1', 'x2', 'x3'].map((name) => uniform(name, -Math.PI, Math.PI));
  const y = x[0].map(
    (x1, k) => Math.sin(x1) + 7 * Math.sin(x[1][k]) ** 2 + 0.1 * x[2][k] ** 4 * Math.sin(x1),
  );
  const variance = 49 / 8 + (0.1 * Math.PI ** 4) / 5 + (0.01 * Math.PI ** 8) / 18 + 0.5;
  const known = [(0.5 * (1 + (0.1 * Math.PI ** 4) / 5) ** 2) / variance, 49 / 8 / variance, 0];

  it('has the known indices of the closed form', () => {
    expect(known[0]).toBeCloseTo(0.3139, 4);
    expect(known[1]).toBeCloseTo(0.4424, 4);
  });

  it.each([0, 1, 2])('finds the Ishigami index of x%i + 1', (k) => {
    expect(Math.abs(varianceShare(x[k], y) - known[k])).toBeLessThan(0.02);
  });

  it('sees an effect that a rank correlation misses', () => {
    expect(Math.abs(rankCorrelation(x[1], y))).toBeLessThan(0.03);
    expect(varianceShare(x[1], y)).toBeGreaterThan(0.4);
  });

  it('is 0 for a figure that does not move', () => {
    expect(varianceShare(x[0], new Float64Array(N).fill(3))).toBe(0);
  });
});

describe('rank correlation', () => {
  it('agrees with a statistics library', () => {
    const a = uniform('a', 0, 1).subarray(0, 500);
    const b = a.map((value, k) => value ** 3 + 0.4 * uniform('b', 0, 1)[k]);
    // simple-statistics is the reference; it ranks ties the same way here because there are none.
    expect(rankCorrelation(a, b)).toBeCloseTo(sampleRankCorrelation([...a], [...b]), 3);
  });
});

describe('worth of measuring', () => {
  // Two choices: a sure 0, or x with x uniform on -1…1. Knowing x gains E[max(x, 0)] = 1/4 (own arithmetic).
  const x = uniform('choice', -1, 1);
  const sure = new Float64Array(N);

  it('finds the closed form of one choice', () => {
    expect(Math.abs(worthOfMeasuring(x, [sure, x]) - 0.25)).toBeLessThan(0.01);
  });

  it('is nothing when knowing would not change the choice', () => {
    const better = x.map((value) => value + 5);
    expect(worthOfMeasuring(x, [sure, better])).toBeLessThan(1e-9);
  });
});
