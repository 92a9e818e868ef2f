// The data folder as shipped: whole, sourced, and complete in every currency and for every option.
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { weatherFiles } from '../../src/app/data.ts';
import { readDataFiles } from '../../src/cli/readData.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import { CHOICES, INPUT_FAMILIES } from '../../src/notebook/inputs.ts';
import { FEEDS, MATERIALS } from '../../src/notebook/schema.ts';
import { type CsvColumns, readCsv } from '../../src/tables/csv.ts';
import { loadTables } from '../../src/tables/load.ts';
import { formatProblem } from '../../src/units/problem.ts';

const CURRENCIES = ['CAD', 'EUR', 'GBP', 'SEK', 'USD'];
const files = readDataFiles();
const { tables, problems } = loadTables(files, CHOICE_OPTIONS);
const ANY: Record<string, CsvColumns> = {
  'data/movements.csv': { required: ['name', 'together', 'source', 'where', 'basis', 'note'] },
  'data/measuring.csv': { required: ['id', 'words'] },
};
const rows = [...tables.coefficients.values()];
const priceRows = [...tables.prices.values()].flatMap((table) => [...table.values()]);

describe('the data folder', () => {
  it('holds no problem', () => {
    expect(problems.map(formatProblem)).toEqual([]);
  });

  it('has at least 150 coefficients with a real range, and 300 rows in all', () => {
    expect(rows.filter((row) => row.low < row.high).length).toBeGreaterThanOrEqual(150);
    expect(rows.length + priceRows.length).toBeGreaterThanOrEqual(300);
  });

  it('has the same price ids in all five currencies, each in its own unit', () => {
    expect([...tables.prices.keys()].filter((key) => !key.includes('-')).sort()).toEqual(CURRENCIES);
    const ids = CURRENCIES.map((currency) => [...(tables.prices.get(currency)?.keys() ?? [])].sort());
    for (const list of ids) expect(list).toEqual(ids[0]);
    for (const row of priceRows) expect(row.unit.startsWith(row.currency ?? '?')).toBe(true);
  });

  it('says of every price how tax stands, what it buys, and of which country it is where not of all', () => {
    for (const { id, vat, terms, currency, country } of priceRows) {
      expect(vat, `${id} in ${currency}`).toBeDefined();
      expect(terms, `${id} in ${currency}`).toBeDefined();
      if (country !== undefined) expect(tables.prices.get(`${currency}-${country}`)?.has(id)).toBe(true);
    }
    const countries = [...tables.prices.keys()].filter((key) => key.includes('-'));
    expect(countries.sort()).toEqual(['EUR-DE', 'EUR-EE', 'EUR-IE']);
    for (const key of countries)
      for (const id of tables.prices.get(key)!.keys()) expect(tables.prices.get('EUR')!.has(id)).toBe(true);
  });

  it('has an index for every currency that holds every year a price is of, or the price says so', () => {
    for (const { currency, year } of priceRows) {
      const index = tables.indices.get(currency ?? '');
      expect(index?.byYear.has(year ?? 0), `${currency} ${year}`).toBe(true);
    }
  });

  it('moves a price with the same group and gives it the same advice in every currency', () => {
    const euro = tables.prices.get('EUR');
    for (const { id, currency, movesWith, measureBy } of priceRows) {
      const first = euro?.get(id);
      expect({ movesWith, measureBy }, `${id} in ${currency}`).toEqual({
        movesWith: first?.movesWith,
        measureBy: first?.measureBy,
      });
    }
  });

  it('has at least two numbers in each group that moves together, and a row for each piece of advice', () => {
    const named = (file: string) => readCsv(file, files.get(file) ?? '', ANY[file]).records;
    for (const { values } of named('data/movements.csv')) {
      const ids = [...rows, ...priceRows].filter((r) => r.movesWith?.name === values.name).map((r) => r.id);
      expect(new Set(ids).size, values.name).toBeGreaterThan(1);
    }
    const said = new Set([...rows, ...priceRows].map((r) => r.measureBy));
    for (const { values } of named('data/measuring.csv')) {
      const pattern = new RegExp(`^${values.words.replace('{option}', '[a-z ]+')}$`);
      expect(
        [...said].some((words) => words !== undefined && pattern.test(words)),
        values.id,
      ).toBe(true);
    }
  });

  it('prices every feed, every material and the three elements', () => {
    const euro = tables.prices.get('EUR');
    const wanted = [
      ...FEEDS.map((feed) => `feedPricePerTonne.${feed}`),
      ...MATERIALS.map((material) => `materialPricePerTonne.${material}`),
      'nitrogenPricePerKg',
      'phosphorusPricePerKg',
      'potassiumPricePerKg',
      'compostPricePerTonne',
    ];
    expect(wanted.filter((id) => !euro?.has(id))).toEqual([]);
  });

  it('keeps shares of dry matter within what dry matter can hold', () => {
    for (const feed of FEEDS) {
      const central = (name: string) => tables.coefficients.get(`${name}.${feed}`)?.central ?? Number.NaN;
      const carbonAndAsh = central('feedCarbonFraction') + central('feedAshFraction');
      const minerals = central('feedPhosphorusFraction') + central('feedPotassiumFraction');
      expect(carbonAndAsh).toBeLessThan(1);
      expect(minerals).toBeLessThan(central('feedAshFraction'));
    }
    const fractions = rows.filter((row) => /Fraction$/.test(row.name));
    for (const row of fractions) expect(row.low, row.id).toBeGreaterThanOrEqual(0);
  });

  it('calls nothing published that rests on our own judgement, and no source an address', () => {
    for (const row of [...rows, ...priceRows])
      if (row.source === 'own') expect(row.basis, row.id).not.toBe('published');
    for (const text of files.values()) expect(text).not.toMatch(/https?:|www\./i);
  });

  it('lists options for every choice of a scenario and every family', () => {
    const families = INPUT_FAMILIES.flatMap(({ choice }) => (choice ? [choice.dimension] : []));
    // Two families may pick rows of one dimension: bedding and what is mixed into the heap.
    expect(Object.keys(CHOICE_OPTIONS).sort()).toEqual(
      [...new Set([...Object.keys(CHOICES), ...families])].sort(),
    );
  });

  it('has its weather in the page', () => {
    const shipped = readdirSync(new URL('../../data/weather', import.meta.url)).filter((f) =>
      f.endsWith('.csv'),
    );
    expect([...weatherFiles].sort()).toEqual(shipped.sort());
  });

  it('keeps weather out of the tables', () => {
    expect([...files.keys()].filter((path) => path.startsWith('data/weather/'))).toEqual([]);
  });
});

describe('loading', () => {
  it('says when the table of sources is missing', () => {
    const { problems: found } = loadTables(new Map(), {});
    expect(found.map((p) => p.what)).toEqual(['the table of sources is missing']);
  });

  it('leaves a refused row out and keeps the others', () => {
    const text = files
      .get('data/coefficients/feeds.csv')
      ?.replace(/^(feedAshFraction\.hay,feed),[^,]*/m, '$1,high');
    const { tables: read, problems: found } = loadTables(
      new Map([...files, ['data/coefficients/feeds.csv', text ?? '']]),
      CHOICE_OPTIONS,
    );
    expect(read.coefficients.has('feedAshFraction.hay')).toBe(false);
    expect(read.coefficients.size).toBe(tables.coefficients.size - 1);
    expect(found.map((p) => p.what)).toEqual(['not a number', 'rows are missing for some options of feed']);
  });
});
