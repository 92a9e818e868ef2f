/** One input turned over a range, or two at once: a row for each step and scenario. */
import type { ResultName } from '../model/quantities.ts';
import { baselinesOf } from '../study/baselines.ts';
import { type Results, repeatScenarios, runBlock, type Setting } from '../study/rows.ts';
import { setTurn, type Turn } from './turn.ts';

/** The span to look over when none is given: the input's own, or half to twice where it stands. */
export function spanOf(turn: Turn, from?: number, to?: number): readonly [number, number] {
  const low = from ?? turn.min ?? Math.min(turn.now / 2, turn.now * 2);
  const high = to ?? turn.max ?? Math.max(turn.now / 2, turn.now * 2);
  return low < high ? [low, high] : [low, low + 1];
}

export interface Sweep<Name extends ResultName = never> {
  readonly turn: Turn;
  readonly at: readonly number[];
  readonly scenarios: number;
  /** Step-major: element `step × scenarios + scenario`; NaN where absent. */
  readonly results: Results<Name>;
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
export function sweep<Name extends ResultName>(
  setting: Setting,
  turn: Turn,
  at: readonly number[],
  names: readonly Name[],
): Sweep<Name> {
  const block = repeatScenarios(setting, at.length, names);
  at.forEach((value, step) => {
    setTurn(block, turn, step, value);
  });
  return {
    turn,
    at,
    scenarios: block.scenarios,
    results: runBlock(block, setting.weather, () => baselinesOf(setting)),
  };
}

export interface Grid<Name extends ResultName = never> {
  readonly across: Turn;
  readonly acrossAt: readonly number[];
  readonly down: Turn;
  readonly downAt: readonly number[];
  readonly scenarios: number;
  /** Element `(row × columns + column) × scenarios + scenario`. */
  readonly results: Results<Name>;
}

/** Runs every scenario at every pair of values of two inputs. */
export function sweepTwo<Name extends ResultName>(
  setting: Setting,
  [across, acrossAt]: readonly [Turn, readonly number[]],
  [down, downAt]: readonly [Turn, readonly number[]],
  names: readonly Name[],
): Grid<Name> {
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
    results: runBlock(block, setting.weather, () => baselinesOf(setting)),
  };
}
