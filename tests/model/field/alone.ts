/** Some results of the model from given numbers alone: every column they read and the test does not give is 0. */

import { planOf } from '../../../src/model/engine/plan.ts';
import { run } from '../../../src/model/engine/run.ts';
import { isSeries } from '../../../src/model/engine/walk.ts';
import { CATALOGUE } from '../../../src/model/quantities.ts';
import { WEEKS } from '../../../src/model/series.ts';
import type { PreparedWeather } from '../../../src/model/weather/prepared.ts';

export function alone(
  names: readonly string[],
  given: Readonly<Record<string, number | readonly number[]>>,
  weather: readonly PreparedWeather[] = [],
): Record<string, Float64Array> {
  const own = new Set(names);
  const plan = planOf(
    CATALOGUE,
    names,
    new Set([...CATALOGUE.entries.keys()].filter((name) => !own.has(name))),
  );
  const columns: Record<string, Float64Array> = {};
  for (const name of plan.inputs) {
    if (name.startsWith('@')) continue;
    const entry = CATALOGUE.entries.get(name);
    const value = given[name] ?? 0;
    const width = entry && isSeries(entry.made) ? WEEKS : 1;
    columns[name] = Float64Array.from({ length: width }, (_, w) =>
      typeof value === 'number' ? (w === 0 || width > 1 ? value : 0) : (value[w] ?? 0),
    );
  }
  return run(plan, (name) => columns[name], 1, { resources: { weather } });
}
