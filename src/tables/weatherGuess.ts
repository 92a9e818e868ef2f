/**
 * What a foreign daily file seems to hold: which column is what, in which unit, and why. The guess is shown to
 * the keeper, who may correct it, and only then applied.
 */
import { dayNumber } from '../units/days.ts';
import { DATE_ORDERS, type DateOrder, delimiterOf, isoDateOf, numberOf, splitCells } from './weatherCells.ts';
import type { TextLine } from './weatherText.ts';

export const ROLES = ['date', 'year', 'month', 'day', 'rain', 'min', 'max', 'mean', 'station'] as const;
export type Role = (typeof ROLES)[number];
export const RAIN_UNITS = ['mm', 'tenthsMm', 'inch', 'cm'] as const;
export type RainUnit = (typeof RAIN_UNITS)[number];
export const TEMPERATURE_UNITS = ['celsius', 'tenthsCelsius', 'fahrenheit', 'kelvin'] as const;
export type TemperatureUnit = (typeof TEMPERATURE_UNITS)[number];

export interface WeatherGuess {
  readonly delimiter: string;
  /** Line the names of the columns stand on; 0 where there is none. */
  readonly headerLine: number;
  readonly names: readonly string[];
  /** Column of each role, 0-based; absent where none was found. */
  readonly columns: Partial<Readonly<Record<Role, number>>>;
  readonly dateOrder: DateOrder;
  readonly decimalComma: boolean;
  readonly rainUnit: RainUnit;
  readonly temperatureUnit: TemperatureUnit;
  /** Cells that stand for "not measured", lower case. */
  readonly missing: readonly string[];
  /** One sentence for each thing guessed. */
  readonly reasons: readonly string[];
}

/** Names by which services call their columns, most telling first; matched on letters and digits alone. */
const NAMED: readonly (readonly [Role, RegExp])[] = [
  ['station', /^(station|stationsid|stationid|staid|stnid|climateid|stationname|name)$/],
  ['year', /^(year|yyyy|jahr|aasta|ar)$/],
  ['month', /^(month|mm|mon|monat|kuu|manad)$/],
  ['day', /^(day|dd|tag|paev|dag)$/],
  ['date', /^(date|datetime|day|mess?datum|datum|kuupaev|yyyymmdd|time|timestamp|localdate|obsdate)/],
  ['max', /(tmax|maxt|tempmax|maxtemp|temperaturemax|txk|^tx$|^tx\d|hogsta|maximumtemp|hightemp|maxc$|^max)/],
  ['min', /(tmin|mint|tempmin|mintemp|temperaturemin|tnk|^tn$|^tn\d|lagsta|minimumtemp|lowtemp|minc$|^min)/],
  ['mean', /(tmean|tavg|meantemp|tempmean|avgtemp|temperaturemean|tmk|^tg$|medel|averagetemp|meanc$)/],
  // Precipitation before rain: where both stand, rain leaves the snow out.
  ['rain', /(precip|prcp|rsk|^rr$|^rr\d|nederbord|niederschlag|sademe|sadu|neerslag|^rd$|nedbor)/],
  ['rain', /rain/],
];

const MISSING_SIGNS = [
  '-999',
  '-999.0',
  '-999,0',
  '-9999',
  '-9999.0',
  '-99.9',
  '-99,9',
  '9999',
  '999.9',
  'na',
  'n/a',
  'nan',
  'null',
  '-',
  '--',
  'm',
  '...',
  '///',
];
const plainName = (name: string) =>
  name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/\(.*?\)|\[.*?\]/g, '')
    .replace(/[^a-z0-9]/g, '');

/** Guesses columns, units and the writing of dates and numbers from the header and up to 4,000 lines. */
export function guessWeather(lines: readonly TextLine[]): WeatherGuess {
  const reasons: string[] = [];
  const sample = lines.slice(0, 4000);
  const delimiter = delimiterOf(sample.map(({ text }) => text));
  const rows = sample.map(({ line, text }) => ({ line, cells: splitCells(text, delimiter) }));
  const header = findHeader(rows);
  const names = header?.cells ?? [];
  reasons.push(header ? `line ${header.line} names the columns` : 'no line names the columns');
  const body = rows
    .filter(({ line, cells }) => line > (header?.line ?? 0) && cells.length > 1)
    .map(({ cells }) => cells);
  const decimalComma =
    delimiter !== ',' && body.some((cells) => cells.some((cell) => /^-?\d+,\d+$/.test(cell)));
  if (decimalComma) reasons.push('numbers are written with a decimal comma');

  const columns: Partial<Record<Role, number>> = {};
  for (const [role, pattern] of NAMED) {
    if (columns[role] !== undefined) continue;
    const at = names.findIndex(
      (name, k) => !Object.values(columns).includes(k) && !isFlag(name) && pattern.test(plainName(name)),
    );
    if (at < 0) continue;
    columns[role] = at;
    reasons.push(`${role} is column ${at + 1}, by its name “${names[at]}”`);
  }
  if (
    columns.date === undefined &&
    !(columns.year !== undefined && columns.month !== undefined && columns.day !== undefined)
  ) {
    const at = columnOfDates(body);
    if (at !== undefined) {
      columns.date = at;
      reasons.push(`date is column ${at + 1}: its cells are dates`);
    }
  }
  // A date beside its parts is enough.
  if (columns.date !== undefined) for (const part of ['year', 'month', 'day'] as const) delete columns[part];

  const missing = new Set(MISSING_SIGNS);
  const values = (role: Role): number[] =>
    columns[role] === undefined
      ? []
      : body
          .map((cells) => numberOf(cells[columns[role] as number] ?? '', decimalComma, missing))
          .filter((n): n is number => n !== null && !Number.isNaN(n));
  const nameOf = (...roles: Role[]) =>
    roles
      .map((role) => (columns[role] === undefined ? '' : (names[columns[role] as number] ?? '')))
      .join(' ');
  const rain = rainUnitOf(nameOf('rain'), values('rain'));
  const temperature = temperatureUnitOf(
    nameOf('max', 'min', 'mean'),
    [...values('max'), ...values('min')],
    values('max'),
  );
  const dates = columns.date === undefined ? [] : body.map((cells) => cells[columns.date as number] ?? '');
  const order = dateOrderOf(dates);
  reasons.push(rain.reason, temperature.reason, order.reason);
  return {
    delimiter,
    headerLine: header?.line ?? 0,
    names,
    columns,
    dateOrder: order.order,
    decimalComma,
    rainUnit: rain.unit,
    temperatureUnit: temperature.unit,
    missing: MISSING_SIGNS,
    reasons: reasons.filter((reason) => reason !== ''),
  };
}

/** Columns beside the values: quality, flags, indicators, station details. */
const isFlag = (name: string) => /flag|quality|attrib|^q_|^qn|\bind\b|kvalitet|snow|time ?zone/i.test(name);

/** The last line of names before the first line that is mostly numbers. */
function findHeader(rows: readonly { line: number; cells: readonly string[] }[]) {
  const width = mode(rows.map(({ cells }) => cells.length));
  const first = rows.findIndex(
    ({ cells }) =>
      cells.length === width &&
      cells.some((cell) => /^-?\d+([.,]\d+)?$/.test(cell)) &&
      cells.filter((cell) => /^[\s"]*[A-Za-zÀ-ž]/.test(cell)).length < cells.length / 2,
  );
  for (let k = first - 1; k >= 0; k--) {
    const { cells } = rows[k];
    if (
      cells.length >= Math.min(width, 3) &&
      cells.some((cell) => /[A-Za-z]/.test(cell)) &&
      Math.abs(cells.length - width) <= 2
    )
      return rows[k];
  }
  return undefined;
}

function mode(counts: readonly number[]): number {
  const seen = new Map<number, number>();
  for (const n of counts) seen.set(n, (seen.get(n) ?? 0) + 1);
  return [...seen].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}

function columnOfDates(body: readonly (readonly string[])[]): number | undefined {
  const width = mode(body.map((cells) => cells.length));
  for (let k = 0; k < width; k++) {
    const dates = body.filter((cells) =>
      DATE_ORDERS.some((order) => !Number.isNaN(dayNumber(isoDateOf(cells[k] ?? '', order) ?? ''))),
    ).length;
    if (dates > body.length * 0.9) return k;
  }
  return undefined;
}

function rainUnitOf(name: string, values: readonly number[]): { unit: RainUnit; reason: string } {
  if (values.length === 0) return { unit: 'mm', reason: '' };
  const highest = values.reduce((a, b) => Math.max(a, b), 0);
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  if (/inch|\(in\)|_in\b/i.test(name))
    return { unit: 'inch', reason: `rain in inches, by the name “${name.trim()}”` };
  if (/0[.,]1 ?mm|tenth/i.test(name))
    return { unit: 'tenthsMm', reason: `rain in tenths of a millimetre, by the name “${name.trim()}”` };
  if (/\(cm\)|_cm\b/i.test(name))
    return { unit: 'cm', reason: `rain in centimetres, by the name “${name.trim()}”` };
  if (/mm/i.test(name)) return { unit: 'mm', reason: `rain in millimetres, by the name “${name.trim()}”` };
  if (values.every(Number.isInteger) && mean > 10)
    return {
      unit: 'tenthsMm',
      reason: `rain in tenths of a millimetre: whole numbers with a mean of ${mean.toFixed(1)} a day`,
    };
  if (highest < 8 && mean < 0.3)
    return {
      unit: 'inch',
      reason: `rain in inches: the wettest day is ${highest}, the mean ${mean.toFixed(2)}`,
    };
  return {
    unit: 'mm',
    reason: `rain taken as millimetres: the wettest day is ${highest}, the mean ${mean.toFixed(1)}`,
  };
}

function temperatureUnitOf(
  name: string,
  values: readonly number[],
  highs: readonly number[],
): { unit: TemperatureUnit; reason: string } {
  if (values.length === 0) return { unit: 'celsius', reason: '' };
  const highest = values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const lowest = values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const span = `${lowest} to ${highest}`;
  if (/fahrenheit|°\s?f|\(f\)|degf|_f\b/i.test(name))
    return { unit: 'fahrenheit', reason: `temperature in °F, by the name “${name.trim()}”` };
  if (/0[.,]1 ?°?c|tenth/i.test(name))
    return { unit: 'tenthsCelsius', reason: `temperature in tenths of °C, by the name “${name.trim()}”` };
  if (/°\s?c|\(c\)|celsius|degc|_c\b/i.test(name))
    return { unit: 'celsius', reason: `temperature in °C, by the name “${name.trim()}”` };
  if (lowest > 200) return { unit: 'kelvin', reason: `temperature in kelvin: the values run from ${span}` };
  if (values.every(Number.isInteger) && (highest > 140 || lowest < -80))
    return { unit: 'tenthsCelsius', reason: `temperature in tenths of °C: whole numbers from ${span}` };
  const hot = highs.filter((t) => t > 50).length;
  if (hot > highs.length / 200)
    return {
      unit: 'fahrenheit',
      reason: `temperature in °F: ${hot} of ${highs.length} days would be above 50 °C`,
    };
  return { unit: 'celsius', reason: `temperature taken as °C: the values run from ${span}` };
}

function dateOrderOf(cells: readonly string[]): { order: DateOrder; reason: string } {
  const parts = cells
    .map((cell) => /^(\d{1,2})[-/.](\d{1,2})[-/.]\d{4}/.exec(cell))
    .filter((m) => m !== null);
  if (parts.length === 0) return { order: 'ymd', reason: '' };
  if (parts.some((m) => Number(m[1]) > 12))
    return { order: 'dmy', reason: 'dates are day first: a first part is above 12' };
  if (parts.some((m) => Number(m[2]) > 12))
    return { order: 'mdy', reason: 'dates are month first: a second part is above 12' };
  const steps = (order: DateOrder) => {
    const days = cells.map((cell) => dayNumber(isoDateOf(cell, order) ?? ''));
    return days.filter((day, k) => k > 0 && day - days[k - 1] === 1).length;
  };
  const order = steps('mdy') > steps('dmy') ? 'mdy' : 'dmy';
  return {
    order,
    reason: `dates read ${order === 'dmy' ? 'day' : 'month'} first: so more of them follow each other`,
  };
}
