/** Turning one input, or two at once, over a range: a row for each step and scenario. */
import { inputLimits, type Limits, rowLimits } from '../model/limits.ts';
import { INPUTS } from '../notebook/inputs.ts';
import { type Block, repeatScenarios, runBlock, type Setting } from '../study/rows.ts';

/** An input that can be turned, as the keeper names it. Plain data, so that it can cross to a worker. */
export interface Turn {
  /** Name as typed: a column, the id of a coefficient or price, or `headCount` for the whole herd. */
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  /** Where it stands now, in the first scenario that has it. */
  readonly now: number;
  /** What else is turned with it, or held, in words; said beside what is found. */
  readonly note?: string;
  /** The columns it fills; a column stands at the keeper's value times `scale`. */
  readonly at: readonly { readonly scenario: number; readonly column: string; readonly scale: number }[];
}

/** Finds what can be turned by name in this setting; undefined when no scenario has such a number. */
export function turnOf(setting: Setting, name: string): Turn | undefined {
  if (name === 'headCount') {
    const head = setting.bound.map(({ scenario }) => scenario.farm.herd.reduce((sum, g) => sum + g.head, 0));
    if (!(head[0] > 0)) return undefined;
    return {
      name,
      label: 'head',
      unit: 'head',
      min: 1,
      max: Math.max(10, head[0] * 3),
      now: head[0],
      note: 'shed and yards grow with the herd, the land stays as it is',
      at: head.flatMap((h, scenario) => (h > 0 ? herdColumns(setting, scenario, h) : [])),
    };
  }
  const found = setting.bound.flatMap(({ bindings }, scenario) => {
    const own = bindings.get(name);
    const all = own ? [own] : [...bindings.values()].filter((b) => b.id === name);
    return all.filter((b) => Number.isFinite(b.value)).map((binding) => ({ scenario, binding }));
  });
  if (found.length === 0) return undefined;
  const { binding } = found[0];
  const span = INPUTS.find((i) => i.column === binding.column);
  const ranged = binding.low < binding.high;
  return {
    name,
    label: binding.label,
    unit: binding.unit,
    min: span?.min ?? (ranged ? binding.low : undefined),
    max: span?.max ?? (ranged ? binding.high : undefined),
    now: binding.value,
    at: found.map(({ scenario, binding: { column } }) => ({ scenario, column, scale: 1 })),
  };
}

/** Values the input can stand at at all: as a notebook would be held to. */
export function turnLimits({ bound }: Setting, { name, at }: Turn): Limits {
  if (name === 'winterDays') return { holds: (d) => d >= 1 && d <= 366, words: 'a number from 1 to 366' };
  if (name === 'headCount') return { holds: (h) => h >= 0 && h <= 1e5, words: 'a number from 0 to 100000' };
  if (name === 'herdFactor') return { holds: (f) => f >= 0 && f <= 1e4, words: 'a number from 0 to 10000' };
  const binding = at[0] && bound[at[0].scenario].bindings.get(at[0].column);
  const row = binding?.coefficient ?? { low: 0, high: Number.POSITIVE_INFINITY, unit: binding?.unit ?? '' };
  return (binding?.origin === 'input' ? inputLimits(binding.id) : undefined) ?? rowLimits(row);
}

/** Works that are built for so many animals, so that a larger herd is not asked to stand in the smaller one's shed. */
const BUILT_FOR_HERD = [
  'shedLengthM',
  'slatsM2',
  'openStoreM2',
  'openYardM2',
  'hardStandingM2',
  'waterBowls',
  'capitalGiven',
];

function herdColumns({ bound }: Setting, scenario: number, head: number): Turn['at'] {
  const works = BUILT_FOR_HERD.flatMap((column) => {
    const now = bound[scenario].bindings.get(column)?.value ?? Number.NaN;
    return Number.isFinite(now) ? [{ scenario, column, scale: now / head }] : [];
  });
  return [{ scenario, column: 'herdFactor', scale: 1 / head }, ...works];
}

/** Names that `turnOf` knows in this setting. */
export function turnNames({ bound }: Setting): string[] {
  const all = bound.flatMap(({ bindings }) => [...bindings.values()]);
  return [...new Set(['headCount', ...all.filter((b) => Number.isFinite(b.value)).map((b) => b.column)])];
}

/** The span to look over when none is given: the input's own, or half to twice where it stands. */
export function spanOf(turn: Turn, from?: number, to?: number): readonly [number, number] {
  const low = from ?? turn.min ?? Math.min(turn.now / 2, turn.now * 2);
  const high = to ?? turn.max ?? Math.max(turn.now / 2, turn.now * 2);
  return low < high ? [low, high] : [low, low + 1];
}

/** Sets the input for one repeat of a block, in every scenario that has it. */
export function setTurn({ columns, scenarios }: Block, turn: Turn, repeat: number, value: number): void {
  // A column that nothing asked for needs is not there, and turning it changes nothing.
  for (const { scenario, column, scale } of turn.at)
    if (columns[column]) columns[column][repeat * scenarios + scenario] = value * scale;
}

export interface Sweep {
  readonly turn: Turn;
  readonly at: readonly number[];
  readonly scenarios: number;
  /** Step-major: element `step × scenarios + scenario`; NaN where absent. */
  readonly results: Readonly<Record<string, Float64Array>>;
}

/** `steps` values from `from` to `to`, both ends included. */
export function stepsBetween(from: number, to: number, steps: number): number[] {
  return Array.from({ length: steps }, (_, k) => {
    if (steps === 1) return from;
    return k === steps - 1 ? to : from + ((to - from) * k) / (steps - 1);
  });
}

/** Units of things that only come whole: no herd has 11.4 head. */
export const WHOLE_UNITS: ReadonlySet<string> = new Set(['head', 'bowls', 'turns', 'd', 'yr']);

/** Values to look at over a span: evenly spread, and whole where the input only comes whole. */
export function stepsOf({ unit }: Turn, from: number, to: number, steps: number): number[] {
  const even = stepsBetween(from, to, steps);
  return WHOLE_UNITS.has(unit) && to - from >= 2 ? [...new Set(even.map(Math.round))] : even;
}

/** Runs every scenario at every value of one input. */
export function sweep(setting: Setting, turn: Turn, at: readonly number[], names: readonly string[]): Sweep {
  const block = repeatScenarios(setting, at.length, names);
  at.forEach((value, step) => {
    setTurn(block, turn, step, value);
  });
  return { turn, at, scenarios: block.scenarios, results: runBlock(block, setting.weather) };
}

export interface Grid {
  readonly across: Turn;
  readonly acrossAt: readonly number[];
  readonly down: Turn;
  readonly downAt: readonly number[];
  readonly scenarios: number;
  /** Element `(row × columns + column) × scenarios + scenario`. */
  readonly results: Readonly<Record<string, Float64Array>>;
}

/** Runs every scenario at every pair of values of two inputs. */
export function sweepTwo(
  setting: Setting,
  [across, acrossAt]: readonly [Turn, readonly number[]],
  [down, downAt]: readonly [Turn, readonly number[]],
  names: readonly string[],
): Grid {
  const block = repeatScenarios(setting, acrossAt.length * downAt.length, names);
  downAt.forEach((y, row) => {
    acrossAt.forEach((x, column) => {
      const cell = row * acrossAt.length + column;
      setTurn(block, across, cell, x);
      setTurn(block, down, cell, y);
    });
  });
  return {
    across,
    acrossAt,
    down,
    downAt,
    scenarios: block.scenarios,
    results: runBlock(block, setting.weather),
  };
}
