/** Flows of many draws against the case of one row: the same money by two roads. Regression, own arithmetic. */
import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import {
  CASH_INPUTS,
  CASH_RESULTS,
  type CashTerms,
  flowsAgainst,
  worthAgainst,
} from '../../src/model/money/cashTerms.ts';
import type { Run } from '../../src/study/evaluate.ts';
import { billRows, moneyCase, proposalOf } from '../../src/study/moneyCase.ts';
import { cashBand } from '../../src/uncertainty/cashBands.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { oneAtATime } from '../../src/whatif/oneAtATime.ts';
import { stressRows } from '../../src/whatif/stressRun.ts';
import { farm } from '../farm.ts';

let run: Run;
beforeAll(() => {
  run = farm(readDataFiles());
});

const termsOf = (k: number) =>
  Object.fromEntries([
    ...CASH_RESULTS.map((name) => [name, run.results[k].values[name]]),
    ...CASH_INPUTS.map((name) => [name, run.bound[k].bindings.get(name)?.value]),
  ]) as CashTerms;
const compared = () =>
  run.results.flatMap(({ finance }, k) =>
    finance.difference
      ? [
          {
            k,
            base: run.results.findIndex((r) => r.name === finance.difference?.baseline),
            difference: finance.difference,
          },
        ]
      : [],
  );

describe('cash of many draws', () => {
  it('gives the flows and the present value of the case', () => {
    expect(compared().length).toBeGreaterThan(0);
    for (const { k, base, difference } of compared()) {
      const flows = flowsAgainst(termsOf(k), termsOf(base));
      expect(flows).toHaveLength(difference.flows.length);
      for (const [year, flow] of flows.entries()) expect(flow).toBeCloseTo(difference.flows[year], 6);
      expect(worthAgainst(termsOf(k), termsOf(base))).toBeCloseTo(
        difference.netPresentValue.value as number,
        6,
      );
    }
  });

  it('has no worth where a price is missing', () =>
    expect(worthAgainst({ ...termsOf(0), capitalCost: Number.NaN })).toBeNaN());

  it('makes a band round the middle that widens, and none without the draws it needs', () => {
    const draws = drawAll(run, { count: 300, seed: 3, keep: [...CASH_RESULTS] });
    const [{ k, base }] = compared();
    const band = cashBand(draws, run.bound, k, base);
    if (!band) throw new Error('no band');
    expect(band.p10).toHaveLength(Math.round(termsOf(k).lifeYears) + 1);
    expect(band.p10.every((low, year) => low < band.p50[year] && band.p50[year] < band.p90[year])).toBe(true);
    expect(band.p90[20] - band.p10[20]).toBeGreaterThan(band.p90[0] - band.p10[0]);
    expect(cashBand(drawAll(run, { count: 10, seed: 1, keep: ['netCost'] }), run.bound, k, base)).toBeNull();
  });

  it('swings about the present value as it stands, widest first', () => {
    const [{ k, base, difference }] = compared();
    const { central, rows } = oneAtATime(run, k, base, 10);
    expect(central).toBeCloseTo(difference.netPresentValue.value as number, 6);
    expect(rows).toHaveLength(10);
    const widths = rows.map(({ atLow, atHigh }) => Math.abs(atHigh - atLow));
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
  });

  it('runs the stresses of the shipped tables on every scenario', () => {
    const rows = stressRows(run);
    expect(rows.map(({ id }) => id)).toEqual([
      'income',
      'works',
      'feed',
      'bedding',
      'fertiliser',
      'rate',
      'grant',
      'rain',
      'herd',
      'grantLate',
      'delay',
    ]);
    for (const { outcomes } of rows)
      expect(outcomes.map(({ name }) => name)).toEqual(run.results.map(({ name }) => name));
  });

  it('gathers a bill that adds up to the capital to the cent', () => {
    for (let k = 0; k < run.results.length; k++) {
      const sum = billRows(run, k).reduce((all, { amount }) => all + (amount ?? Number.NaN), 0);
      expect(sum).toBeCloseTo(run.results[k].values.capitalCost as number, 2);
      expect(moneyCase(run, k).bill.every(({ currency }) => currency === run.currency)).toBe(true);
    }
  });

  it('proposes what is named, what borrows, or what costs most to build', () => {
    expect(proposalOf(run, run.results[1].name)).toBe(1);
    expect(proposalOf(run, 'nobody')).toBe(-1);
    const capital = run.results.map(({ values }) => values.capitalCost ?? 0);
    const borrows = run.results.findIndex(({ values }) => (values.loanTotal ?? 0) > 0);
    expect(proposalOf(run)).toBe(borrows >= 0 ? borrows : capital.indexOf(Math.max(...capital)));
  });
});
