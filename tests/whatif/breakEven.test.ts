import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import type { Run } from '../../src/study/evaluate.ts';
import { breakEvens, tiesOf } from '../../src/whatif/breakEven.ts';
import { sweep } from '../../src/whatif/sweep.ts';
import { type Turn, turnOf } from '../../src/whatif/turn.ts';
import { farm } from '../farm.ts';

const ties = (f: (x: number) => number, from = 0, to = 10) => tiesOf((at) => at.map(f), [from, to]).ties;

describe('ties of a function', () => {
  it('none where one side leads all the way', () => {
    expect(ties((x) => 1 + x * x)).toEqual([]);
  });

  it('one, to a millionth of the span', () => {
    const [tie, ...more] = ties((x) => x ** 3 - 100);
    expect(more).toEqual([]);
    expect(Math.abs(tie.at - 100 ** (1 / 3))).toBeLessThan(1e-5);
    expect(tie).toMatchObject({ sign: -1, step: false });
  });

  it('several, in order', () => {
    const found = ties((x) => Math.sin(x), 1, 10);
    expect(found.map((t) => t.at)).toHaveLength(3);
    found.forEach((tie, k) => {
      expect(tie.at).toBeCloseTo((k + 1) * Math.PI, 6);
    });
    expect(found.map((t) => t.sign)).toEqual([1, -1, 1]);
  });

  it('two that lie closer together than the scan', () => {
    const found = ties((x) => (x - 4.98) * (x - 5.03));
    expect(found.map((t) => Math.round(t.at * 1000) / 1000)).toEqual([4.98, 5.03]);
  });

  it('no touch of 0, on a scan point or beside it', () => {
    expect(ties((x) => (x - 5) ** 2)).toEqual([]);
    expect(ties((x) => Math.max(0, Math.abs(x - 5) - 0.5))).toEqual([]);
  });

  it('a start at 0 is none; a plateau between two signs is one', () => {
    expect(ties((x) => x)).toEqual([]);
    const [plateau, ...more] = ties((x) => (x < 4 ? x - 4 : Math.max(0, x - 6)));
    expect(more).toEqual([]);
    expect(plateau.at).toBeGreaterThanOrEqual(3.99);
    expect(plateau.at).toBeLessThanOrEqual(6);
  });

  it('a step is found and called one', () => {
    const [tie] = ties((x) => (x < 7.3 ? -2 : 3));
    expect(tie.at).toBeCloseTo(7.3, 5);
    expect(tie.step).toBe(true);
  });

  it('nothing across a stretch without a value', () => {
    expect(ties((x) => (x > 4 && x < 6 ? Number.NaN : x - 5))).toEqual([]);
    expect(ties(() => Number.NaN)).toEqual([]);
  });
});

describe('flips of the model', () => {
  let run: Run;
  let wage: Turn;
  beforeAll(() => {
    run = farm(readDataFiles());
    wage = turnOf(run, 'labourPricePerHour') as Turn;
  });

  it('agree with plain runs on either side of the tie', () => {
    const { ties: found } = breakEvens(run, wage, [0, 200], 'netCost', 0, 1);
    expect(found.length).toBeGreaterThan(0);
    for (const { at, moreBelow, moreAbove } of found) {
      const { results } = sweep(run, wage, [at - 0.01, at + 0.01], ['netCost']);
      expect(results.netCost[moreBelow]).toBeGreaterThan(results.netCost[moreAbove]);
      expect(results.netCost[3 + moreAbove]).toBeGreaterThan(results.netCost[3 + moreBelow]);
    }
  });

  it('are the same whichever scenario is named first', () => {
    const [a, b] = [
      breakEvens(run, wage, [0, 200], 'netCost', 0, 1),
      breakEvens(run, wage, [0, 200], 'netCost', 1, 0),
    ];
    expect(b.ties).toEqual(a.ties);
    expect(b.moreAtLow).toBe(a.moreAtLow);
  });

  it('are not looked for where one scenario has no such quantity', () => {
    const flips = breakEvens(run, wage, [0, 50], 'slurryM3', 0, 1);
    expect(flips).toMatchObject({ ties: [], moreAtLow: null, comparable: false });
  });

  it('find none where nothing depends on the input', () => {
    const flips = breakEvens(run, wage, [0, 50], 'nitrogenKeptKg', 0, 1);
    expect(flips).toMatchObject({ ties: [], comparable: true, moreAtLow: 0 });
  });
});
