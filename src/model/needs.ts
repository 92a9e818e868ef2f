/** What a few results need of the model: the stages that lead to them and the columns those read. */
import { ROUTE_SHARE } from './dictionary.ts';
import type { Stage } from './stage.ts';
import { STAGES } from './stages.ts';

export interface Needs {
  readonly stages: readonly Stage[];
  /** Whether any of the stages reads this column. */
  readonly reads: (column: string) => boolean;
}

const known = new Map<string, Needs>();

/** The stages behind `names` and behind the shares that say whether a result is absent, in their order. */
export function needsOf(names: readonly string[]): Needs {
  const key = names.join(' ');
  const before = known.get(key);
  if (before) return before;
  const wanted = new Set([...names, ...Object.values(ROUTE_SHARE)]);
  const stages: Stage[] = [];
  for (const stage of [...STAGES].reverse()) {
    const makes = [...Object.keys(stage.makes), ...Object.keys(stage.tracks ?? {})];
    if (!makes.some((name) => wanted.has(name))) continue;
    stages.unshift(stage);
    for (const name of [...stage.reads, ...(stage.readsTracks ?? [])]) wanted.add(name);
  }
  const families = new Set(
    stages.flatMap(({ families = {} }) =>
      Object.entries(families).flatMap(([family, fields]) => fields.map((field) => `${family}#${field}`)),
    ),
  );
  const memory = new Map<string, boolean>();
  const reads = (column: string): boolean => {
    let answer = memory.get(column);
    if (answer === undefined) {
      // Only the first number in a column's name counts the items of a family.
      answer = wanted.has(column) || families.has(column.replace(/^([a-z]+)\d+/, '$1#'));
      memory.set(column, answer);
    }
    return answer;
  };
  const needs = { stages, reads };
  known.set(key, needs);
  return needs;
}
