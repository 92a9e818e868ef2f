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

/** Rows worked on at once: weekly series of this many rows stay in cache and memory stays flat. */
const CHUNK = 512;

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
  const made = stages.flatMap((stage) => Object.keys(stage.makes));
  const keep = new Set(options.keep ?? made);
  const kept: Record<string, Float64Array> = {};
  for (const name of made) if (keep.has(name)) kept[name] = new Float64Array(rows);
  const tracks = series(stages, 'tracks', options.tracks ? rows * WEEKS : 0);
  const daily = series(stages, 'dailies', options.daily ? rows * DAYS : 0);
  const families = countFamilies(input, stages);
  const chunk = Math.min(CHUNK, Math.max(rows, 1));
  const pool: Record<string, Float64Array> = {};
  for (const name of made) if (!keep.has(name)) pool[name] = new Float64Array(chunk);
  const trackPool = options.tracks ? tracks : series(stages, 'tracks', chunk * WEEKS);

  for (let from = 0; from < rows; from += chunk) {
    const to = Math.min(rows, from + chunk);
    const count = to - from;
    const column = (name: string): Float64Array => {
      if (kept[name]) return kept[name].subarray(from, to);
      if (pool[name]) return pool[name];
      const values = input.column(name) as unknown;
      if (!(values instanceof Float64Array)) throw new Error(`missing column: ${name}`);
      return values.subarray(from, to);
    };
    const trackView = (name: string): Float64Array =>
      options.tracks ? tracks[name].subarray(from * WEEKS, to * WEEKS) : trackPool[name];
    for (const stage of stages) {
      stage.run({
        count,
        read: pick(stage.reads, column),
        family: Object.fromEntries(
          Object.entries(stage.families ?? {}).map(([family, fields]) => [
            family,
            Array.from({ length: families[family] ?? 0 }, (_, k) =>
              pick(fields, (field) => column(`${family}${k + 1}${field}`)),
            ),
          ]),
        ),
        write: pick(Object.keys(stage.makes), column),
        track: pick(Object.keys(stage.tracks ?? {}), trackView),
        readTrack: pick(stage.readsTracks ?? [], trackView),
        daily: options.daily
          ? pick(Object.keys(stage.dailies ?? {}), (name) => daily[name].subarray(from * DAYS, to * DAYS))
          : undefined,
        weather: options.weather,
      });
    }
  }
  return {
    table: input.assign(table(kept)),
    tracks: options.tracks ? tracks : {},
    daily: options.daily ? daily : {},
  };
}

function pick(names: readonly string[], of: (name: string) => Float64Array): Record<string, Float64Array> {
  const out: Record<string, Float64Array> = {};
  for (const name of names) out[name] = of(name);
  return out;
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
