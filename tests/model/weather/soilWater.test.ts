import { describe, expect, it } from 'vitest';
import { WEEKS } from '../../../src/model/series.ts';
import { daysToDaylight, midwinterDay } from '../../../src/model/weather/season.ts';
import { CHOICE_OPTIONS } from '../../../src/notebook/choiceOptions.ts';
import { daylightHours } from '../../reference/penmanMonteith.ts';
import { coefficients, problems, runRows, smoothYear, type Turn, weatherOf } from '../fieldRig.ts';

const nordic = smoothYear(5, 12, 1.9);
const atlantic = smoothYear(9.5, 5, 3.2);
const run = (turns: readonly Turn[], picks = {}, weather = [nordic, atlantic]) =>
  runRows(['winter', 'soilWater'], weather, turns, picks, false);

describe('the weather stage', () => {
  it('reads coefficient files without a problem, with a row for every option', () => {
    expect(problems).toEqual([]);
    for (const { name, choice } of coefficients.values())
      if (
        choice &&
        /coefficients\/(weather|soil|paddock)\.csv$/.test(
          coefficients.get(`${name}.${CHOICE_OPTIONS[choice as 'texture'][0]}`)?.at.file ?? '',
        )
      )
        for (const option of CHOICE_OPTIONS[choice as 'texture'])
          expect(coefficients.has(`${name}.${option}`), `${name}.${option}`).toBe(true);
  });

  it('sums the weeks to the winter, with the days of the last week cut off', () => {
    const { rows, tracks } = run([{ winterDays: 182 }]);
    const weeks = (name: string) => tracks[name].subarray(0, 26).reduce((a, b) => a + b, 0);
    expect(weeks('weekRainMm')).toBeCloseTo(rows[0].rainMm, 9);
    expect(weeks('weekRunoffMm')).toBeCloseTo(rows[0].runoffMm, 9);
    expect(weeks('weekDrainageMm')).toBeCloseTo(rows[0].drainageWinterMm, 9);
    expect(weeks('weekFrozenDays')).toBe(rows[0].frozenDays);
    expect(weeks('weekWetDays')).toBe(rows[0].wetDays);
    expect(weeks('weekTemperatureC') / 26).toBeCloseTo(rows[0].winterTemperatureC, 9);
  });

  it('gives a row the same whether it is computed or copied from the row above', () => {
    const turns = [{ rainFactor: 1.2 }, { rainFactor: 1.2 }, { rainFactor: 0.8 }, { rainFactor: 1.2 }];
    const { rows, tracks } = run(turns);
    expect(rows[1]).toEqual(rows[0]);
    expect(rows[3]).toEqual(rows[0]);
    expect(rows[2]).not.toEqual(rows[0]);
    for (const series of Object.values(tracks)) {
      expect(series.slice(WEEKS, 2 * WEEKS)).toEqual(series.slice(0, WEEKS));
      expect(series.slice(3 * WEEKS)).toEqual(series.slice(0, WEEKS));
    }
  });

  it('counts drainage to the start of growth where that is later than the winter', () => {
    const { rows, tracks } = run([{ winterDays: 60 }]);
    expect(rows[0].growthDay).toBeGreaterThan(60);
    expect(rows[0].drainageMm).toBeGreaterThan(rows[0].drainageWinterMm);
    const growthWeek = Math.floor(rows[0].growthDay / 7);
    const before = tracks.weekDrainageMm.subarray(0, growthWeek).reduce((a, b) => a + b, 0);
    const after = before + tracks.weekDrainageMm[growthWeek];
    expect(rows[0].drainageMm).toBeGreaterThanOrEqual(before - 1e-9);
    expect(rows[0].drainageMm).toBeLessThanOrEqual(after + 1e-9);
  });

  it('freezes the north and not the Atlantic coast, where the ground is wet instead', () => {
    const { rows } = run([{ weatherIndex: 0 }, { weatherIndex: 1 }]);
    expect(rows[0].frozenDays).toBeGreaterThan(60);
    expect(rows[1].frozenDays).toBe(0);
    expect(rows[1].wetDays).toBeGreaterThan(rows[0].wetDays);
    expect(rows[0].snowfallMm).toBeGreaterThan(100);
    expect(rows[1].snowfallMm).toBe(0);
  });

  it('keeps clay wet longer than sand and lets more run off it', () => {
    const burst = weatherOf(
      Array.from({ length: 365 }, (_, d) => (d % 6 === 0 ? 30 : 0)),
      Array.from({ length: 365 }, () => 6),
    );
    const [sand] = run([{}], { texture: 'sand' }, [burst]).rows;
    const [clay] = run([{}], { texture: 'clay' }, [burst]).rows;
    expect(clay.wetDays).toBeGreaterThan(sand.wetDays);
    expect(clay.runoffMm).toBeGreaterThan(sand.runoffMm + 50);
  });

  it('does not let grass grow before the days are long enough, however mild', () => {
    const mild = weatherOf(
      Array.from({ length: 365 }, () => 2),
      Array.from({ length: 365 }, () => 9),
      6,
      53,
    );
    const [row] = run([{ latitudeDeg: 53 }], {}, [mild]).rows;
    const date = new Date(Date.UTC(2010, 10, 1) + row.growthDay * 86_400_000);
    expect(date.toISOString().slice(0, 7)).toBe('2011-02');
  });

  it('never starts growth where it never warms', () => {
    const [row] = run([{}], {}, [smoothYear(-20, 5, 1)]).rows;
    expect(row.growthDay).toBe(365);
    expect(row.drainageMm).toBe(0);
    expect(row.soilWaterChangeMm).toBeCloseTo(row.rainMm, 9);
  });

  it('makes nothing of a winter of no days', () => {
    const [row] = run([{ winterDays: 0 }]).rows;
    for (const name of [
      'rainMm',
      'snowfallMm',
      'runoffMm',
      'evapotranspirationMm',
      'drainageWinterMm',
      'wetDays',
      'frozenDays',
    ])
      expect(row[name]).toBe(0);
  });

  it('leaves weeks past the end of short weather empty', () => {
    const { tracks } = run([{}], {}, [smoothYear(5, 12, 2, 2, 200)]);
    expect(tracks.weekDrainageMm[28]).toBeGreaterThanOrEqual(0);
    expect(Number.isNaN(tracks.weekDrainageMm[29])).toBe(true);
    expect(Number.isNaN(tracks.weekTemperatureC[52])).toBe(true);
  });
});

describe('the turn of the winter', () => {
  it.each([
    ['2010-11-01', 57, 50],
    ['2010-12-21', 57, 0],
    ['2011-01-05', 57, -15],
    ['2010-05-01', -45, 51],
    ['2010-07-01', -45, -10],
  ])('from %s at %i°: midwinter is day %i', (start, latitude, day) => {
    expect(midwinterDay(start, latitude)).toBe(day);
  });

  it.each([45, 53, 57.8, 65])('has the asked daylight on the day it says, at %d°', (latitude) => {
    const dayOfYear = daysToDaylight(latitude, 10) - 10;
    expect(daylightHours(latitude, dayOfYear)).toBeCloseTo(10, 6);
  });

  it('waits for no light at the equator and finds some at the poles', () => {
    expect(daysToDaylight(0, 10)).toBe(0);
    expect(daysToDaylight(90, 10)).toBeGreaterThan(60);
    expect(daysToDaylight(-45, 10)).toBe(daysToDaylight(45, 10));
  });
});
