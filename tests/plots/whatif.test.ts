import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import { bestCells, bestMapFigure, edgesOf } from '../../src/plots/bestMap.ts';
import { stackDots } from '../../src/plots/drawsDots.ts';
import { flipFinding } from '../../src/plots/sweepLines.ts';
import { orNothing, saidSpan, saidTurn } from '../../src/plots/verdict.ts';
import type { BreakEvens } from '../../src/whatif/breakEven.ts';
import type { Grid } from '../../src/whatif/sweep.ts';
import { type Turn, turnOf } from '../../src/whatif/turn.ts';
import { farm } from '../farm.ts';
import { openDocument } from './picture.ts';

const reading = { currency: 'EUR', year: 2024, system: 'metric' } as const;
const names = ['Paddock', 'Shed'];
let head: Turn;
let rain: Turn;
beforeAll(() => {
  const run = farm(readDataFiles());
  head = turnOf(run, 'headCount') as Turn;
  rain = turnOf(run, 'rainFactor') as Turn;
});

const flips = (over: Partial<BreakEvens>): BreakEvens => ({
  turn: head,
  from: 1,
  to: 54,
  first: 0,
  second: 1,
  measure: 'netCost',
  ties: [],
  moreAtLow: 1,
  comparable: true,
  ...over,
});
const tie = (at: number, moreBelow: number) => ({ at, moreBelow, moreAbove: 1 - moreBelow, step: false });

describe('the flip in words', () => {
  const capital = [2_000, 60_000];
  it('says below how many head the dearer building does not pay for itself', () => {
    expect(flipFinding(flips({ ties: [tie(11.3, 1)] }), { names, capital }, reading)).toBe(
      'Below 12 head “Shed” does not pay for itself against “Paddock”: “Paddock” costs less net a year there, “Shed” above. (Here shed and yards are built to match the herd, the land stays as it is.)',
    );
    expect(flipFinding(flips({ ties: [tie(11.3, 0)] }), { names, capital }, reading)).toMatch(
      /^Above 12 head “Shed” does not pay for itself/,
    );
  });

  it('speaks of paying only where money is compared', () => {
    expect(
      flipFinding(
        flips({ measure: 'nitrogenKeptKg', turn: rain, ties: [tie(1.24, 0)] }),
        { names, capital },
        reading,
      ),
    ).toBe('Below 1.24× (rain against this weather) “Paddock” keeps more nitrogen, above it “Shed” does.');
  });

  it('says that nothing flips, and who is ahead', () => {
    expect(flipFinding(flips({}), { names, capital }, reading)).toBe(
      '“Paddock” costs less net a year than “Shed” all the way from 1 to 54 head; the answer does not flip. (Here shed and yards are built to match the herd, the land stays as it is.)',
    );
  });

  it('lists several', () => {
    expect(
      flipFinding(flips({ ties: [tie(5, 1), tie(20, 0), tie(40, 1)] }), { names, capital }, reading),
    ).toBe(
      'The answer flips 3 times from 1 to 54 head. What costs less net a year: “Paddock” up to 5 head, then “Shed” up to 20 head, then “Paddock” up to 40 head, then “Shed” above 40 head. (Here shed and yards are built to match the herd, the land stays as it is.)',
    );
  });

  it('says when there is nothing to compare', () => {
    expect(
      flipFinding(flips({ comparable: false, measure: 'slurryM3' }), { names, capital }, reading),
    ).toMatch(/cannot be set against each other: one of them has no slurry/);
  });
});

describe('the map of the best', () => {
  // Two by three cells; the second scenario wins where its cost is lower, they tie once, one has none once.
  const grid = (): Grid => ({
    across: rain,
    acrossAt: [0.5, 1, 1.5],
    down: head,
    downAt: [10, 20],
    scenarios: 2,
    results: { netCost: Float64Array.from([1, 2, 2, 2, 3, 2, 9, 2, Number.NaN, 4, 9, 3]) },
  });

  it('finds the best and its lead in every cell', () => {
    const cells = bestCells(grid(), 'netCost', [0, 1], 'less');
    expect(cells.map((c) => c.best)).toEqual([0, null, 1, 1, 1, 1]);
    expect(cells.map((c) => c.by)).toEqual([1, 0, 1, 7, null, 6]);
  });

  it('says where each wins, and puts letters in its table', () => {
    const { finding, table, legend } = bestMapFigure(grid(), { measure: 'netCost', names }, reading);
    expect(finding).toBe(
      'What costs less net a year over head and rain against this weather: “Shed” on 67 % of the map, “Paddock” on 17 % of the map (rain against this weather 0.5×, 10 head) and a tie for best on 17 % of the map. The lead is at most EUR 7. (Here shed and yards are built to match the herd, the land stays as it is.)',
    );
    expect(table.rows).toEqual([
      ['20 head', 'B by EUR 7', 'B', 'B by EUR 6'],
      ['10 head', 'A by EUR 1', '=', 'B by EUR 1'],
    ]);
    expect(legend.map((l) => l.label)).toEqual(['A Paddock', 'B Shed']);
  });

  it.each([340, 680, 1200])('marks no value on an axis that was not tried, at %i px', (width) => {
    const close = openDocument();
    try {
      // Three rows from no rain on: half a cell below them would be a negative rain.
      const draw = bestMapFigure(
        { ...grid(), across: head, acrossAt: [10, 20], down: rain, downAt: [0, 1.25, 2.5] },
        { measure: 'netCost', names },
        reading,
      ).draw;
      const drawn = draw?.(width) as Element;
      const marked = (axis: string) =>
        [...drawn.querySelectorAll(`[aria-label="${axis}-axis tick label"] text`)].map((label) =>
          Number(label.textContent?.replace('\u2212', '-').replace(/[^\d.-]/g, '')),
        );
      for (const [axis, low, high] of [
        ['y', 0, 2.5],
        ['x', 10, 20],
      ] as const) {
        expect(marked(axis).length).toBeGreaterThan(1);
        expect(Math.min(...marked(axis))).toBeGreaterThanOrEqual(low);
        expect(Math.max(...marked(axis))).toBeLessThanOrEqual(high);
      }
    } finally {
      close();
    }
  });

  it('has cell borders half way between unevenly spaced values', () => {
    expect(edgesOf([1, 3, 4])).toEqual([0, 2, 3.5, 4.5]);
  });
});

describe('dots', () => {
  it('are all kept, stacked where they would touch', () => {
    const dots = stackDots([1, 1.1, 1.2, 5, 9], 0.5);
    expect(dots).toHaveLength(5);
    expect(dots.map((d) => d.up)).toEqual([0, 1, 2, 0, 0]);
    expect(dots[0].value).toBeCloseTo(1.1, 12);
  });
});

describe('turned inputs in words', () => {
  it('are whole where they only come whole', () => {
    expect(saidTurn(head, 11.01, reading)).toBe('12 head');
    expect(saidTurn(rain, 1.25, reading)).toBe('1.25× (rain against this weather)');
    expect(saidSpan(head, 1, 54, reading)).toBe('1 to 54 head');
  });

  it('call next to nothing nothing', () => {
    expect([orNothing(0.00004, 86), orNothing(2, 86)]).toEqual([0, 2]);
  });
});
