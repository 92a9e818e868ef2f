// What nobody means to write, and what is told then: nothing is taken that would turn every sum into nonsense.
import { describe, expect, it } from 'vitest';
import { readNotebook } from '../../src/notebook/read.ts';
import { SMALL } from './small.ts';

const problemsOf = (text: string) => readNotebook(text, 'x.md').problems;

describe('numbers', () => {
  it.each([
    ['1/2', 'write 0.5'],
    ['1_000', 'write 1000, without a mark between the digits'],
    ["12'500", 'write 12500, without a mark between the digits'],
  ])('%s is told what to write', (written, todo) => {
    const [problem] = problemsOf(SMALL.replace('labourPerHour: 15', `labourPerHour: ${written}`));
    expect(problem).toMatchObject({ key: 'farm.money.labourPerHour', todo });
  });

  it.each([
    ['labourPerHour: 15', 'labourPerHour: 1e300', 'farm.money.labourPerHour'],
    ['receivingHa: 20', 'receivingHa: 1e30', 'farm.land.receivingHa'],
  ])('%s turned to %s is beyond any farm', (from, to, key) => {
    expect(problemsOf(SMALL.replace(from, to))).toMatchObject([{ key, what: 'the number is too large' }]);
  });

  it('a shed longer than any road and an own number past all counting are refused', () => {
    const first = SMALL.indexOf('    bed: {');
    const shed = `${SMALL.slice(0, first)}    shed: { lengthM: 24, depthM: 9, overhangM: 1e12 }\n${SMALL.slice(first)}`;
    expect(problemsOf(shed)).toMatchObject([{ key: 'scenarios.1.shed.overhangM' }]);
    const own = SMALL.replace(
      /^scenarios:$/m,
      'coefficients:\n  - { id: packDryDensityKgPerM3, value: 1e200, because: a slip }\nscenarios:',
    );
    expect(problemsOf(own)).toMatchObject([{ key: 'coefficients.0.value' }]);
  });
});

describe('text', () => {
  it('of carriage returns alone is told so', () => {
    expect(problemsOf(SMALL.replace(/\n/g, '\r'))).toMatchObject([
      { what: 'the lines end as on very old computers', todo: expect.stringContaining('line ends') },
    ]);
  });

  it.each([50, 500, 5000])('nested %i deep gives a problem and no stack', (deep) => {
    for (const front of [
      `x:\n${'- '.repeat(deep)}a`,
      `a: ${'['.repeat(deep)}${']'.repeat(deep)}`,
      `${'{a: '.repeat(deep)}1${'}'.repeat(deep)}`,
    ]) {
      const problems = problemsOf(`---\n${front}\n---\n`);
      expect(problems.length).toBeGreaterThan(0);
      expect(problems.map(({ what }) => what).join()).not.toMatch(/stack|RangeError/);
    }
  });
});
