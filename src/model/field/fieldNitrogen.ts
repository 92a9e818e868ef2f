/** What field stages share: the weeks of a weather year seen by ammonium in the soil. No row keeps anything here. */
import { WEEKS } from '../stage.ts';
import { drainageToCome, leachedKg, nitrifiedFraction } from './nitrification.ts';

/** Columns the walk through the weeks needs, read at row i. */
export interface FieldColumns {
  readonly growthDay: Float64Array;
  readonly growthBaseC: Float64Array;
  readonly fieldCapacityM3PerM3: Float64Array;
  readonly rootDepthMm: Float64Array;
  readonly nitrifiedFractionPerWeek: Float64Array;
  readonly nitrificationPerC: Float64Array;
  readonly nitrificationReferenceC: Float64Array;
  readonly nitrificationFrozenFractionPerWeek: Float64Array;
  readonly grassUptakeKgPerHaWeekC: Float64Array;
}

export const FIELD_READS = [
  'growthDay', 'growthBaseC', 'fieldCapacityM3PerM3', 'rootDepthMm', 'nitrifiedFractionPerWeek', 'nitrificationPerC',
  'nitrificationReferenceC', 'nitrificationFrozenFractionPerWeek', 'grassUptakeKgPerHaWeekC',
] as const; // biome-ignore format: one list

export interface FieldTracks {
  readonly weekDrainageMm: Float64Array;
  readonly weekTemperatureC: Float64Array;
  readonly weekFrozenDays: Float64Array;
}

export const FIELD_TRACKS = ['weekDrainageMm', 'weekTemperatureC', 'weekFrozenDays'] as const;

const drainage = new Float64Array(WEEKS);
const left = new Float64Array(WEEKS);
const toCome = new Float64Array(WEEKS);
const nitrified = new Float64Array(WEEKS);

/**
 * Nitrogen leached of the ammonium in `inflow` (kg, by week from `firstWeek` on), kg, and its split by the week of
 * nitrification in `out`. The year is walked for WEEKS weeks from `firstWeek`; past its end it starts again, so
 * that manure spread in autumn meets a winter's drainage too. In every week after growth has started grass takes
 * nitrogen by warmth from the `poolKgPerHa` it finds, and what it took no longer leaches: a small load is gone in
 * weeks, a heavy one lies open longer. What is taken does not depend on rain. Weeks the weather does not reach
 * drain nothing.
 */
export function leachedFromWeekKg(
  i: number,
  firstWeek: number,
  weeks: number,
  inflow: Float64Array,
  poolKgPerHa: number,
  weatherDays: number,
  read: FieldColumns,
  tracks: FieldTracks,
  out: Float64Array,
): number {
  const at = i * WEEKS;
  const growthWeek = read.growthDay[i] / 7;
  const base = read.growthBaseC[i];
  const uptakePerC = read.grassUptakeKgPerHaWeekC[i];
  let pool = poolKgPerHa;
  const perWeek = read.nitrifiedFractionPerWeek[i];
  const perC = read.nitrificationPerC[i];
  const reference = read.nitrificationReferenceC[i];
  const frozenFraction = read.nitrificationFrozenFractionPerWeek[i];
  for (let k = 0; k < weeks; k++) {
    const w = (firstWeek + k) % WEEKS;
    const drained = tracks.weekDrainageMm[at + w];
    const daysInWeek = Math.min(7, weatherDays - 7 * w);
    const known = daysInWeek > 0;
    const temperature = tracks.weekTemperatureC[at + w];
    drainage[k] = known ? drained : 0;
    left[k] = 1;
    if (known && w >= growthWeek && temperature > base) {
      const rest = Math.max(0, pool - uptakePerC * (temperature - base) * (daysInWeek / 7));
      left[k] = pool > 0 ? rest / pool : 0;
      pool = rest;
    }
    nitrified[k] = known
      ? (daysInWeek / 7) *
        nitrifiedFraction(
          temperature,
          tracks.weekFrozenDays[at + w] / daysInWeek,
          perWeek,
          perC,
          reference,
          frozenFraction,
        )
      : 0;
  }
  drainageToCome(drainage, left, weeks, toCome);
  const capacityPercent = 100 * read.fieldCapacityM3PerM3[i];
  return leachedKg(inflow, nitrified, toCome, weeks, capacityPercent, read.rootDepthMm[i] / 10, out);
}
