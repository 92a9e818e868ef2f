/** Prices brought to a year by an index, and those of a country before those of its currency; by hand. */
import { describe, expect, it } from 'vitest';
import type { Coefficient, Tables } from '../../src/tables/coefficient.ts';
import { pricesFor, readIndices } from '../../src/tables/priceIndex.ts';

const row = (id: string, change: Partial<Coefficient> = {}): Coefficient => ({
  id, name: id, option: undefined, choice: undefined, low: 50, central: 100, high: 200, unit: 'EUR/t', appliesTo: id,
  source: 'own', where: '', basis: 'invented', note: '', at: { file: 'x', line: 2 }, currency: 'EUR', year: 2020, ...change,
}); // biome-ignore format: one short list
const table = (...rows: Coefficient[]) => new Map(rows.map((one) => [one.id, one]));
const tables: Tables = {
  coefficients: new Map(),
  sources: new Map(),
  prices: new Map([
    ['EUR', table(row('hay'), row('straw'), row('share', { unit: 'fraction' }), row('old', { year: 1990 }))],
    ['EUR-IE', table(row('straw', { central: 150, high: 300, country: 'IE', year: 2024 }))],
  ]),
  indices: new Map([['EUR', { name: 'index of all', byYear: new Map([[2020, 80], [2024, 100]]) }]]),
}; // biome-ignore format: one short list

describe('prices of a farm', () => {
  it('are brought to its year: 100 at 80 is 125 at 100', () => {
    const hay = pricesFor(tables, { currency: 'EUR', year: 2024 }).get('hay')!;
    expect([hay.low, hay.central, hay.high]).toEqual([62.5, 125, 250]);
    expect(hay.indexed).toEqual({ by: 'index of all', factor: 1.25, year: 2024 });
    expect(hay.year).toBe(2020);
  });
  it('back in time as well: 150 at 100 is 120 at 80', () =>
    expect(pricesFor(tables, { currency: 'EUR', year: 2020, country: 'IE' }).get('straw')?.central).toBe(
      120,
    ));
  it('of the country stand before those of the currency, and nothing else moves', () => {
    const ireland = pricesFor(tables, { currency: 'EUR', year: 2024, country: 'IE' });
    expect(ireland.get('straw')?.central).toBe(150);
    expect(ireland.get('straw')?.indexed).toBeUndefined();
    expect(ireland.get('hay')?.central).toBe(125);
    expect(pricesFor(tables, { currency: 'EUR', year: 2024, country: 'FI' }).get('straw')?.central).toBe(125);
  });
  it('stay, and say so, where a year is not in the index', () => {
    const prices = pricesFor(tables, { currency: 'EUR', year: 2024 });
    expect(prices.get('old')).toMatchObject({ central: 100, indexed: null });
    expect(pricesFor(tables, { currency: 'EUR', year: 2031 }).get('hay')).toMatchObject({
      central: 100,
      indexed: null,
    });
  });
  it('a share is no price', () =>
    expect(pricesFor(tables, { currency: 'EUR', year: 2024 }).get('share')?.central).toBe(100));
  it('of a currency nobody knows are none', () =>
    expect(pricesFor(tables, { currency: 'XXX', year: 2024, country: 'IE' }).size).toBe(0));
});

describe('the table of indices', () => {
  const head = 'currency,year,value,name,source,where,basis,note\n';
  const sources = new Map([['a', { id: 'a', author: 'A', title: 'T', year: '2024' }]]);
  const problems = (line: string) =>
    readIndices('data/priceIndices.csv', head + line, sources).problems.map(({ what }) => what);
  it.each([
    ['EU,2024,100,i,a,,published,', 'index without a currency'],
    ['EUR,24,100,i,a,,published,', 'index without a year'],
    ['EUR,2024,0,i,a,,published,', 'not a level of an index'],
    ['EUR,2024,100,,a,,published,', 'index without a name'],
    ['EUR,2024,100,i,b,,published,', 'unknown source'],
    ['EUR,2024,100,i,a,,sure,', 'unknown basis'],
    ['EUR,2024,100,i,a,,published,\nEUR,2024,101,i,a,,published,', 'year given twice'],
    ['EUR,2023,100,i,a,,published,\nEUR,2024,101,j,a,,published,', 'two indices for one currency'],
  ])('%s: %s', (line, what) => expect(problems(line)).toEqual([what]));
  it('a whole one is read', () => {
    const { indices, problems: none } = readIndices(
      'f',
      `${head}EUR,2023,100,i,a,,published,\nEUR,2024,102,i,a,,published,`,
      sources,
    );
    expect(none).toEqual([]);
    expect([...indices.get('EUR')!.byYear]).toEqual([
      [2023, 100],
      [2024, 102],
    ]);
  });
});
