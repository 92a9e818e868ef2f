/** The figure a keeper reads must lie in the middle of what is plausible: every headline of the shipped notebooks. */
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import type { ResultName } from '../../src/model/quantities.ts';
import { baselinesOf } from '../../src/study/baselines.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { differencesOf, drawsOf } from '../../src/uncertainty/percentiles.ts';
import { NOTEBOOKS } from '../snapshot/figures.ts';

const HEADLINES: readonly ResultName[] = [
  'nitrogenKeptKg', 'labourHours', 'capitalCost', 'annualCost', 'netCost', 'nutrientValue', 'compostTonnes', 'packDepthM',
  'slurryM3', 'feedTonnes', 'greenhouseGasTonnes',
]; // biome-ignore format: one list

/** Share of the draws below the figure; what is equal counts half. */
function placeOf(figure: number, draws: Float64Array): number {
  let below = 0;
  for (const value of draws) below += value < figure ? 1 : value === figure ? 0.5 : 0;
  return below / draws.length;
}

const LOOKED_AT = ['coast-lender-case', 'hill-farm-choice', 'hill-farm-own-chips', 'atlantic-rain-and-herd'];

describe('every headline lies between P35 and P65 of its own draws', () => {
  it.each(LOOKED_AT)('%s', async (name) => {
    const { run } = await openNotebook(`notebooks/${name}.md`);
    const draws = drawAll(run, { count: 4000, seed: 1, keep: [...HEADLINES, 'netPresentValue'] });
    const outside: string[] = [];
    let looked = 0;
    const look = (what: string, figure: number | null | undefined, of: Float64Array) => {
      if (typeof figure !== 'number') return;
      looked++;
      const place = placeOf(figure, of);
      if (!(place >= 0.35 && place <= 0.65)) outside.push(what);
    };
    run.results.forEach((result, k) => {
      for (const headline of HEADLINES)
        look(`${result.name}: ${headline}`, result.values[headline], drawsOf(draws, headline, k));
    });
    baselinesOf(run).forEach((baseline, k) => {
      if (baseline < 0) return;
      look(
        `${run.results[k].name}: present value against the baseline`,
        run.results[k].finance.difference?.netPresentValue.value,
        differencesOf(draws, 'netPresentValue', k, baseline),
      );
    });
    expect(looked).toBeGreaterThan(20);
    expect(outside).toEqual([]);
  });

  it('of all notebooks that are shipped', () => {
    const shipped = NOTEBOOKS.map((file) => file.replace(/^.*\//, '').replace(/\.md$/, ''));
    expect([...LOOKED_AT].sort()).toEqual([...shipped].sort());
  });
});
