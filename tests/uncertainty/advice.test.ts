import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import type { Run } from '../../src/study/evaluate.ts';
import type { Coefficient } from '../../src/tables/coefficient.ts';
import { loadTables } from '../../src/tables/load.ts';
import { adviceFrom, closestTwo, type Ranking, rank } from '../../src/uncertainty/advice.ts';
import { measuresOf } from '../../src/uncertainty/decide.ts';
import { type Draws, drawAll, sample, type Uncertain } from '../../src/uncertainty/monteCarlo.ts';
import { stream } from '../../src/uncertainty/random.ts';
import { chanceGain } from '../../src/uncertainty/valueOfInformation.ts';
import { farm } from '../farm.ts';
import { decide } from '../reference/decide.ts';
import { worthOfMeasuring } from '../reference/fromGroups.ts';

const N = 10_000;
const { tables } = loadTables(readDataFiles(), CHOICE_OPTIONS);
const number = (id: string, low: number, central: number, high: number): Uncertain => ({
  id,
  label: id,
  unit: '',
  low,
  central,
  high,
  at: [],
});

/** Draws whose results are written as functions of the uncertain numbers. */
function madeDraws(
  uncertain: readonly Uncertain[],
  results: Record<string, readonly ((x: readonly number[]) => number)[]>,
): Draws {
  const xs = uncertain.map((u) => sample(u, N, 5));
  const scenarios = Object.values(results)[0].length;
  return {
    count: N,
    seed: 5,
    scenarios,
    uncertain,
    results: Object.fromEntries(
      Object.entries(results).map(([name, of]) => [
        name,
        Float64Array.from({ length: N * scenarios }, (_, k) =>
          of[k % scenarios](xs.map((x) => x[Math.floor(k / scenarios)])),
        ),
      ]),
    ),
  };
}

function finish(draws: Draws, options: Parameters<typeof rank>[1]): Ranking | null {
  const job = rank(draws, options);
  for (let step = job.next(); ; step = job.next()) if (step.done) return step.value;
}

describe('ranking', () => {
  // One cost is a + b, the other 10 + c, a and c twice as wide as b; c moves one side only, d neither.
  const uncertain = [
    number('a', -2, 0, 2),
    number('b', -1, 0, 1),
    number('c', -2, 0, 2),
    number('d', -5, 0, 5),
  ];
  const draws = madeDraws(uncertain, { netCost: [([a, b]) => a + b + 10, ([, , c]) => 10 + c] });
  const ranking = finish(draws, { measure: 'netCost', better: 'less', first: 0, second: 1, top: 10 });

  it('gives each number its share of the variance of the difference', () => {
    const share = (id: string) => ranking?.ranked.find((r) => r.id === id)?.share ?? 0;
    // The variance of each is proportional to its width squared: 4, 1 and 4 of 9 (own arithmetic).
    expect(share('a')).toBeCloseTo(4 / 9, 1);
    expect(share('b')).toBeCloseTo(1 / 9, 1);
    expect(share('c')).toBeCloseTo(4 / 9, 1);
    expect(share('d')).toBeLessThan(0.01);
    expect(ranking?.rest).toBeLessThan(0.05);
  });

  it('says which way a number pushes', () => {
    expect(ranking?.ranked.find((r) => r.id === 'a')?.rank).toBeGreaterThan(0.5);
    expect(ranking?.ranked.find((r) => r.id === 'c')?.rank).toBeLessThan(-0.5);
  });

  it('makes nothing of a scenario without the quantity', () => {
    const none = madeDraws(uncertain, { slurryM3: [() => Number.NaN, ([a]) => a] });
    expect(finish(none, { measure: 'slurryM3', first: 0, second: 1, top: 5 })).toBeNull();
  });

  it('takes the two that are best on average', () => {
    const three = madeDraws(uncertain, { netCost: [() => 9, () => 3, ([a]) => 5 + a] });
    expect(closestTwo(three, 'netCost', 'less')).toEqual([1, 2]);
    expect(closestTwo(three, 'netCost', undefined)).toEqual([0, 2]);
  });
});

describe('the worth of measuring', () => {
  const uniform = (name: string, low = -1, high = 1) => {
    const next = stream(9, name);
    return Float64Array.from({ length: N }, () => low + (high - low) * next());
  };
  const x = uniform('x');
  const sure = new Float64Array(N);

  it('is the closed form, also under noise that knowing x does not remove', () => {
    // A sure 0 or x + noise, x uniform on −1…1: knowing x gains E[max(x, 0)] = 1/4 (own arithmetic).
    const noise = uniform('noise', -3, 3);
    const noisy = x.map((value, k) => value + noise[k]);
    expect(worthOfMeasuring(x, [sure, noisy])).toBeGreaterThan(0.2);
    expect(worthOfMeasuring(x, [sure, noisy])).toBeLessThan(0.3);
  });

  it('of a number that has nothing to do with it is not above chance', () => {
    // Averaging the best of noisy groups would say about 0.1 here for every one of these.
    const noise = uniform('noise', -3, 3);
    const worths = Array.from({ length: 20 }, (_, k) =>
      worthOfMeasuring(uniform(`other ${k}`), [sure, noise]),
    );
    const chance = chanceGain([sure, noise]);
    expect(worths.reduce((sum, w) => sum + w, 0) / 20).toBeLessThan(0.02);
    expect(worths.filter((w) => w > chance).length).toBeLessThanOrEqual(2);
    expect(chance).toBeLessThan(0.05);
  });
});

describe('deciding', () => {
  const draws = madeDraws([number('a', -2, 0, 2)], {
    netCost: [([a]) => 10 + a, () => 10.5, () => 20],
    labourHours: [() => 300, () => 200, () => 100],
  });

  it('goes by the net cost when nothing is weighed', () => {
    const { deciding, best, second, shareBest } = decide(draws, {});
    expect(deciding.name).toBe('netCost');
    expect([best, second]).toEqual([0, 1]);
    // P(a < 0.5), where a has a median of 0 and a triangle down to 2: 1 − (1.5/2)²/2 (own arithmetic).
    expect(shareBest[0]).toBeCloseTo(1 - 0.75 ** 2 / 2, 1);
  });

  it('weighs several measures', () => {
    const { measures, shareBest } = decide(draws, { labourHours: 3, netCost: 1 });
    expect(measures.map((m) => m.name)).toEqual(['labourHours', 'netCost']);
    expect(measures[0].shareBest).toEqual([0, 0, 1]);
    expect(shareBest[2]).toBe(1);
  });

  it('passes over what has no better side or no weight', () => {
    expect(measuresOf({ slurryM3: 2, netCost: 0, potassiumKeptKg: 1 }).map((m) => m.name)).toEqual([
      'potassiumKeptKg',
    ]);
  });
});

describe('advice', () => {
  let run: Run;
  beforeAll(() => {
    run = farm(readDataFiles());
  });

  it('says what to do in words, the largest first, and joins what one measurement settles', () => {
    const ranked = [
      { id: 'feedDryMatterFraction.hay', share: 0.1, worth: 3 },
      { id: 'packDecayAt20CPerDay', share: 0.15, worth: 5 },
      { id: 'bedWetRestFraction', share: 0.2, worth: 40 },
      { id: 'methaneWarmingFactor', share: 0.5, worth: 90 },
    ].map((r) => {
      const { measureBy } = tables.coefficients.get(r.id) as Coefficient;
      return { ...r, measureBy, label: r.id, unit: '', low: 0, central: 1, high: 2, rank: 0 };
    });
    const advice = adviceFrom({
      measure: 'netCost',
      first: 0,
      second: 1,
      ranked,
      firstThree: 0.85,
      rest: 0.05,
    });
    expect(advice.map((a) => a.words)).toEqual([
      'Take two bed depths a month and weigh a bucket cut from the bed',
      'Weigh three bales of hay and dry a core of each',
    ]);
    expect(advice[0]).toMatchObject({ worth: 40 });
    expect(advice[0].share).toBeCloseTo(0.35, 12);
  });

  it('knows how to measure most of what decides on this farm', () => {
    const draws = drawAll(run, { count: 2_000, seed: 3, keep: ['netCost'] });
    const [first, second] = closestTwo(draws, 'netCost', 'less');
    const ranking = finish(draws, { measure: 'netCost', better: 'less', first, second, top: 20 }) as Ranking;
    const shares = ranking.ranked.map((r) => r.share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(ranking.ranked.filter((r) => r.measureBy).length).toBeGreaterThan(ranking.ranked.length / 2);
    expect(adviceFrom(ranking).length).toBeGreaterThan(0);
  });

  it.each([
    [
      'materialPricePerTonne.softwoodChips',
      'Ask two sellers for a delivered price of softwood chips, by weight',
    ],
    ['agitatePricePerHour', 'Ask two contractors for their price an hour, driver with it'],
    ['agitateHoursPerM3', 'Ask the contractor how much he gets through in an hour'],
    ['slurrySpreadM3PerHour', 'Ask the contractor how much he gets through in an hour'],
    ['scrapeMinutesPerDay', 'Time the job once with your own machine'],
    ['reseedPricePerHa', 'Ask a contractor what reseeding a hectare costs'],
    ['tankPricePerM3', 'Get two quotes for groundwork and concrete'],
    ['yardAmmoniaTanFraction', undefined],
    ['methaneWarmingFactor', undefined],
  ])('fits its row: %s', (id, words) => {
    const row = tables.coefficients.get(id) ?? tables.prices.get('EUR')?.get(id);
    expect(row, 'no such row').toBeDefined();
    expect(row?.measureBy).toBe(words);
  });

  it('asks for a price by word of mouth, paper or bill, never by a stopwatch or a laboratory', () => {
    const asking = /^(Ask|Get two quotes|Price the fittings|Work out|Add up)/;
    for (const table of tables.prices.values())
      for (const { id, measureBy } of table.values()) expect(measureBy ?? 'Ask', id).toMatch(asking);
  });
});
