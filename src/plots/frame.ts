/** What every Plot drawing shares: a fixed class, our type, no background, sizes that fit a phone. */
import { dot } from '@observablehq/plot';
import { INK } from './palette.ts';

export const PLOT_CLASS = 'wk-plot';

/** Options to spread into a plot of this width. */
export function frame(width: number, height: number) {
  return {
    width: Math.max(240, Math.round(width)),
    height: Math.round(height),
    className: PLOT_CLASS,
    style: { color: INK, background: 'none', fontFamily: 'inherit', fontSize: '13px', overflow: 'visible' },
  } as const;
}

/** Places on a line that say what stands there when they are pointed at: unseen, and wide enough for a finger. */
export function hits<T>(
  points: readonly T[],
  x: string | ((point: T) => unknown),
  y: string | ((point: T) => unknown),
  says: (point: T) => string,
  facet: { readonly fx?: string; readonly fy?: string } = {},
) {
  return dot(points as T[], { ...facet, x, y, r: 7, fill: INK, fillOpacity: 0, title: says });
}

/** Margin that holds the longest of these labels beside a mark, in semibold of the plots' size. */
export function roomFor(labels: readonly string[]): number {
  return Math.ceil(14 + 8.2 * Math.max(0, ...labels.map((label) => label.length)));
}

/** A round number at or above `max`, so that the axis does not tremble while an input is turned. */
export function roundUp(max: number): number {
  if (!(max > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(max));
  const step = [1, 1.5, 2, 3, 4, 5, 6, 8, 10].find((s) => s * power >= max) ?? 10;
  return step * power;
}

/** About how wide a text of 13 px is in the widest of the usual system typefaces, CSS pixels. */
export function textWidth(text: string): number {
  let width = 0;
  for (const letter of text)
    width += /[mMW%]/.test(letter) ? 12.7 : /[\s.,/]/.test(letter) ? 4.3 : /[a-z]/.test(letter) ? 7.7 : 8.9;
  return width;
}

/** Room for the half of a label that hangs over the end of an axis below a drawing. */
export function overhang(label: string): number {
  return 4 + Math.ceil(textWidth(label) / 2);
}

/** Room for the longest of these labels left of a drawing. */
export function leftMargin(labels: readonly string[]): number {
  return 8 + Math.ceil(Math.max(0, ...labels.map(textWidth)));
}
