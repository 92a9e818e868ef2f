import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { ResultName } from '../../src/model/quantities.ts';
import '../../src/app/styles.css';
import { startEngine } from '../../src/app/engine.ts';
import { EXAMPLES, FEW_DRAWS } from './examples.ts';
import '../../src/elements/page/below.ts';
import '../../src/elements/page/wk-page.ts';
import type { WkPage } from '../../src/elements/page/wk-page.ts';
import type { WkWeather } from '../../src/elements/page/wk-weather.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import type { Draws } from '../../src/uncertainty/monteCarlo.ts';
import { hundredths } from '../../src/uncertainty/sentences.ts';
import { formatQuantity } from '../../src/units/format.ts';
import { type Engine, type OpenNotebook, openNotebook } from '../openNotebook.ts';
import { decide } from '../reference/decide.ts';
import { faults } from './look.ts';

/** The machine may be busy with other tests. */
const SOON = { timeout: 15_000 };
let engine: Engine;
let open: OpenNotebook | undefined;

beforeAll(() => {
  engine = startEngine();
});

afterEach(() => {
  open?.close();
  document.body.replaceChildren();
});

async function show(
  name = 'hill-farm-choice',
  width = 1280,
  height = 800,
  from = FEW_DRAWS,
): Promise<WkPage> {
  await page.viewport(width, height);
  const example = from.find((each) => each.name === name);
  if (!example) throw new Error(`missing example: ${name}`);
  open = openNotebook(example.text, example.file, engine);
  const element = document.createElement('wk-page');
  element.open = open;
  document.body.append(element);
  await expect.element(page.getByRole('heading', { level: 1 }), SOON).toBeVisible();
  return element;
}

const number = (label: string, scenario: string) =>
  page.getByRole('button', { name: new RegExp(`^${label}, ${scenario}: `) }).first();

/** What the card should say: the text as it stands, read and evaluated apart from the page. */
async function worked(scenario: number, quantity: ResultName, unit: string): Promise<string> {
  const { notebook } = readNotebook(open?.text.value ?? '', 'apart.md');
  if (!notebook) throw new Error('the notebook cannot be read');
  const { winterOf } = await engine.winters(notebook);
  const { values } = evaluate(notebook, engine.tables, winterOf).results[scenario];
  return formatQuantity(values[quantity], unit);
}

/** A drawing of one element as text, to see whether it has been drawn anew. */
function drawing(element: WkPage): string {
  const ledger = element.shadowRoot?.querySelector('wk-notebook')?.shadowRoot?.querySelector('wk-ledger');
  // Only what is in sight is drawn.
  ledger?.scrollIntoView();
  return (
    ledger?.shadowRoot?.querySelector('wk-figure')?.shadowRoot?.querySelector('.drawing')?.innerHTML ?? ''
  );
}

describe('the page', () => {
  it('redraws card and figure when an input is turned, and writes it when let go', async () => {
    const element = await show();
    const kept = () => number('Nitrogen kept', 'Paddock').element().textContent;
    const before = kept();
    expect(before).toContain(await worked(0, 'nitrogenKeptKg', 'kg'));
    await expect.poll(() => drawing(element), SOON).toContain('kept');
    const drawn = drawing(element);
    const text = open?.text.value;

    const slider = page.getByRole('slider', { name: /^Animals/ });
    (slider.element() as HTMLInputElement).focus();
    (slider.element() as HTMLInputElement).value = '40';
    slider.element().dispatchEvent(new Event('input', { bubbles: true }));
    await expect.poll(kept, SOON).not.toBe(before);
    await expect.poll(() => drawing(element), SOON).not.toBe(drawn);
    const turned = kept();
    expect(open?.text.value).toBe(text);

    slider.element().dispatchEvent(new Event('change', { bubbles: true }));
    await expect.poll(() => open?.text.value, SOON).not.toBe(text);
    expect(open?.history.value.past).toHaveLength(1);
    // The text that was written, evaluated apart from the page, has the number that stood there while turning.
    const expected = await worked(0, 'nitrogenKeptKg', 'kg');
    expect(before).not.toContain(expected);
    expect(turned).toContain(expected);
    await expect.poll(kept, SOON).toContain(expected);
    await expect.poll(() => drawing(element), SOON).toContain(`${expected} kept`);
    open?.undo();
    await expect.poll(kept, SOON).toBe(before);
  });

  it('shows the same after letting go as while turning', async () => {
    await show();
    const slider = page.getByRole('slider', { name: /^Winter/ }).element() as HTMLInputElement;
    slider.value = '150';
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    await expect.poll(() => open?.run.value?.scenarios[0].values.winterDays, SOON).toBe(150);
    const turned = open?.run.value?.scenarios.map((s) => s.values.nitrogenKeptKg);
    slider.dispatchEvent(new Event('change', { bubbles: true }));
    await expect.poll(() => open?.history.value.past.length, SOON).toBe(1);
    await expect.poll(() => open?.notebook.value?.farm.winter.end, SOON).toBe('2026-03-19');
    open?.run.value?.scenarios.forEach((s, k) => {
      expect(s.values.nitrogenKeptKg).toBeCloseTo(turned?.[k] as number, 6);
    });
  });

  it('turns the herd with its shed or without, as the switch says, and undoes both in one step', async () => {
    await show();
    const cost = () => open?.run.value?.scenarios.map((s) => s.values.capitalCost);
    const before = cost();
    const text = open?.text.value;
    const slider = page.getByRole('slider', { name: /^Animals/ }).element() as HTMLInputElement;
    const turnTo = (value: string, type: 'input' | 'change') => {
      slider.value = value;
      slider.dispatchEvent(new Event(type, { bubbles: true }));
    };
    turnTo('34', 'input');
    await expect.poll(() => cost()?.[2], SOON).toBeGreaterThan(1.5 * Number(before?.[2]));
    const built = cost();
    const toHerd = page.getByRole('checkbox', { name: /^Size shed to herd/ });
    expect((toHerd.element() as HTMLInputElement).checked).toBe(true);
    await toHerd.click();
    await expect.poll(() => cost()?.[2], SOON).toBeLessThan(1.2 * Number(before?.[2]));
    await toHerd.click();
    await expect.poll(cost, SOON).toEqual(built);
    turnTo('34', 'change');
    await expect.poll(() => open?.notebook.value?.scenarios[2].shed.lengthM, SOON).toBe(48);
    await expect.poll(cost, SOON).toEqual(built);
    expect(open?.history.value.now.what).toBe('Animals to 34 head, shed is built to match');
    open?.undo();
    expect(open?.text.value).toBe(text);
  });

  it('opens the working of a number by keyboard and gives the focus back', async () => {
    await show();
    const kept = number('Nitrogen kept', 'Paddock');
    (kept.element() as HTMLElement).focus();
    await userEvent.keyboard('{Enter}');
    const dialog = page.getByRole('dialog');
    await expect.element(dialog).toBeVisible();
    await expect.element(dialog.getByRole('heading', { level: 2 })).toHaveTextContent('Paddock');
    expect(dialog.element().querySelectorAll('details').length).toBeGreaterThan(0);
    await userEvent.keyboard('{Escape}');
    await expect
      .poll(() => (kept.element().getRootNode() as ShadowRoot).activeElement, SOON)
      .toBe(kept.element());
  });

  it('puts an own measurement in place of a coefficient, with its reason', async () => {
    const element = await show();
    const kept = () => number('Nitrogen kept', 'Slats').element().textContent;
    const before = kept();
    element.dispatchEvent(
      new CustomEvent('wk-override', {
        detail: { id: 'houseAmmoniaTanFraction', value: 0.2, because: 'a test' },
      }),
    );
    expect(open?.text.value).toContain('because: a test');
    const expected = await worked(1, 'nitrogenKeptKg', 'kg');
    expect(before).not.toContain(expected);
    await expect.poll(kept, SOON).toContain(expected);
    open?.undo();
    expect(open?.text.value).not.toContain('a test');
    await expect.poll(kept, SOON).toBe(before);
  });

  it('says how often each scenario is best once the draws are in', async () => {
    await show();
    await expect.poll(() => open?.draws.value?.count, { timeout: 20_000 }).toBeGreaterThan(0);
    await expect.poll(() => page.getByText(/of 100/).elements().length, SOON).toBeGreaterThan(0);
    expect(open?.results.value[0].bands?.p10.nitrogenKeptKg).toBeLessThan(
      open?.results.value[0].bands?.p90.nitrogenKeptKg as number,
    );
  });

  it('makes as many draws as the notebook asks for, and few while an input is turned', async () => {
    const more = FEW_DRAWS.map((each) => ({ ...each, text: each.text.replace('count: 400', 'count: 2000') }));
    await show('hill-farm-choice', 1280, 800, more);
    const asked = open?.notebook.value?.draws.count;
    expect(asked).toBe(2000);
    await expect.poll(() => open?.draws.value?.count, { timeout: 40_000 }).toBe(asked);
    const slider = page.getByRole('slider', { name: /^Rain/ }).element() as HTMLInputElement;
    slider.value = '1.5';
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    await expect.poll(() => open?.draws.value?.count, SOON).toBe(300);
    slider.dispatchEvent(new Event('change', { bubbles: true }));
    await expect.poll(() => open?.draws.value?.count, { timeout: 40_000 }).toBe(asked);
  });

  it('says how often each is best by the weights of the notebook, and tells the weights when asked', async () => {
    const element = await show();
    await expect.poll(() => open?.draws.value?.count, { timeout: 40_000 }).toBe(400);
    const cards = () => element.shadowRoot?.querySelector('wk-cards')?.shadowRoot;
    const shares = () =>
      [...(cards()?.querySelectorAll('.card') ?? [])].map((card) => {
        const row = [...card.querySelectorAll('.row')].find((r) => r.textContent?.includes('your weights'));
        return /^(.*) of 100$/.exec(row?.querySelector('.often')?.textContent ?? '')?.[1];
      });
    const { draws, notebook } = open as OpenNotebook;
    const decision = decide(draws.value as Draws, notebook.value?.decide.weights ?? {});
    expect(decision.shareBest.reduce((sum, s) => sum + s, 0)).toBeCloseTo(1, 6);
    await expect.poll(shares, SOON).toEqual(decision.shareBest.map(hundredths));
    const weights = cards()?.querySelector('details') as HTMLDetailsElement;
    expect(weights.open).toBe(false);
    weights.open = true;
    expect(weights.textContent).toContain('nitrogen kept 2');
  });

  it('takes the keeper’s own weather, writes its name and computes with it, gaps told', async () => {
    const element = await show();
    const rain = () => open?.run.value?.scenarios[0].values.rainMm;
    const before = rain();
    const days = Array.from({ length: 1400 }, (_, k) => {
      const date = new Date(Date.UTC(2020, 5, 1) + k * 86_400_000).toISOString().slice(0, 10);
      const high = 12 + 14 * Math.cos((((k + 151) % 365.25) / 365.25 - 0.55) * 2 * Math.PI);
      const mm = date === '2022-12-24' ? '' : k % 2 === 0 ? '9.0' : '0';
      return `${date};${mm};${high.toFixed(1)};${(high - 7).toFixed(1)}`;
    });
    const details = element.shadowRoot?.querySelector<HTMLDetailsElement>('details.weather');
    (details as HTMLDetailsElement).open = true;
    const weather = details?.querySelector('wk-weather') as WkWeather;
    await weather.take(new File([`Day;Precip (mm);Tmax;Tmin\n${days.join('\n')}\n`], 'gauge.txt'));
    await page.getByRole('button', { name: 'Use this weather' }).click();
    await expect.poll(() => open?.notebook.value?.farm.weather.file, SOON).toBe('gauge.csv');
    expect(open?.problems.value).toEqual([]);
    expect(open?.text.value).toContain('gauge.csv');
    await expect.poll(rain, SOON).not.toBe(before);
    // The day that was filled is told of again by whoever reads the kept text.
    await expect.poll(() => details?.querySelector('ul')?.textContent, SOON).toContain('2022-12-24');
    expect(weather.shadowRoot?.textContent).toContain('rain, 2022-12-24');

    // The days travel in the text: whoever reads it anew has them, and no file is needed.
    const again = openNotebook(open?.text.value ?? '', 'elsewhere.md', startEngine());
    await expect.poll(() => again.run.value?.scenarios[0].values.rainMm, SOON).toBe(rain());
    again.close();

    // The same name with other days is another weather.
    const wet = rain();
    open?.useWeather(
      'gauge.csv',
      `date,rainMm,minC,maxC\n${days.map((d) => d.replace(/;.*?;(.*);(.*)/, ',1,$2,$1')).join('\n')}\n`,
    );
    await expect.poll(rain, SOON).not.toBe(wet);
    expect(open?.text.value.match(/^```weather/gm)).toHaveLength(1);
    open?.undo();
    await expect.poll(rain, SOON).toBe(wet);
    open?.undo();
    await expect.poll(rain, SOON).toBe(before);
  });

  it('joins the rain of a gauge with the temperature of the nearest climate, and says so', async () => {
    const element = await show();
    const rain = () => open?.run.value?.scenarios[0].values.rainMm;
    const before = rain();
    const details = element.shadowRoot?.querySelector<HTMLDetailsElement>('details.weather');
    (details as HTMLDetailsElement).open = true;
    const weather = details?.querySelector('wk-weather') as WkWeather;
    const days = Array.from({ length: 1400 }, (_, k) => {
      const date = new Date(Date.UTC(2020, 5, 1) + k * 86_400_000).toISOString().slice(0, 10);
      return `${date},${k % 2 === 0 ? 7 : 0}`;
    });
    await weather.take(new File([`date,rain (mm)\n${days.join('\n')}\n`], 'gauge.txt'));
    await expect.element(page.getByText(/has rain and no temperature/)).toBeVisible();
    const climate = page.getByRole('combobox', { name: 'Temperature of' });
    expect((climate.element() as HTMLSelectElement).value).toBe('balticHills.csv');
    await page.getByRole('button', { name: 'Use this rain' }).click();
    const name = 'gauge with temperature of balticHills.csv';
    await expect.poll(() => open?.notebook.value?.farm.weather.file, SOON).toBe(name);
    expect(open?.problems.value).toEqual([]);
    await expect.poll(rain, SOON).not.toBe(before);
    await expect.poll(() => details?.querySelector('summary')?.textContent, SOON).toContain(name);
  });

  it('lists the lines that cannot be right and bridges them by choice', async () => {
    const element = await show();
    const details = element.shadowRoot?.querySelector<HTMLDetailsElement>('details.weather');
    (details as HTMLDetailsElement).open = true;
    const weather = details?.querySelector('wk-weather') as WkWeather;
    const days = Array.from({ length: 800 }, (_, k) => {
      const date = new Date(Date.UTC(2020, 5, 1) + k * 86_400_000).toISOString().slice(0, 10);
      return `${date},1,${k === 500 ? 20 : 2},9`;
    });
    await weather.take(new File([`date,rainMm,minC,maxC\n${days.join('\n')}\n`], 'own.csv'));
    const told = () => weather.shadowRoot?.querySelector('wk-problems')?.shadowRoot?.textContent;
    await expect.poll(told).toContain('Line 502');
    await page.getByRole('button', { name: /^Bridge them/ }).click();
    await expect
      .element(page.getByText(/line 502: the lowest temperature is above the highest/))
      .toBeVisible();
    await page.getByRole('button', { name: 'Use this weather' }).click();
    await expect.poll(() => open?.notebook.value?.farm.weather.file, SOON).toBe('own.csv');
    expect(open?.problems.value).toEqual([]);
  });

  it('says how a text is read that older versions read another way, and what to write for that', async () => {
    await show();
    const section = page.getByRole('region', { name: 'How the text was read' });
    await expect.element(page.getByRole('heading', { name: 'Limits checked' }), SOON).toBeVisible();
    expect(section.query()).toBeNull();
    const text = open?.text.value ?? '';
    open?.edit(text.replaceAll(/ frostDepthM: 1\.2,|^ *frostDepthM: 1\.2\n/gm, ''), 'no depth of frost');
    await expect.element(section, SOON).toBeVisible();
    expect(section.element().textContent).toContain('no depth of frost is given for "Slats", "Straw bed"');
    expect(section.element().textContent).toContain('frostDepthM: 0.6 in shed');
  });

  it('asks for a weather file it does not have, where it can be given', async () => {
    const example = EXAMPLES.find(({ name }) => name === 'hill-farm-choice');
    const text = (example?.text ?? '').replace('balticHills.csv', 'nowhere.csv');
    expect(text).toContain('nowhere.csv');
    open = openNotebook(text, 'mine.md', engine);
    const element = document.createElement('wk-page');
    element.open = open;
    document.body.append(element);
    await expect.element(page.getByText(/Use your own weather/), SOON).toBeVisible();
    expect(element.shadowRoot?.querySelector('details.weather wk-weather')).toBeTruthy();
  });

  it.each([
    ['laptop', 1280, 800],
    ['phone', 390, 844],
  ])('has no accessibility violation on a %s', async (_, width, height) => {
    await show('hill-farm-choice', width, height);
    expect(await faults()).toEqual([]);
  });

  it.each(EXAMPLES.map(({ name }) => name))('keeps %s within a phone', async (name) => {
    const element = await show(name, 390, 844);
    for (let y = 0; y < document.documentElement.scrollHeight; y += 700) {
      scrollTo(0, y);
      await new Promise((resume) => requestAnimationFrame(resume));
    }
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
    const cards = element.shadowRoot?.querySelector('wk-cards')?.shadowRoot;
    const grid = cards?.querySelector('.grid') as HTMLElement;
    const first = cards?.querySelector('.card') as HTMLElement;
    const left = first.getBoundingClientRect().left;
    grid.scrollLeft = 160;
    await new Promise((resume) => requestAnimationFrame(resume));
    // The first scenario stays in sight while the others are swiped past it.
    expect(first.getBoundingClientRect().left).toBeLessThanOrEqual(left);
    expect(first.getBoundingClientRect().right).toBeGreaterThan(100);
  });

  it('has every row at one height across the cards', async () => {
    const element = await show();
    const cards = [
      ...(element.shadowRoot?.querySelector('wk-cards')?.shadowRoot?.querySelectorAll('.card') ?? []),
    ];
    const tops = cards.map((card) =>
      [...card.querySelectorAll('.row')].map((row) => Math.round(row.getBoundingClientRect().top)),
    );
    expect(tops.length).toBeGreaterThan(2);
    for (const each of tops) expect(each).toEqual(tops[0]);
  });
});
