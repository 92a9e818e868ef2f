/** Axes in the reader's unit: ends and ticks that are round in feet, pounds or acres, where the model counts in metric. */
import { ticks } from 'd3-array';
import { toSystem } from '../units/quantities.ts';
import { roundUp } from './frame.ts';
import type { Reading } from './reading.ts';

export interface AxisUnit {
  /** At or above `max` (at or below, where it is below 0) and round as it is shown; in the model's unit, as `max` is. */
  readonly end: (max: number) => number;
  /**
   * For an axis of `count` ticks or so: the count alone where the unit shown is the model's, since its own ticks are round
   * then, else where round numbers of the unit shown fall, in the model's unit.
   */
  readonly ticks: (from: number, to: number, count: number) => number | number[];
  /** The same, always as places. */
  readonly places: (from: number, to: number, count: number) => number[];
}

/** `unit` is the model's; a conversion moves the zero (°F) and the step, and nothing else. */
export function axisIn(unit: string, { system }: Pick<Reading, 'system'>): AxisUnit {
  const zero = toSystem(0, unit, system).value;
  const step = toSystem(1, unit, system).value - zero;
  const shown = (value: number) => zero + step * value;
  const back = (value: number) => (value - zero) / step;
  const same = zero === 0 && step === 1;
  const places = (from: number, to: number, count: number) => {
    const [low, high] = [Math.min(from, to), Math.max(from, to)];
    return ticks(shown(low), shown(high), count).map(back);
  };
  const up = (max: number) => (same ? roundUp(max) : back(roundUp(shown(max))));
  return {
    end: (max) => (max < 0 && zero === 0 ? -up(-max) : up(max)),
    ticks: (from, to, count) => (same ? count : places(from, to, count)),
    places: (from, to, count) =>
      same ? ticks(Math.min(from, to), Math.max(from, to), count) : places(from, to, count),
  };
}
