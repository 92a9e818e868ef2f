import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNotebook } from '../../src/notebook/read.ts';
import { plainName, withWeather } from '../../src/notebook/weatherBlock.ts';
import { lastYears } from '../../src/tables/weather.ts';
import { dateOf, dayNumber } from '../../src/units/days.ts';

const SHIPPED = readFileSync(new URL('../../notebooks/hill-farm-choice.md', import.meta.url), 'utf8');
const DAYS = 'date,rainMm,minC,maxC\n2014-11-01,1,2,3\n2014-11-02,0,-4,1\n';

describe('weather in the notebook', () => {
  it.each([
    ['line feeds', SHIPPED],
    ['carriage returns', SHIPPED.replaceAll('\n', '\r\n')],
    ['no last line end', SHIPPED.trimEnd()],
  ])('is read back under its name, and the rest of the text stays (%s)', (_, text) => {
    const { notebook, problems } = readNotebook(withWeather(text, 'my gauge.csv', DAYS), 'x.md');
    expect(problems).toEqual([]);
    expect([...(notebook?.weather.keys() ?? [])]).toEqual(['my gauge.csv']);
    expect(notebook?.weather.get('my gauge.csv')).toBe(DAYS);
    expect(withWeather(text, 'my gauge.csv', DAYS).startsWith(text.trimEnd())).toBe(true);
    const before = readNotebook(text, 'x.md').notebook;
    expect(notebook?.blocks.map(({ type }) => type)).toEqual(before?.blocks.map(({ type }) => type));
  });

  it('holds one weather, the last one given, and writing the same twice changes nothing', () => {
    const once = withWeather(SHIPPED, 'a.csv', DAYS);
    expect(withWeather(once, 'a.csv', DAYS)).toBe(once);
    const other = withWeather(once, 'b.csv', DAYS.replace('-4', '-5'));
    expect(other.match(/^```weather/gm)).toEqual(['```weather']);
    expect(readNotebook(other, 'x.md').notebook?.weather.get('b.csv')).toContain('-5');
  });

  it('takes any name without letting it out of its line', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (name) => {
        const plain = plainName(name);
        const { notebook } = readNotebook(withWeather(SHIPPED, plain, DAYS), 'x.md');
        expect([...(notebook?.weather.keys() ?? [])]).toEqual([plain]);
      }),
      { numRuns: 40 },
    );
    expect(plainName('../../etc/pass`wd\n.csv')).toBe('pass-wd-.csv');
  });

  it('carries the last twenty-one years', () => {
    const first = dayNumber('1990-01-01');
    const count = dayNumber('2024-12-31') - first + 1;
    const rows = Array.from({ length: count }, (_, k) => `${dateOf(first + k)},1,2,3`);
    const kept = lastYears(`date,rainMm,minC,maxC\n${rows.join('\n')}\n`).split('\n');
    expect(kept[0]).toBe('date,rainMm,minC,maxC');
    expect(kept[1]).toBe('2004-01-01,1,2,3');
    expect(kept.at(-2)).toBe('2024-12-31,1,2,3');
  });
});
