// Sentences speak of the two that compete, and of the figures they speak of.
import { describe, expect, it } from 'vitest';
import type { Evaluation } from '../../src/study/evaluate.ts';
import { differenceSentences } from '../../src/uncertainty/sentences.ts';
import { evaluation } from '../browser/fixtures/evaluation.ts';

const context = { currency: 'EUR', units: 'metric' } as const;
const netCosts = (costs: readonly (number | null)[]): Evaluation => ({
  ...evaluation,
  scenarios: evaluation.scenarios.map((scenario, k) => ({
    ...scenario,
    values: { ...scenario.values, netCost: costs[k] },
  })),
});
const onCost = (costs: readonly (number | null)[]) =>
  differenceSentences(netCosts(costs), context).filter((sentence) => sentence.includes('net a year'));

describe('differences in words', () => {
  it('hold the best against the next best, not against the worst', () => {
    expect(onCost([9100, 11_900, 8600])).toEqual([
      '“Deep bed” costs EUR 500 less net a year than “Paddock”.',
    ]);
  });

  it('pass over a tie for best to the next that differs, and over what has no figure', () => {
    expect(onCost([8600, 11_900, 8600])).toEqual([
      '“Paddock” costs EUR 3\u202f300 less net a year than “Slats”.',
    ]);
    expect(onCost([9100, null, 8600])).toEqual(['“Deep bed” costs EUR 500 less net a year than “Paddock”.']);
  });

  it('say nothing where all tie or only one has a figure', () => {
    expect(onCost([9000, 9000, 9000])).toEqual([]);
    expect(onCost([9000, null, null])).toEqual([]);
  });
});
