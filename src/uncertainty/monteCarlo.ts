/**
 * Plausible worlds: every coefficient and price with a range is drawn at once, the same draw for every
 * scenario, so that differences between scenarios are paired. Seeded and repeatable.
 */
import type { Binding, RowChanges } from '../model/bind.ts';
import { planFor, type QuantityName, type ResultName } from '../model/quantities.ts';
import { baselinesOf } from '../study/baselines.ts';
import {
  type Block,
  changesFor,
  type Results,
  repeatScenarios,
  resultIn,
  runBlock,
  runningBlock,
  type Setting,
} from '../study/rows.ts';
import { type Coefficient, FORM } from '../tables/coefficient.ts';
import { unitSpan } from '../tables/unitSpans.ts';
import { allForms, allOfShape, allPlausible, type Filler, filler } from './random.ts';

/** Rows worked on at once: enough that setting up the pipeline is lost in it, few enough to stop between. */
const CHUNK_ROWS = 3_072;

/** A number with a range, and the columns of which scenarios it fills. */
export interface Uncertain {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly central: number;
  readonly high: number;
  /** As its row in the tables says. */
  readonly mean?: Coefficient['mean'];
  readonly movesWith?: Coefficient['movesWith'];
  readonly measureBy?: Coefficient['measureBy'];
  readonly at: readonly { readonly scenario: number; readonly column: string }[];
}

export interface Draws<Name extends ResultName = never> {
  readonly count: number;
  readonly seed: number;
  readonly scenarios: number;
  /** Draw-major: element `draw × scenarios + scenario`; NaN where absent. */
  readonly results: Results<Name>;
  readonly uncertain: readonly Uncertain[];
}

/** Everything with a range in any scenario, each number once by its id and span. */
export function uncertainIn({ bound }: Setting): readonly Uncertain[] {
  const before = uncertainOf.get(bound);
  if (before) return before;
  const found = new Map<string, { binding: Binding; at: { scenario: number; column: string }[] }>();
  bound.forEach(({ bindings }, scenario) => {
    for (const binding of bindings.values()) {
      if (!(binding.low < binding.high)) continue;
      const key = `${binding.id}|${binding.low}|${binding.value}|${binding.high}`;
      const entry = found.get(key) ?? { binding, at: [] };
      entry.at.push({ scenario, column: binding.column });
      found.set(key, entry);
    }
  });
  const uncertain = [...found.values()].map(
    ({ binding: { id, label, unit, low, value, high, coefficient, origin }, at }) => ({
      id,
      label,
      unit,
      low,
      central: value,
      high,
      ...(origin === 'coefficient' && coefficient?.mean && { mean: coefficient.mean }),
      movesWith: coefficient?.movesWith,
      measureBy: coefficient?.measureBy,
      at,
    }),
  );
  uncertainOf.set(bound, uncertain);
  return uncertain;
}

const uncertainOf = new WeakMap<Setting['bound'], readonly Uncertain[]>();

/**
 * The values of one uncertain number from draw `from` on, in runs of any length; the same for the same seed and id. Of a hundred draws
 * of a group, `together` take the group's common probability and the rest their own, which leaves each number's
 * distribution as it is and gives a rank correlation of that share squared.
 */
export function valuesOf(
  { id, unit, low, central, high, mean, movesWith }: Uncertain,
  seed: number,
  from = 0,
): Filler {
  const own = filler(seed, id, from);
  const place: Filler = (out, count) =>
    unit === FORM
      ? allForms(out, count, central)
      : mean
        ? allOfShape(out, count, mean.shape, unitSpan(unit))
        : allPlausible(out, count, low, central, high);
  if (!movesWith)
    return (out, count) => {
      own(out, count);
      place(out, count);
    };
  const { name, together } = movesWith;
  const common = filler(seed, `group ${name}`, from);
  const coin = filler(seed, `coin ${id}`, from);
  return (out, count) => {
    // All three streams go on in every draw, so that the group's draws stay side by side.
    const shared = new Float64Array(count);
    const coins = new Float64Array(count);
    common(shared, count);
    own(out, count);
    coin(coins, count);
    for (let k = 0; k < count; k++) if (coins[k] < together) out[k] = shared[k];
    place(out, count);
  };
}

/** The first `count` values of one uncertain number: what a ranking looks at. */
export function sample(uncertain: Uncertain, count: number, seed: number): Float64Array {
  const out = new Float64Array(count);
  valuesOf(uncertain, seed)(out, count);
  return out;
}

export interface DrawOptions<Name extends ResultName = ResultName> {
  readonly count: number;
  readonly seed: number;
  /** Results to keep; the fewer, the less memory: 8 bytes each a draw and scenario. */
  readonly keep: readonly Name[];
  /** Inputs turned without writing them, as a dragged slider does. */
  readonly changes?: RowChanges;
  /** The first of the draws, where others make those before it. */
  readonly from?: number;
}

/**
 * Draws in chunks: yields the share done after each, so that a worker can report, stop, or let others run, and
 * returns all of it at the end. The draws depend neither on the chunks nor on what is kept.
 */
export function* draw<Name extends ResultName>(
  setting: Setting,
  { count, seed, keep, changes = NONE, from = 0 }: DrawOptions<Name>,
): Generator<number, Draws<Name>> {
  const scenarios = setting.bound.length;
  const results = Object.fromEntries(
    keep.map((name) => [name, new Float64Array(count * scenarios)]),
  ) as Record<Name, Float64Array>;
  const chunk = Math.max(1, Math.min(Math.floor(CHUNK_ROWS / scenarios), count));
  const asked = { count, seed, keep, changes, from };
  const uncertain =
    count === chunk && from === 0
      ? yield* once(setting, asked, results)
      : yield* inChunks(setting, chunk, asked, results);
  const turned = setting.bound.map((_, scenario) => changesFor(changes, scenario));
  const still = uncertain.filter(
    ({ at }) => !at.some(({ scenario, column }) => turned[scenario].has(column)),
  );
  return { count, seed, scenarios, results, uncertain: still };
}

type Asked<Name extends ResultName> = Required<DrawOptions<Name>>;

function* inChunks<Name extends ResultName>(
  setting: Setting,
  chunk: number,
  { count, seed, keep, changes, from: first }: Asked<Name>,
  results: Record<Name, Float64Array>,
): Generator<number, readonly Uncertain[]> {
  const blocks = startBlocks(setting, chunk, seed, keep, first);
  let peers: readonly number[] | undefined;
  for (let from = 0; from < count; from += chunk) {
    const here = Math.min(chunk, count - from);
    const block = blocks.next(first + from, here);
    const back = turnColumns(block, setting, changes);
    const made = runBlock(block, setting.weather, () => {
      peers ??= baselinesOf(setting, changes);
      return peers;
    });
    back();
    for (const name of keep) results[name].set(made[name], from * block.scenarios);
    yield (from + here) / count;
  }
  return blocks.uncertain;
}

/** Draws few enough to be kept: when an input is dragged, only what hangs on it is worked out anew. */
function* once<Name extends ResultName>(
  setting: Setting,
  asked: Asked<Name>,
  results: Record<Name, Float64Array>,
): Generator<number, readonly Uncertain[]> {
  const kept = recent(setting, asked);
  const made = kept.turn(asked.changes);
  for (const name of asked.keep) results[name].set(resultIn(made, name));
  yield 1;
  return kept.uncertain;
}

const NONE: RowChanges = new Map();

/** Columns filled with draws, a chunk at a time. */
export interface DrawnBlocks<Name extends QuantityName = QuantityName> {
  readonly uncertain: readonly Uncertain[];
  /** Draws `from` to `from + here`; chunks must be asked for in order. */
  readonly next: (from: number, here: number) => Block<Name>;
}

/** The uncertain numbers that any of `names` hangs on. */
export function uncertainFor(setting: Setting, names: readonly QuantityName[]): readonly Uncertain[] {
  const { reads } = planFor(names);
  return uncertainIn(setting).filter(({ at }) => at.some(({ column }) => reads(column)));
}

/** Blocks from draw `from` on. */
export function startBlocks<Name extends QuantityName>(
  setting: Setting,
  chunk: number,
  seed: number,
  keep: readonly Name[],
  from = 0,
): DrawnBlocks<Name> {
  const uncertain = uncertainFor(setting, keep);
  const streams = uncertain.map((u) => valuesOf(u, seed, from));
  const places = uncertain.map(placesOf);
  const values = new Float64Array(chunk);
  const scenarios = setting.bound.length;
  const whole = repeatScenarios(setting, chunk, keep);
  return {
    uncertain,
    next: (_, here) => {
      const block = here === chunk ? whole : repeatScenarios(setting, here, keep);
      for (let k = 0; k < uncertain.length; k++) {
        streams[k](values, here);
        spread(values, here, places[k], scenarios, block.columns);
      }
      return block;
    },
  };
}

/** Columns a number fills, each with the scenarios that have it. */
type Places = ReadonlyMap<string, readonly number[]>;

function placesOf({ at }: Uncertain): Places {
  const out = new Map<string, number[]>();
  for (const { scenario, column } of at) out.set(column, [...(out.get(column) ?? []), scenario]);
  return out;
}

function spread(
  values: Float64Array,
  count: number,
  places: Places,
  scenarios: number,
  columns: Block['columns'],
): void {
  for (const [column, of] of places) {
    const into = columns[column];
    if (!into) continue;
    if (of.length === scenarios) {
      // Most numbers belong to all scenarios: one pass along the column instead of one for each.
      for (let draw = 0, row = 0; draw < count; draw++) {
        const value = values[draw];
        for (const end = row + scenarios; row < end; row++) into[row] = value;
      }
    } else
      for (const scenario of of)
        for (let draw = 0, row = scenario; draw < count; draw++, row += scenarios) into[row] = values[draw];
  }
}

/** The last draws of each setting: while an input is dragged, the same ones are asked for again and again. */
const lastDraws = new WeakMap<Setting['bound'], { key: string; kept: KeptDraws }>();

interface KeptDraws {
  readonly uncertain: readonly Uncertain[];
  /** Its arrays stay its own: they are copied, not handed on. */
  readonly turn: (changes: RowChanges) => Results;
}

function recent(setting: Setting, { count, seed, keep }: Asked<ResultName>): KeptDraws {
  const key = `${count} ${seed} ${setting.weatherIndex.join(',')} ${keep.join(' ')}`;
  const before = lastDraws.get(setting.bound);
  if (before?.key === key) return before.kept;
  const blocks = startBlocks(setting, count, seed, keep);
  const block = blocks.next(0, count);
  let stands: RowChanges | undefined;
  const run = runningBlock(block, setting.weather, () => baselinesOf(setting, stands));
  const turn = (changes: RowChanges) => {
    const back = turnColumns(block, setting, changes);
    const moved = stands && movedBetween(stands, changes);
    stands = changes;
    try {
      return run(moved);
    } catch (error) {
      lastDraws.delete(setting.bound);
      throw error;
    } finally {
      back();
    }
  };
  const kept = { uncertain: blocks.uncertain, turn };
  lastDraws.set(setting.bound, { key, kept });
  return kept;
}

/** Columns that stand elsewhere than before, in any scenario. */
function movedBetween(before: RowChanges, after: RowChanges): string[] {
  const names = [...new Set([...before.keys(), ...after.keys()])];
  const moved = names.filter((name) => !Object.is(before.get(name), after.get(name)));
  return [...new Set(moved.map((name) => name.split('@')[0]))];
}

/** Stands the turned columns at their values where a scenario has them; what comes back undoes it. */
export function turnColumns(
  { columns, scenarios }: Block,
  { bound }: Setting,
  changes: RowChanges,
): () => void {
  const before = new Map<Float64Array, Float64Array>();
  bound.forEach(({ bindings }, scenario) => {
    for (const [column, value] of changesFor(changes, scenario)) {
      const into = columns[column];
      if (!into || !bindings.has(column)) continue;
      if (!before.has(into)) before.set(into, into.slice());
      for (let row = scenario; row < into.length; row += scenarios) into[row] = value;
    }
  });
  return () => {
    for (const [into, old] of before) into.set(old);
  };
}

/** Draws without stopping. */
export function drawAll<Name extends ResultName>(setting: Setting, options: DrawOptions<Name>): Draws<Name> {
  const run = draw(setting, options);
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}
