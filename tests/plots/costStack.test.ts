import { describe, expect, it } from 'vitest';
import { describe as describeQuantity } from '../../src/model/dictionary.ts';
import {
  COST_GROUPS,
  COST_LINES,
  costFinding,
  costParts,
  costStackFigure,
} from '../../src/plots/costStack.ts';
import { BED, OUTSIDE, reading, resultsOf } from './moneyCases.ts';

const results = resultsOf([
  { name: 'Outside', values: OUTSIDE },
  { name: 'Bed', values: BED },
]);
const unpriced = resultsOf([
  { name: 'Outside', values: OUTSIDE },
  { name: 'Bed', values: { ...BED, beddingCost: null, annualCost: null, netCost: null } },
]);

describe('stacked yearly costs', () => {
  it('stacks every line of the yearly cost once', () => {
    expect([...COST_LINES].sort()).toEqual([...(describeQuantity('annualCost')?.from ?? [])].sort());
    expect(new Set(COST_GROUPS.map(({ fill, pattern }) => `${fill} ${pattern}`)).size).toBe(
      COST_GROUPS.length,
    );
  });

  it('stacks without gaps up to the yearly cost', () => {
    for (const { name, values } of results) {
      const parts = costParts(results).filter(({ scenario }) => scenario === name);
      expect(parts.map(({ from }) => from)).toEqual([0, ...parts.slice(0, -1).map(({ to }) => to)]);
      expect(parts[parts.length - 1].to).toBeCloseTo(values.annualCost as number, 9);
    }
  });

  it('says least, most and what sets them apart', () =>
    expect(costFinding(results, reading)).toBe(
      '“Bed” costs least a year, EUR 9 640; “Outside” most, EUR 10 000; the largest difference is feed wasted, EUR 700 more.'.replace(
        /(\d) (\d)/g,
        '$1\u202f$2',
      ),
    ));

  it('gives no sum where a price is missing, in words, bar and table', () => {
    expect(costFinding(unpriced, reading)).toContain('A price is missing for “Bed”, so there is no sum.');
    expect(costParts(unpriced).some(({ scenario }) => scenario === 'Bed')).toBe(false);
    const { table, markup } = costStackFigure(unpriced, reading);
    expect(table.rows.find(([head]) => head === 'Together')?.[2]).toBe('—');
    expect(markup?.(600)).toContain('no sum: a price is missing');
  });

  it('draws a bar a part at any width, words escaped', () => {
    const odd = resultsOf([{ name: 'A <b> & "c"', values: BED }]);
    for (const width of [240, 390, 680]) {
      const svg = costStackFigure(odd, reading).markup?.(width) ?? '';
      expect(svg).toContain('A &lt;b&gt; &amp;');
      expect(svg).not.toMatch(/<b>|NaN|Infinity/);
      expect(svg.match(/<rect [^>]*fill="url\(/g)).toHaveLength(costParts(odd).length);
    }
  });

  it('has nothing to draw without any sum', () =>
    expect(costStackFigure([unpriced[1]], reading)).toMatchObject({ draw: null, markup: null }));
});
