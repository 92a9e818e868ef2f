/**
 * What the stages see of a table: windows of one chunk on its columns. They are laid out once for a list of stages
 * and then moved over the rows, so that a call of three rows is not all preparation.
 */
import { DAYS, type Stage, type StageRun, WEEKS } from './stage.ts';

/** Rows worked on at once: their results and weekly series stay in the cache, and memory stays flat. */
export const CHUNK = 128;

type Columns = Record<string, Float64Array>;
type AnyRun = StageRun<string, Record<string, readonly string[]>, string, string, string, string>;
type Kind = 'column' | 'track' | 'daily';

/** One column or series, and every window that shows it. */
export interface Slot {
  readonly kind: Kind;
  readonly name: string;
  /** Numbers a row. */
  readonly width: number;
  readonly shownIn: readonly { readonly columns: Columns; readonly as: string }[];
  /** Where it is worked out when nobody keeps it; undefined for what the caller must give. */
  readonly scratch: Float64Array | undefined;
}

export interface StageCall {
  readonly stage: Stage;
  readonly io: { -readonly [K in keyof AnyRun]: AnyRun[K] };
  readonly days: Columns;
  /** Whether a later stage reads the weekly series this one makes. */
  readonly followed: boolean;
}

export interface Layout {
  readonly calls: readonly StageCall[];
  readonly slots: readonly Slot[];
}

/** How many items each family has, e.g. `{ group: 2 }`. */
export type FamilySizes = Readonly<Record<string, number>>;

const NOTHING = new Float64Array(0);
const layouts = new WeakMap<readonly Stage[], Map<string, Layout>>();

/** The layout of these stages; the same one, with the same scratch memory, whenever it is asked for again. */
export function layoutOf(stages: readonly Stage[], sizes: FamilySizes): Layout {
  const known = layouts.get(stages) ?? new Map<string, Layout>();
  layouts.set(stages, known);
  const key = Object.values(sizes).join(' ');
  const layout = known.get(key) ?? lay(stages, sizes);
  known.set(key, layout);
  return layout;
}

function lay(stages: readonly Stage[], sizes: FamilySizes): Layout {
  const made = new Set(stages.flatMap((stage) => Object.keys(stage.makes)));
  const followed = new Set(stages.flatMap((stage) => stage.readsTracks ?? []));
  const slots = new Map<string, Slot & { readonly shownIn: { columns: Columns; as: string }[] }>();
  const show = (kind: Kind, names: readonly string[], prefix = ''): Columns => {
    // An object made of all its entries at once keeps the shape that makes reading it fast.
    const columns: Columns = Object.fromEntries(names.map((name) => [name, NOTHING]));
    for (const as of names) {
      const name = `${prefix}${as}`;
      const key = `${kind} ${name}`;
      const width = { column: 1, track: WEEKS, daily: DAYS }[kind];
      const ours = kind === 'track' || (kind === 'column' && made.has(name));
      const slot = slots.get(key) ?? {
        kind,
        name,
        width,
        shownIn: [],
        scratch: ours ? new Float64Array(CHUNK * width) : undefined,
      };
      slots.set(key, slot);
      slot.shownIn.push({ columns, as });
    }
    return columns;
  };
  const calls = stages.map((stage): StageCall => {
    const tracks = Object.keys(stage.tracks ?? {});
    const family = Object.entries(stage.families ?? {}).map(([name, fields]) => [
      name,
      Array.from({ length: sizes[name] }, (_, k) => show('column', fields, `${name}${k + 1}`)),
    ]);
    return {
      stage,
      followed: tracks.some((name) => followed.has(name)),
      days: show('daily', Object.keys(stage.dailies ?? {})),
      io: {
        count: 0,
        read: show('column', stage.reads),
        family: Object.fromEntries(family),
        write: show('column', Object.keys(stage.makes)),
        track: show('track', tracks),
        tracked: false,
        readTrack: show('track', stage.readsTracks ?? []),
        daily: undefined,
        weather: [],
      },
    };
  });
  return { calls, slots: [...slots.values()] };
}

/** Shows `values` in every window of a slot. */
export function showIn({ shownIn }: Slot, values: Float64Array): void {
  for (const { columns, as } of shownIn) columns[as] = values;
}

/** Lets go of a caller's arrays, so that the layout does not keep them alive. */
export function letGo(slots: Iterable<Slot>): void {
  for (const slot of slots) showIn(slot, NOTHING);
}
