/**
 * What the steps of a plan see of a table: a chunk of its rows, in memory of their own. It is laid out once for a plan
 * and filled chunk by chunk, so that a call of three rows is not all preparation, and a chunk stays in the cache.
 */
import type { Step } from './catalogue.ts';
import { familyOf } from './columns.ts';
import type { Plan } from './plan.ts';
import { recall } from './recall.ts';
import type { WalkRun } from './walk.ts';

/** Rows worked on at once: few enough that memory stays flat, many enough that calling a step is lost in its rows. */
export const CHUNK = 384;

const NOTHING = new Float64Array(0);

/** One column or series, as far as one chunk. */
export interface Slot {
  readonly name: string;
  /** Numbers a row. */
  readonly width: number;
  /** Made here, and not given by the caller. */
  readonly made: boolean;
  /** The chunk's numbers: those of a series that is only made on demand have no place until somebody keeps it. */
  values: Float64Array;
  /** What to tell when that place is found. */
  readonly show: ((values: Float64Array) => void)[];
}

export interface Call {
  /** Works out the first `count` rows of the windows. */
  readonly run: (count: number) => void;
}

export interface Layout {
  readonly calls: readonly Call[];
  readonly slots: readonly Slot[];
  /** Hands the steps what is read as `@name`, and says which names the caller keeps. */
  readonly begin: (resources: Readonly<Record<string, unknown>>, kept: ReadonlySet<string>) => void;
}

/** How many items each family has, e.g. `{ group: 2 }`. */
export type FamilySizes = Readonly<Record<string, number>>;

const layouts = new WeakMap<Plan, Map<string, Layout>>();
/** Herds, beds and bills come in many sizes; a layout of all results holds some 20 MB. */
const MOST_LAYOUTS = 6;

/** The layout of this plan; the same one, with the same scratch memory, while it is in use. */
export function layoutOf(plan: Plan, sizes: FamilySizes): Layout {
  const known = layouts.get(plan) ?? new Map<string, Layout>();
  layouts.set(plan, known);
  const key = Object.values(sizes).join(' ');
  return recall(known, key, MOST_LAYOUTS, () => lay(plan, sizes));
}

function lay({ steps, catalogue, inputs }: Plan, sizes: FamilySizes): Layout {
  // A walk may make again what the plan was given: the given one stands.
  const makes = new Set(
    steps.flatMap((step) => step.makes.map(({ name }) => name)).filter((name) => !inputs.has(name)),
  );
  const slots = new Map<string, Slot>();
  const slotOf = (name: string): Slot => {
    const known = slots.get(name);
    if (known) return known;
    const made = makes.has(name);
    const entry = catalogue.entries.get(name);
    const width = entry?.width ?? 1;
    const values = made && entry?.onDemand ? NOTHING : new Float64Array(CHUNK * width);
    const slot: Slot = { name, width, made, values, show: [] };
    slots.set(name, slot);
    return slot;
  };
  const resourceShows: ((resources: Readonly<Record<string, unknown>>) => void)[] = [];
  /** Puts what `name` reads at `into[key]`. */
  const bind = (into: Record<string | number, unknown>, key: string | number, name: string): void => {
    if (name.startsWith('@')) {
      resourceShows.push((resources) => {
        into[key] = resources[name.slice(1)];
      });
      return;
    }
    const family = familyOf(name);
    if (family) {
      const items: Float64Array[] = Array.from({ length: sizes[family.family] ?? 0 }, () => NOTHING);
      into[key] = items;
      items.forEach((_, k) => {
        bind(items as unknown as Record<number, unknown>, k, `${family.family}${k + 1}${family.field}`);
      });
      return;
    }
    const slot = slotOf(name);
    into[key] = slot.values;
    if (slot.values === NOTHING)
      slot.show.push((values) => {
        into[key] = values;
      });
  };
  const followed = new Set(steps.flatMap(({ reads }) => reads));
  let kept: ReadonlySet<string> = new Set();
  const wants = (name: string) => makes.has(name) && (kept.has(name) || followed.has(name));
  /** Where what a step makes goes. */
  const bindMade: Bind = (into, key, name) => {
    if (makes.has(name)) return bind(into, key, name);
    const entry = catalogue.entries.get(name);
    into[key] = entry?.onDemand ? NOTHING : new Float64Array(CHUNK * (entry?.width ?? 1));
  };
  const widthOf = (name: string) => catalogue.entries.get(name)?.width ?? 1;
  const calls = steps.map(
    (step): Call =>
      step.quantity ? quantityCall(step, bind) : walkCall(step, { bind, bindMade, wants, widthOf }),
  );
  return {
    calls,
    slots: [...slots.values()],
    begin: (resources, keeps) => {
      kept = keeps;
      for (const show of resourceShows) show(resources);
    },
  };
}

type Bind = (into: Record<string | number, unknown>, key: string | number, name: string) => void;

function quantityCall({ quantity, reads, makes }: Step, bind: Bind): Call {
  const columns: Float64Array[] = reads.map(() => NOTHING);
  reads.forEach((read, k) => {
    bind(columns as unknown as Record<number, unknown>, k, read);
  });
  const into = { out: NOTHING };
  bind(into, 'out', makes[0].name);
  const fill = (quantity as NonNullable<Step['quantity']>).fill;
  return { run: (count) => fill(count, into.out, columns as unknown as readonly never[]) };
}

interface Bound {
  readonly bind: Bind;
  readonly bindMade: Bind;
  readonly wants: (name: string) => boolean;
  readonly widthOf: (name: string) => number;
}

function walkCall({ walk, reads, makes }: Step, { bind, bindMade, wants, widthOf }: Bound): Call {
  // An object made of all its entries at once keeps the shape that makes reading it fast.
  const read: Record<string, unknown> = Object.fromEntries(reads.map((name) => [name, NOTHING]));
  const write: Record<string, unknown> = Object.fromEntries(makes.map(({ name }) => [name, NOTHING]));
  for (const name of reads) bind(read, name, name);
  for (const { name } of makes) bindMade(write, name, name);
  // Single numbers first: where rows differ, they mostly do there.
  const compared = reads
    .filter((name) => !name.startsWith('@') && !familyOf(name))
    .map((name) => ({ name, width: widthOf(name) }))
    .sort((a, b) => a.width - b.width);
  const from = windowsOf(compared);
  const into = windowsOf(makes);
  const io: { -readonly [K in keyof WalkRun<string, string>]: WalkRun<string, string>[K] } = {
    count: 0,
    read: read as WalkRun<string, string>['read'],
    write: write as WalkRun<string, string>['write'],
    wants,
    repeats: (i) => {
      if (i === 0) {
        // What is made on demand may have another place in every run.
        from.look(read);
        into.look(write);
        return false;
      }
      for (let c = 0; c < from.columns.length; c++)
        if (!sameRow(from.columns[c], from.widths[c], i)) return false;
      for (let c = 0; c < into.columns.length; c++) copyRow(into.columns[c], into.widths[c], i);
      return true;
    },
  };
  const { run } = walk as NonNullable<Step['walk']>;
  return {
    run: (count) => {
      io.count = count;
      run(io);
    },
  };
}

/** Columns and series in lists, so that going through them for every row asks no names. */
function windowsOf(named: readonly { readonly name: string; readonly width: number }[]) {
  const columns: Float64Array[] = named.map(() => NOTHING);
  return {
    columns,
    widths: named.map(({ width }) => width),
    look: (at: Readonly<Record<string, unknown>>) => {
      for (let c = 0; c < columns.length; c++) columns[c] = at[named[c].name] as Float64Array;
    },
  };
}

/** Whether row `i` of a column, or of a series of `width` numbers a row, holds what the row above does. */
function sameRow(column: Float64Array, width: number, i: number): boolean {
  if (width === 1) return column[i] === column[i - 1];
  for (let at = i * width; at < (i + 1) * width; at++) {
    const here = column[at];
    const above = column[at - width];
    // Weeks past the end of the weather are no numbers in both.
    if (here !== above && !(Number.isNaN(here) && Number.isNaN(above))) return false;
  }
  return true;
}

/** Row `i` becomes what the row above is; what has no place holds nothing. */
function copyRow(column: Float64Array, width: number, i: number): void {
  if (column.length === 0) return;
  for (let at = i * width; at < (i + 1) * width; at++) column[at] = column[at - width];
}
