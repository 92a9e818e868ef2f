/** Many real winters, one by one: each a row for every scenario, and which were the driest and the wettest. */
import type { ResultName } from '../model/quantities.ts';
import type { PreparedWeather } from '../model/weather/prepared.ts';
import { type Results, repeatScenarios, runBlock, type Setting } from '../study/rows.ts';

export interface Winters<Name extends ResultName = never> {
  readonly labels: readonly string[];
  readonly scenarios: number;
  /** Winter-major: element `winter × scenarios + scenario`; NaN where absent. */
  readonly results: Results<Name | 'rainMm'>;
  /** Winters by the rain that fell in them. */
  readonly driest: number;
  readonly middle: number;
  readonly wettest: number;
}

/** Runs every scenario through every winter, at the notebook's rain factor. */
export function runWinters<Name extends ResultName>(
  setting: Setting,
  winters: readonly PreparedWeather[],
  names: readonly Name[],
): Winters<Name> {
  const block = repeatScenarios(setting, winters.length, [...new Set<Name | 'rainMm'>([...names, 'rainMm'])]);
  winters.forEach((_, k) => {
    block.columns.weatherIndex.fill(k, k * block.scenarios, (k + 1) * block.scenarios);
  });
  const results = runBlock(block, winters);
  const rain = winters.map((_, k) => results.rainMm[k * block.scenarios]);
  const order = [...rain.keys()].sort((a, b) => rain[a] - rain[b]);
  return {
    labels: winters.map((w) => w.label),
    scenarios: block.scenarios,
    results,
    driest: order[0],
    middle: order[Math.floor((order.length - 1) / 2)],
    wettest: order[order.length - 1],
  };
}
