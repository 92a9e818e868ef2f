import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import { WEEKS } from '../../src/model/series.ts';
import type { Run } from '../../src/study/evaluate.ts';
import type { Setting } from '../../src/study/rows.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { bandsOf } from '../../src/uncertainty/percentiles.ts';
import { type WeekBand, weekBands } from '../../src/uncertainty/weekBands.ts';
import { farm } from '../farm.ts';
import { finished } from '../finished.ts';

const TRACKS = ['weekPackDepthM', 'weekPackMoisture', 'weekPackCarbonNitrogen'] as const;
const BED = 2;
let run: Run;
beforeAll(() => {
  run = farm(readDataFiles());
});

const bands = (setting: Setting, count = 300, seed = 1) =>
  finished(weekBands(setting, { tracks: TRACKS, count, seed }));

/** The same scenarios with every number at its best guess. */
const central = ({ bound, weather, weatherIndex }: Run): Setting => ({
  weather,
  weatherIndex,
  bound: bound.map((own) => ({
    ...own,
    bindings: new Map(
      [...own.bindings].map(([column, b]) => [column, { ...b, low: b.value, high: b.value }]),
    ),
  })),
});

describe('weekly bands', () => {
  it.each(TRACKS)(
    'of %s are in order in each week of the winter, apart by spring, and end with it',
    (track) => {
      const { p10, p50, p90 } = bands(run).scenarios[BED].tracks[track];
      const plain = run.results[BED].tracks[track];
      let weeks = 0;
      for (let week = 0; week < WEEKS; week++) {
        expect(Number.isFinite(p50[week])).toBe(Number.isFinite(plain[week]));
        if (!Number.isFinite(plain[week])) continue;
        weeks++;
        expect(p10[week]).toBeLessThanOrEqual(p50[week]);
        expect(p50[week]).toBeLessThanOrEqual(p90[week]);
      }
      expect(weeks).toBeGreaterThan(20);
      expect(p90[weeks - 1] - p10[weeks - 1]).toBeGreaterThan(0.02 * p50[weeks - 1]);
    },
  );

  it('shrink to the plain series where no number has a range', () => {
    const { scenarios } = bands(central(run), 40);
    for (const track of TRACKS)
      for (const part of ['p10', 'p50', 'p90'] as const)
        scenarios[BED].tracks[track][part].forEach((value, week) => {
          const plain = run.results[BED].tracks[track][week];
          if (Number.isFinite(plain)) expect(value).toBeCloseTo(plain, 9);
          else expect(value).toBeNaN();
        });
  });

  it('are the same for the same seed and others for another', () => {
    expect(bands(run)).toEqual(bands(run));
    const other = bands(run, 300, 2).scenarios[BED].tracks.weekPackDepthM;
    expect(other).not.toEqual(bands(run).scenarios[BED].tracks.weekPackDepthM);
  });

  it('are of the same draws as the ranges on the cards, however they are cut', () => {
    // 300 draws of three scenarios take two chunks here and one there; the pack's depth is the bed's last week.
    const drawn = bandsOf(drawAll(run, { count: 300, seed: 1, keep: ['packDepthM'] }), BED);
    const last = (part: keyof WeekBand) =>
      [...bands(run).scenarios[BED].tracks.weekPackDepthM[part]].filter(Number.isFinite).at(-1);
    expect(last('p10')).toBeCloseTo(drawn.p10.packDepthM as number, 9);
    expect(last('p90')).toBeCloseTo(drawn.p90.packDepthM as number, 9);
  });

  it('follow a turned input in scenarios that have it', () => {
    const column = [...run.bound[BED].bindings.keys()].find(
      (name) => name === 'bedM2' || name === 'shedLengthM',
    );
    if (!column) throw new Error('no length to turn');
    const long = finished(
      weekBands(run, {
        tracks: TRACKS,
        count: 60,
        seed: 1,
        changes: new Map([[column, 2 * (run.bound[BED].bindings.get(column)?.value ?? 0)]]),
      }),
    );
    const short = bands(run, 60);
    const at = (of: typeof long) => of.scenarios[BED].tracks.weekPackDepthM.p50[20];
    expect(at(long)).toBeLessThan(at(short));
  });

  it('go in steps that end at 1, refuse a series the model does not make', () => {
    const job = weekBands(run, { tracks: ['weekPackDepthM'], count: 600, seed: 1 });
    const steps: number[] = [];
    for (let step = job.next(); !step.done; step = job.next()) steps.push(step.value);
    expect(steps.length).toBeGreaterThan(2);
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
    expect(steps.at(-1)).toBe(1);
    // @ts-expect-error no weekly series has this name
    expect(() => finished(weekBands(run, { tracks: ['bedWidthM'], count: 1, seed: 1 }))).toThrow(
      'unknown weekly series: bedWidthM',
    );
  });
});
