import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readWeather, writeWeather } from '../../src/tables/weather.ts';
import { MOST_PROBLEMS } from '../../src/tables/weatherSeries.ts';
import { formatProblem } from '../../src/units/problem.ts';
import { startWork } from '../workedMs.ts';

const BROKEN = fileURLToPath(new URL('../broken/weather/', import.meta.url));
const broken = (name: string, options = {}) =>
  readWeather(name, readFileSync(BROKEN + name, 'utf8'), options);
const days = (count: number, row: (date: string, k: number) => string | null, start = '2014-11-01') =>
  Array.from({ length: count }, (_, k) =>
    row(new Date(Date.parse(start) + k * 86_400_000).toISOString().slice(0, 10), k),
  )
    .filter((line) => line !== null)
    .join('\n');

/** File → what its first message must hold, place included. */
const SAID: Readonly<Record<string, readonly string[]>> = {
  'textInNumbers.csv': ['textInNumbers.csv:3 rainMm: not a number', 'found trace', 'empty cell'],
  'dayTwice.csv': [
    'dayTwice.csv:4 date: the day is there twice',
    '2014-11-02, first on line 3',
    'not averaged',
  ],
  'fahrenheit.csv': ['maxC: the temperatures look like Fahrenheit', 'allowed degrees Celsius', '1.8'],
  'tenths.csv': ['maxC: the temperatures look like tenths', 'divide by ten'],
  'hourly.csv': ['date: most days are there several times', '240 lines for 10 days', 'hourly'],
  'twoStations.csv': ['station: the file holds several stations', 'CA008202251, EEM00026249', 'not averaged'],
  'foreignStations.csv': ['station: the file holds several stations', 'South, North', 'choose one'],
  'noTemperature.csv': [
    'no column found for the lowest temperature',
    'found Datum, Nederbördsmängd',
    'say which column',
  ],
  'swapped.csv': ['swapped.csv:2 minC: the lowest temperature is above the highest', 'found 8 and 3'],
  'missingColumn.csv': ['missingColumn.csv:1 maxC: missing column', 'allowed date,rainMm,minC,maxC'],
  'unknownColumn.csv': ['unknownColumn.csv:1 windMs: unknown column'],
  'decimalComma.csv': ['decimalComma.csv:2: the row has not as many cells', 'found 7 cells', 'with a point'],
  'noSuchDate.csv': ['noSuchDate.csv:2 date: not a date', 'found 2014-02-30', 'like 2014-11-30'],
  'missingAsNumber.csv': [
    'missingAsNumber.csv:2 rainMm: the value cannot be right',
    'found -9999',
    '0 to 500 mm',
    'empty',
  ],
  'empty.csv': ['empty.csv: the file is empty'],
  'headerOnly.csv': ['headerOnly.csv: no day could be read'],
  'workbook.csv': ['workbook.csv: the file is a workbook or zip archive', 'save the days as CSV'],
  'binary.csv': ['binary.csv: the file is binary'],
  'letter.csv': ['no column found for the date'],
  'cutOff.dly': ['cutOff.dly:2: not a line of the fixed-width form', 'cut off'],
  'textInDly.dly': ['textInDly.dly:2 TMAX day 4: not a whole number', 'found 5x'],
};

describe('broken weather files', () => {
  it.each(Object.entries(SAID))('%s says what is wrong and where', (name, parts) => {
    const { series, problems } = broken(name);
    expect(series).toBeNull();
    const first = formatProblem(problems[0]);
    for (const part of parts) expect(first).toContain(part);
    expect(first).not.toContain('\n');
  });

  it('are all in the list, but for the one whose gap is only noted', () => {
    expect(readdirSync(BROKEN).sort()).toEqual([...Object.keys(SAID), 'longGap.csv'].sort());
  });

  it('leave out the days of a long gap and say so', () => {
    const { series, notes } = broken('longGap.csv');
    expect(series?.days.length).toBe(180);
    expect(series?.gaps.map(({ key, from, to, days }) => [key, from, to, days])).toEqual(
      ['rainMm', 'minC', 'maxC'].map((key) => [key, '2014-12-01', '2014-12-20', 20]),
    );
    expect(formatProblem(notes[0])).toContain('were not filled');
  });

  it('tell the first problems and count the rest', () => {
    const text = `date,rainMm,minC,maxC\n${days(100, (date) => `${date},wet,1,2`)}\n`;
    const { problems } = readWeather('w.csv', text);
    expect(problems).toHaveLength(MOST_PROBLEMS + 1);
    expect(formatProblem(problems[MOST_PROBLEMS])).toContain('80 more problems');
  });

  it('refuse a million lines at once', () => {
    const text = `date,rainMm,minC,maxC\n${'2014-11-01,1,2,3\n'.repeat(1_000_000)}`;
    const workedMs = startWork();
    const { series, problems } = readWeather('w.csv', text);
    expect(series).toBeNull();
    expect(formatProblem(problems[0])).toContain('longer than any daily series; found');
    expect(workedMs()).toBeLessThan(2000);
  });

  it('never throw, whatever is cut out of a good file', () => {
    const good = `date,rainMm,minC,maxC\n${days(40, (date, k) => `${date},${k % 3},${k % 5},${(k % 5) + 6}`)}\n`;
    for (let k = 0; k < good.length; k += 7) {
      const { series, problems } = readWeather('w.csv', good.slice(0, k) + good.slice(k + 3));
      expect(series !== null || problems.length > 0).toBe(true);
    }
  });
});

describe('our own form', () => {
  it('is read as written, sorted, with the mean of the extremes where none is measured', () => {
    const text = 'date,rainMm,minC,maxC\r\n2014-11-02,0,2,7\r\n2014-11-01,2.1,-3.5,8\r\n';
    const { series, form, notes } = readWeather('farm/hill.csv', `\uFEFF${text}`);
    expect(form).toBe('own');
    expect(notes).toEqual([]);
    expect(series?.label).toBe('hill');
    expect(series?.days).toEqual([
      { date: '2014-11-01', rainMm: 2.1, minC: -3.5, maxC: 8, meanC: 2.25 },
      { date: '2014-11-02', rainMm: 0, minC: 2, maxC: 7, meanC: 4.5 },
    ]);
  });

  it('takes a measured mean', () => {
    const { series } = readWeather('w.csv', 'date,rainMm,minC,maxC,meanC\n2014-11-01,0,0,10,4\n');
    expect(series?.days[0].meanC).toBe(4);
  });

  it('fills a short gap: temperature straight across, rain with the mean of its month, and says so', () => {
    const text = `date,rainMm,minC,maxC\n${days(30, (date, k) => (k === 10 || k === 11 ? null : `${date},${k === 12 ? '' : 3},${k},${k + 6}`))}\n`;
    const { series, notes } = readWeather('w.csv', text);
    expect(series?.days).toHaveLength(30);
    expect(series?.days[10]).toEqual({ date: '2014-11-11', rainMm: 3, minC: 10, maxC: 16, meanC: 13 });
    expect(series?.days[12].rainMm).toBe(3);
    expect(series?.filled).toContainEqual({ key: 'rainMm', from: '2014-11-11', to: '2014-11-13', days: 3 });
    expect(formatProblem(notes[0])).toContain('rainMm 2014-11-11 to 2014-11-13');
  });

  it('comes back as it was written', () => {
    const text = `date,rainMm,minC,maxC\n${days(400, (date, k) => `${date},${(k % 7) / 10},${(k % 30) - 15},${(k % 30) - 9.5}`)}\n`;
    const { series } = readWeather('w.csv', text);
    expect(writeWeather({ days: series?.days ?? [] })).toBe(text);
  });
});

const dly = (element: string, values: readonly (number | string)[], month = '201411') =>
  `CA008202251${month}${element}${Array.from({ length: 31 }, (_, d) => values[d] ?? -9999)
    .map((v) => (typeof v === 'number' ? `${String(v).padStart(5)}   ` : v))
    .join('')}`;

describe('GHCN-Daily', () => {
  it('reads the fixed-width form: tenths, missing values, quality flags, traces', () => {
    const rain = [12, '    0T  ', '  999 X ', ...Array(27).fill(20)];
    const text = [
      dly('PRCP', rain),
      dly('TMAX', Array(30).fill(85)),
      dly('TMIN', Array(30).fill(-15)),
      dly('SNWD', Array(30).fill(7)),
    ].join('\n');
    const { series, form, notes, problems } = readWeather('CA008202251.dly', text);
    expect(problems).toEqual([]);
    expect(form).toBe('ghcnFixedWidth');
    expect(series?.station).toBe('CA008202251');
    expect(series?.days).toHaveLength(30);
    expect(series?.days[0]).toEqual({ date: '2014-11-01', rainMm: 1.2, minC: -1.5, maxC: 8.5, meanC: 3.5 });
    expect(series?.days[1].rainMm).toBe(0);
    // The value that failed its check is a gap of a day: it takes the mean of the month.
    expect(series?.days[2].rainMm).toBeCloseTo((1.2 + 0 + 27 * 2) / 29, 9);
    expect(formatProblem(notes[0])).toContain('1 values');
  });

  it('reads the CSV form in tenths, with attributes', () => {
    const text = `"STATION","DATE","LATITUDE","PRCP","PRCP_ATTRIBUTES","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"\n${days(10, (date, k) => `"EEM1","${date}","58.1","${k === 3 ? '' : 25}",",,S","80","${k === 4 ? ',I,S' : ',,S'}","-12",",,S"`)}\n`;
    const { series, form, notes } = readWeather('w.csv', text);
    expect(form).toBe('ghcnCsv');
    expect(series?.days[0]).toEqual({ date: '2014-11-01', rainMm: 2.5, minC: -1.2, maxC: 8, meanC: 3.4 });
    expect(series?.filled.map(({ key, from }) => [key, from])).toEqual([
      ['rainMm', '2014-11-04'],
      ['maxC', '2014-11-05'],
    ]);
    expect(notes).toHaveLength(2);
  });

  it('takes the CSV form with decimals as it stands', () => {
    const { series } = readWeather(
      'w.csv',
      `STATION,DATE,PRCP,TMAX,TMIN\n${days(5, (date) => `X,${date},2.5,8,-1.2`)}\n`,
    );
    expect(series?.days[0]).toMatchObject({ rainMm: 2.5, maxC: 8, minC: -1.2 });
  });

  it('takes the one station that is asked for', () => {
    const { series } = broken('twoStations.csv', { station: 'EEM00026249' });
    expect(series?.station).toBe('EEM00026249');
    expect(series?.days).toHaveLength(30);
    expect(formatProblem(broken('twoStations.csv', { station: 'nowhere' }).problems[0])).toContain(
      'not in the file',
    );
  });
});

describe('somebody else’s table', () => {
  const season = (k: number) => 8 - 10 * Math.cos((2 * Math.PI * (k + 300)) / 365);
  const f = (c: number) => Math.round(c * 1.8 + 32);

  it('finds Fahrenheit and inches by the values alone, and says why', () => {
    const text = `Day,Precip,High Temp,Low Temp\n${days(365, (date, k) => `${date},${k % 3 === 0 ? 0.31 : 0},${f(season(k) + 6)},${f(season(k) - 6)}`)}\n`;
    const { series, guess, form } = readWeather('station.csv', text);
    expect(form).toBe('guessed');
    expect(guess).toMatchObject({
      rainUnit: 'inch',
      temperatureUnit: 'fahrenheit',
      columns: { date: 0, rain: 1, max: 2, min: 3 },
    });
    expect(guess?.reasons.join('; ')).toMatch(/°F: \d+ of 365 days would be above 50/);
    expect(series?.days[0].rainMm).toBeCloseTo(0.31 * 25.4, 9);
    expect(series?.days[0].maxC).toBeCloseTo(season(0) + 6, 0);
  });

  it('reads semicolons, decimal commas, day-first dates and a mean, by German names', () => {
    const text = `STATIONS_ID;MESS_DATUM;QN_3; RSK; TMK; TXK; TNK;eor\n${days(60, (date, k) => `44;${date.replaceAll('-', '')};10;${k % 4},5;${k % 9},1;${(k % 9) + 4},2;${k === 7 ? '-999' : `${(k % 9) - 3},0`};eor`)}\n`;
    const { series, guess } = readWeather('produkt.txt', text);
    expect(guess).toMatchObject({
      delimiter: ';',
      decimalComma: true,
      columns: { station: 0, date: 1, rain: 3, mean: 4, max: 5, min: 6 },
    });
    expect(series?.days[1]).toEqual({ date: '2014-11-02', rainMm: 1.5, minC: -2, maxC: 5.2, meanC: 1.1 });
    expect(series?.filled.map(({ key }) => key)).toEqual(['minC']);
  });

  it('reads year, month and day in columns of their own, and precipitation before rain', () => {
    const text = `"Station Name","Year","Month","Day","Data Quality","Max Temp (°C)","Max Temp Flag","Min Temp (°C)","Mean Temp (°C)","Total Rain (mm)","Total Precip (mm)"\n${days(40, (date) => `"SHORE","${date.split('-').map(Number).join('","')}","","4.5","","-2.5","1.0","1.0","3.4"`)}\n`;
    const { series, guess } = readWeather('w.csv', text);
    expect(guess?.columns).toEqual({
      station: 0,
      year: 1,
      month: 2,
      day: 3,
      max: 5,
      min: 7,
      mean: 8,
      rain: 10,
    });
    expect(series?.days[0]).toEqual({ date: '2014-11-01', rainMm: 3.4, minC: -2.5, maxC: 4.5, meanC: 1 });
    expect(series?.label).toBe('SHORE');
  });

  it('skips lines of prose before the header and reads named months', () => {
    const text = `Station Name: NOWHERE\nrain: Precipitation Amount (mm)\nmaxtp: Maximum Air Temperature (C)\n\ndate,ind,maxtp,ind,mintp,rain\n${days(40, (date) => `${date.slice(8)}-nov-${date.slice(0, 4)},0,9.4,0,3.1,5.5`.replace('nov', date.slice(5, 7) === '11' ? 'nov' : 'dec'))}\n`;
    const { series, guess } = readWeather('w.csv', text);
    expect(guess?.headerLine).toBe(5);
    expect(series?.days[39]).toMatchObject({ date: '2014-12-10', rainMm: 5.5, minC: 3.1, maxC: 9.4 });
  });

  it('tells day first from month first, by a part above twelve or by the days that follow', () => {
    const write = (order: string) => (date: string) =>
      `${order.replace('d', date.slice(8)).replace('m', date.slice(5, 7))}/${date.slice(0, 4)},1,8,2`;
    expect(readWeather('w.csv', `date,rain,tmax,tmin\n${days(40, write('d/m'))}\n`).guess?.dateOrder).toBe(
      'dmy',
    );
    expect(readWeather('w.csv', `date,rain,tmax,tmin\n${days(40, write('m/d'))}\n`).guess?.dateOrder).toBe(
      'mdy',
    );
    const few = readWeather('w.csv', `date,rain,tmax,tmin\n${days(8, write('m/d'))}\n`);
    expect(few.guess?.dateOrder).toBe('mdy');
    expect(few.series?.days[7].date).toBe('2014-11-08');
  });

  it('reads tenths by the size of whole numbers', () => {
    const text = `DATE RR TX TN\n${days(200, (date, k) => `${date.replaceAll('-', '')} ${k % 2 === 0 ? 60 : 0} ${Math.round(10 * season(k)) + 50} ${Math.round(10 * season(k)) - 50}`)}\n`;
    const { series, guess } = readWeather('w.txt', text);
    expect(guess).toMatchObject({ delimiter: ' ', rainUnit: 'tenthsMm', temperatureUnit: 'tenthsCelsius' });
    expect(series?.days[0].rainMm).toBe(6);
  });

  it('can be corrected: another unit, another column, one station', () => {
    const { guess } = broken('foreignStations.csv');
    expect(guess?.columns.station).toBe(1);
    const north = broken('foreignStations.csv', { guess, station: 'North' });
    expect(north.series?.days[0]).toMatchObject({ rainMm: 1.5, maxC: 8, minC: 2 });
    const corrected = broken('foreignStations.csv', {
      station: 'North',
      guess: { ...guess, rainUnit: 'cm' },
    });
    expect(corrected.series?.days[0].rainMm).toBe(15);
  });
});

describe('days outside the years of weather', () => {
  it.each(['9999-12-31', '0000-01-01', '1899-12-31'])(
    '%s is refused with its line, and hangs nothing',
    (date) => {
      const good = days(40, (day) => `${day},1,2,6`);
      const { series, problems } = readWeather('w.csv', `date,rainMm,minC,maxC\n${good}\n${date},1,2,6\n`);
      expect(series).toBeNull();
      expect(problems.map(formatProblem).join()).toMatch(
        /w\.csv:42 date: .*allowed 1900 to 2100|no(t a)? date/,
      );
    },
  );
});

describe('a gap that is filled', () => {
  it('gives way to what was measured on the day', () => {
    // Least temperature runs from 2 to 8 across the gap, on a day whose greatest was measured as 3.
    const rows = days(20, (date, k) => `${date},0,${k < 5 ? 2 : k > 5 ? 8 : ''},${k === 5 ? 3 : 12}`);
    const { series, problems } = readWeather('w.csv', `date,rainMm,minC,maxC\n${rows}\n`);
    expect(problems).toEqual([]);
    const day = series?.days[5];
    expect(day?.maxC).toBe(3);
    expect(day?.minC).toBe(3);
    const again = readWeather('w.csv', writeWeather(series as NonNullable<typeof series>));
    expect(again.problems).toEqual([]);
  });
});
