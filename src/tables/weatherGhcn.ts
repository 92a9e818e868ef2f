/**
 * GHCN-Daily of the US National Centers for Environmental Information: fixed-width `.dly` (a month a line) and
 * CSV (a day a line). Values are tenths; -9999 is missing; a value with a quality flag failed a check and is
 * treated as not measured; a trace of rain is 0.
 */
import type { Problem } from '../units/problem.ts';
import { splitCells } from './weatherCells.ts';
import { toSeries } from './weatherDays.ts';
import type { Measure, RawDay, WeatherReading } from './weatherSeries.ts';
import type { TextLine } from './weatherText.ts';

const ELEMENTS: Readonly<Record<string, Measure>> = {
  PRCP: 'rainMm',
  TMIN: 'minC',
  TMAX: 'maxC',
  TAVG: 'meanC',
};
const MISSING = -9999;
const DLY = /^[A-Z]{2}[A-Z0-9_-]{9}\d{4}(0[1-9]|1[0-2])[A-Z0-9]{4}/;

/** Whether the line is one of the fixed-width form. */
export function looksDly(line: string): boolean {
  return DLY.test(line) && line.length > 21;
}

/** Whether the header is one of the CSV form. */
export function looksGhcnCsv(header: string): boolean {
  const names = splitCells(header, ',').map((name) => name.toUpperCase());
  return (
    names.includes('STATION') &&
    names.includes('DATE') &&
    ['PRCP', 'TMAX', 'TMIN'].every((name) => names.includes(name))
  );
}

type Values = { -readonly [K in Measure]: number | null };
interface DayOfStation extends Values {
  line: number;
}

/** Reads the fixed-width form. `station` picks one where the file holds several. */
export function readDly(file: string, lines: readonly TextLine[], station?: string): WeatherReading {
  const stations = new Map<string, Map<string, DayOfStation>>();
  const problems: Problem[] = [];
  const flags = { failed: 0 };
  for (const { line, text } of lines) {
    if (!looksDly(text)) {
      problems.push({
        what: 'not a line of the fixed-width form',
        file,
        line,
        found: text.slice(0, 30),
        allowed: 'station, year, month, element, 31 values of eight characters',
        todo: 'load the file again; a part may be cut off',
      });
      continue;
    }
    const id = text.slice(0, 11);
    const month = text.slice(11, 15).concat('-', text.slice(15, 17));
    const key = ELEMENTS[text.slice(17, 21)];
    const days = stations.get(id) ?? new Map<string, DayOfStation>();
    stations.set(id, days);
    if (!key) continue;
    for (let d = 0; d < 31; d++) {
      const field = text.slice(21 + d * 8, 29 + d * 8);
      const written = field.slice(0, 5).trim();
      if (written === '' || Number(written) === MISSING) continue;
      if (!/^-?\d+$/.test(written)) {
        problems.push({
          what: 'not a whole number',
          file,
          line,
          key: `${text.slice(17, 21)} day ${d + 1}`,
          found: written,
          allowed: 'tenths as whole numbers, -9999 for missing',
        });
        continue;
      }
      const date = `${month}-${String(d + 1).padStart(2, '0')}`;
      const day = days.get(date) ?? emptyDay(line);
      days.set(date, day);
      if (day[key] !== null)
        problems.push({
          what: 'the value is there twice',
          file,
          line,
          key: `${text.slice(17, 21)} ${date}`,
          todo: 'keep the right line',
        });
      day[key] = accepted(Number(written) / 10, field.slice(5, 6), field.slice(6, 7), key, flags);
    }
  }
  return seriesOfOne(file, stations, problems, flags, station);
}

/** Reads the CSV form, with or without `…_ATTRIBUTES` columns. Whole numbers throughout are tenths. */
export function readGhcnCsv(file: string, lines: readonly TextLine[], station?: string): WeatherReading {
  const names = splitCells(lines[0].text, ',').map((name) => name.toUpperCase());
  const rows = lines.slice(1).map(({ line, text }) => ({ line, cells: splitCells(text, ',') }));
  const at = (name: string) => names.indexOf(name);
  const elements = Object.keys(ELEMENTS).filter((name) => at(name) >= 0);
  const written = rows.flatMap(({ cells }) => elements.map((name) => cells[at(name)] ?? ''));
  const tenths = !written.some((cell) => cell.includes('.'));
  const stations = new Map<string, Map<string, DayOfStation>>();
  const problems: Problem[] = [];
  const flags = { failed: 0 };
  for (const { line, cells } of rows) {
    const id = cells[at('STATION')] ?? '';
    const date = cells[at('DATE')] ?? '';
    const days = stations.get(id) ?? new Map<string, DayOfStation>();
    stations.set(id, days);
    const day = emptyDay(line);
    for (const name of elements) {
      const cell = cells[at(name)] ?? '';
      if (cell === '' || Number(cell) === MISSING) continue;
      if (!/^-?\d+(\.\d+)?$/.test(cell)) {
        problems.push({
          what: 'not a number',
          file,
          line,
          key: name,
          found: cell,
          allowed: 'a number, or an empty cell',
        });
        continue;
      }
      const [measurement = '', quality = ''] = (cells[at(`${name}_ATTRIBUTES`)] ?? '')
        .split(',')
        .map((flag) => flag.trim());
      day[ELEMENTS[name]] = accepted(
        tenths ? Number(cell) / 10 : Number(cell),
        measurement,
        quality,
        ELEMENTS[name],
        flags,
      );
    }
    // A second line of the day stays apart, so that it is told and not overwritten.
    days.set(days.has(date) ? `${date}#${line}` : date, day);
  }
  return seriesOfOne(file, stations, problems, flags, station);
}

const emptyDay = (line: number): DayOfStation => ({
  line,
  rainMm: null,
  minC: null,
  maxC: null,
  meanC: null,
});

function accepted(
  value: number,
  measurement: string,
  quality: string,
  key: Measure,
  flags: { failed: number },
): number | null {
  if (quality.trim() !== '') {
    flags.failed++;
    return null;
  }
  return key === 'rainMm' && measurement === 'T' ? 0 : value;
}

function seriesOfOne(
  file: string,
  stations: ReadonlyMap<string, ReadonlyMap<string, DayOfStation>>,
  problems: readonly Problem[],
  flags: { failed: number },
  wanted?: string,
): WeatherReading {
  const ids = [...stations.keys()];
  if (problems.length > 0) return { series: null, problems, notes: [] };
  const id = wanted ?? ids[0];
  const days = stations.get(id);
  if (ids.length > 1 && wanted === undefined)
    return { series: null, problems: [severalStations(file, ids)], notes: [] };
  if (!days)
    return {
      series: null,
      problems: [
        { what: 'the station is not in the file', file, key: 'station', found: id, allowed: ids.join(', ') },
      ],
      notes: [],
    };
  const raw: RawDay[] = [...days].map(([date, day]) => ({ date: date.slice(0, 10), ...day }));
  const reading = toSeries(file, raw, { label: id, station: id });
  if (flags.failed === 0) return reading;
  const note = {
    what: 'values that failed a quality check of the source were treated as not measured',
    file,
    found: `${flags.failed} values`,
  };
  return { ...reading, notes: [note, ...reading.notes] };
}

/** One file, several stations: which to take is the reader's choice, never a mean. */
export function severalStations(file: string, ids: readonly string[]): Problem {
  return {
    what: 'the file holds several stations',
    file,
    key: 'station',
    found: ids.slice(0, 8).join(', ') + (ids.length > 8 ? ` and ${ids.length - 8} more` : ''),
    allowed: 'one station',
    todo: 'choose one; they are not averaged',
  };
}
