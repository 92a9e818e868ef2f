/** From an empty page to one's own notebook: six steps, by thumb and by keyboard, with nothing lost on the way. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import '../../src/app/shell.ts';
import ownWeather from '../../data/weather/atlanticGrassland.csv?raw';
import { STEPS } from '../../src/begin/answers.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { browserBase } from '../../src/store/base.ts';
import { openShelf } from '../../src/store/shelf.ts';
import { faults } from './look.ts';

const SOON = { timeout: 30_000 };

beforeEach(() => {
  localStorage.clear();
  location.hash = '';
});
afterEach(() => {
  document.body.replaceChildren();
  localStorage.clear();
  location.hash = '';
});

async function show(width: number, height = 844): Promise<void> {
  await page.viewport(width, height);
  document.body.replaceChildren(document.createElement('wk-shell'));
  if (location.hash === '#begin') await expect.element(heading(), SOON).toBeVisible();
  else await expect.element(page.getByRole('link', { name: 'Start with my farm' }), SOON).toBeVisible();
}

const heading = () => page.getByRole('heading', { level: 2 });
const next = () => page.getByRole('button', { name: 'Next' });
const begin = () => document.querySelector('wk-shell')?.shadowRoot?.querySelector('wk-begin');
const inside = () => begin()?.shadowRoot as ShadowRoot;
const focused = () => inside().activeElement;
const worked = () =>
  expect.poll(() => inside().querySelector('.follows')?.getAttribute('aria-busy'), SOON).toBe('false');

/**
 * What a person's thumbs do, counted, and how long it takes them. The words on the page are read at the pace of silent
 * reading (238 words a minute: Brysbaert 2019, a review of reading rates, from memory); a letter on a phone takes
 * 330 ms (36 words a minute: Palin and others 2019, typing on phones, from memory); a tap 1.1 s to reach and 1.35 s to
 * decide (Card, Moran and Newell 1980, the keystroke-level model, from memory).
 */
class Thumbs {
  taps = 0;
  keys = 0;
  words = 0;

  async tap(locator: ReturnType<typeof page.getByRole>): Promise<void> {
    this.taps++;
    await locator.click();
  }
  async type(label: string | RegExp, text: string): Promise<void> {
    const field = page.getByLabelText(label);
    this.taps++;
    this.keys += text.length;
    await userEvent.fill(field, text);
  }
  async choose(label: string | RegExp, value: string): Promise<void> {
    this.taps += 2;
    await userEvent.selectOptions(page.getByLabelText(label), value);
  }
  /** Reads what is in sight, options that are folded away left out. */
  read(): void {
    const copy = inside().querySelector('main')?.cloneNode(true) as HTMLElement;
    for (const gone of copy.querySelectorAll('option, .hidden, details > :not(summary)')) gone.remove();
    this.words += (copy.textContent ?? '').split(/\s+/).filter((word) => /\p{L}|\d/u.test(word)).length;
  }
  get minutes(): number {
    return (this.keys * 0.33 + this.taps * (1.1 + 1.35)) / 60 + this.words / 238;
  }
}

describe('start with my farm', () => {
  it('is done in under four minutes on a phone, and ends at a notebook without a problem', async () => {
    await show(390);
    const thumbs = new Thumbs();
    await thumbs.tap(page.getByRole('link', { name: 'Start with my farm' }));
    await expect.element(heading(), SOON).toBeVisible();
    const on = async () => {
      await worked();
      thumbs.read();
      await thumbs.tap(next());
    };
    await thumbs.choose('Country', 'IE');
    await thumbs.type('Name of the place', 'Long acre');
    await on();
    await thumbs.type('Head of row 1, suckler cows', '22');
    await thumbs.type('Head of row 2, bulls', '1');
    await on();
    await on();
    await thumbs.choose('Soil', 'clay');
    await thumbs.type('Land that can take manure', '30');
    await on();
    await thumbs.tap(page.getByLabelText('A shed that stands'));
    await on();
    await thumbs.type('Straw here, delivered', '180');
    await worked();
    thumbs.read();
    await thumbs.tap(page.getByRole('button', { name: 'Make my notebook' }));

    await expect.poll(() => location.hash, SOON).toMatch(/^#kept=/);
    for (const name of ['Paddock', 'Slats', 'Deep bed'])
      await expect.element(page.getByRole('heading', { name }).first(), SOON).toBeVisible();
    const kept = await openShelf({ base: browserBase() }).get(
      decodeURIComponent(location.hash.slice('#kept='.length)),
    );
    const { ok, notebook, problems } = readNotebook(kept?.text ?? '', 'kept.md');
    expect(problems).toEqual([]);
    expect(ok).toBe(true);
    expect(notebook?.farm.herd.map(({ head }) => head)).toEqual([22, 1]);
    expect(notebook?.farm.soil.texture).toBe('clay');
    expect(notebook?.farm.land.receivingHa).toBe(30);
    expect(notebook?.farm.place.name).toBe('Long acre');
    console.info(
      `${thumbs.keys} keys, ${thumbs.taps} taps, ${thumbs.words} words to read: ${thumbs.minutes.toFixed(1)} minutes`,
    );
    expect(thumbs.keys).toBeGreaterThan(15);
    expect(thumbs.minutes).toBeLessThan(4);
  }, 120_000);

  it('keeps every answer while stepping back and forth and over a reload, also one that cannot be taken', async () => {
    location.hash = '#begin';
    await show(390);
    await userEvent.fill(page.getByLabelText('Name of the place'), 'Long acre');
    await next().click();
    await userEvent.fill(page.getByLabelText('Head of row 1, suckler cows'), '1,200');
    await expect.element(page.getByText(/can be read in two ways/).first(), SOON).toBeVisible();
    await next().click();
    await page.getByRole('button', { name: 'Back' }).click();
    await expect.element(page.getByLabelText('Head of row 1, suckler cows')).toHaveValue('1,200');
    await show(390);
    // The step stood at is there again too.
    await expect.element(page.getByLabelText('Head of row 1, suckler cows'), SOON).toHaveValue('1,200');
    await page.getByRole('button', { name: 'Back' }).click();
    await expect.element(page.getByLabelText('Name of the place')).toHaveValue('Long acre');

    await page.getByRole('button', { name: 'Make it now' }).click();
    const stop = page.getByRole('alert');
    await expect.element(stop, SOON).toBeVisible();
    await stop.getByRole('button', { name: 'Head', exact: true }).click();
    await expect.poll(() => focused()?.id).toBe('herd.0.head');
    expect(location.hash).toBe('#begin');
  }, 60_000);

  it('can be walked by keyboard alone, the focus on the heading of each step', async () => {
    location.hash = '#begin';
    await show(1280, 800);
    for (let step = 1; step < STEPS; step++) {
      const before = heading().element().textContent;
      (next().element() as HTMLElement).focus();
      await userEvent.keyboard('{Enter}');
      await expect.poll(() => heading().element().textContent).not.toBe(before);
      await expect.poll(() => focused()?.id).toBe('heading');
      // The first key from there reaches the first question.
      await userEvent.keyboard('{Tab}');
      expect(focused()?.matches('input, select')).toBe(true);
    }
  }, 60_000);

  it('leaves no question out of sight and none that a reader of the page cannot hear', async () => {
    for (const width of [390, 1280]) {
      location.hash = '#begin';
      localStorage.clear();
      await show(width);
      for (let step = 0; step < STEPS; step++) {
        for (const details of inside().querySelectorAll('details')) details.open = true;
        await worked();
        expect(await faults(), `step ${step + 1}`).toEqual([]);
        expect(document.documentElement.scrollWidth, `step ${step + 1} at ${width}`).toBeLessThanOrEqual(
          width,
        );
        if (step < STEPS - 1) await next().click();
      }
    }
  }, 120_000);

  it('adds and takes away groups, and reads US units where they are chosen', async () => {
    location.hash = '#begin';
    await show(390);
    await userEvent.selectOptions(page.getByLabelText('Country'), 'US');
    await next().click();
    await userEvent.fill(page.getByLabelText('Weight each of row 1, suckler cows'), '1400');
    await page.getByRole('button', { name: 'Add a group' }).click();
    await expect.element(page.getByLabelText('Head of row 3, heifers')).toBeVisible();
    await page.getByRole('button', { name: /Remove row 2/ }).click();
    await page.getByRole('button', { name: 'Back' }).click();
    await userEvent.selectOptions(page.getByLabelText('Country'), 'CA');
    await next().click();
    // The number keeps the unit it was typed in.
    await expect.element(page.getByLabelText('Weight each of row 1, suckler cows')).toHaveValue('1400 lb');
    await page.getByRole('button', { name: 'Make it now' }).click();
    await expect.poll(() => location.hash, SOON).toMatch(/^#kept=/);
    const kept = await openShelf({ base: browserBase() }).get(
      decodeURIComponent(location.hash.slice('#kept='.length)),
    );
    const herd = readNotebook(kept?.text ?? '', 'kept.md').notebook?.farm.herd;
    expect(herd?.map((group) => group.class)).toEqual(['sucklerCow', 'heifer']);
    expect(herd?.[0].weightKg).toBeCloseTo(1400 * 0.45359237, 1);
  }, 60_000);

  it('takes the keeper’s own weather, has it again after a reload, and makes the notebook with it', async () => {
    location.hash = '#begin';
    await show(390);
    await worked();
    const rain = () => inside().querySelector('.follows tr:nth-child(2) td')?.textContent;
    const before = rain();
    for (const details of inside().querySelectorAll('details')) details.open = true;
    await page
      .getByLabelText(/Drop a file of daily weather here/)
      .upload(new File([ownWeather], 'gauge.csv', { type: 'text/csv' }));
    await page.getByRole('button', { name: 'Use this weather' }).click();
    await expect
      .element(page.getByText('“gauge.csv” is used in place of the climate above.'), SOON)
      .toBeInTheDocument();
    await worked();
    const after = rain();
    expect(after).not.toBe(before);
    await show(390);
    await worked();
    expect(rain()).toBe(after);
    await page.getByRole('button', { name: 'Make it now' }).click();
    await expect.poll(() => location.hash, SOON).toMatch(/^#kept=/);
    await expect.element(page.getByRole('heading', { name: 'Deep bed' }).first(), SOON).toBeVisible();
    const kept = await openShelf({ base: browserBase() }).get(
      decodeURIComponent(location.hash.slice('#kept='.length)),
    );
    expect(readNotebook(kept?.text ?? '', 'kept.md').notebook?.farm.weather.file).toBe('gauge.csv');
  }, 90_000);
});
