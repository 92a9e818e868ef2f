import { describe, expect, it } from 'vitest';
import { GREYS, INK, LOSS_LOOKS, PALETTE_SIZE, PAPER, scenarioColour } from '../../src/plots/palette.ts';

const channels = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
const linear = (hex: string) =>
  channels(hex).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
/** WCAG 2.2 relative luminance and contrast ratio (published definition). */
const luminance = (hex: string) =>
  linear(hex).reduce((sum, c, k) => sum + c * [0.2126, 0.7152, 0.0722][k], 0);
const contrast = (a: string, b: string) => {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
};

describe('palette', () => {
  it.each(Array.from({ length: PALETTE_SIZE }, (_, k) => scenarioColour(k)))(
    '%s is dark enough for text on paper',
    (colour) => {
      expect(contrast(colour, PAPER)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it('has quiet text dark enough on paper and on the ground of the strip', () => {
    expect(contrast(GREYS.quiet, PAPER)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(GREYS.quiet, GREYS.ground)).toBeGreaterThanOrEqual(4.5);
  });

  it('has nothing but what is kept without a pattern: what came with bedding is not taken for it', () => {
    const patterns = Object.values(LOSS_LOOKS).map(({ pattern }) => pattern);
    expect(patterns).not.toContain('solid');
    // “Lost” stands alone, in place of all ways out.
    expect(new Set(patterns).size).toBe(patterns.length - 1);
  });

  it('keeps the marks of every pattern apart from their ground', () => {
    for (const { fill } of Object.values(LOSS_LOOKS)) expect(contrast(INK, fill)).toBeGreaterThanOrEqual(4.5);
  });

  // Machado, Oliveira and Fernandes 2009, severity 1, from memory; CIE76 distance of 20 is plainly another colour.
  it.each([
    [
      'deuteranopia',
      [
        [0.367322, 0.860646, -0.227968],
        [0.280085, 0.672501, 0.047413],
        [-0.01182, 0.04294, 0.968881],
      ],
    ],
    [
      'protanopia',
      [
        [0.152286, 1.052583, -0.204868],
        [0.114503, 0.786281, 0.099216],
        [-0.003882, -0.048116, 1.051998],
      ],
    ],
  ])('keeps scenarios apart under %s', (_, matrix) => {
    const seen = Array.from({ length: PALETTE_SIZE }, (__, k) =>
      lab(matrix.map((row) => row.reduce((sum, m, c) => sum + m * linear(scenarioColour(k))[c], 0))),
    );
    for (let a = 0; a < PALETTE_SIZE; a++)
      for (let b = a + 1; b < PALETTE_SIZE; b++)
        expect(Math.hypot(...seen[a].map((v, k) => v - seen[b][k]))).toBeGreaterThan(19);
  });
});

function lab(rgb: readonly number[]): number[] {
  const [r, g, b] = rgb.map((c) => Math.min(1, Math.max(0, c)));
  const f = (t: number) => (t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16 / 116);
  const [x, y, z] = [
    f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047),
    f(0.2126 * r + 0.7152 * g + 0.0722 * b),
    f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883),
  ];
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}
