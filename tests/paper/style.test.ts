import { describe, expect, it } from 'vitest';
import { paperStyle } from '../../src/paper/style.ts';

const plain = paperStyle('a4', 'A farm');

describe('the style of the paper', () => {
  it.each(['\f', '\v', '\n', '\r', '\u0085', '\u2028', '\0', '"', '\\', '</style>'])(
    'is not broken out of by a title with %j',
    (mark) => {
      const title = `A${mark}; } body { background: url(http://x.invalid) } @page {`;
      const style = paperStyle('a4', title);
      const content = /content: "([^"]*)";/.exec(style)?.[1] ?? '';
      expect(content).toMatch(/^A/);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
      expect(content).not.toMatch(/[\u0000-\u001f\u007f-\u009f\\<\u2028\u2029]/);
      // All but the words is the style of any other title.
      expect(style.replace(content, '')).toBe(plain.replace('A farm', ''));
    },
  );
});
