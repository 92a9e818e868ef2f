// Tables and weather as a build sends them: what comes out is what went in.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { shippedTables } from '../../src/cli/open.ts';
import { findRoot } from '../../src/cli/readData.ts';
import type { Coefficient } from '../../src/tables/coefficient.ts';
import { packTables } from '../../src/tables/pack.ts';
import { numbersOf, tablesOf } from '../../src/tables/packed.ts';
import { weatherColumnsOf, weatherTextOf } from '../../src/tables/weatherColumns.ts';

const shipped = shippedTables();
/** As it crosses to the page. */
const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value));
const { numbers, words } = sent(packTables(shipped));

describe('packed tables', () => {
  it('come out whole, in their order, to the letter', () => {
    const whole = tablesOf(numbers, words);
    expect([...whole.coefficients]).toEqual([...shipped.coefficients]);
    expect([...whole.prices].map(([key, table]) => [key, [...table]])).toEqual(
      [...shipped.prices].map(([key, table]) => [key, [...table]]),
    );
    expect([...whole.indices]).toEqual([...shipped.indices]);
    expect([...whole.sources]).toEqual([...shipped.sources]);
  });

  it('have every number before their words come, and words only where a check says them', () => {
    const { coefficients, prices } = numbersOf(numbers);
    const wordless = ({
      appliesTo: _,
      where: __,
      note: ___,
      measureBy: ____,
      at: _____,
      ...rest
    }: Coefficient) => rest;
    const rows = [coefficients, ...prices.values()].flatMap((table) => [...table.values()]);
    const were = [shipped.coefficients, ...shipped.prices.values()].flatMap((table) => [...table.values()]);
    expect(rows.map(wordless)).toEqual(were.map(wordless));
    expect(rows.filter(({ where, note }) => where !== '' || note !== '')).toEqual([]);
    const said = were.filter((_, k) => rows[k].appliesTo !== '');
    expect(new Set(said.map(({ at }) => at.file))).toEqual(new Set(['data/coefficients/law.csv']));
  });
});

describe('weather in columns', () => {
  const folder = `${findRoot()}/data/weather`;
  it.each(readdirSync(folder).filter((file) => file.endsWith('.csv')))('gives the text of %s', (file) => {
    const text = readFileSync(`${folder}/${file}`, 'utf8');
    expect(weatherTextOf(sent(weatherColumnsOf(text))) === text).toBe(true);
  });

  it.each([
    ['a day left out', 'date,rainMm,minC,maxC\n2020-01-01,0,1,2\n2020-01-03,0,1,2\n'],
    ['hundredths', 'date,rainMm,minC,maxC\n2020-01-01,0.25,1,2\n'],
    ['a day not measured', 'date,rainMm,minC,maxC\n2020-01-01,,1,2\n'],
    ['a fourth number', 'date,rainMm,minC,maxC,meanC\n2020-01-01,0,1,2,1.5\n'],
  ])('refuses %s rather than change it', (_, text) => {
    expect(() => weatherColumnsOf(text)).toThrow('three numbers in tenths');
  });
});
