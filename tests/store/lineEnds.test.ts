import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oneLineEnd, withShown } from '../../src/store/lineEnds.ts';

const line = fc.string({ maxLength: 6 }).map((text) => text.replace(/[\r\n<>$]/g, 'x'));
const end = fc.constantFrom('\n', '\r\n', '\r');
const mixed = fc
  .array(fc.tuple(line, end), { maxLength: 12 })
  .map((lines) => lines.map(([words, close]) => words + close).join(''));

describe('line ends', () => {
  it('are those of the file where nothing was changed', () => {
    fc.assert(
      fc.property(mixed, (text) => {
        expect(withShown(text, oneLineEnd(text))).toBe(text);
      }),
    );
  });

  it('give the text that was shown, whatever was changed', () => {
    fc.assert(
      fc.property(mixed, fc.nat(), fc.nat({ max: 5 }), line, line, (text, from, cut, a, b) => {
        const shown = oneLineEnd(text);
        const at = from % (shown.length + 1);
        const put = `${a}\n${b}`;
        const next = shown.slice(0, at) + put + shown.slice(at + cut);
        const written = withShown(text, next);
        expect(oneLineEnd(written)).toBe(next);
      }),
    );
  });

  it('stay on both sides of a change where the file has no lone carriage return', () => {
    const plain = mixed.map((text) => text.replace(/\r(?!\n)/g, '\n'));
    fc.assert(
      fc.property(plain, plain, line, line, (before, after, a, b) => {
        const text = `${before}<>${after}`;
        const shown = oneLineEnd(text).replace('<>', `<${a}\n${b}>`);
        const written = withShown(text, shown);
        expect(oneLineEnd(written)).toBe(shown);
        // Bytes around the change: the difference may be told one letter further left or right, never further.
        expect(written.startsWith(before)).toBe(true);
        expect(written.endsWith(after)).toBe(true);
      }),
    );
  });

  it('of a file from another system survive one letter', () => {
    expect(withShown('a\r\nb\r\nc\r\n', 'a\nbx\nc\n')).toBe('a\r\nbx\r\nc\r\n');
    expect(withShown('a\r\nb', 'a\n\nb')).toBe('a\r\n\r\nb');
    expect(withShown('a\nb\r\nc', 'a\nb\nc!')).toBe('a\nb\r\nc!');
  });
});
