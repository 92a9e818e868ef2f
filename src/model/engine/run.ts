/** Runs a plan over a table of columns, a chunk of rows at a time. */
import { type Columns, familyOf } from './columns.ts';
import { CHUNK, type FamilySizes, layoutOf, type Slot } from './layout.ts';
import type { Plan } from './plan.ts';

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
  input: Columns,
  rows: number,
  { resources = {}, keep = [] }: RunOptions = {},
): Record<string, Float64Array> {
  const kept = new Set([...plan.targets, ...keep]);
  const { calls, slots, begin } = layoutOf(plan, familySizes(plan, input));
  begin(resources, kept);
  const out: Record<string, Float64Array> = {};
  const windows: { slot: Slot; whole: Float64Array }[] = [];
  for (const slot of slots) {
    const { name, width, made, scratch } = slot;
    if (!made) windows.push({ slot, whole: columnOf(input, name, rows) });
    else if (kept.has(name)) {
      out[name] = new Float64Array(rows * width);
      windows.push({ slot, whole: out[name] });
    } else showIn(slot, scratch);
  }
  for (let from = 0; from < rows; from += CHUNK) {
    const count = Math.min(CHUNK, rows - from);
    for (const { slot, whole } of windows)
      showIn(slot, count === rows ? whole : whole.subarray(from * slot.width, (from + count) * slot.width));
    for (const call of calls) call.run(count);
  }
  // The caller's arrays are let go, so that the layout does not keep them alive.
  for (const { slot } of windows) showIn(slot, NOTHING);
  begin({}, NOBODY);
  for (const name of kept) if (!(name in out)) out[name] = columnOf(input, name, rows).slice();
  return out;
}

const NOTHING = new Float64Array(0);
const NOBODY: ReadonlySet<string> = new Set();

function showIn({ show }: Slot, values: Float64Array): void {
  for (const to of show) to(values);
}

function columnOf(input: Columns, name: string, rows: number): Float64Array {
  const column = input[name];
  if (!column) throw new Error(`missing column: ${name}`);
  if (column.length < rows) throw new Error(`column ${name} has ${column.length} numbers for ${rows} rows`);
  return column;
}

/** How many groups, feeds and materials the table has columns for. */
function familySizes({ inputs }: Plan, input: Columns): FamilySizes {
  const sizes: Record<string, number> = {};
  for (const read of inputs) {
    const of = familyOf(read);
    if (!of) continue;
    let size = 0;
    while (input[`${of.family}${size + 1}${of.field}`]) size++;
    sizes[of.family] = Math.max(size, sizes[of.family] ?? 0);
  }
  return sizes;
}
