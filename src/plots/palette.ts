/**
 * The colours of the page. Scenarios: dark enough for text on the paper (4.5:1 or more), far apart in lightness
 * as well as hue, so that they stay apart for colour-blind eyes. Losses: lighter, and always with a pattern.
 */
import type { Pattern } from './figure.ts';

export const PAPER = '#fdfcf9';
export const INK = '#1d1b17';
/** The only greys: quiet text, rules, and the ground behind strips. */
export const GREYS = { quiet: '#5d5950', rule: '#d8d3c7', ground: '#f3f0e8' } as const;

const SCENARIO_COLOURS = [
  '#a35200', '#1f6f9f', '#5b1a4f', '#124d2e', '#c2185b', '#6a5ae0', '#000078', '#1a1008',
] as const; // biome-ignore format: one short list
/** Scenarios whose colours and symbols differ: as many as a notebook can be given on the page. */
export const PALETTE_SIZE = SCENARIO_COLOURS.length;
/** Told apart in a line figure without colour. */
const SCENARIO_SYMBOLS = [
  'circle', 'square', 'triangle', 'diamond', 'star', 'cross', 'hexagon', 'wye',
] as const; // biome-ignore format: one short list

/** The colour of the scenario at `index` of a notebook, the same in every figure and card. */
export function scenarioColour(index: number): string {
  return SCENARIO_COLOURS[index % PALETTE_SIZE];
}

export function scenarioSymbol(index: number): (typeof SCENARIO_SYMBOLS)[number] {
  return SCENARIO_SYMBOLS[index % SCENARIO_SYMBOLS.length];
}

export interface Looks {
  readonly names: readonly string[];
  readonly colours: readonly string[];
  readonly symbols: readonly ReturnType<typeof scenarioSymbol>[];
}

/** Looks of the scenarios shown, by their place among all of the notebook's. */
export function looksOf(results: readonly { readonly name: string }[], order?: readonly string[]): Looks {
  const names = results.map((result) => result.name);
  const places = names.map((name, k) => Math.max(order?.indexOf(name) ?? k, 0));
  return { names, colours: places.map(scenarioColour), symbols: places.map(scenarioSymbol) };
}

/** A colour and a pattern for each way an element leaves the farm. */
export const LOSS_LOOKS = {
  ammonia: { fill: '#e3b23c', pattern: 'dots' },
  leached: { fill: '#8fc1d9', pattern: 'falling' },
  runoff: { fill: '#b9c98c', pattern: 'upright' },
  nitrous: { fill: '#d98e73', pattern: 'crossed' },
  dinitrogen: { fill: '#cfc9bb', pattern: 'rising' },
  lost: { fill: '#8fc1d9', pattern: 'falling' },
  brought: { fill: '#b99a63', pattern: 'level' },
} as const satisfies Record<string, { fill: string; pattern: Pattern }>;
