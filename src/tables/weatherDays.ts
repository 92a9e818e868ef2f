/**
 * From raw days to a series: sorted, each day once, plausible, short gaps filled. Two different days are never
 * averaged. The rule for gaps: at most five days in a row; temperature runs straight from the day before to the
 * day after; rain takes the mean daily rain this file measured in that calendar month, so sums keep their level.
 */
import { dateOf, dayNumber, partsOf } from '../units/days.ts';
import type { Problem } from '../units/problem.ts';
import {
  ALLOWED,
  type Gap,
  LONGEST_FILLED_GAP,
  MEASURES,
  type Measure,
  type RawDay,
  shorten,
  type WeatherDay,
  type WeatherReading,
} from './weatherSeries.ts';

const FIRST_YEAR = '1900';
const LAST_YEAR = '2100';

export interface SeriesOptions {
  readonly label: string;
  readonly station?: string;
}

/** The series of a file's days, or what is wrong with them. Nothing is thrown. */
export function toSeries(
  file: string,
  raw: readonly RawDay[],
  { label, station }: SeriesOptions,
): WeatherReading {
  const sorted = [...raw].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.line - b.line));
  const problems = [...outOfTime(file, sorted), ...wrongUnits(file, sorted), ...duplicates(file, sorted)];
  if (problems.length === 0) problems.push(...implausible(file, sorted));
  if (sorted.length === 0 && problems.length === 0)
    problems.push({ what: 'no day could be read', file, todo: 'choose a file with one day a line' });
  if (problems.length > 0) return { series: null, problems: shorten(problems), notes: [] };

  const first = dayNumber(sorted[0].date);
  const count = dayNumber(sorted[sorted.length - 1].date) - first + 1;
  const columns = Object.fromEntries(
    MEASURES.map((key) => [key, new Float64Array(count).fill(Number.NaN)]),
  ) as Record<Measure, Float64Array>;
  for (const day of sorted) {
    const at = dayNumber(day.date) - first;
    for (const key of MEASURES) columns[key][at] = day[key] ?? Number.NaN;
  }
  for (let at = 0; at < count; at++)
    if (Number.isNaN(columns.meanC[at])) columns.meanC[at] = (columns.minC[at] + columns.maxC[at]) / 2;

  // A mean worked out from the extremes has no gaps of its own.
  const ownMean = sorted.some((day) => day.meanC !== null);
  const filled: Gap[] = [];
  const gaps: Gap[] = [];
  const rainOfMonth = meanRain(columns.rainMm, first);
  for (const key of MEASURES) {
    const values = columns[key];
    for (let from = 0; from < count; from++) {
      if (!Number.isNaN(values[from])) continue;
      let to = from;
      while (to + 1 < count && Number.isNaN(values[to + 1])) to++;
      const gap = { key, from: dateOf(first + from), to: dateOf(first + to), days: to - from + 1 };
      const known = from > 0 && to + 1 < count;
      if (gap.days <= LONGEST_FILLED_GAP && (key === 'rainMm' ? rainOfMonth !== null : known)) {
        for (let at = from; at <= to; at++)
          values[at] =
            key === 'rainMm' && rainOfMonth
              ? rainOfMonth(first + at)
              : betweenKnown(
                  key,
                  values[from - 1] + ((values[to + 1] - values[from - 1]) * (at - from + 1)) / (gap.days + 1),
                  columns,
                  at,
                );
        if (key !== 'meanC' || ownMean) filled.push(gap);
      } else if (key !== 'meanC' || ownMean) gaps.push(gap);
      from = to;
    }
  }
  const days: WeatherDay[] = [];
  for (let at = 0; at < count; at++) {
    const [rainMm, minC, maxC, meanC] = MEASURES.map((key) => columns[key][at]);
    if (Number.isFinite(rainMm + minC + maxC + meanC))
      days.push({ date: dateOf(first + at), rainMm, minC, maxC, meanC });
  }
  if (days.length === 0) {
    const none = MEASURES.find((key) => columns[key].every(Number.isNaN)) ?? 'rainMm';
    return {
      series: null,
      notes: [],
      problems: [
        {
          what: 'no day has rain, lowest and highest temperature together',
          file,
          key: none,
          found: `nothing measured in ${none}`,
          allowed: 'all three on the same days',
          todo: 'choose a file that has them, or join the files of one station first',
        },
      ],
    };
  }
  return {
    series: { label, ...(station ? { station } : {}), days, filled, gaps },
    problems: [],
    notes: gapNotes(file, filled, gaps),
  };
}

/** What is filled gives way to what was measured on that day: least, mean and greatest stay in their order. */
function betweenKnown(
  key: Measure,
  filled: number,
  { minC, maxC }: Readonly<Record<Measure, Float64Array>>,
  at: number,
): number {
  const atLeast = key === 'minC' || Number.isNaN(minC[at]) ? filled : Math.max(filled, minC[at]);
  return key === 'maxC' || Number.isNaN(maxC[at]) ? atLeast : Math.min(atLeast, maxC[at]);
}

/** A year that is no year of weather is a mark for "none", and would ask for thousands of empty years in between. */
function outOfTime(file: string, sorted: readonly RawDay[]): Problem[] {
  return sorted
    .filter(({ date }) => date.slice(0, 4) < FIRST_YEAR || date.slice(0, 4) > LAST_YEAR)
    .map(({ date, line }) => ({
      what: 'the day lies outside the years of weather',
      file,
      line,
      key: 'date',
      found: date,
      allowed: `${FIRST_YEAR} to ${LAST_YEAR}`,
      todo: 'take the line out if it marks missing days',
    }));
}

/** Mean daily rain by calendar month over the measured days; null where nothing was measured. */
function meanRain(rain: Float64Array, first: number): ((day: number) => number) | null {
  const sum = new Float64Array(13);
  const days = new Float64Array(13);
  rain.forEach((mm, at) => {
    if (Number.isNaN(mm)) return;
    const { month } = partsOf(first + at);
    for (const k of [month, 12]) {
      sum[k] += mm;
      days[k]++;
    }
  });
  if (days[12] === 0) return null;
  return (day) => {
    const { month } = partsOf(day);
    return days[month] > 0 ? sum[month] / days[month] : sum[12] / days[12];
  };
}

function duplicates(file: string, sorted: readonly RawDay[]): Problem[] {
  const problems: Problem[] = [];
  let repeated = 0;
  for (let k = 1; k < sorted.length; k++) {
    if (sorted[k].date !== sorted[k - 1].date) continue;
    repeated++;
    problems.push({
      what: 'the day is there twice',
      file,
      line: sorted[k].line,
      key: 'date',
      found: `${sorted[k].date}, first on line ${sorted[k - 1].line}`,
      allowed: 'each day once',
      todo: 'keep the right one; they are not averaged',
    });
  }
  if (repeated <= sorted.length / 3) return problems;
  return [
    {
      what: 'most days are there several times',
      file,
      key: 'date',
      found: `${sorted.length} lines for ${sorted.length - repeated} days`,
      allowed: 'one line a day of one station',
      todo: 'hourly values need to be made into days first; of several stations keep one',
    },
  ];
}

/** Whole columns in another unit, told once instead of line by line. */
function wrongUnits(file: string, sorted: readonly RawDay[]): Problem[] {
  const problems: Problem[] = [];
  const highs = sorted.map((day) => day.maxC).filter((c) => c !== null);
  // In a cold place the days of Fahrenheit may all pass, and only the nights be too warm.
  const hot = sorted.filter(
    ({ minC, maxC }) => (maxC ?? 0) > ALLOWED.maxC.to || (minC ?? 0) > ALLOWED.minC.to,
  ).length;
  const highest = Math.max(...highs.slice(0, 40_000), Number.NEGATIVE_INFINITY);
  if (highs.length > 0 && hot > Math.max(1, highs.length / 200))
    problems.push(
      highest > 140
        ? unit(
            file,
            'maxC',
            'the temperatures look like tenths of a degree',
            `highest ${highest}`,
            'degrees Celsius',
            'divide by ten',
          )
        : unit(
            file,
            'maxC',
            'the temperatures look like Fahrenheit',
            `highest ${highest}, ${hot} days above ${ALLOWED.maxC.to} or nights above ${ALLOWED.minC.to}`,
            'degrees Celsius',
            'convert them: (°F − 32) / 1.8',
          ),
    );
  const wet = sorted.map((day) => day.rainMm).filter((mm) => mm !== null);
  const mean = wet.reduce((sum, mm) => sum + mm, 0) / Math.max(1, wet.length);
  if (wet.length >= 30 && mean > 25)
    problems.push(
      unit(
        file,
        'rainMm',
        'the rain looks like tenths of a millimetre',
        `mean of ${mean.toFixed(1)} a day`,
        'millimetres',
        'divide by ten',
      ),
    );
  return problems;
}

const unit = (
  file: string,
  key: string,
  what: string,
  found: string,
  allowed: string,
  todo: string,
): Problem => ({ what, file, key, found, allowed, todo });

function implausible(file: string, sorted: readonly RawDay[]): Problem[] {
  const problems: Problem[] = [];
  for (const day of sorted) {
    for (const key of MEASURES) {
      const value = day[key];
      const { from, to, unit: u } = ALLOWED[key];
      if (value !== null && (value < from || value > to))
        problems.push({
          what: 'the value cannot be right',
          file,
          line: day.line,
          key,
          found: String(value),
          allowed: `${from} to ${to} ${u}, or an empty cell where nothing was measured`,
          todo: 'look at the unit of the column, and empty the cell if the reading is false',
        });
    }
    if (day.minC !== null && day.maxC !== null && day.minC > day.maxC)
      problems.push({
        what: 'the lowest temperature is above the highest',
        file,
        line: day.line,
        key: 'minC',
        found: `${day.minC} and ${day.maxC}`,
        allowed: 'minC ≤ maxC',
        todo: 'look whether the columns are swapped',
      });
  }
  return problems;
}

function gapNotes(file: string, filled: readonly Gap[], gaps: readonly Gap[]): Problem[] {
  const say = ({ key, from, to, days }: Gap) => `${key} ${from}${days > 1 ? ` to ${to}` : ''}`;
  const list = (all: readonly Gap[]) =>
    all.slice(0, 5).map(say).join(', ') + (all.length > 5 ? ` and ${all.length - 5} more` : '');
  const notes: Problem[] = [];
  if (filled.length > 0)
    notes.push({
      what: `gaps of at most ${LONGEST_FILLED_GAP} days were filled: temperature straight across, rain with the mean of its month in this file`,
      file,
      found: list(filled),
    });
  if (gaps.length > 0)
    notes.push({
      what: 'longer gaps, and temperatures missing at either end, were not filled; winters that touch them are left out',
      file,
      found: list(gaps),
      allowed: `gaps of at most ${LONGEST_FILLED_GAP} days`,
      todo: 'fill them from a neighbouring station if you need these winters',
    });
  return notes;
}
