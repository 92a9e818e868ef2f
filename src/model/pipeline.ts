/**
 * The whole calculation on one screen: matter flows down this list, and each stage widens the table.
 *
 *   herd ─ weather ─ intake ─ excretion ─ bedding ─ placement ┬─ paddock ──────────────┐
 *                                                             ├─ slurry ──┐            ├─ ledger ─ value ─ …
 *                                                             └─ bed ─ compost ─ spread ─ soil ┘
 */
import { type ColumnTable, table } from 'arquero';
import { CHUNK, type FamilySizes, layoutOf, letGo, type Slot, showIn } from './layout.ts';
import type { Stage } from './stage.ts';
import { STAGES } from './stages.ts';
import type { PreparedWeather } from './weather/prepared.ts';

export interface PipelineOptions {
  readonly weather: readonly PreparedWeather[];
  /** Names of the results to hand back; all when absent. */
  readonly keep?: readonly string[];
  /** Also hand back the weekly series of every row. */
  readonly tracks?: boolean;
  /** Also hand back the daily series of every row; for a few rows only. */
  readonly daily?: boolean;
}

export interface PipelineResult {
  /** The input table with a column for each result. */
  readonly table: ColumnTable;
  /** Row-major `rows × WEEKS`, when asked for. */
  readonly tracks: Readonly<Record<string, Float64Array>>;
  /** Row-major `rows × DAYS`, when asked for. */
  readonly daily: Readonly<Record<string, Float64Array>>;
}

/** Runs every stage over every row. Missing input columns are a programmer's error and throw. */
export function runPipeline(
  input: ColumnTable,
  { weather, keep, tracks: wantTracks = false, daily: wantDaily = false }: PipelineOptions,
  stages: readonly Stage[] = STAGES,
): PipelineResult {
  const rows = input.numRows();
  const { calls, slots } = layoutOf(stages, familySizes(input, stages));
  const wanted = keep && new Set(keep);
  const made: Columns = {};
  const tracks: Columns = {};
  const daily: Columns = {};
  const given: { slot: Slot; whole: Float64Array }[] = [];
  for (const slot of slots) {
    const { kind, name, width, scratch } = slot;
    const into = kind === 'track' ? tracks : kind === 'daily' ? daily : made;
    const asked = kind === 'track' ? wantTracks : kind === 'daily' ? wantDaily : !wanted || wanted.has(name);
    if (scratch === undefined && kind === 'column') given.push({ slot, whole: columnOf(input, name) });
    else if (asked) {
      into[name] = new Float64Array(rows * width);
      given.push({ slot, whole: into[name] });
    } else if (scratch) showIn(slot, scratch);
  }
  for (let from = 0; from < rows; from += CHUNK) {
    const count = Math.min(CHUNK, rows - from);
    for (const { slot, whole } of given)
      showIn(slot, count === rows ? whole : whole.subarray(from * slot.width, (from + count) * slot.width));
    for (const { stage, io, days, followed } of calls) {
      io.count = count;
      io.weather = weather;
      io.tracked = wantTracks || followed;
      io.daily = wantDaily ? days : undefined;
      stage.run(io);
    }
  }
  letGo(given.map(({ slot }) => slot));
  return { table: input.assign(table(made)), tracks, daily };
}

type Columns = Record<string, Float64Array>;

function columnOf(input: ColumnTable, name: string): Float64Array {
  const values = input.column(name) as unknown;
  if (!(values instanceof Float64Array)) throw new Error(`missing column: ${name}`);
  return values;
}

/** How many groups, feeds and materials the table has columns for. */
function familySizes(input: ColumnTable, stages: readonly Stage[]): FamilySizes {
  const sizes: Record<string, number> = {};
  for (const stage of stages)
    for (const [family, fields] of Object.entries(stage.families ?? {})) {
      let size = 0;
      while (input.column(`${family}${size + 1}${fields[0]}`)) size++;
      sizes[family] = size;
    }
  return sizes;
}
