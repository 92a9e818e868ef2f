/** Runs a plan over a table of columns, a chunk of rows at a time. */
import { CHUNK, type FamilySizes, layoutOf, type Slot } from './layout.ts';
import type { Plan } from './plan.ts';

/** A column by its name; nothing where there is none. */
export type Find = (name: string) => Float64Array | undefined;

export interface RunOptions {
  /** What is read as `@name`. */
  readonly resources?: Readonly<Record<string, unknown>>;
  /** Further names to hand back beside the plan's targets: those the plan makes anyway. */
  readonly keep?: readonly string[];
}

/**
 * The plan's targets for every row: a new array each, `rows × width` numbers. Throws on an input that is not given.
 */
export function run(
  plan: Plan,
  input: Find,
  rows: number,
  { resources = {}, keep = [] }: RunOptions = {},
): Record<string, Float64Array> {
  const kept = new Set([...plan.targets, ...keep]);
  const { calls, slots, begin } = layoutOf(plan, familySizes(plan, input));
  begin(resources, kept);
  const out: Record<string, Float64Array> = {};
  const enters: Copy[] = [];
  const leaves: Copy[] = [];
  for (const slot of slots) {
    const { name, width, made } = slot;
    if (!made) enters.push({ slot, whole: columnOf(input, name, rows) });
    else if (kept.has(name)) {
      out[name] = new Float64Array(rows * width);
      leaves.push({ slot, whole: out[name] });
      if (slot.show.length > 0) place(slot, new Float64Array(CHUNK * width));
    }
  }
  for (let from = 0; from < rows; from += CHUNK) {
    const count = Math.min(CHUNK, rows - from);
    for (const { slot, whole } of enters) copy(whole, from * slot.width, slot.values, 0, count * slot.width);
    for (const call of calls) call.run(count);
    for (const { slot, whole } of leaves) copy(slot.values, 0, whole, from * slot.width, count * slot.width);
  }
  for (const { slot } of leaves) if (slot.show.length > 0) place(slot, NOTHING);
  // The caller's things are let go, so that the layout does not keep them alive.
  begin({}, NOBODY);
  for (const name of kept) if (!(name in out)) out[name] = columnOf(input, name, rows).slice();
  return out;
}

const NOTHING = new Float64Array(0);
const NOBODY: ReadonlySet<string> = new Set();

interface Copy {
  readonly slot: Slot;
  /** All rows, as the caller has them. */
  readonly whole: Float64Array;
}

/** For few numbers a loop costs less than the view that copying a part of an array at once asks for. */
const WORTH_A_VIEW = 48;

function copy(from: Float64Array, start: number, to: Float64Array, at: number, count: number): void {
  if (count >= WORTH_A_VIEW) to.set(from.subarray(start, start + count), at);
  else for (let k = 0; k < count; k++) to[at + k] = from[start + k];
}

/** Gives what is only made on demand its place, or takes it away. */
function place(slot: Slot, values: Float64Array): void {
  slot.values = values;
  for (const to of slot.show) to(values);
}

function columnOf(find: Find, name: string, rows: number): Float64Array {
  const column = find(name);
  if (!column) throw new Error(`missing column: ${name}`);
  if (column.length < rows) throw new Error(`column ${name} has ${column.length} numbers for ${rows} rows`);
  return column;
}

/** How many groups, feeds and materials the table has columns for. */
function familySizes({ families }: Plan, find: Find): FamilySizes {
  const sizes: Record<string, number> = {};
  for (const { family, item } of families) {
    let size = 0;
    while (find(item(size))) size++;
    sizes[family] = Math.max(size, sizes[family] ?? 0);
  }
  return sizes;
}
