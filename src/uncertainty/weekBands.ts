/** The likely span of weekly series, week by week, over the same seeded draws as every other range. */

import { quantileSorted } from 'd3-array';
import type { RowChanges } from '../model/bind.ts';
import { compute } from '../model/compute.ts';
import { describe } from '../model/dictionary.ts';
import type { WeekName } from '../model/quantities.ts';
import { WEEKS } from '../model/series.ts';
import type { Setting } from '../study/rows.ts';
import { startBlocks, turnColumns } from './monteCarlo.ts';

/** P10, P50 and P90 of one series, `WEEKS` numbers each, NaN after the winter's last week. */
export interface WeekBand {
  readonly p10: Float64Array;
  readonly p50: Float64Array;
  readonly p90: Float64Array;
}

export interface WeekBands<Name extends WeekName = never> {
  readonly count: number;
  /** One a scenario, in the setting's order, with its name: an answer may come after another notebook was opened. */
  readonly scenarios: readonly {
    readonly name: string;
    readonly tracks: Readonly<Partial<Record<WeekName, WeekBand>>> & Readonly<Record<Name, WeekBand>>;
  }[];
}

export interface WeekBandOptions<Name extends WeekName = WeekName> {
  readonly tracks: readonly Name[];
  readonly count: number;
  readonly seed: number;
  readonly changes?: RowChanges;
}

/** Rows worked on at once: few, since a row of tracks is 53 times as long as one of results and others wait. */
const CHUNK_ROWS = 192;
const NONE: RowChanges = new Map();

/**
 * Yields the share done, returns the bands. Each week is judged by itself: no single draw need follow an edge of
 * the band. Throws on a series the model does not make.
 */
export function* weekBands<Name extends WeekName>(
  setting: Setting,
  { tracks, count, seed, changes = NONE }: WeekBandOptions<Name>,
): Generator<number, WeekBands<Name>> {
  for (const name of tracks)
    if (describe(name)?.kind !== 'week') throw new Error(`unknown weekly series: ${name}`);
  const scenarios = setting.bound.length;
  const chunk = Math.max(1, Math.min(Math.floor(CHUNK_ROWS / scenarios), count));
  const blocks = startBlocks(setting, chunk, seed, tracks);
  // Week-major, so that the draws of one week lie side by side and are sorted where they stand.
  const drawn = new Map(tracks.map((name) => [name, new Float64Array(scenarios * WEEKS * count)]));
  for (let from = 0; from < count; from += chunk) {
    const here = Math.min(chunk, count - from);
    const block = blocks.next(from, here);
    const back = turnColumns(block, setting, changes);
    const made = compute(tracks, block.columns, setting.weather);
    back();
    for (const [name, into] of drawn) {
      const all = made[name];
      for (let row = 0; row < here * scenarios; row++) {
        const [scenario, draw] = [row % scenarios, from + Math.floor(row / scenarios)];
        for (let week = 0; week < WEEKS; week++)
          into[(scenario * WEEKS + week) * count + draw] = all[row * WEEKS + week];
      }
    }
    // What is left is the sorting, a small part.
    yield (0.9 * (from + here)) / count;
  }
  const out: WeekBands<Name>['scenarios'][number][] = [];
  for (const [scenario, { scenario: written }] of setting.bound.entries()) {
    const bands = [...drawn].map(([name, all]) => [name, bandOf(all, scenario, count)] as const);
    out.push({ name: written.name, tracks: Object.fromEntries(bands) as Record<Name, WeekBand> });
    yield 1;
  }
  return { count, scenarios: out };
}

function bandOf(all: Float64Array, scenario: number, count: number): WeekBand {
  const band = { p10: empty(), p50: empty(), p90: empty() };
  for (let week = 0; week < WEEKS; week++) {
    const start = (scenario * WEEKS + week) * count;
    const sorted = all
      .subarray(start, start + count)
      .filter(Number.isFinite)
      .sort();
    // A week that most draws do not have has no middle.
    if (sorted.length * 2 < count || sorted.length === 0) continue;
    const at = (p: number) => quantileSorted(sorted as ArrayLike<number> as number[], p) as number;
    band.p10[week] = at(0.1);
    band.p50[week] = at(0.5);
    band.p90[week] = at(0.9);
  }
  return band;
}

const empty = () => new Float64Array(WEEKS).fill(Number.NaN);
