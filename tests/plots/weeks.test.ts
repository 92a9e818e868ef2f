import { describe, expect, it } from 'vitest';
import { ladderFinding, ladderPoints } from '../../src/plots/ladder.ts';
import { sameLines, WEEK_SERIES, weekFinding, weekPoints } from '../../src/plots/weeks.ts';
import { evaluation, reading } from '../browser/fixtures/evaluation.ts';

const { scenarios } = evaluation;

describe('weeks', () => {
  it('shows only scenarios that have the series, from week 1 to the last', () => {
    const points = weekPoints(scenarios, WEEK_SERIES.weekPackDepthM);
    expect(new Set(points.map((p) => p.scenario))).toEqual(new Set(['Deep bed']));
    expect(points.map((p) => p.week)).toEqual(Array.from({ length: 28 }, (_, k) => k + 1));
  });

  it('draws one line where one rain falls on all', () => {
    const lines = sameLines(weekPoints(scenarios, WEEK_SERIES.weekRainMm));
    expect(lines.map((line) => line.name)).toEqual(['Paddock, Slats, Deep bed']);
  });

  it('says where a level ends and what a flow adds up to', () => {
    expect(weekFinding(scenarios, WEEK_SERIES.weekPackDepthM, reading)).toBe(
      'Bed above the floor: from 0.3 m to 0.96 m by week 28 in “Deep bed”.',
    );
    expect(weekFinding(scenarios, WEEK_SERIES.weekRainMm, reading)).toMatch(
      /^Rain: \d+ mm over the winter, most in week \d+\.$/,
    );
  });

  it('leaves the weeks after the winter out of a flow', () => {
    expect(Math.max(...weekPoints(scenarios, WEEK_SERIES.weekRainMm).map((p) => p.week))).toBe(28);
  });
});

describe('ladder', () => {
  it('has a point for each rung that is known', () => {
    expect(ladderPoints(scenarios)).toHaveLength(18);
  });

  it('says where each scenario loses most', () => {
    expect(ladderFinding(scenarios, reading)).toBe(
      '“Paddock” loses most in the shed or paddock (350 kg); “Slats” loses most at spreading (85 kg); “Deep bed” loses most in the shed or paddock (110 kg).',
    );
  });
});
