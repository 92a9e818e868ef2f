/**
 * Plausible days from twelve monthly normals: exact monthly rain, wet days in spells, a smooth course of
 * temperature with seeded noise. Made-up weather: it carries no record of any place.
 */
import { dayNumber, dayOf, partsOf } from '../../units/days.ts';
import { normals, stream } from '../../units/random.ts';

/** January to December. */
export interface Normals {
  readonly rainMm: readonly number[];
  readonly temperatureC: readonly number[];
  /** Mean difference of the day's highest and lowest temperature. */
  readonly rangeC: readonly number[];
  /** Days with rain or snow. */
  readonly wetDays: readonly number[];
}

export interface MadeDays {
  readonly rainMm: Float64Array;
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
  readonly meanC: Float64Array;
}

/** How lively the made-up days are; invented, chosen to look like stations between 45 and 60 degrees. */
export const LIVELINESS = {
  /** How strongly a day resembles the one before. */
  persistence: 0.75,
  /** Standard deviation of a day's mean, °C: in the warmest month, and what the coldest adds for each °C between them. */
  summerNoiseC: 2,
  winterNoisePerC: 0.08,
  /** How much likelier a wet day is after a wet one. */
  wetSpell: 2.5,
  /** Wet days have this share of the day's range of temperature, dry ones the rest so that the mean holds. */
  wetRangeShare: 0.7,
  /** How far a day's range strays from that, up or down. */
  rangeSpread: 0.5,
} as const;

interface MonthOfYear {
  readonly month: number;
  /** Index of its first day in the made-up days, and how many it has. */
  readonly from: number;
  readonly days: number;
}

/**
 * Days from `start` (ISO) on. Each calendar month keeps its rain sum, to rounding, and its mean temperature; a
 * month cut by the first day is made whole and dealt to both ends, so a year from any day keeps the year's sums.
 */
export function makeYear(climate: Normals, start: string, days: number, seed: number): MadeDays {
  const begin = dayNumber(start);
  const skip = partsOf(begin).day - 1;
  const first = begin - skip;
  const months = monthsFrom(first, skip + days);
  const whole = makeMonths(climate, months, seed, 12);
  const cut = (all: Float64Array) => all.slice(skip, skip + days);
  return { rainMm: cut(whole.rainMm), minC: cut(whole.minC), maxC: cut(whole.maxC), meanC: cut(whole.meanC) };
}

/** Calendar months from the day number of a first of a month until `days` days are covered. */
export function monthsFrom(first: number, days: number): MonthOfYear[] {
  const out: MonthOfYear[] = [];
  for (let from = 0; from < days || out.length === 0; ) {
    const { year, month } = partsOf(first + from);
    const length = partsOf(dayOf(year, month + 1, 0)).day;
    out.push({ month, from, days: length });
    from += length;
  }
  return out;
}

/**
 * Days of whole months. Months `repeat` apart share their draws of rain, which is how a cut month keeps its sum;
 * Infinity gives every month its own.
 */
export function makeMonths(
  climate: Normals,
  months: readonly MonthOfYear[],
  seed: number,
  repeat = Number.POSITIVE_INFINITY,
): MadeDays {
  const last = months[months.length - 1];
  const days = last.from + last.days;
  const rainMm = new Float64Array(days);
  months.forEach(({ month, from, days: length }, k) => {
    const name = `rain ${k % repeat} of ${month}`;
    rainMm.set(rainOfMonth(climate.rainMm[month], climate.wetDays[month], length, seed, name), from);
  });
  const meanC = temperatures(climate, months, days, seed);
  const minC = new Float64Array(days);
  const maxC = new Float64Array(days);
  const uniform = stream(seed, 'range');
  for (const { month, from, days: length } of months) {
    const wet = rainMm.subarray(from, from + length).reduce((n, mm) => n + (mm > 0 ? 1 : 0), 0);
    const wetShare = LIVELINESS.wetRangeShare;
    const dryShare = wet < length ? (length - wet * wetShare) / (length - wet) : 1;
    for (let d = from; d < from + length; d++) {
      const share = wet === length ? 1 : rainMm[d] > 0 ? wetShare : dryShare;
      const half = (climate.rangeC[month] * share * (1 + LIVELINESS.rangeSpread * (2 * uniform() - 1))) / 2;
      minC[d] = meanC[d] - half;
      maxC[d] = meanC[d] + half;
    }
  }
  return { rainMm, minC, maxC, meanC };
}

/** Rain of one month: `wetDays` of its days, drawn in spells, with exponential amounts scaled to the sum. */
function rainOfMonth(sumMm: number, wetDays: number, days: number, seed: number, name: string): Float64Array {
  const out = new Float64Array(days);
  if (!(sumMm > 0)) return out;
  const uniform = stream(seed, name);
  const count = Math.max(1, Math.min(days, Math.round(wetDays)));
  for (let placed = 0; placed < count; placed++) {
    let total = 0;
    const weight = (d: number) =>
      out[d] > 0 ? 0 : (d > 0 && out[d - 1] > 0) || out[d + 1] > 0 ? LIVELINESS.wetSpell : 1;
    for (let d = 0; d < days; d++) total += weight(d);
    let left = uniform() * total;
    let at = out.indexOf(0);
    for (let d = 0; d < days; d++) {
      if (weight(d) === 0) continue;
      at = d;
      left -= weight(d);
      if (left < 0) break;
    }
    out[at] = -Math.log(uniform());
  }
  const made = out.reduce((sum, mm) => sum + mm, 0);
  for (let d = 0; d < days; d++) out[d] *= sumMm / made;
  return out;
}

/** Daily means: noise that lasts some days on a course through month anchors, moved until every month's mean is right. */
function temperatures(
  climate: Normals,
  months: readonly MonthOfYear[],
  days: number,
  seed: number,
): Float64Array {
  const normal = normals(stream(seed, 'temperature'));
  const coldest = Math.min(...climate.temperatureC);
  const span = Math.max(...climate.temperatureC) - coldest;
  const { persistence, summerNoiseC, winterNoisePerC } = LIVELINESS;
  const noise = new Float64Array(days);
  let carried = normal();
  for (const { month, from, days: length } of months) {
    const warmth = span > 0 ? (climate.temperatureC[month] - coldest) / span : 0;
    const size = summerNoiseC + winterNoisePerC * span * (1 - warmth);
    for (let d = from; d < from + length; d++) {
      carried = persistence * carried + Math.sqrt(1 - persistence * persistence) * normal();
      noise[d] = size * carried;
    }
  }
  const anchors = months.map(({ month }) => climate.temperatureC[month]);
  const out = new Float64Array(days);
  // The anchors' influence on their own month is about three quarters, so each pass shrinks the error to a third or less.
  for (let pass = 0; pass < 60; pass++) {
    let worst = 0;
    courseThrough(months, anchors, out);
    months.forEach(({ month, from, days: length }, k) => {
      let sum = 0;
      for (let d = from; d < from + length; d++) sum += out[d] + noise[d];
      const error = climate.temperatureC[month] - sum / length;
      anchors[k] += error;
      worst = Math.max(worst, Math.abs(error));
    });
    if (worst < 1e-9) break;
  }
  courseThrough(months, anchors, out);
  for (let d = 0; d < days; d++) out[d] += noise[d];
  return out;
}

/** Straight lines between the middles of the months; level before the first and after the last. */
function courseThrough(months: readonly MonthOfYear[], anchors: readonly number[], out: Float64Array): void {
  const middle = (k: number) => months[k].from + (months[k].days - 1) / 2;
  let k = 0;
  for (let d = 0; d < out.length; d++) {
    while (k + 1 < months.length && middle(k + 1) <= d) k++;
    const share = k + 1 < months.length && d >= middle(k) ? (d - middle(k)) / (middle(k + 1) - middle(k)) : 0;
    out[d] = anchors[k] + share * ((anchors[k + 1] ?? anchors[k]) - anchors[k]);
  }
}
