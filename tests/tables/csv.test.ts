// Regression tests on our own reader; the format is RFC 4180.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCsv } from '../../src/tables/csv.ts';

const AB = { required: ['a', 'b'], optional: ['c'] };

describe('reading a table', () => {
  it('takes columns in any order, a byte order mark, and leaves optional ones empty', () => {
    const { records, problems } = readCsv('t.csv', '\uFEFFb,a\r\n2, 1 \r\n', AB);
    expect(problems).toEqual([]);
    expect(records).toEqual([{ line: 2, values: { a: '1', b: '2', c: '' } }]);
  });

  it('keeps line numbers across quoted line breaks and blank lines', () => {
    const { records } = readCsv('t.csv', 'a,b\n"one\r\ntwo\nthree",x\n\n4,y\n', AB);
    expect(records.map((r) => r.line)).toEqual([2, 6]);
    expect(records[0].values.a).toBe('one\r\ntwo\nthree');
  });

  it('reads doubled quotes and commas in quotes', () => {
    const { records, problems } = readCsv('t.csv', 'a,b\n"a ""b"", c",d\n', AB);
    expect(problems).toEqual([]);
    expect(records[0].values).toMatchObject({ a: 'a "b", c', b: 'd' });
  });

  it('refuses letters after a closing quote instead of guessing', () => {
    const { records, problems } = readCsv('t.csv', 'a,b\n"x"y,z\n', AB);
    expect(records).toEqual([]);
    expect(problems[0]).toMatchObject({ line: 2, what: expect.stringContaining('fields') });
  });

  it('gives back what was written, for any text', () => {
    const field = fc.string({ unit: 'grapheme' }).map((s) => s.trim());
    const quote = (s: string) => `"${s.replace(/"/g, '""')}"`;
    fc.assert(
      fc.property(fc.array(fc.tuple(field, field)), (rows) => {
        const text = ['a,b', ...rows.map((row) => row.map(quote).join(','))].join('\n');
        const { records, problems } = readCsv('t.csv', text, AB);
        expect(problems).toEqual([]);
        expect(records.map((r) => [r.values.a, r.values.b])).toEqual(rows);
      }),
    );
  });

  it('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('a', ',', '"', '\n', '\r', 'b', ' ') }), (text) => {
        const { records, problems } = readCsv('t.csv', `a,b\n${text}`, AB);
        expect(records.every((r) => r.line >= 2)).toBe(true);
        expect(problems.every((p) => p.what !== '')).toBe(true);
      }),
    );
  });
});
