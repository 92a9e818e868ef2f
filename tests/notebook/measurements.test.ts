// What a study measured is read strictly: each fault with its line, key, what was found and what is allowed.
import { describe, expect, it } from 'vitest';
import { readMeasurements } from '../../src/notebook/measurements.ts';
import { formatProblem } from '../../src/units/problem.ts';

const GOOD = `source: eghball1997
place: Nebraska
setup: An open windrow.
measured:
  - output: nitrogen lost
    scenario: Windrow
    of: packNitrogenKg - compostNitrogenKg
    per: packNitrogenKg
    unit: fraction
    value: 0.3
    low: 0.19
    high: 0.42
    band: source
    known: read
    kind: trial
    likelyCause: the line in C:N
`;

const problems = (text: string) => readMeasurements(text, 'case.yaml').problems.map(formatProblem);

describe('the measurements of a case', () => {
  it('are read, with their defaults', () => {
    const { measurements, problems: wrong } = readMeasurements(GOOD, 'case.yaml');
    expect(wrong).toEqual([]);
    expect(measurements?.measured[0]).toMatchObject({ value: 0.3, times: 1, calibrates: [] });
  });

  it.each([
    ['a key that is not known', GOOD.replace('    unit:', '    units:'), /case\.yaml:9 .*units.*not known/],
    ['a missing cause', GOOD.replace(/ {4}likelyCause.*\n/, ''), /case\.yaml:5 .*likelyCause is missing/],
    ['a word of another list', GOOD.replace('known: read', 'known: seen'), /case\.yaml:14 .*read, quoted/],
    ['a number in words', GOOD.replace('value: 0.3', 'value: 30 %'), /case\.yaml:10 .*found "30 %"/],
    [
      'a band beside its value',
      GOOD.replace('high: 0.42', 'high: 0.25'),
      /case\.yaml:11 .*0\.19, 0\.3, 0\.25/,
    ],
    ['a band of no width', GOOD.replace('low: 0.19', 'low: 0.3').replace('0.42', '0.3'), /does not hold/],
    ['text that is no YAML', GOOD.replace('place: ', 'place: ['), /case\.yaml:\d+.*YAML/],
    ['nothing', '', /empty/],
  ])('refuse %s', (_, text, message) => {
    const found = problems(text);
    expect(found.length).toBeGreaterThan(0);
    expect(found.join('\n')).toMatch(message);
  });
});
