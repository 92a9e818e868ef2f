/** What a question needs: the steps that lead to the names asked for, in order, and the columns they must be given. */
import type { Catalogue, Step } from './catalogue.ts';
import { familyOf, patternOf } from './columns.ts';

export interface Plan {
  readonly catalogue: Catalogue;
  /** What is handed back: the names asked for and the columns that say whether they exist. */
  readonly targets: readonly string[];
  readonly steps: readonly Step[];
  /** Columns, families by their pattern, and `@` resources that must be given. */
  readonly inputs: ReadonlySet<string>;
  /** Families among the inputs, each with the names of its columns, from item 0 on. */
  readonly families: readonly { readonly family: string; readonly item: (index: number) => string }[];
  /** Whether any step reads this column: a family's own column counts by its pattern. */
  readonly reads: (column: string) => boolean;
}

const NOTHING: ReadonlySet<string> = new Set();

/**
 * Throws on a name nobody makes and nobody gives, and on a circle, naming it. What is in `given` is taken as it is,
 * and nothing behind it is worked out.
 */
export function planOf(
  catalogue: Catalogue,
  asked: readonly string[],
  given: ReadonlySet<string> = NOTHING,
): Plan {
  const { entries, stepOf } = catalogue;
  const targets = new Set(asked);
  for (const name of asked) {
    const entry = entries.get(name);
    if (!entry) throw new Error(`unknown quantity: ${name}`);
    if (entry.made.when) targets.add(entry.made.when);
  }
  const steps: Step[] = [];
  const inputs = new Set<string>();
  const state = new Map<Step, 'open' | 'done'>();
  const visit = (name: string, path: readonly string[]): void => {
    const step = given.has(name) ? undefined : stepOf.get(name);
    if (!step) {
      inputs.add(name);
      return;
    }
    if (state.get(step) === 'done') return;
    if (state.get(step) === 'open') throw new Error(`a circle: ${[...path, name].join(' ← ')}`);
    state.set(step, 'open');
    for (const read of step.reads) visit(read, [...path, name]);
    state.set(step, 'done');
    steps.push(step);
  };
  for (const name of targets) visit(name, []);
  const memory = new Map<string, boolean>();
  const reads = (column: string): boolean => {
    let answer = memory.get(column);
    if (answer === undefined) {
      answer = inputs.has(column) || inputs.has(patternOf(column));
      memory.set(column, answer);
    }
    return answer;
  };
  const families = [...inputs].flatMap((read) => {
    const of = familyOf(read);
    if (!of) return [];
    const names: string[] = [];
    const item = (k: number) => (names[k] ??= `${of.family}${k + 1}${of.field}`);
    return [{ family: of.family, item }];
  });
  return { catalogue, targets: [...targets], steps, inputs, families, reads };
}

/** Names that may move when one of `columns` does: what depends on it, directly or through others. */
export function downstream({ entries }: Catalogue, columns: readonly string[]): ReadonlySet<string> {
  const moved = new Set(columns.flatMap((column) => [column, patternOf(column)]));
  const found = new Set<string>();
  for (let before = -1; before < found.size; ) {
    before = found.size;
    for (const { name, from } of entries.values())
      if (!found.has(name) && from.some((read) => moved.has(read))) {
        found.add(name);
        moved.add(name);
      }
  }
  return found;
}
