/** Turning one input, or two at once, over a range: a row for each step and scenario. */
import { INPUTS } from '../notebook/inputs.ts';
import { repeatScenarios, runBlock, type Setting, setBlock } from './rows.ts';

/** An input that can be turned, as the keeper names it. */
export interface Turn {
  /** Name as typed: a column, or `headCount` for the whole herd. */
  readonly name: string;
  readonly column: string;
  readonly label: string;
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  /** Value of the column for a value as the keeper says it. */
  readonly toColumn: (value: number) => number;
  /** Where it stands now, in the first scenario. */
  readonly now: number;
}

/** Finds what can be turned by name in this setting; undefined when the model has no such input. */
export function turnOf(setting: Setting, name: string): Turn | undefined {
  const [first] = setting.bound;
  if (name === 'headCount') {
    const head = first.scenario.farm.herd.reduce((sum, group) => sum + group.head, 0);
    return {
      name,
      column: 'herdFactor',
      label: 'head',
      unit: 'head',
      min: 1,
      max: Math.max(10, head * 3),
      toColumn: (v) => v / head,
      now: head,
    };
  }
  const binding = first.bindings.get(name) ?? [...first.bindings.values()].find((b) => b.id === name);
  if (!binding || !Number.isFinite(binding.value)) return undefined;
  const span = INPUTS.find((i) => i.column === binding.column);
  return {
    name,
    column: binding.column,
    label: binding.label,
    unit: binding.unit,
    min: span?.min ?? (binding.low < binding.high ? binding.low : undefined),
    max: span?.max ?? (binding.low < binding.high ? binding.high : undefined),
    toColumn: (v) => v,
    now: binding.value,
  };
}

/** Names that `turnOf` knows in this setting. */
export function turnNames(setting: Setting): string[] {
  return [
    'headCount',
    ...[...setting.bound[0].bindings.values()].filter((b) => Number.isFinite(b.value)).map((b) => b.column),
  ];
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
  return Array.from({ length: steps }, (_, k) =>
    steps === 1 ? from : from + ((to - from) * k) / (steps - 1),
  );
}

/** Runs every scenario at every value of one input. */
export function sweep(setting: Setting, turn: Turn, at: readonly number[], names: readonly string[]): Sweep {
  const block = repeatScenarios(setting, at.length);
  at.forEach((value, step) => setBlock(block, turn.column, step, turn.toColumn(value)));
  return { turn, at, scenarios: block.scenarios, results: runBlock(block, setting.weather, names) };
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
  const block = repeatScenarios(setting, acrossAt.length * downAt.length);
  downAt.forEach((y, row) => {
    acrossAt.forEach((x, column) => {
      const cell = row * acrossAt.length + column;
      setBlock(block, across.column, cell, across.toColumn(x));
      setBlock(block, down.column, cell, down.toColumn(y));
    });
  });
  return {
    across,
    acrossAt,
    down,
    downAt,
    scenarios: block.scenarios,
    results: runBlock(block, setting.weather, names),
  };
}
