import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoWeather } from '../../../src/cli/makeWeather.ts';
import {
  prepareNormals,
  prepareWinters,
  winterNotes,
  winterProblems,
  wintersIn,
} from '../../../src/model/weather/prepareWeather.ts';
import { extraterrestrialRadiationMj, MM_PER_MJ } from '../../../src/model/weather/radiation.ts';
import { makeYear } from '../../../src/model/weather/weatherGenerator.ts';
import { readWeather } from '../../../src/tables/weather.ts';
import type { WeatherSeries } from '../../../src/tables/weatherSeries.ts';
import { formatProblem } from '../../../src/units/problem.ts';
import { runRows } from '../fieldRig.ts';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
const NORMALS = {
  rainMm: [48, 38, 37, 35, 54, 82, 72, 86, 61, 68, 58, 53],
  temperatureC: [-5, -5.3, -1.3, 5.2, 11.2, 15.2, 17.8, 16.3, 11.3, 5.7, 0.6, -2.9],
  rangeC: [5, 6, 7, 8, 9, 9, 9, 9, 8, 6, 5, 5],
  wetDays: [18, 15, 13, 10, 11, 13, 12, 13, 13, 16, 17, 18],
};

type ScenarioWeather = Parameters<typeof prepareWinters>[1];
function scenario(
  start = '2014-11-01',
  end = '2015-04-30',
  more: { year?: number; latitudeDeg?: number; monthly?: boolean } = {},
): ScenarioWeather {
  const place = {
    name: 'made up',
    latitudeDeg: more.latitudeDeg ?? 57.8,
    longitudeDeg: 26.5,
    elevationM: 180,
    horizonDeg: 0,
  };
  return {
    farm: {
      winter: { start, end },
      place,
      weather: { seed: 1, rainFactor: 1, year: more.year, ...(more.monthly ? { monthly: NORMALS } : {}) },
    },
  };
}
function series(from: string, count: number, without: readonly string[] = []): WeatherSeries {
  const days = Array.from({ length: count }, (_, k) =>
    new Date(Date.parse(from) + k * 86_400_000).toISOString().slice(0, 10),
  )
    .filter((date) => !without.includes(date))
    .map((date, k) => ({ date, rainMm: k % 5, minC: -1, maxC: 5, meanC: 2 }));
  return { label: 'made up', days, filled: [], gaps: [] };
}

describe('winters of a series', () => {
  it('are cut across new year, each to the day before the next, leap days kept', () => {
    const winters = prepareWinters(series('2010-09-01', 365 * 3 + 1), scenario());
    expect(winters.map((w) => [w.label, w.start, w.days])).toEqual([
      ['made up 2010/11', '2010-11-01', 365],
      ['made up 2011/12', '2011-11-01', 366],
      ['made up 2012/13, to 2013-08-31', '2012-11-01', 304],
    ]);
  });

  it('are left out where a day is missing before the spring is over, and told', () => {
    const file = series('2010-09-01', 365 * 3, ['2012-02-01']);
    expect(
      wintersIn(file, scenario()).map(({ year, complete, usable, missing }) => [
        year,
        complete,
        usable,
        missing,
      ]),
    ).toEqual([
      [2009, false, false, '2009-11-01'],
      [2010, true, true, undefined],
      [2011, false, false, '2012-02-01'],
      [2012, false, true, '2013-08-31'],
    ]);
    expect(winterNotes(file, scenario(), 'w.csv').map(formatProblem).join()).toContain(
      '2011/12 from 2012-02-01',
    );
    expect(
      formatProblem(winterProblems(file, scenario('2014-11-01', '2015-04-30', { year: 2011 }), 'w.csv')[0]),
    ).toMatch(/starts in 2011 is not whole.*first missing day 2012-02-01; allowed 2010, 2012/);
  });

  it('of one year is one, and that is said', () => {
    const file = series('2010-11-01', 365);
    expect(prepareWinters(file, scenario())).toHaveLength(1);
    expect(winterProblems(file, scenario(), 'w.csv')).toEqual([]);
    expect(formatProblem(winterNotes(file, scenario(), 'w.csv')[0])).toContain(
      'one winter only; found 2010/11',
    );
  });

  it('are none in a file of summers', () => {
    const file = series('2011-05-01', 120);
    expect(prepareWinters(file, scenario())).toEqual([]);
    expect(formatProblem(winterProblems(file, scenario(), 'w.csv')[0])).toContain('no whole winter');
  });

  it('start on the first of March where there is no 29th of February', () => {
    expect(
      prepareWinters(
        series('2010-01-01', 1200),
        scenario('2016-02-29', '2016-08-01', { latitudeDeg: -40 }),
      ).map((w) => w.start),
    ).toEqual(['2010-03-01', '2011-03-01', '2012-02-29']);
  });

  it('tell Fahrenheit by the latitude where no day alone gives it away', () => {
    const cold = series('2010-11-01', 200);
    const warm = { ...cold, days: cold.days.map((day) => ({ ...day, minC: 24, maxC: 40, meanC: 32 })) };
    expect(formatProblem(winterProblems(warm, scenario(), 'w.csv')[0])).toContain('look like Fahrenheit');
    expect(winterProblems(warm, scenario('2014-11-01', '2015-04-30', { latitudeDeg: 10 }), 'w.csv')).toEqual(
      [],
    );
  });

  it('carry the Hargreaves term of their latitude, 0 in the polar night', () => {
    const [winter] = prepareWinters(series('2010-11-01', 365), scenario());
    // 1 December is day 335 of 2010 and the thirtieth after the start.
    expect(winter.hargreavesTermMm[30]).toBeCloseTo(
      (2 + 17.8) * Math.sqrt(6) * extraterrestrialRadiationMj(57.8, 335) * MM_PER_MJ,
      9,
    );
    const [polar] = prepareWinters(
      series('2010-11-01', 365),
      scenario('2014-11-01', '2015-04-30', { latitudeDeg: 80 }),
    );
    expect(polar.hargreavesTermMm[50]).toBe(0);
    expect(polar.hargreavesTermMm.every((t) => t >= 0)).toBe(true);
  });
});

describe('days made from monthly normals', () => {
  const month = (start: string, d: number) => new Date(Date.parse(start) + d * 86_400_000).getUTCMonth();

  it('keep every month’s rain, wet days and temperature, from any first day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 0, max: 364 }), (seed, shift) => {
        const start = new Date(Date.UTC(2013, 0, 1) + shift * 86_400_000).toISOString().slice(0, 10);
        const made = makeYear(NORMALS, start, 365, seed);
        const rain = new Float64Array(12);
        const wet = new Float64Array(12);
        made.rainMm.forEach((mm, d) => {
          expect(mm).toBeGreaterThanOrEqual(0);
          rain[month(start, d)] += mm;
          if (mm > 0) wet[month(start, d)]++;
        });
        rain.forEach((mm, m) => {
          expect(mm).toBeCloseTo(NORMALS.rainMm[m], 6);
        });
        wet.forEach((n, m) => {
          expect(n).toBe(NORMALS.wetDays[m]);
        });
        made.minC.forEach((c, d) => {
          expect(c).toBeLessThan(made.maxC[d]);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('keep the monthly means of whole months', () => {
    const made = makeYear(NORMALS, '2013-11-01', 365, 7);
    for (let m = 0; m < 12; m++) {
      const of = made.meanC.filter((_, d) => month('2013-11-01', d) === m);
      expect(of.reduce((a, b) => a + b, 0) / of.length).toBeCloseTo(NORMALS.temperatureC[m], 6);
    }
  });

  it('are the same for the same seed and others for another', () => {
    const [a] = prepareWinters(undefined, scenario('2014-11-01', '2015-04-30', { monthly: true }));
    const [b, c] = prepareNormals(scenario('2014-11-01', '2015-04-30', { monthly: true }), 2);
    expect(b.rainMm).toEqual(a.rainMm);
    expect(c.rainMm).not.toEqual(a.rainMm);
    expect(a.days).toBe(365);
    expect(prepareWinters(undefined, scenario())).toEqual([]);
  });

  it('take a month without a wet day or without rain', () => {
    const dry = {
      ...NORMALS,
      rainMm: NORMALS.rainMm.map((mm, m) => (m === 6 ? 0 : mm)),
      wetDays: NORMALS.wetDays.map((n, m) => (m === 5 ? 0 : n)),
    };
    const made = makeYear(dry, '2013-11-01', 365, 3);
    expect(made.rainMm.reduce((a, b) => a + b, 0)).toBeCloseTo(
      dry.rainMm.reduce((a, b) => a + b, 0),
      6,
    );
    expect([...made.rainMm].every(Number.isFinite)).toBe(true);
  });
});

describe('the weather of the demo farms (invented)', () => {
  it.each(demoWeather().map(({ file, text }) => [file, text] as const))(
    '%s is what the generator makes, and reads without a word',
    (file, text) => {
      const shipped = readFileSync(`${ROOT}${file}`, 'utf8');
      expect(shipped === text).toBe(true);
      expect(shipped.length).toBeLessThan(250_000);
      const { series: read, problems, notes } = readWeather(file, shipped);
      expect([problems, notes]).toEqual([[], []]);
      expect(read?.days[0].date).toBe('2005-09-01');
      expect(read?.days.at(-1)?.date).toBe('2026-08-31');
      expect(prepareWinters(read as WeatherSeries, scenario()).length).toBe(21);
    },
  );
});

/**
 * Seattle 2012 to 2015, daily precipitation and temperature: US National Centers for Environmental Information, as
 * shipped in the package vega-datasets (public domain). An independent real series through reader and balance.
 */
describe('a real station, Seattle 2012 to 2015', () => {
  const path = `${ROOT}node_modules/vega-datasets/data/seattle-weather.csv`;
  const {
    series: read,
    guess,
    problems,
    notes,
  } = readWeather('seattle-weather.csv', readFileSync(path, 'utf8'));
  const where = scenario('2012-10-01', '2013-03-31', { latitudeDeg: 47.6 });

  it('is understood by its names and values', () => {
    expect([problems, notes]).toEqual([[], []]);
    expect(guess).toMatchObject({
      columns: { date: 0, rain: 1, max: 2, min: 3 },
      rainUnit: 'mm',
      temperatureUnit: 'celsius',
    });
    expect(read?.days).toHaveLength(1461);
    expect(read?.days[1]).toEqual({
      date: '2012-01-02',
      rainMm: 10.9,
      minC: 2.8,
      maxC: 10.6,
      meanC: (2.8 + 10.6) / 2,
    });
  });

  it('gives three whole winters whose water balances, with rain as summed straight from the file', () => {
    const winters = prepareWinters(read as WeatherSeries, where);
    expect(winters.map((w) => w.label.replace('seattle-weather ', ''))).toEqual([
      '2012/13',
      '2013/14',
      '2014/15',
    ]);
    const { rows } = runRows(
      ['winter', 'soilWater'],
      winters,
      winters.map((_, k) => ({ weatherIndex: k, winterDays: 181, latitudeDeg: 47.6 })),
    );
    rows.forEach((row, k) => {
      const from = winters[k].start;
      const to = new Date(Date.parse(from) + 181 * 86_400_000).toISOString().slice(0, 10);
      const straight = (read as WeatherSeries).days
        .filter(({ date }) => date >= from && date < to)
        .reduce((sum, { rainMm }) => sum + rainMm, 0);
      expect(row.rainMm).toBeCloseTo(straight, 9);
      expect(
        row.runoffMm + row.evapotranspirationMm + row.drainageWinterMm + row.soilWaterChangeMm,
      ).toBeCloseTo(straight, 9);
      // Mild, wet winters: little snow, most of the rain goes through.
      expect(row.drainageWinterMm / row.rainMm).toBeGreaterThan(0.6);
      expect(row.drainageWinterMm / row.rainMm).toBeLessThan(0.95);
      expect(row.frozenDays).toBeLessThan(20);
    });
  });
});
