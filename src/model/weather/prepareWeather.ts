/** From a daily series, or from monthly normals, to the years the pipeline walks: one for each winter. */

import type { Scenario } from '../../notebook/schema.ts';
import type { WeatherDay, WeatherSeries } from '../../tables/weatherSeries.ts';
import { dateOf, dayNumber } from '../../units/days.ts';
import type { Problem } from '../../units/problem.ts';
import { type FrostClimate, frostClimateOf } from './frostDepth.ts';
import { prepare } from './prepareDays.ts';
import type { PreparedWeather } from './prepared.ts';
import { midwinterDay } from './season.ts';
import { makeYear } from './weatherGenerator.ts';

/** Days after midwinter a winter's weather must reach, so that melt, drainage and the start of growth are in it. */
const AFTER_MIDWINTER_DAYS = 150;

/** How many made-up years stand for many winters when there are only normals. */
export const MADE_UP_YEARS = 20;

/** One winter of a series, from its first day to the day before the next winter starts. */
export interface WinterInSeries {
  /** The year it starts in. */
  readonly year: number;
  readonly start: string;
  /** Days from the start without a break. */
  readonly days: number;
  /** To the day before the next winter starts. */
  readonly complete: boolean;
  /** Long enough to be computed: every winter day and the spring after it. */
  readonly usable: boolean;
  /** First day that is missing, where the winter is not complete. */
  readonly missing?: string;
}

type Farm = Scenario['farm'];
type ScenarioWeather = { readonly farm: Pick<Farm, 'winter' | 'weather' | 'place'> };

const foundBefore = new WeakMap<WeatherSeries, Map<string, readonly WinterInSeries[]>>();

/** Every winter the series touches, oldest first, with what is missing from it. */
export function wintersIn(series: WeatherSeries, scenario: ScenarioWeather): readonly WinterInSeries[] {
  const found = foundBefore.get(series) ?? new Map<string, readonly WinterInSeries[]>();
  foundBefore.set(series, found);
  const { winter, place } = scenario.farm;
  const key = `${winter.start} ${winter.end} ${place.latitudeDeg}`;
  let winters = found.get(key);
  if (!winters) {
    winters = findWinters(series, scenario);
    found.set(key, winters);
  }
  return winters;
}

function findWinters(series: WeatherSeries, { farm }: ScenarioWeather): WinterInSeries[] {
  const present = datesOf(series);
  const first = dayNumber(series.days[0].date);
  const last = dayNumber(series.days[series.days.length - 1].date);
  const winterDays = dayNumber(farm.winter.end) - dayNumber(farm.winter.start);
  const needed = (start: string) =>
    Math.max(winterDays, midwinterDay(start, farm.place.latitudeDeg) + AFTER_MIDWINTER_DAYS);
  const out: WinterInSeries[] = [];
  for (let year = Number(series.days[0].date.slice(0, 4)) - 1; ; year++) {
    const start = startIn(farm.winter.start, year);
    if (dayNumber(start) > last) return out;
    const whole = dayNumber(startIn(farm.winter.start, year + 1)) - dayNumber(start);
    if (dayNumber(start) + whole <= first) continue;
    let days = 0;
    while (days < whole && present.has(dateOf(dayNumber(start) + days))) days++;
    const complete = days === whole;
    out.push({
      year,
      start,
      days,
      complete,
      usable: days >= Math.min(whole, needed(start)),
      ...(complete ? {} : { missing: dateOf(dayNumber(start) + days) }),
    });
  }
}

/** Prepared weather of every usable winter of the series, oldest first; without a series, of the monthly normals. */
export function prepareWinters(
  series: WeatherSeries | undefined,
  scenario: ScenarioWeather,
): PreparedWeather[] {
  if (!series) return prepareNormals(scenario, 1);
  const byDate = datesOf(series);
  return wintersIn(series, scenario)
    .filter(({ usable }) => usable)
    .map((winter) => prepareOne(series, byDate, winter, scenario));
}

/** The winter that starts in `year`, or the last usable one; undefined where the series holds neither. */
export function prepareWinter(
  series: WeatherSeries,
  scenario: ScenarioWeather,
  year?: number,
): PreparedWeather | undefined {
  const usable = wintersIn(series, scenario).filter((w) => w.usable);
  const winter = usable.find((w) => w.year === year) ?? usable[usable.length - 1];
  return winter && prepareOne(series, datesOf(series), winter, scenario);
}

function prepareOne(
  series: WeatherSeries,
  byDate: ReadonlyMap<string, WeatherDay>,
  { year, start, days, complete }: WinterInSeries,
  scenario: ScenarioWeather,
): PreparedWeather {
  const from = dayNumber(start);
  const chosen = Array.from({ length: days }, (_, d) => byDate.get(dateOf(from + d)) as WeatherDay);
  const spring = complete ? '' : `, to ${dateOf(from + days - 1)}`;
  return {
    ...prepare(
      `${series.label} ${winterName(year, start)}${spring}`,
      start,
      chosen,
      scenario.farm.place.latitudeDeg,
    ),
    frost: frostOfSeries(series, scenario.farm.place.latitudeDeg),
  };
}

const frostBefore = new WeakMap<WeatherSeries, Map<boolean, FrostClimate>>();

/** Frost of all years of a series that are whole from midsummer on; what a year cut short shows would be too little. */
function frostOfSeries(series: WeatherSeries, latitudeDeg: number): FrostClimate {
  const south = latitudeDeg < 0;
  const known = frostBefore.get(series) ?? new Map<boolean, FrostClimate>();
  frostBefore.set(series, known);
  const before = known.get(south);
  if (before) return before;
  const byDate = datesOf(series);
  const first = Number(series.days[0].date.slice(0, 4)) - 1;
  const last = Number(series.days[series.days.length - 1].date.slice(0, 4));
  const years: number[][] = [];
  for (let year = first; year <= last; year++) {
    const from = dayNumber(`${year}-${south ? '01' : '07'}-01`);
    const days = Array.from({ length: 365 }, (_, d) => byDate.get(dateOf(from + d))?.meanC);
    const there = days.filter((meanC) => meanC !== undefined);
    if (there.length === days.length) years.push(there);
  }
  const climate = frostClimateOf(years.length > 0 ? years : [series.days.map(({ meanC }) => meanC)]);
  known.set(south, climate);
  return climate;
}

const dated = new WeakMap<WeatherSeries, ReadonlyMap<string, WeatherDay>>();

/** The days by date; kept with the series, since every winter and farm asks for it. */
function datesOf(series: WeatherSeries): ReadonlyMap<string, WeatherDay> {
  let byDate = dated.get(series);
  if (!byDate) {
    byDate = new Map(series.days.map((day) => [day.date, day]));
    dated.set(series, byDate);
  }
  return byDate;
}

/** `count` made-up years from the monthly normals of the farm, by its seed; none where it has no normals. */
export function prepareNormals({ farm }: ScenarioWeather, count: number): PreparedWeather[] {
  const { monthly, seed } = farm.weather;
  if (!monthly) return [];
  const { start } = farm.winter;
  const year = Number(start.slice(0, 4));
  const days = dayNumber(startIn(start, year + 1)) - dayNumber(start);
  const frost = frostClimateOf(
    Array.from({ length: MADE_UP_YEARS }, (_, k) =>
      summerFirst(makeYear(monthly, start, days, seed + k).meanC, start, farm.place.latitudeDeg),
    ),
  );
  return Array.from({ length: count }, (_, k) => {
    const made = makeYear(monthly, start, days, seed + k);
    const chosen = Array.from({ length: days }, (_, d) => ({
      date: dateOf(dayNumber(start) + d),
      rainMm: made.rainMm[d],
      minC: made.minC[d],
      maxC: made.maxC[d],
      meanC: made.meanC[d],
    }));
    const label = count > 1 ? `monthly normals, made-up days ${seed + k}` : 'monthly normals, made-up days';
    return { ...prepare(label, start, chosen, farm.place.latitudeDeg), frost };
  });
}

/** The same year turned round to begin at midsummer, so that no winter is cut in two. */
function summerFirst(meanC: ArrayLike<number>, start: string, latitudeDeg: number): number[] {
  const year = Array.from(meanC);
  const midsummer = (midwinterDay(start, latitudeDeg) + 183 + year.length) % year.length;
  return [...year.slice(midsummer), ...year.slice(0, midsummer)];
}

/** What stands against using the series for this farm: no winter in it, the wanted one missing, another unit. */
export function winterProblems(series: WeatherSeries, scenario: ScenarioWeather, file: string): Problem[] {
  const { winter, weather, place } = scenario.farm;
  const winters = wintersIn(series, scenario);
  const usable = winters.filter((w) => w.usable);
  const span = `${series.days[0].date} to ${series.days[series.days.length - 1].date}`;
  const problems: Problem[] = [];
  const coldest = coldestMonthC(series);
  if (Math.abs(place.latitudeDeg) > 40 && coldest !== null && coldest > 18)
    problems.push({
      what: 'the coldest month is warmer than this latitude allows; the temperatures look like Fahrenheit',
      file,
      key: 'minC',
      found: `a mean of ${coldest.toFixed(1)} in the coldest month at ${place.latitudeDeg}°`,
      allowed: 'degrees Celsius',
      todo: 'correct the unit, or the latitude of the farm',
    });
  if (usable.length === 0) {
    const best = [...winters].sort((a, b) => b.days - a.days)[0];
    problems.push({
      what: 'the file holds no whole winter of this farm',
      file,
      key: 'date',
      found: best?.missing ? `${span}; the winter from ${best.start} lacks ${best.missing}` : span,
      allowed: `every day from ${winter.start.slice(5)} to ${winter.end.slice(5)} and the spring after it, in one winter`,
      todo: 'use a longer file, fill the gap, or move the winter',
    });
  } else if (weather.year !== undefined && !usable.some((w) => w.year === weather.year)) {
    const wanted = winters.find((w) => w.year === weather.year);
    problems.push({
      what: `the winter that starts in ${weather.year} is not whole in the file`,
      file,
      key: 'farm.weather.year',
      found: wanted?.missing ? `first missing day ${wanted.missing}` : span,
      allowed: usable.map((w) => w.year).join(', '),
      todo: 'choose one of these winters',
    });
  }
  return problems;
}

/** What the keeper should know though the series can be used: how few winters, which were left out. */
export function winterNotes(series: WeatherSeries, scenario: ScenarioWeather, file: string): Problem[] {
  const winters = wintersIn(series, scenario);
  const usable = winters.filter((w) => w.usable);
  const notes: Problem[] = [];
  if (usable.length === 1)
    notes.push({
      what: 'the file holds one winter only',
      file,
      found: winterName(usable[0].year, usable[0].start),
      todo: 'one winter says little about the next; twenty are better',
    });
  const left = winters.filter((w) => !w.usable && w.days > 0);
  if (left.length > 0 && usable.length > 0)
    notes.push({
      what: 'winters left out because days are missing',
      file,
      found: left.map((w) => `${winterName(w.year, w.start)} from ${w.missing}`).join(', '),
    });
  return notes;
}

/** The winter's first day in another year; the 29th of February becomes the first of March. */
function startIn(start: string, year: number): string {
  const date = `${String(year).padStart(4, '0')}${start.slice(4)}`;
  return Number.isNaN(dayNumber(date)) ? `${date.slice(0, 4)}-03-01` : date;
}

const winterName = (year: number, start: string) =>
  start.slice(5) <= '01-15' ? String(year) : `${year}/${String((year + 1) % 100).padStart(2, '0')}`;

const coldestBefore = new WeakMap<WeatherSeries, number | null>();

/** Mean temperature of the coldest calendar month that has at least 20 days in the series. */
function coldestMonthC(series: WeatherSeries): number | null {
  const before = coldestBefore.get(series);
  if (before !== undefined) return before;
  const coldest = coldestMonthIn(series);
  coldestBefore.set(series, coldest);
  return coldest;
}

function coldestMonthIn(series: WeatherSeries): number | null {
  const sum = new Float64Array(12);
  const days = new Float64Array(12);
  for (const day of series.days) {
    const month = Number(day.date.slice(5, 7)) - 1;
    sum[month] += day.meanC;
    days[month]++;
  }
  let coldest: number | null = null;
  for (let m = 0; m < 12; m++)
    if (days[m] >= 20) coldest = Math.min(coldest ?? Number.POSITIVE_INFINITY, sum[m] / days[m]);
  return coldest;
}
