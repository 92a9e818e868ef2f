/** Draws of a setting as it stands, kept by result: what one cell has drawn, the next one that asks for it gets at once. */
import type { ResultName } from '../model/quantities.ts';
import type { Setting } from '../study/rows.ts';
import { uncertainFor } from '../uncertainty/monteCarlo.ts';
import type { Drawing } from './job.ts';

interface Kept {
  /** How many draws, by which seed. */
  readonly length: string;
  readonly results: Map<ResultName, Float64Array>;
}

const drawnFor = new WeakMap<Setting['bound'], Kept>();

/** The same draws to the bit, since they depend neither on what is kept nor on the order; turned inputs are not kept. */
export function keptDraws(draws: Drawing): Drawing {
  return function* (setting, options) {
    if (options.changes.size > 0) return yield* draws(setting, options);
    const { count, seed, keep } = options;
    const known = resultsOf(setting, `${count} ${seed}`);
    const missing = keep.filter((name) => !known.has(name));
    if (missing.length > 0) {
      const made: Partial<Record<ResultName, Float64Array>> = (yield* draws(setting, {
        ...options,
        keep: missing,
      })).results;
      for (const name of missing) known.set(name, made[name] as Float64Array);
    }
    return {
      count,
      seed,
      scenarios: setting.bound.length,
      // Copies: an answer is handed over to the page, and is gone here.
      results: Object.fromEntries(keep.map((name) => [name, (known.get(name) as Float64Array).slice()])),
      uncertain: uncertainFor(setting, keep),
    };
  };
}

function resultsOf({ bound }: Setting, length: string): Map<ResultName, Float64Array> {
  const before = drawnFor.get(bound);
  if (before?.length === length) return before.results;
  const results = new Map<ResultName, Float64Array>();
  drawnFor.set(bound, { length, results });
  return results;
}
