// Sentences put together by code, held against the numbers they speak of and against their neighbours.
import { describe, expect, it } from 'vitest';
import type { ResultName } from '../../src/model/quantities.ts';
import { compareFinding } from '../../src/plots/compare.ts';
import { drawsFinding } from '../../src/plots/drawsDots.ts';
import { ladderFinding } from '../../src/plots/ladder.ts';
import { ledgerFinding } from '../../src/plots/ledger.ts';
import { adviceLine, rankingFigure, rankingFinding } from '../../src/plots/ranking.ts';
import { sweepFinding } from '../../src/plots/sweepLines.ts';
import type { ScenarioResult } from '../../src/study/evaluate.ts';
import type { Ranking } from '../../src/uncertainty/advice.ts';
import type { Draws } from '../../src/uncertainty/monteCarlo.ts';
import { stream } from '../../src/uncertainty/random.ts';
import { hundredthsOf } from '../../src/uncertainty/sentences.ts';
import { formatDifference, formatQuantity, readsTheSame } from '../../src/units/format.ts';
import type { Turn } from '../../src/whatif/turn.ts';
import { evaluation, reading } from '../browser/fixtures/evaluation.ts';

const NAMES = evaluation.scenarios.map(({ name }) => name);
const whole = (said: string) => (said === 'fewer than 1' ? 0 : said === 'more than 99' ? 100 : Number(said));
const bare = (text: string) => Number(text.replace(/[^\d.-]/g, ''));

describe('hundredths of a whole', () => {
  it('sum to 100 for any shares, are within one of each, and never round to a certainty that is not', () => {
    const next = stream(3, 'shares');
    for (let round = 0; round < 500; round++) {
      const parts = Array.from({ length: 2 + (round % 5) }, () => (next() < 0.3 ? 0 : next() ** 6));
      const sum = parts.reduce((a, v) => a + v, 0);
      if (sum === 0) continue;
      const shares = parts.map((part) => part / sum);
      const said = hundredthsOf(shares);
      expect(
        said.reduce((a, each) => a + whole(each), 0),
        said.join(),
      ).toBe(100);
      said.forEach((each, k) => {
        expect(Math.abs(whole(each) - 100 * shares[k])).toBeLessThan(1);
        if (each === '0') expect(shares[k]).toBe(0);
        if (each === '100') expect(shares[k]).toBeGreaterThan(1 - 1e-12);
      });
    }
  });
});

describe('a difference', () => {
  it('is that of the figures shown, to three figures, in either system', () => {
    const next = stream(5, 'pairs');
    for (let round = 0; round < 300; round++)
      for (const system of ['metric', 'us'] as const) {
        const [a, b] = [next() * 10 ** (round % 5), next() * 10 ** (round % 5)];
        const options = { system, plain: true };
        const [first, second] = [a, b].map((value) => bare(formatQuantity(value, 'kg', options)));
        const apart = Math.abs(first - second);
        // Smaller amounts are said to be below the smallest shown.
        if (Math.min(first, second, apart) < 0.1) continue;
        const third = 10 ** (Math.floor(Math.log10(apart)) - 2);
        const off = Math.abs(bare(formatDifference(a, b, 'kg', options)) - apart);
        expect(off).toBeLessThanOrEqual(third / 2 + 1e-9);
      }
  });

  it('is none where both read the same', () => {
    expect(readsTheSame(29_060, 29_140, 'money')).toBe(true);
    expect(readsTheSame(29_060, 29_240, 'money')).toBe(false);
  });

  it('stands in the comparison as its two figures do', () => {
    const results = withValues('nitrogenKeptKg', [571.4, 391.6, 400]);
    expect(compareFinding(results, 'nitrogenKeptKg', reading)).toContain(
      'most in “Paddock”, 571 kg; least in “Slats”, 392 kg, 179 kg less',
    );
  });
});

function withValues(name: ResultName, of: readonly number[]): ScenarioResult[] {
  return evaluation.scenarios.map((each, k) => ({
    ...each,
    bands: undefined,
    values: { ...each.values, [name]: of[k] },
  }));
}

describe('who is first in the draws', () => {
  const draws = (rows: readonly (readonly number[])[]): Draws => ({
    count: rows.length,
    seed: 1,
    scenarios: rows[0].length,
    uncertain: [],
    results: { netCost: Float64Array.from(rows.flat()) },
  });
  it('is told in hundredths that sum to 100, without those who never are', () => {
    const rows = Array.from({ length: 1000 }, (_, k) => (k < 986 ? [1, 2, 3] : [2, 1, 3]));
    const said = drawsFinding(draws(rows), { measure: 'netCost', names: NAMES }, reading);
    const numbers = [...said.matchAll(/in (\d+)/g)].map(([, n]) => Number(n));
    expect(numbers.reduce((a, n) => a + n, 0)).toBe(100);
    expect(said).not.toContain(NAMES[2]);
  });
});

describe('which number decides', () => {
  const ranking = (ahead: number): Ranking => ({
    measure: 'netCost',
    first: 0,
    second: 1,
    ahead,
    firstThree: 0.1,
    rest: 0.5,
    ranked: [
      { id: 'a', label: 'a', unit: '', low: 0, central: 1, high: 2, share: 0.08, worth: 5.4, rank: 0.5 },
      { id: 'b', label: 'b', unit: '', low: 0, central: 1, high: 2, share: 0.07, worth: 0, rank: 0.5 },
    ],
  });
  it('is said to decide nothing where one is ahead in all draws', () => {
    const said = rankingFinding(ranking(1), NAMES, 'netCost', reading);
    expect(said).toContain('“Paddock” is ahead');
    expect(said).not.toContain('gains');
    expect(rankingFinding(ranking(0.001), NAMES, 'netCost', reading)).toContain('“Slats” is ahead');
    expect(rankingFinding(ranking(0.8), NAMES, 'netCost', reading)).toContain('gains');
  });
  it('is worth nothing to measure where one is ahead whatever is found', () => {
    const advice = { ids: ['a'], share: 0.15, worth: 290, words: 'Weigh a bale' };
    expect(adviceLine(advice, ranking(0.8), reading)).toContain('worth EUR 290 on average');
    expect(adviceLine(advice, ranking(0.999), reading)).not.toContain('worth');
  });
  it('names three together only where there are more, and by what they explain together', () => {
    expect(rankingFinding(ranking(0.8), NAMES, 'netCost', reading)).not.toContain('three together');
    const many = { ...ranking(0.8), firstThree: 0.16 };
    const ranked = [0.16, 0.15, 0.15, 0.14].map((share) => ({ ...many.ranked[0], share }));
    expect(rankingFinding({ ...many, ranked }, NAMES, 'netCost', reading)).toContain(
      'the first three together 16 %',
    );
  });
  it('says that shares overlap where they add up to more than they explain together', () => {
    const caption = (share: number) => {
      const ranked = Array.from({ length: 4 }, () => ({ ...ranking(0.8).ranked[0], share }));
      return rankingFigure({ ...ranking(0.8), ranked, rest: 0.4 }, NAMES, 'netCost', reading).caption;
    };
    expect(caption(0.15)).not.toContain('in part');
    expect(caption(0.4)).toContain('explain the same in part');
    expect(caption(0.4)).toContain('40 % is left to the others');
  });
  it('may be less than what one measurement settles of several, and the line says so', () => {
    const line = adviceLine(
      { ids: ['a', 'b'], share: 0.15, worth: 0, words: 'Weigh a bale' },
      ranking(0.8),
      reading,
    );
    expect(line).toBe(
      'Weigh a bale: settles about 15 % of how far the difference varies (2 of the numbers together).',
    );
  });
});

describe('what is turned', () => {
  const turn: Turn = { name: 'rainFactor', label: 'rain', unit: '×', now: 1, at: [], herds: [] };
  const swept = (values: readonly number[]) =>
    sweepFinding(
      { turn, at: values.map((_, k) => k), scenarios: 1, results: { netCost: Float64Array.from(values) } },
      { measure: 'netCost', names: ['Slats'] },
      reading,
    );
  it('stays only where it does not move between the ends either', () => {
    expect(swept([500, 500, 500])).toContain('stays EUR 500 in “Slats”');
    expect(swept([500, 700, 500])).toContain(
      'is EUR 500 at both ends and EUR 500 to EUR 700 between in “Slats”',
    );
  });
});

describe('what is kept and lost', () => {
  it('is not all where any is lost', () => {
    const results = withValues('phosphorusKeptKg', [99.8, 50, 40]).map((each) => ({
      ...each,
      values: { ...each.values, phosphorusInKg: 100 },
    }));
    const said = ledgerFinding(results, 'phosphorus', reading);
    expect(said).toContain('nearly all');
    expect(said).not.toContain('100 %');
  });

  it('after the soil is told as drainage and air together', () => {
    const values = {
      nitrogenInKg: 500, nitrogenOutOfHousingKg: 500, nitrogenOutOfStoreKg: 500, nitrogenIntoSoilKg: 500, nitrogenKeptKg: 300,
    }; // biome-ignore format: one ladder
    const [first] = evaluation.scenarios;
    expect(ladderFinding([{ ...first, values: { ...first.values, ...values } }], reading)).toBe(
      '“Paddock” loses most in the ground, to the drainage and the air that follow (200 kg).',
    );
  });
});
