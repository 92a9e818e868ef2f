import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply, difference, reversed, weightOf } from '../../src/store/difference.ts';

const lines = fc.array(fc.constantFrom('a', 'bb', 'scenario: Straw bed', 'x'.repeat(90), '', '🐄'), {
  maxLength: 40,
});
const text = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  lines.map((all) => all.join('\n')),
);

describe('difference', () => {
  it('leads from one text to the other and back', () => {
    fc.assert(
      fc.property(text, text, (before, after) => {
        const splices = difference(before, after);
        expect(apply(before, splices)).toBe(after);
        expect(apply(after, reversed(splices))).toBe(before);
      }),
    );
  });

  it('is as small as the edit, also where the same word changes in many lines', () => {
    const before = Array.from({ length: 500 }, (_, k) =>
      k % 50 === 0 ? 'scenario: Straw' : `line ${k}`,
    ).join('\n');
    expect(weightOf(difference(before, before.replace('line 7\n', 'line 77\n')))).toBeLessThan(3);
    expect(weightOf(difference(before, before.replaceAll('Straw', 'Chips')))).toBeLessThan(400);
  });

  it('refuses a text it was not made of', () => {
    expect(() => apply('something else', difference('abc', 'abd'))).toThrow('does not fit');
  });
});
