/**
 * The whole calculation on one screen: matter flows down this list, and each stage widens the table.
 *
 *   herd ─ weather ─ intake ─ excretion ─ bedding ─ placement ┬─ paddock ──────────────┐
 *                                                             ├─ slurry ──┐            ├─ ledger ─ value ─ …
 *                                                             └─ bed ─ compost ─ spread ─ soil ┘
 */
import { type ColumnTable, table } from 'arquero';
import { DAYS, type Stage, WEEKS } from './stage.ts';
import { STAGES } from './stages/index.ts';
import type { PreparedWeather } from './weather.ts';

/** Rows worked on at once: their results and weekly series stay in the cache, and memory stays flat. */
const CHUNK = 128;

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
  options: PipelineOptions,
  stages: readonly Stage[] = STAGES,
): PipelineResult {
  const rows = input.numRows();
  const made = new Set(stages.flatMap((stage) => Object.keys(stage.makes)));
  const kept: Columns = {};
  for (const name of options.keep ?? made) if (made.has(name)) kept[name] = new Float64Array(rows);
  const tracks = series(stages, 'tracks', options.tracks ? rows * WEEKS : 0);
  const daily = series(stages, 'dailies', options.daily ? rows * DAYS : 0);
  const column = (name: string): Float64Array => {
    if (kept[name]) return kept[name];
    if (made.has(name)) return scratch(name, 1);
    const values = input.column(name) as unknown;
    if (!(values instanceof Float64Array)) throw new Error(`missing column: ${name}`);
    return values;
  };
  const track = (name: string): Float64Array => tracks[name] ?? scratch(name, WEEKS);
  const families = countFamilies(input, stages);
  const followed = new Set(stages.flatMap((stage) => stage.readsTracks ?? []));

  const windows: Window[] = [];
  const open = (names: readonly string[], of: (name: string) => Float64Array, perRow = 1): Columns => {
    // One object from all its entries has the same shape in every call; one grown by name becomes a slow dictionary.
    const columns = Object.fromEntries(names.map((name) => [name, of(name)]));
    if (rows > CHUNK) windows.push({ columns, whole: Object.entries(columns), perRow });
    return columns;
  };
  const calls = stages.map((stage) => ({
    run: stage.run,
    io: {
      count: Math.min(CHUNK, rows),
      read: open(stage.reads, column),
      family: Object.fromEntries(
        Object.entries(stage.families ?? {}).map(([family, fields]) => [
          family,
          Array.from({ length: families[family] ?? 0 }, (_, k) =>
            open(fields, (field) => column(`${family}${k + 1}${field}`)),
          ),
        ]),
      ),
      write: open(Object.keys(stage.makes), column),
      track: open(Object.keys(stage.tracks ?? {}), track, WEEKS),
      tracked: options.tracks === true || Object.keys(stage.tracks ?? {}).some((name) => followed.has(name)),
      readTrack: open(stage.readsTracks ?? [], track, WEEKS),
      daily: options.daily ? open(Object.keys(stage.dailies ?? {}), (name) => daily[name], DAYS) : undefined,
      weather: options.weather,
    },
  }));
  for (let from = 0; from < rows; from += CHUNK) {
    const count = Math.min(CHUNK, rows - from);
    moveTo(windows, from, count, rows);
    for (const { run, io } of calls) {
      io.count = count;
      run(io);
    }
  }
  return { table: input.assign(table(kept)), tracks, daily };
}

type Columns = Record<string, Float64Array>;

/** Columns a stage sees through a window of one chunk, and the whole of each. */
interface Window {
  readonly columns: Columns;
  readonly whole: readonly (readonly [string, Float64Array])[];
  readonly perRow: number;
}

/** Moves every window to the rows of a chunk. Scratch memory is one chunk long and stays where it is. */
function moveTo(windows: readonly Window[], from: number, count: number, rows: number): void {
  const views = new Map<Float64Array, Float64Array>();
  for (const { columns, whole, perRow } of windows)
    for (const [name, values] of whole) {
      if (values.length !== rows * perRow) continue;
      let view = views.get(values);
      if (!view) {
        view = values.subarray(from * perRow, (from + count) * perRow);
        views.set(values, view);
      }
      columns[name] = view;
    }
}

/** What no caller keeps is worked out in the same memory in every chunk and call; stages write before they read. */
const memory = new Map<string, Float64Array>();

function scratch(name: string, perRow: number): Float64Array {
  const key = `${name} ${perRow}`;
  const known = memory.get(key);
  if (known) return known;
  const fresh = new Float64Array(CHUNK * perRow);
  memory.set(key, fresh);
  return fresh;
}

function series(
  stages: readonly Stage[],
  kind: 'tracks' | 'dailies',
  length: number,
): Record<string, Float64Array> {
  const out: Record<string, Float64Array> = {};
  if (length === 0) return out;
  for (const stage of stages)
    for (const name of Object.keys(stage[kind] ?? {})) out[name] = new Float64Array(length);
  return out;
}

/** How many groups, feeds and materials the table has columns for. */
function countFamilies(input: ColumnTable, stages: readonly Stage[]): Record<string, number> {
  const names = new Set(input.columnNames());
  const out: Record<string, number> = {};
  for (const stage of stages)
    for (const [family, fields] of Object.entries(stage.families ?? {})) {
      let count = 0;
      while (names.has(`${family}${count + 1}${fields[0]}`)) count++;
      out[family] = count;
    }
  return out;
}
