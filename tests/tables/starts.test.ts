import { describe, expect, it } from 'vitest';
import { START_KINDS } from '../../src/begin/kinds.ts';
import { readStarts } from '../../src/tables/starts.ts';
import { formatProblem } from '../../src/units/problem.ts';
import { startsProblems, startsText } from '../begin/setting.ts';
import { tables } from '../shippedTables.ts';

const HEAD = 'country,key,value,unit,source,where,basis,note';
const KINDS = {
  depthM: { kind: 'number', unit: 'm', min: 0, max: 5 },
  first: { kind: 'monthDay' },
  rule: { kind: 'choice', options: ['a', 'b'] },
  label: { kind: 'words' },
} as const;
const WHOLE = [
  'all,depthM,1,m,own,,invented,',
  'all,first,11-01,,own,,invented,',
  'all,rule,a,,own,,invented,',
  'all,label,x,,own,,invented,',
];

const said = (rows: readonly string[]) =>
  readStarts([HEAD, ...rows, ''].join('\n'), tables.sources, KINDS)
    .problems.map(formatProblem)
    .join('\n');

describe('the table of starts', () => {
  it('is sound as it is shipped, whole for every country', () => {
    expect(startsProblems).toEqual([]);
    expect(startsText).not.toMatch(/,published,/);
    expect(Object.keys(START_KINDS).length).toBeGreaterThan(60);
  });

  it('takes a sound table', () => {
    expect(said(WHOLE)).toBe('');
    expect(said([...WHOLE, 'IE,depthM,2,m,own,,invented,'])).toBe('');
  });

  it.each([
    ['IE,depthM,two,m,own,,invented,', 'not a number this start can be', 'allowed 0 to 5'],
    ['IE,depthM,9,m,own,,invented,', 'not a number this start can be', 'found 9'],
    ['IE,depthM,1,ft,own,,invented,', 'another unit', 'found ft'],
    ['IE,rule,c,,own,,invented,', 'unknown option', 'allowed a, b'],
    ['IE,first,02-29,,own,,invented,', 'not a day of every year', 'found 02-29'],
    ['IE,label,,,own,,invented,', 'no words', '(empty)'],
    ['Eire,rule,a,,own,,invented,', 'not a country', 'found Eire'],
    ['IE,rules,a,,own,,invented,', 'unknown start', 'found rules'],
    ['IE,rule,a,,nobody,,invented,', 'unknown source', 'found nobody'],
    ['IE,rule,a,,own,,guess,', 'unknown basis', 'found guess'],
    ['IE,rule,a,,own,,published,', 'called published without a publication', 'found own'],
    ['all,rule,b,,own,,invented,', 'start given twice', 'keep one row'],
  ])('refuses %s', (row, what, more) => {
    const words = said([...WHOLE, row]);
    expect(words).toContain(what);
    expect(words).toContain(more);
    expect(words).toContain(':6');
  });

  it('misses a start no row gives', () => {
    expect(said(['IE,depthM,1,m,own,,invented,', ...WHOLE.slice(1)])).toBe('');
    expect(said(['IE,rule,a,,own,,invented,', ...WHOLE.slice(1, 2), ...WHOLE.slice(3)])).toContain(
      'a start is missing',
    );
  });
});
