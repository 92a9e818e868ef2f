/**
 * A run that is asked for again as some of its columns change: only what hangs on them is worked out anew, and the
 * results are those of a fresh run to the bit. What the rest reads of the unchanged part is kept by rows, for the
 * columns that changed last; another column's first change works its own out once.
 */
import type { Catalogue } from './catalogue.ts';
import { downstream, type Plan, planOf } from './plan.ts';
import { type Find, type RunOptions, run } from './run.ts';

/** A plan cut where some columns stop being felt. */
interface Cut {
  /** What the changed part reads of the rest. */
  readonly before: Plan;
  /** What is worked out anew. */
  readonly after: Plan;
}

/** Where `changed` columns cut the plan; nothing when no target feels them. */
function cutOf({ catalogue, targets }: Plan, changed: readonly string[]): Cut | undefined {
  const felt = downstream(catalogue, changed);
  const moved = targets.filter((name) => felt.has(name));
  if (moved.length === 0) return undefined;
  const after = planOf(catalogue, moved, still(catalogue, felt));
  const border = [...after.inputs].filter((name) => catalogue.entries.has(name));
  return { before: planOf(catalogue, border), after };
}

const still = ({ entries }: Catalogue, felt: ReadonlySet<string>): ReadonlySet<string> =>
  new Set([...entries.keys()].filter((name) => !felt.has(name)));

const cuts = new WeakMap<Plan, Map<string, Cut | undefined>>();

/** The same cut whenever it is asked for again, so that its layouts stay. */
function knownCut(plan: Plan, changed: readonly string[]): { key: string; cut: Cut | undefined } {
  const known = cuts.get(plan) ?? new Map<string, Cut | undefined>();
  cuts.set(plan, known);
  const key = [...changed].sort().join(' ');
  if (!known.has(key)) {
    // A layout holds a chunk of every column: those of sliders no longer moved are let go.
    if (known.size >= MOST_CUTS) known.delete(known.keys().next().value as string);
    known.set(key, cutOf(plan, changed));
  }
  return { key, cut: known.get(key) };
}

const MOST_CUTS = 6;

/** Results by name for every row. Arrays are shared between calls: they are not written to. */
export type Made = Readonly<Record<string, Float64Array>>;

/**
 * Runs `plan` over columns that the caller may change between calls. The first call runs all of it; a later one is
 * told the names of all columns whose numbers differ from the call before. Throws on an input that is not given.
 */
export function keptRun(
  plan: Plan,
  input: Find,
  rows: number,
  options: RunOptions = {},
): (changed?: readonly string[]) => Made {
  let made: Record<string, Float64Array> | undefined;
  let border: { readonly key: string; readonly values: Made } | undefined;
  return (changed) => {
    if (!made || !changed) {
      border = undefined;
      made = run(plan, input, rows, options);
      return made;
    }
    const { key, cut } = knownCut(plan, changed);
    if (!cut) {
      // What nobody asked for may feel it, and what is kept may be part of that.
      if (changed.length > 0) border = undefined;
      return made;
    }
    if (border?.key !== key) border = { key, values: run(cut.before, input, rows, options) };
    const { values } = border;
    made = { ...made, ...run(cut.after, (name) => values[name] ?? input(name), rows, options) };
    return made;
  };
}
