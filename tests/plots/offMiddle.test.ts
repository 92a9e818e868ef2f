/** The sentence about a figure off the middle of its own draws: there when it is, with the side and the reason. */
import { describe, expect, it } from 'vitest';
import { middleApart, offMiddleWords } from '../../src/plots/offMiddle.ts';

const reading = { currency: 'EUR', year: 2024, system: 'metric' } as const;
/** P10, P50 and P90 of one figure. */
const bands = (name: string, [low, middle, high]: readonly [number, number, number]) => {
  const of = (value: number) => ({ [name]: value });
  return { p10: of(low), p50: of(middle), p90: of(high) };
};

describe('a figure off the middle of its draws', () => {
  it('is told from one near it by a seventh of the span', () => {
    const of = bands('netCost', [1000, 1500, 2000]) as never;
    expect(middleApart(1600, 'netCost', of)).toBeNull();
    expect(middleApart(1700, 'netCost', of)).toBe(1500);
    expect(middleApart(1300, 'netCost', of)).toBe(1500);
    expect(middleApart(null, 'netCost', of)).toBeNull();
    expect(middleApart(1700, 'netCost', null)).toBeNull();
    expect(middleApart(1700, 'netCost', bands('netCost', [1500, 1500, 1500]) as never)).toBeNull();
  });

  it('says on which side, in which scenario, and why', () => {
    const drawn = [
      { name: 'Out', values: { nutrientValue: 900, netCost: 5000 }, bands: bands('nutrientValue', [300, 600, 1000]) },
      { name: 'In', values: { nutrientValue: 600 }, bands: bands('nutrientValue', [300, 600, 1000]) },
    ] as never; // biome-ignore format: two rows
    const [words, ...more] = offMiddleWords(drawn, ['nutrientValue', 'netCost'], reading);
    expect(more).toEqual([]);
    expect(words).toMatch(
      /^The worth of the nutrients kept lies off the middle of its draws, above EUR 600 in “Out”: what the ground needs caps it/,
    );
    const cost = [{ name: 'In', values: { netCost: 300 }, bands: bands('netCost', [200, 900, 1000]) }];
    expect(offMiddleWords(cost as never, ['netCost'], reading)).toEqual([
      expect.stringMatching(/below EUR 900 in “In”: what it rests on may miss by more on one side/),
    ]);
  });
});
