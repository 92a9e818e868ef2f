/** A walk that asks whether a row repeats the one above: all it reads is compared, series to their last week. */
import { describe, expect, it } from 'vitest';
import { restingRiseC } from '../../src/model/bed/heapRates.ts';
import { catalogue } from '../../src/model/engine/catalogue.ts';
import { CHUNK } from '../../src/model/engine/layout.ts';
import { planOf } from '../../src/model/engine/plan.ts';
import { run } from '../../src/model/engine/run.ts';
import { walk } from '../../src/model/engine/walk.ts';
import { WEEKS, week } from '../../src/model/series.ts';

/** Numbers of the first walk's rows, and how often the second walked a row. */
function walked(lastWeek: readonly number[], scale: readonly number[]) {
  let rows = 0;
  const first = walk({
    name: 'first',
    about: '',
    reads: ['lastWeek'],
    makes: { weekFirst: week('', '', '') },
    run({ count, read, write }) {
      for (let i = 0; i < count; i++) {
        write.weekFirst.fill(Number.NaN, i * WEEKS, (i + 1) * WEEKS);
        write.weekFirst[(i + 1) * WEEKS - 1] = read.lastWeek[i];
      }
    },
  });
  const second = walk({
    name: 'second',
    about: '',
    reads: ['weekFirst', 'scale'],
    makes: { last: { label: '', unit: '', formula: '' } },
    run({ count, read, write, repeats }) {
      for (let i = 0; i < count; i++) {
        if (repeats(i)) continue;
        rows++;
        write.last[i] = read.weekFirst[(i + 1) * WEEKS - 1] * read.scale[i];
      }
    },
  });
  const plan = planOf(catalogue({ first, second }), ['last']);
  const columns: Record<string, Float64Array> = {
    lastWeek: Float64Array.from(lastWeek),
    scale: Float64Array.from(scale),
  };
  const { last } = run(plan, (name) => columns[name], lastWeek.length);
  return { last: [...last], rows };
}

describe('a row like the one above', () => {
  it('is copied where every number is alike, weeks that are no numbers too', () => {
    expect(walked([3, 3, 3], [2, 2, 2])).toEqual({ last: [6, 6, 6], rows: 1 });
  });

  it('is walked where a single number or the last week of a series differs', () => {
    expect(walked([3, 4, 4, 4], [2, 2, 5, 5])).toEqual({ last: [6, 8, 20, 20], rows: 3 });
  });

  it('is compared anew in every chunk', () => {
    const many = Array.from({ length: CHUNK + 100 }, () => 3);
    expect(walked(many, many)).toEqual({ last: many.map(() => 9), rows: Math.ceil(many.length / CHUNK) });
    expect(many.length).toBeGreaterThan(CHUNK);
  });
});

describe('the rise of a heap at rest (regression check)', () => {
  it('is the lower root on both sides of where it is read off first', () => {
    const perC = Math.log(1.066);
    for (let number = 0.001; number < 0.9; number += 0.0007) {
      const y = restingRiseC(number) * perC;
      expect(Math.abs((number / Math.E) * Math.exp(y) - y)).toBeLessThan(1e-9);
      expect(y).toBeLessThan(1);
    }
  });
});
