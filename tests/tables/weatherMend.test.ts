import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readWeather, writeWeather } from '../../src/tables/weather.ts';
import { joinedName, joinRain } from '../../src/tables/weatherJoin.ts';
import type { WeatherSeries } from '../../src/tables/weatherSeries.ts';
import { dateOf, dayNumber } from '../../src/units/days.ts';

const from = dayNumber('2018-06-01');
const rows = (count: number, change: Record<number, string> = {}) =>
  Array.from(
    { length: count },
    (_, k) => change[k] ?? `${dateOf(from + k)};${k % 3};${10 + (k % 7)};${4 - (k % 5)}`,
  );
const foreign = (lines: readonly string[]) => `Day;Precip (mm);Tmax;Tmin\n${lines.join('\n')}\n`;

describe('a file with a few bad days', () => {
  const bad = {
    400: `${dateOf(from + 400)};1;-5;20`,
    500: '31.31.2019;1;5;2',
    600: `${dateOf(from + 600)};n.b.;5;2`,
  };
  const text = foreign(rows(1000, bad));

  it('is refused unless told otherwise, with each day told and a choice offered', () => {
    const { series, problems, mendable } = readWeather('gauge.csv', text);
    expect(series).toBeNull();
    expect(problems.map(({ line }) => line)).toEqual([502, 602]);
    expect(mendable).toBe(true);
  });

  it('bridges them as days not measured, and lists all', () => {
    const { series, problems, notes } = readWeather('gauge.csv', text, { bad: 'bridge' });
    expect(problems).toEqual([]);
    expect(series?.days).toHaveLength(1000);
    expect(series?.filled.filter(({ key }) => key === 'minC').map((gap) => gap.from)).toEqual(
      [400, 500, 600].map((k) => dateOf(from + k)),
    );
    for (const line of [402, 502, 602]) expect(notes[0].found).toContain(`line ${line}:`);
  });

  it('leaves them out so that no later reading fills them', () => {
    const { series } = readWeather('gauge.csv', text, { bad: 'leaveOut' });
    expect(series?.days).toHaveLength(1000 - 18);
    const again = readWeather('own.csv', writeWeather(series as WeatherSeries));
    expect(again.series?.filled).toEqual([]);
    expect(again.series?.gaps.filter(({ key }) => key === 'rainMm').map(({ days }) => days)).toEqual([
      6, 6, 6,
    ]);
  });

  it('mends many, but not a file of which a tenth is bad', () => {
    const every = (n: number) =>
      foreign(
        rows(
          1000,
          Object.fromEntries(
            Array.from({ length: Math.ceil(1000 / n) }, (_, k) => [k * n, `${dateOf(from + k * n)};1;-5;20`]),
          ),
        ),
      );
    expect(readWeather('w.csv', every(20), { bad: 'bridge' }).series?.days.length).toBeGreaterThan(990);
    const most = readWeather('w.csv', every(5), { bad: 'bridge' });
    expect(most.series).toBeNull();
    expect(most.problems.length).toBeGreaterThan(0);
  });

  it('does not offer to mend what is wrong as a whole', () => {
    const hot = foreign(
      rows(200).map((row, k) => `${row.split(';').slice(0, 2).join(';')};${80 + (k % 9)};70`),
    );
    const { guess } = readWeather('w.csv', hot);
    const celsius = { ...(guess as NonNullable<typeof guess>), temperatureUnit: 'celsius' as const };
    const { problems, mendable } = readWeather('w.csv', hot, { guess: celsius });
    expect(problems[0].what).toContain('Fahrenheit');
    expect(mendable).toBe(false);
  });
});

describe('a gauge that has rain alone', () => {
  const gauge = (count: number) =>
    `date,rain (mm)\n${Array.from({ length: count }, (_, k) => `${dateOf(from + k)},${(k % 4) * 1.5}`).join('\n')}\n`;
  const shipped = readWeather(
    'balticHills.csv',
    readFileSync(new URL('../../data/weather/balticHills.csv', import.meta.url), 'utf8'),
  ).series as WeatherSeries;

  it('is read as rain', () => {
    const { series, problems, rain } = readWeather('gauge.csv', gauge(400));
    expect(series).toBeNull();
    // Who needs whole days is still told.
    expect(problems.map(({ key }) => key)).toEqual(['min', 'max']);
    expect(rain).toHaveLength(400);
    expect(rain?.[3]).toEqual({ date: dateOf(from + 3), rainMm: 4.5 });
  });

  it('is told what cannot fall in a day', () => {
    const { problems, rain, mendable } = readWeather('gauge.csv', `${gauge(400)}2021-01-01,900\n`);
    expect(rain).toBeUndefined();
    expect(problems.some(({ found }) => found === '900')).toBe(true);
    expect(mendable).toBe(true);
  });

  it('joins the temperature of the same day, rain its own', () => {
    const { rain = [] } = readWeather('gauge.csv', gauge(400));
    const days = joinRain(rain, shipped);
    expect(days).toHaveLength(400);
    const climate = new Map(shipped.days.map((day) => [day.date, day]));
    for (const day of days) {
      expect(day.minC).toBe(climate.get(day.date)?.minC);
      expect(day.rainMm).toBe(rain.find(({ date }) => date === day.date)?.rainMm);
    }
    expect(readWeather('joined.csv', writeWeather({ days })).problems).toEqual([]);
  });

  it('joins years the climate does not have with the same days of one of its years', () => {
    const old = Array.from({ length: 800 }, (_, k) => ({
      date: dateOf(dayNumber('1995-10-01') + k),
      rainMm: 2,
    }));
    const days = joinRain(old, shipped);
    expect(days).toHaveLength(800);
    const winter = days.filter(({ date }) => /-0[12]-/.test(date));
    const summer = days.filter(({ date }) => /-0[78]-/.test(date));
    const mean = (all: typeof days) => all.reduce((sum, day) => sum + day.meanC, 0) / all.length;
    expect(mean(winter)).toBeLessThan(mean(summer) - 12);
  });

  it('says in its name whose temperature it is', () => {
    expect(joinedName('my gauge.csv', { file: 'balticHills.csv', label: '', latitudeDeg: 57.8 })).toBe(
      'my gauge with temperature of balticHills.csv',
    );
  });
});
