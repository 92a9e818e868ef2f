import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNotebook } from '../../src/notebook/read.ts';
import { formatProblem } from '../../src/units/problem.ts';
import { shipped } from './shipped.ts';

const originals = shipped.map(({ text }) => new TextEncoder().encode(text));

/** A notebook or problems that can be printed, and never an error. */
function readsOrSays(bytes: Uint8Array | string): void {
  const { notebook, problems } = readNotebook(bytes, 'fuzz.md');
  if (!notebook) expect(problems.length).toBeGreaterThan(0);
  for (const problem of problems) {
    expect(formatProblem(problem)).toMatch(/^fuzz\.md/);
    if (problem.line !== undefined) expect(problem.line).toBeGreaterThanOrEqual(1);
  }
}

describe('damaged notebooks', () => {
  it('with any bytes changed never throw', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...originals),
        fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 12 }),
        (bytes, flips) => {
          const damaged = bytes.slice();
          for (const [at, to] of flips) damaged[at % damaged.length] = to;
          readsOrSays(damaged);
        },
      ),
      { numRuns: 200, seed: 7 },
    );
  });

  it('with the front matter scrambled in YAML letters never throw', () => {
    const letters = [...'{}[]:,-#&*!|>\'"%@`?\n\t 0a~<'];
    fc.assert(
      fc.property(
        fc.constantFrom(...shipped),
        fc.array(fc.tuple(fc.nat(3000), fc.constantFrom(...letters)), { minLength: 1, maxLength: 6 }),
        ({ text }, edits) => {
          let damaged = text;
          for (const [at, letter] of edits) damaged = damaged.slice(0, at) + letter + damaged.slice(at + 1);
          readsOrSays(damaged);
        },
      ),
      { numRuns: 120, seed: 8 },
    );
  });

  it('cut anywhere never throw', () => {
    for (const bytes of originals)
      for (let end = 0; end < bytes.length; end += 211) readsOrSays(bytes.subarray(0, end));
  });

  it('with any value in place of another never throw', () => {
    const value = fc.constantFrom(
      'null',
      '[]',
      '{}',
      '-1',
      '1e999',
      '.nan',
      'true',
      '"x"',
      '[1, [2]]',
      '{ a: { b: 1 } }',
      '2025-02-30',
      '|',
      '',
    );
    fc.assert(
      fc.property(fc.constantFrom(...shipped), fc.nat(), value, ({ text }, pick, by) => {
        const places = [...text.slice(0, text.indexOf('\n---\n')).matchAll(/(?<=: )[^,{}[\]\n]+/g)];
        const place = places[pick % places.length];
        readsOrSays(text.slice(0, place.index) + by + text.slice(place.index + place[0].length));
      }),
      { numRuns: 150, seed: 9 },
    );
  });
});
