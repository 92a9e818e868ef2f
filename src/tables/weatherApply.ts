/** A foreign daily file read by a guess, as the keeper left it. */
import { dayNumber } from '../units/days.ts';
import type { Problem } from '../units/problem.ts';
import { isoDateOf, numberOf, splitCells } from './weatherCells.ts';
import { toSeries } from './weatherDays.ts';
import { severalStations } from './weatherGhcn.ts';
import type { RainUnit, Role, TemperatureUnit, WeatherGuess } from './weatherGuess.ts';
import { type RawDay, shorten, type WeatherReading } from './weatherSeries.ts';
import type { TextLine } from './weatherText.ts';

const TO_MM: Readonly<Record<RainUnit, number>> = { mm: 1, tenthsMm: 0.1, inch: 25.4, cm: 10 };
const TO_CELSIUS: Readonly<Record<TemperatureUnit, (t: number) => number>> = {
  celsius: (t) => t,
  tenthsCelsius: (t) => t / 10,
  fahrenheit: (t) => (t - 32) / 1.8,
  kelvin: (t) => t - 273.15,
};

/** The series of the lines by the guess; `station` picks one where a station column holds several. */
export function applyGuess(
  file: string,
  label: string,
  lines: readonly TextLine[],
  guess: WeatherGuess,
  station?: string,
): WeatherReading {
  const { columns, delimiter, decimalComma, dateOrder } = guess;
  const lacking = missingRoles(file, guess);
  // A gauge: date and rain, and no temperature at all.
  const rainAlone = columns.mean === undefined && lacking.map(({ key }) => key).join() === 'min,max';
  if (lacking.length > 0 && !rainAlone) return { series: null, problems: lacking, notes: [] };
  const missing = new Set(guess.missing);
  const body = lines
    .filter(({ line }) => line > guess.headerLine)
    .map(({ line, text }) => ({ line, cells: splitCells(text, delimiter) }));
  const cell = (cells: readonly string[], role: Role) =>
    columns[role] === undefined ? '' : (cells[columns[role]] ?? '');

  const ids =
    columns.station === undefined
      ? []
      : [...new Set(body.map(({ cells }) => cell(cells, 'station')))].filter((id) => id !== '');
  if (ids.length > 1 && station === undefined)
    return { series: null, problems: [severalStations(file, ids)], notes: [] };
  if (station !== undefined && ids.length > 0 && !ids.includes(station))
    return {
      series: null,
      problems: [
        {
          what: 'the station is not in the file',
          file,
          key: 'station',
          found: station,
          allowed: ids.join(', '),
        },
      ],
      notes: [],
    };

  const problems: Problem[] = [];
  const raw: RawDay[] = [];
  for (const { line, cells } of body) {
    if (cells.length < 2 || (station !== undefined && ids.length > 0 && cell(cells, 'station') !== station))
      continue;
    const written =
      columns.date === undefined
        ? `${cell(cells, 'year')}-${cell(cells, 'month')}-${cell(cells, 'day')}`
        : cell(cells, 'date');
    const date = isoDateOf(written, dateOrder) ?? '';
    if (Number.isNaN(dayNumber(date))) {
      problems.push({
        what: 'not a date',
        file,
        line,
        key: nameOf(guess, 'date'),
        found: written || '(empty)',
        allowed: 'a date like 2014-11-30, 30.11.2014 or 20141130',
        todo: 'correct the column or the order of day and month',
      });
      continue;
    }
    const value = (role: 'rain' | 'min' | 'max' | 'mean', convert: (n: number) => number): number | null => {
      const number = numberOf(cell(cells, role), decimalComma, missing);
      if (number === null) return null;
      // A trace of rain is written as a word in many places.
      if (role === 'rain' && /^(t|tr|trace|sp)$/i.test(cell(cells, role))) return 0;
      if (!Number.isNaN(number)) return convert(number);
      problems.push({
        what: 'not a number',
        file,
        line,
        key: nameOf(guess, role),
        found: cell(cells, role),
        allowed: `a number, or one of ${guess.missing.slice(0, 6).join(', ')} where nothing was measured`,
      });
      return null;
    };
    const celsius = TO_CELSIUS[guess.temperatureUnit];
    raw.push({
      line,
      date,
      rainMm: value('rain', (mm) => mm * TO_MM[guess.rainUnit]),
      minC: value('min', celsius),
      maxC: value('max', celsius),
      meanC: value('mean', celsius),
    });
  }
  if (problems.length > 0) return { series: null, problems: shorten(problems), notes: [] };
  if (rainAlone) return rainReading(file, raw, lacking);
  const name = station ?? ids[0];
  return toSeries(file, raw, name === undefined ? { label } : { label: name, station: name });
}

/** Days of rain, checked as any: units, days given twice, what cannot fall in a day. */
function rainReading(file: string, raw: readonly RawDay[], lacking: readonly Problem[]): WeatherReading {
  const wet = raw.filter(({ rainMm }) => rainMm !== null);
  // Any temperature will do to have the rain checked; none of it is handed on.
  const { series, problems } = toSeries(
    file,
    wet.map((day) => ({ ...day, minC: 0, maxC: 0 })),
    { label: file },
  );
  if (!series) return { series: null, problems, notes: [] };
  // It stays wrong to whoever needs whole days; who can join a climate's temperature has the rain.
  return {
    series: null,
    problems: lacking,
    notes: [],
    rain: wet.map(({ date, rainMm }) => ({ date, rainMm })),
  };
}

const nameOf = ({ names, columns }: WeatherGuess, role: Role) => {
  const at = columns[role];
  return at === undefined ? role : (names[at] ?? `column ${at + 1}`);
};

function missingRoles(file: string, { columns, names, headerLine }: WeatherGuess): Problem[] {
  const dated =
    columns.date !== undefined ||
    (columns.year !== undefined && columns.month !== undefined && columns.day !== undefined);
  const words = {
    date: 'the date',
    rain: 'rain a day',
    min: 'the lowest temperature of the day',
    max: 'the highest temperature of the day',
  };
  return (['date', 'rain', 'min', 'max'] as const)
    .filter((role) => (role === 'date' ? !dated : columns[role] === undefined))
    .map((role) => ({
      what: `no column found for ${words[role]}`,
      file,
      ...(headerLine > 0 ? { line: headerLine } : {}),
      key: role,
      found: names.length > 0 ? names.join(', ').slice(0, 200) : 'columns without names',
      allowed: 'a column each for date, rain, lowest and highest temperature',
      todo: 'say which column it is',
    }));
}
