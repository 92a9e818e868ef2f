import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import { startExplorer } from '../../src/app/startExplorer.ts';
import type { Asked } from '../../src/elements/parts/events.ts';
import { printText } from '../../src/elements/parts/printText.ts';
import { dataFiles } from './dataFiles.ts';
import { FEW_DRAWS } from './examples.ts';
import '../../src/elements/cells/wk-bill.ts';
import '../../src/elements/cells/wk-case.ts';
import '../../src/elements/cells/wk-cashflow.ts';
import '../../src/elements/cells/wk-costs.ts';
import { CASH_RESULTS } from '../../src/model/money/cashTerms.ts';
import { STRESSES } from '../../src/model/money/stress.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import { setQuote } from '../../src/notebook/quote.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import type { Reading } from '../../src/plots/reading.ts';
import { evaluate, type Run } from '../../src/study/evaluate.ts';
import { billRows } from '../../src/study/moneyCase.ts';
import { loadTables } from '../../src/tables/load.ts';
import { drawAll } from '../../src/uncertainty/monteCarlo.ts';
import { bandsOf } from '../../src/uncertainty/percentiles.ts';
import type { Explorer } from '../../src/worker/explorer.ts';
import { winterOf } from '../farm.ts';
import { faults, PART } from './look.ts';

const SOON = { timeout: 40_000 };
const { tables } = loadTables(dataFiles, CHOICE_OPTIONS);
const TEXT = FEW_DRAWS.find(({ name }) => name === 'coast-lender-case')?.text ?? '';
const winter = winterOf(0, 1);
let run: Run;
let reading: Reading;
let explorer: Explorer;

function runOf(text: string): Run {
  const { notebook } = readNotebook(text, 'coast.md') as { notebook?: Parameters<typeof evaluate>[0] };
  if (!notebook) throw new Error('the lender notebook cannot be read');
  return evaluate(notebook, tables, () => winter);
}

beforeAll(() => {
  run = runOf(TEXT);
  reading = {
    currency: run.currency,
    year: run.year,
    system: 'metric',
    order: run.results.map(({ name }) => name),
  };
  explorer = startExplorer();
});
afterAll(() => explorer.close());
afterEach(() => document.body.replaceChildren());

type Tag = 'wk-bill' | 'wk-costs' | 'wk-cashflow' | 'wk-case';

async function shown<T extends Tag>(
  tag: T,
  width = 1000,
  options: object = {},
): Promise<HTMLElementTagNameMap[T]> {
  await page.viewport(width, 900);
  const element = Object.assign(document.createElement(tag), {
    run,
    results: run.results,
    reading,
    explorer,
    ...options,
  });
  const main = document.createElement('main');
  main.append(element);
  document.body.append(main);
  await element.updateComplete;
  return element;
}

const words = (element: Element) => (element.shadowRoot?.textContent ?? '').replace(/\s+/gu, ' ');
/** The drawing, once it is in sight: only then is it made. */
function drawn(element: Element) {
  const figure = element.shadowRoot?.querySelector('wk-figure');
  figure?.scrollIntoView();
  return figure?.shadowRoot?.querySelector('.drawing svg');
}

describe('the bill', () => {
  it('adds up to the capital to the cent, line by line as printed', async () => {
    const element = await shown('wk-bill', 1000, { scenario: 'Deep bed' });
    const rows = [...(element.shadowRoot?.querySelectorAll('table:not(.members) tbody tr') ?? [])];
    const amounts = rows.map((row) =>
      Number(row.querySelector('td:last-child')?.textContent?.replace(/[^\d.]/g, '')),
    );
    expect(amounts.length).toBeGreaterThan(15);
    const sum = amounts.reduce((all, amount) => all + amount, 0);
    expect(sum).toBeCloseTo(run.results[1].values.capitalCost as number, 2);
    expect(words(element)).toContain('In own timber and hours');
  });

  it('lists the timber it prices, and says what its money rests on and what others pay', async () => {
    const element = await shown('wk-bill', 1000, { scenario: 'Deep bed' });
    const cells = [...(element.shadowRoot?.querySelectorAll('.members tbody td:last-child') ?? [])];
    const volume = cells.reduce((all, cell) => all + Number(cell.textContent), 0);
    expect(volume).toBeCloseTo(run.results[1].values.shedTimberM3 as number, 1);
    expect(words(element)).toContain('must be graded by a person licensed to do it');
    expect(words(element)).toMatch(/Of the money in the bill \d+ % rests on dated quotes/);
    expect(words(element)).toContain('Irish reference costs of 2025');
  });

  it('shows the budget at P80 and how the unforeseen follows once the draws are in', async () => {
    const draws = drawAll(run, { count: 60, seed: 1, keep: ['capitalCash', 'capitalCost'] });
    const results = run.results.map((result, k) => ({ ...result, bands: bandsOf(draws, k) }));
    const element = await shown('wk-bill', 1000, { scenario: 'Deep bed', draws, results });
    const foot = [...(element.shadowRoot?.querySelectorAll('table:not(.members) tfoot tr') ?? [])].map(
      (row) => {
        const span = row.querySelector('td small')?.textContent ?? '';
        return [
          row.querySelector('th')?.textContent?.replace(/\s+/gu, ' ') ?? '',
          Number(
            row
              .querySelector('td')
              ?.textContent?.replace(span, '')
              .replace(/[^\d.]/g, ''),
          ),
          span,
        ] as const;
      },
    );
    const at = (head: string) => foot.find(([label]) => label.startsWith(head))?.[1] as number;
    expect(at('Unforeseen')).toBeGreaterThan(0);
    expect(at('In cash') + at('Unforeseen')).toBeCloseTo(at('Budget in cash, P80'), 2);
    // Its span stands under the amount and not in the words before it.
    expect(foot.find(([label]) => label === 'Together')?.[2]).toMatch(/^[\d\s]+ to [\d\s]+middle [\d\s]+$/u);
    expect(words(element)).toContain('The budget is P80');
  });

  it('shows the span and the middle of each line once the draws are in, as they are counted by hand', async () => {
    const lines = billRows(run, 1).flatMap(({ spec, label }) => (spec ? [{ name: spec.cost, label }] : []));
    const draws = drawAll(run, { count: 61, seed: 1, keep: lines.map(({ name }) => name) });
    const results = run.results.map((result, k) => ({ ...result, bands: bandsOf(draws, k) }));
    const element = await shown('wk-bill', 1000, { scenario: 'Deep bed', draws, results });
    const rows = [...(element.shadowRoot?.querySelectorAll('table:not(.members) tbody tr') ?? [])];
    let spanned = 0;
    lines.forEach(({ name, label }, k) => {
      const sorted = [...(draws.results[name] as Float64Array)]
        .filter((_, at) => at % draws.scenarios === 1)
        .sort((a, b) => a - b);
      const said = rows[k].querySelector('td:last-child small')?.textContent ?? '';
      expect(rows[k].textContent?.toLowerCase()).toContain(label.toLowerCase());
      if (sorted[6] === sorted[54]) {
        expect(said).toBe('');
        return;
      }
      spanned++;
      // Of 61 draws the 7th, 31st and 55th are P10, P50 and P90; three digits are printed.
      const numbers =
        said
          .replace(/(\d)[\u202f\u00a0 ](?=\d)/g, '$1')
          .match(/\d+(\.\d+)?/g)
          ?.map(Number) ?? [];
      [sorted[6], sorted[54], sorted[30]].forEach((value, at) => {
        expect(Math.abs(numbers[at] / value - 1), `${label}: ${said}`).toBeLessThan(0.051);
      });
    });
    expect(spanned).toBeGreaterThan(15);
  });

  it('asks for a quote with a price and a reason, and takes it out again', async () => {
    const asked: Asked['wk-quote'][] = [];
    const element = await shown('wk-bill', 1000, { scenario: 'Deep bed' });
    element.addEventListener('wk-quote', ({ detail }) => asked.push(detail));
    await userEvent.click(page.getByRole('button', { name: 'Own quote for roof sheets and fixings' }));
    await userEvent.fill(page.getByLabelText(/Quoted price, CAD a m²/), '41.5');
    await userEvent.click(page.getByRole('button', { name: 'Use it' }));
    expect(asked).toEqual([]);
    await userEvent.fill(page.getByLabelText('Whose quote, and when'), 'roofer, March');
    await userEvent.click(page.getByRole('button', { name: 'Use it' }));
    expect(asked).toEqual([{ scenario: 1, line: 'roof', unitPrice: 41.5, because: 'roofer, March' }]);

    const text = setQuote(TEXT, 1, [], { line: 'roof', unitPrice: 41.5, because: 'roofer, March' });
    element.run = runOf(text);
    await element.updateComplete;
    expect(words(element)).toContain('own quote: roofer, March');
    await userEvent.click(
      page.getByRole('button', { name: 'Take out the quote for roof sheets and fixings' }),
    );
    expect(asked[1]).toEqual({ scenario: 1, line: 'roof', unitPrice: null, because: '' });
    const quotes = element.run.bound[1].scenario.finance.quotes;
    expect(
      runOf(setQuote(text, 1, quotes, { line: 'roof', unitPrice: null, because: '' })).results[1].values
        .capitalCost,
    ).toBe(run.results[1].values.capitalCost);
  });

  it('marks a missing price and gives no sum', async () => {
    const prices = new Map([...(tables.prices.get('CAD') ?? [])].filter(([id]) => id !== 'roofPricePerM2'));
    const { notebook } = readNotebook(TEXT, 'coast.md') as { notebook: Parameters<typeof evaluate>[0] };
    const gap = evaluate(notebook, { ...tables, prices: new Map([['CAD', prices]]) }, () => winter);
    const element = await shown('wk-bill', 1000, { run: gap, scenario: 'Deep bed' });
    expect(words(element)).toContain('No price given for roof sheets and fixings in CAD');
    expect(words(element)).toContain('no sum');
  });
});

describe('costs, cash and case', () => {
  it('costs: every line opens its working', async () => {
    const element = await shown('wk-costs');
    const asked: Asked['wk-explain'][] = [];
    element.addEventListener('wk-explain', ({ detail }) => asked.push(detail));
    await userEvent.click(page.getByRole('button', { name: /^Bedding, Deep bed: / }));
    expect(asked).toEqual([{ scenario: 1, quantity: 'beddingCost' }]);
    for (const text of ['Net, a head and day', 'Cost a kg of nitrogen kept'])
      expect(words(element)).toContain(text);
  });

  it('cash flow: the band comes with the draws', async () => {
    const element = await shown('wk-cashflow');
    const caption = () =>
      element.shadowRoot?.querySelector('wk-figure')?.shadowRoot?.textContent?.replace(/\s+/gu, ' ');
    await expect.poll(() => drawn(element), SOON).toBeTruthy();
    expect(drawn(element)?.querySelector('path[fill-opacity]')).toBeNull();
    element.draws = drawAll(run, { count: 250, seed: 1, keep: CASH_RESULTS });
    await expect.poll(caption, SOON).toContain('8 of 10 of 250 draws');
    await expect.poll(() => drawn(element)?.querySelector('path[fill-opacity]'), SOON).toBeTruthy();
    expect(words(element)).toMatch(/building loan: CAD [\d ]+ at 6\.2 % over 15 years/);
    // Three months of works, two years of months and a line for each of the three; then cash and gains by year, the
    // year of building and twenty after it.
    const tables = [...(element.shadowRoot?.querySelectorAll('table') ?? [])];
    expect(tables.map((table) => table.querySelectorAll('tbody th').length)).toEqual([3 + 24 + 3, 21, 21]);
  });

  it('case: five answers, stresses with break-evens, what moves it, and a paper to print', async () => {
    const element = await shown('wk-case', 1000, {
      scenario: 'Deep bed',
      notebook: { title: 'Coast', invented: true, units: 'metric', draws: { count: 200, seed: 1 } },
    });
    await expect.poll(() => element.shadowRoot?.querySelectorAll('dl > div').length, SOON).toBe(5);
    await expect
      .poll(() => element.shadowRoot?.querySelectorAll('tbody tr').length, SOON)
      .toBe(STRESSES.length);
    expect(words(element)).toMatch(/Bedding dearer50 %\+/);
    await expect.poll(() => drawn(element), SOON).toBeTruthy();
    // A4, Letter, and the paper as a file.
    expect(element.shadowRoot?.querySelectorAll('button.plain')).toHaveLength(3);
    await userEvent.click(page.getByRole('button', { name: 'Print the lender’s paper, A4' }));
    await expect
      .poll(() => document.querySelector('iframe')?.contentDocument?.body.textContent ?? '', SOON)
      .toContain('Spans from 200 draws (seed 1)');
  });

  it('prints in a frame of its own that goes when it is done', async () => {
    const frame = printText('<!doctype html><title>paper</title><p>What must be built</p>');
    await expect
      .poll(() => frame.contentDocument?.querySelector('p')?.textContent, SOON)
      .toBe('What must be built');
    const again = printText('<!doctype html><title>paper</title><p>Again</p>');
    expect(frame.isConnected).toBe(false);
    await expect.poll(() => again.contentDocument?.querySelector('p')?.textContent, SOON).toBe('Again');
    again.contentWindow?.dispatchEvent(new Event('afterprint'));
    expect(again.isConnected).toBe(false);
  });
});

describe('for every reader', () => {
  for (const tag of ['wk-bill', 'wk-costs', 'wk-cashflow', 'wk-case'] as const)
    for (const width of [390, 1280])
      it(`${tag} has no fault that axe finds and does not widen the page at ${width} px`, async () => {
        const element = await shown(tag, width, { scenario: 'Deep bed' });
        if (tag !== 'wk-bill') await expect.poll(() => drawn(element), SOON).toBeTruthy();
        expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
        expect(await faults(document.body, PART)).toEqual([]);
      });
});
