/** What paddock and soil share: the weeks of a weather year seen by ammonium in the soil. No row keeps anything here. */
import type { ReadsOf } from '../engine/columns.ts';
import { WEEKS } from '../series.ts';
import { drainageToCome, leachedKg } from './nitrification.ts';

/** What the walk through the weeks needs of a row. */
export const FIELD_READS = [
  '@weather', 'weatherIndex', 'growthDay', 'growthBaseC', 'fieldCapacityM3PerM3', 'rootDepthMm', 'grassUptakeKgPerHaWeekC',
  'weekDrainageMm', 'weekTemperatureC', 'weekNitrifiedFraction',
] as const; // biome-ignore format: one list

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
  read: ReadsOf<(typeof FIELD_READS)[number]>,
  out: Float64Array,
): number {
  const at = i * WEEKS;
  const weatherDays = read['@weather'][read.weatherIndex[i]].days;
  const { weekDrainageMm, weekTemperatureC, weekNitrifiedFraction } = read;
  const growthWeek = read.growthDay[i] / 7;
  const base = read.growthBaseC[i];
  const uptakePerC = read.grassUptakeKgPerHaWeekC[i];
  let pool = poolKgPerHa;
  for (let k = 0, w = firstWeek % WEEKS; k < weeks; k++, w = w + 1 === WEEKS ? 0 : w + 1) {
    const drained = weekDrainageMm[at + w];
    const daysInWeek = Math.min(7, weatherDays - 7 * w);
    const known = daysInWeek > 0;
    const temperature = weekTemperatureC[at + w];
    drainage[k] = known ? drained : 0;
    left[k] = 1;
    if (known && w >= growthWeek && temperature > base) {
      const rest = Math.max(0, pool - uptakePerC * (temperature - base) * (daysInWeek / 7));
      left[k] = pool > 0 ? rest / pool : 0;
      pool = rest;
    }
    nitrified[k] = known ? weekNitrifiedFraction[at + w] : 0;
  }
  drainageToCome(drainage, left, weeks, toCome);
  const capacityPercent = 100 * read.fieldCapacityM3PerM3[i];
  return leachedKg(inflow, nitrified, toCome, weeks, capacityPercent, read.rootDepthMm[i] / 10, out);
}
