// Whatever is shown as the best guess lies inside the range shown beside it, for every result of the shipped notebooks.
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { RESULTS } from '../../src/model/dictionary.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { bandsOf } from '../../src/uncertainty/percentiles.ts';
import { NOTEBOOKS } from '../snapshot/figures.ts';

const keep = RESULTS.map(({ name }) => name);
const ROUNDING = 1e-9;

describe.each(NOTEBOOKS)('%s', (notebook) => {
  it('has no best guess outside its own P10 to P90', async () => {
    const { run } = await openNotebook(`notebooks/${notebook}.md`);
    const draws = drawAll(run, { count: 1000, seed: 7, keep });
    const outside: string[] = [];
    let seen = 0;
    run.results.forEach(({ name: scenario, values }, k) => {
      const { p10, p90 } = bandsOf(draws, k);
      for (const name of keep) {
        const [low, value, high] = [p10[name], values[name], p90[name]];
        if (low === null || value === null || high === null) continue;
        if (low === undefined || value === undefined || high === undefined) continue;
        seen++;
        const slack = ROUNDING * Math.max(1, Math.abs(value));
        if (value < low - slack || value > high + slack)
          outside.push(`${scenario} ${name}: ${value}, draws ${low} to ${high}`);
      }
    });
    expect(seen).toBeGreaterThan(500);
    expect(outside).toEqual([]);
  });
});
