import { describe, expect, it } from 'vitest';
import { csvLines } from '../../src/tables/csvLines.ts';

describe('lines of csv', () => {
  it('hold no formula: a name that begins like one is set off', () => {
    expect(csvLines([['=HYPERLINK("x")', '+1 cow', '-a', '@b', '\tc']])).toBe(
      '"\'=HYPERLINK(""x"")",\'+1 cow,\'-a,\'@b,\'\tc\n',
    );
  });

  it('leave numbers as they are, below nought and as text too', () => {
    expect(csvLines([[-1.5, '-2.5', '+3', null, undefined, 'plain']])).toBe('-1.5,-2.5,+3,,,plain\n');
  });
});
