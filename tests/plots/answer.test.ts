// The answer first: which way, and every sentence of it against the numbers it speaks of.
import { beforeAll, describe, expect, it } from 'vitest';
import { newNotebook } from '../../src/begin/begin.ts';
import { openNotebook } from '../../src/cli/open.ts';
import type { Check } from '../../src/model/checks/check.ts';
import type { ResultName } from '../../src/model/quantities.ts';
import type { Notebook } from '../../src/notebook/read.ts';
import { type AnswerOf, answerOf, missingOf } from '../../src/plots/answer.ts';
import { answerWords } from '../../src/plots/answerWords.ts';
import type { Run } from '../../src/study/evaluate.ts';
import { measuresOf } from '../../src/uncertainty/decide.ts';
import type { Doubt } from '../../src/uncertainty/doubt.ts';
import { type Draws, drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { overtakes } from '../../src/whatif/overtake.ts';
import { sweep } from '../../src/whatif/sweep.ts';
import { turnOf } from '../../src/whatif/turn.ts';
import { begun, setting } from '../begin/setting.ts';
import { evaluation, reading } from '../browser/fixtures/evaluation.ts';

const WEIGHTS: readonly Readonly<Record<string, number>>[] = [
  {},
  { labourHours: 1 },
  { netCost: 2, nitrogenKeptKg: 1 },
];
const NOTHING = { prices: 0, unsourced: 0, unsaid: [] };
const values = (name: ResultName, of: readonly (number | null)[]): AnswerOf => ({
  results: of.map((value, k) => {
    const from = evaluation.scenarios[k];
    return { ...from, checks: [], values: { ...from.values, [name]: value } };
  }),
  weights: { [name]: 1 },
  missing: NOTHING,
});
const drawn = (name: ResultName, rows: readonly (readonly number[])[]): Draws => ({
  count: rows.length,
  seed: 1,
  scenarios: rows[0].length,
  uncertain: [],
  results: { [name]: Float64Array.from(rows.flat()) },
});
const said = (of: AnswerOf) => {
  const { lead, rest } = answerWords(answerOf(of, reading), reading);
  return [lead, ...rest].join(' ');
};

describe('which way', () => {
  it('names the best, the next best and how far apart what is shown of them is', () => {
    // 571 and 392 kg are shown; unrounded they are 180 kg apart.
    const of = values('nitrogenKeptKg', [571.4, 391.6, 120]);
    expect(answerOf(of, reading)).toMatchObject({ state: 'led', first: 0, second: 1 });
    expect(said(of)).toContain(
      '“Paddock” keeps most nitrogen: 571 kg, 179 kg more than “Slats”, the next best.',
    );
  });

  it('says in how many draws it is first, in whole hundredths that sum to 100', () => {
    // 986, 0 and 14 of a thousand draws: each rounded alone would be 99 and 1, and with 6 of the third 101.
    const rows = Array.from({ length: 1000 }, (_, k) =>
      k < 986 ? [1, 2, 3] : k < 994 ? [3, 1, 2] : [3, 2, 1],
    );
    const text = said({ ...values('netCost', [1000, 2000, 3000]), draws: drawn('netCost', rows) });
    const [paddock, slats, bed] = [
      '“Paddock” costs.*first in (\\d+)',
      '“Slats” in (\\d+)',
      '“Deep bed” in (\\d+)',
    ].map((of) => Number(new RegExp(of).exec(text)?.[1]));
    expect(paddock + slats + bed).toBe(100);
  });

  it('says when little or nothing decides', () => {
    const of = values('netCost', [1000, 1100, 3000]);
    const with55 = (first: number) =>
      drawn(
        'netCost',
        Array.from({ length: 100 }, (_, k) => (k < first ? [1, 2, 3] : [2, 1, 3])),
      );
    expect(said({ ...of, draws: with55(60) })).toMatch(/^Little decides: “Paddock” .* first in 60 of 100/);
    expect(said({ ...of, draws: with55(40) })).toMatch(
      /^Nothing decides: by the best guesses “Paddock” .*EUR 100 less than “Slats”.* “Slats” is first more often: in 60 of 100 draws, “Paddock” in 40\./,
    );
    expect(said({ ...of, draws: with55(80) })).toMatch(/^“Paddock” costs least/);
  });

  it('says a tie as one, also where only what is shown is the same', () => {
    const of = values('netCost', [1000.1, 1000.4, 3000]);
    expect(answerOf(of, reading)).toMatchObject({ state: 'tie', tied: [0, 1] });
    expect(said(of)).toMatch(/^Nothing decides: “Paddock” and “Slats” read the same in net cost a year/);
  });

  it('compares nothing where there is one scenario, or one figure, or none', () => {
    const one = values('netCost', [1000]);
    expect(said(one)).toMatch(/^There is one scenario, “Paddock”/);
    expect(said(one)).not.toMatch(/draws|next|Against/);
    expect(said(values('netCost', [null, 2000, null]))).toMatch(/^Only “Slats” has a net cost a year/);
    expect(said(values('netCost', [null, null, null]))).toMatch(/^Which way cannot be said/);
  });

  it('says that the first does not work as written, by name, and which is the best that nothing stops', () => {
    const of = values('netCost', [1000, 2000, 3000]);
    const stop = { id: 'lyingArea', status: 'stop', theme: 'room' } as Check;
    const stopping = (stopped: readonly number[]) =>
      said({
        ...of,
        results: of.results.map((each, k) => (stopped.includes(k) ? { ...each, checks: [stop] } : each)),
      });
    const works = 'As written “Paddock” does not work: lying area stops it';
    expect(stopping([0])).toContain(`${works}. Of those that nothing stops, “Slats” comes first.`);
    expect(stopping([0, 1])).toContain(`${works}. Of those that nothing stops, “Deep bed” comes first.`);
    expect(stopping([0, 1, 2])).toContain(`${works}, and the others are stopped as well.`);
    expect(stopping([1])).not.toContain('does not work');
    // With nothing beside it there is nothing to send the reader to.
    const alone = values('netCost', [1000]);
    const [one] = alone.results;
    expect(said({ ...alone, results: [{ ...one, checks: [stop] }] })).toMatch(/lying area stops it\.$/);
  });

  it('does not offer a measurement where nothing can change who is first', () => {
    const doubt: Doubt = {
      label: 'Straw', unit: 'EUR/t', low: 60, high: 120, share: 0.4, worth: 0, measure: 'Weigh a bale', measureShare: 0.4,
    }; // biome-ignore format: one number
    const rows = (won: number) =>
      drawn(
        'netCost',
        Array.from({ length: 100 }, (_, k) => (k < won ? [1, 2, 3] : [2, 1, 3])),
      );
    const of = values('netCost', [1000, 2000, 3000]);
    expect(said({ ...of, doubt, draws: rows(90) })).toContain('Weigh a bale: that settles about 40 %');
    expect(said({ ...of, doubt, draws: rows(100) })).not.toContain('Weigh a bale');
  });

  it('says what is missing', () => {
    const of = values('netCost', [1000, 2000, 3000]);
    const missing = { prices: 9, unsourced: 4, unsaid: ['a soil test'] };
    expect(said({ ...of, missing })).toContain(
      'Missing: a source for 4 of the 9 prices in use and a soil test.',
    );
    expect(said(of)).not.toContain('Missing');
  });
});

describe('on the shipped notebooks', () => {
  const opened: { notebook: Notebook; run: Run }[] = [];
  beforeAll(async () => {
    for (const name of ['hill-farm-choice', 'atlantic-rain-and-herd', 'coast-lender-case'])
      opened.push(await openNotebook(`notebooks/${name}.md`));
  });

  /** Who costs least where an input stands at a value, by a run of its own and a plain comparison. */
  function cheapest(run: Run, name: string, value: number): number {
    const turn = turnOf(run, name);
    if (!turn) throw new Error(`no input ${name}`);
    const costs = [...sweep(run, turn, [value], ['netCost']).results.netCost];
    return costs.indexOf(Math.min(...costs));
  }

  it('finds a turn that turns it, and not at half the way', () => {
    let found = 0;
    for (const { run } of opened) {
      const measures = measuresOf({});
      const turns = overtakes(run, measures);
      if (!turns?.nearest) continue;
      const { id, now, at, by, unit } = turns.nearest;
      const half = (now + at) / 2;
      found++;
      expect(cheapest(run, id, now)).toBe(turns.first);
      expect(cheapest(run, id, at)).toBe(by);
      expect(cheapest(run, id, unit === 'head' ? Math.round(half) : half)).toBe(turns.first);
    }
    expect(found).toBeGreaterThan(0);
  });

  it('names only scenarios that feel it: no length of a shed for those who stay outdoors', () => {
    let named = 0;
    for (const { run } of opened)
      for (const weights of WEIGHTS) {
        const nearest = overtakes(run, measuresOf(weights))?.nearest;
        if (!nearest?.only || !nearest.id.startsWith('shed')) continue;
        named++;
        expect(nearest.only.map((k) => run.scenarios[k].system)).not.toContain('outwintered');
      }
    expect(named).toBeGreaterThan(0);
  });

  it('turns an input where it stands: sheds of two depths are not both made another', async () => {
    const { run } = await newNotebook(begun({}, 'US'), setting);
    if (!run) throw new Error('no notebook');
    const depths = run.bound.map(({ bindings }) => bindings.get('shedDepthM')?.value);
    expect(new Set(depths).size).toBeGreaterThan(1);
    const turns = overtakes(run, measuresOf({ netCost: 2, nitrogenKeptKg: 1, labourHours: 1 }));
    // Set to one depth in all, it was the nearest by far, and from a depth that no slatted shed here has.
    expect(turns?.nearest?.id).not.toBe('shedDepthM');
    const nearest = {
      id: 'shedDepthM',
      label: 'shed depth',
      unit: 'm',
      now: 4.2,
      at: 8,
      by: 0,
      low: 2.1,
      high: 8.4,
    };
    const of = values('netCost', [2000, 1000, 3000]);
    const told = { first: 1, nearest: { ...nearest, ranged: false, only: [1] }, looked: 9 };
    expect(said({ ...of, overtakes: told })).toContain(
      'The nearest number that would turn it is shed depth of “Slats”: at about 8 m instead of 4.2 m “Paddock” is first.',
    );
  });

  it('counts the prices in use that rest on memory or invention, never more than are in use', () => {
    for (const { notebook, run } of opened) {
      const { prices, unsourced, unsaid } = missingOf(run, notebook);
      expect(prices).toBeGreaterThan(10);
      expect(unsourced).toBeLessThanOrEqual(prices);
      expect(unsaid.includes('a soil test')).toBe(notebook.farm.soil.needs === undefined);
    }
  });

  it('agrees with the cards: what is said of the first is the difference of the figures shown', () => {
    for (const { notebook, run } of opened) {
      const { weights } = notebook.decide;
      const keep = [...new Set([...measuresOf(weights).map(({ name }) => name), 'netCost' as const])];
      const draws = drawAll(run, { count: 500, seed: 1, keep });
      const answer = answerOf({ results: run.scenarios, weights, draws, missing: NOTHING }, reading);
      for (const { name, first, second } of answer.apart) {
        expect(first).toBe(run.scenarios[answer.first].values[name]);
        expect(second).toBe(run.scenarios[answer.second ?? 0].values[name]);
      }
      expect(answer.shares?.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    }
  });
});
