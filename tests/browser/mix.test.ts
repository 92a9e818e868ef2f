import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import { startExplorer } from '../../src/app/startExplorer.ts';
import { dataFiles } from './dataFiles.ts';
import '../../src/elements/cells/wk-bed.ts';
import '../../src/elements/cells/wk-mix.ts';
import { WEEK_SERIES } from '../../src/plots/weeks.ts';
import type { Run } from '../../src/study/evaluate.ts';
import type { Explorer } from '../../src/worker/explorer.ts';
import { farm } from '../farm.ts';
import { faults, PART } from './look.ts';

const reading = { currency: 'EUR', year: 2024, system: 'metric' } as const;
let run: Run;
let explorer: Explorer;
beforeAll(() => {
  run = farm(dataFiles);
  explorer = startExplorer();
});
afterAll(() => explorer.close());
afterEach(() => document.body.replaceChildren());

async function mounted(name: 'wk-mix' | 'wk-bed', options: object, width = 800) {
  await page.viewport(width, 900);
  const element = Object.assign(document.createElement(name), { run, reading, ...options });
  const main = document.createElement('main');
  main.append(element);
  document.body.append(main);
  const figure = () => element.shadowRoot?.querySelector('wk-figure')?.shadowRoot;
  await expect.poll(() => figure()?.querySelector('.finding'), { timeout: 40_000 }).toBeTruthy();
  return { root: element.shadowRoot as ShadowRoot, figure: figure() as ShadowRoot, element };
}

const finding = (figure: ShadowRoot) => figure.querySelector('.finding')?.textContent ?? '';
const bedOptions = () => ({
  explorer,
  results: run.results,
  series: WEEK_SERIES.weekPackDepthM,
  seed: 1,
});

const sound = async () => expect(await faults(document.body, [...PART, 'heading-order'])).toEqual([]);

describe.each([390, 1280])('at %i px', (width) => {
  it('the mix stays inside the page and is sound', async () => {
    const { figure } = await mounted('wk-mix', {}, width);
    await expect.poll(() => figure.querySelector('.drawing svg'), { timeout: 20_000 }).toBeTruthy();
    for (const text of figure.querySelectorAll('.drawing text')) {
      const { left, right } = text.getBoundingClientRect();
      expect(left, text.textContent ?? '').toBeGreaterThanOrEqual(-1);
      expect(right, text.textContent ?? '').toBeLessThanOrEqual(width + 1);
    }
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    figure.querySelector('summary')?.click();
    await expect.poll(() => figure.querySelectorAll('tbody tr').length).toBeGreaterThan(8);
    await sound();
  });

  it('the bed has its span, drawn, said and in the table, and is sound', async () => {
    const { figure } = await mounted('wk-bed', bedOptions(), width);
    await expect
      .poll(() => finding(figure), { timeout: 40_000 })
      .toMatch(/By spring 8 of 10 draws end within/);
    await expect
      .poll(() => figure.querySelectorAll('.drawing [aria-label=area] path').length, { timeout: 20_000 })
      .toBe(1);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    figure.querySelector('summary')?.click();
    await expect
      .poll(() => [...figure.querySelectorAll('thead th')].map((th) => th.textContent))
      .toEqual(['week', 'Deep bed', 'Deep bed, P10', 'Deep bed, P50', 'Deep bed, P90']);
    await sound();
  });
});

describe('what the mix says', () => {
  it('the cheapest mix of the first scenario with a bed, and the evidence against the binding figures', async () => {
    const { root, figure } = await mounted('wk-mix', {});
    expect(finding(figure)).toMatch(
      /^Cheapest bed within the limits: .*own softwood chips.*EUR [\d.]+ a week, [\d.]+ h of own work in it\.$/,
    );
    expect(root.textContent).toContain('Hao, Chang and Larney (2004)');
    expect(root.textContent).toMatch(/By C:N alone softwood chips would bind/);
  });

  it('with too little that can be carried, what stands in the way and what would free it; by keyboard', async () => {
    const { root, figure } = await mounted('wk-mix', {});
    await userEvent.click(root.querySelector('#carried') as HTMLElement);
    await userEvent.keyboard('10{Enter}');
    await expect.poll(() => finding(figure), { timeout: 20_000 }).toMatch(/^No mix of what lies in reach/);
    await expect.poll(() => root.querySelectorAll('li').length).toBeGreaterThan(0);
    expect(root.querySelector('ul')?.textContent).toMatch(/Handle \d+ kg of bedding a day/);
    await userEvent.clear(root.querySelector('#carried') as HTMLElement);
    await userEvent.keyboard('{Tab}');
    await expect.poll(() => finding(figure), { timeout: 20_000 }).toMatch(/^Cheapest bed within the limits/);
  });

  it('a scenario without a bed, and one that is not there, are said', async () => {
    const { figure } = await mounted('wk-mix', { scenario: 'Paddock' });
    expect(finding(figure)).toBe('“Paddock” has no bed to lay bedding on.');
    const missing = Object.assign(document.createElement('wk-mix'), { run, reading, scenario: 'Padock' });
    document.body.append(missing);
    await expect.poll(() => missing.shadowRoot?.textContent).toContain('There is no scenario “Padock”');
  });

  it('without a worker the bed still has its line', async () => {
    const { figure } = await mounted('wk-bed', { ...bedOptions(), explorer: undefined });
    expect(finding(figure)).toMatch(/^Bed above the floor: from .* by week \d+ in “Deep bed”\.$/);
  });
});
