/** Earlier days of a notebook: listed, compared with now, brought back; by keyboard alone. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import '../../src/app/shell.ts';
import type { WkShell } from '../../src/app/shell.ts';
import { setInput } from '../../src/notebook/write.ts';
import { show } from '../../src/plots/reading.ts';
import { type Base, memoryBase } from '../../src/store/base.ts';
import { startHistory } from '../../src/store/history.ts';
import { openShelf } from '../../src/store/shelf.ts';
import { FEW_DRAWS } from './examples.ts';
import { colours, faults, LOOKS } from './look.ts';

const SOON = { timeout: 20_000 };
const DAY = 86_400_000;
const example = FEW_DRAWS.find(({ name }) => name === 'hill-farm-choice') as (typeof FEW_DRAWS)[number];
/** As it stood on three days, the last of them yesterday. */
const TEXTS = [
  example.text,
  setInput(example.text, ['farm', 'herd', 0, 'head'], 24),
  `${setInput(example.text, ['farm', 'herd', 0, 'head'], 24)}\nA word more.\n`,
];
let base: Base;
let shell: WkShell;

beforeEach(() => sessionStorage.clear());
afterEach(async () => {
  await colours('light');
  document.body.replaceChildren();
  history.replaceState(null, '', '#');
});

async function opened(texts: readonly string[] = TEXTS): Promise<void> {
  base = memoryBase();
  for (const [k, text] of texts.entries()) {
    const shelf = openShelf({ base, now: () => Date.now() - (texts.length - k) * DAY });
    const there = await shelf.get('farm');
    await shelf.put(
      'farm',
      { title: 'My farm', history: startHistory(text) },
      { revision: there?.revision ?? 0, from: [] },
    );
  }
  history.replaceState(null, '', '#kept=farm');
  shell = document.createElement('wk-shell');
  shell.base = () => base;
  document.body.append(shell);
  await expect.poll(() => shell.open?.draws.value, SOON).toBeTruthy();
}
const dialog = () => page.getByRole('dialog', { name: 'Earlier days' });
const text = () => shell.open?.text.value;
/** What the page shows for the first scenario now. */
function shownCost(): string {
  const run = shell.open?.run.value;
  if (!run) return 'no figures';
  const { currency, year } = run;
  return show(run.scenarios[0].values.netCost, 'money', { currency, year, system: 'metric' }).text;
}

describe('earlier days', () => {
  it('are compared with now and brought back as one step, by keyboard alone', async () => {
    await page.viewport(1280, 844);
    await opened();
    const button = page.getByRole('button', { name: 'Earlier days' });
    (button.element() as HTMLElement).focus();
    await userEvent.keyboard('{Enter}');
    await expect.element(dialog(), SOON).toBeVisible();
    const days = () => dialog().getByRole('listitem').getByRole('button').elements();
    // Yesterday is what is on show, and nothing was changed since.
    expect(days()).toHaveLength(2);
    await userEvent.keyboard('{Tab}{Tab}{Tab}{Enter}');
    await expect
      .element(dialog().getByRole('heading', { name: /^What has become different/ }), SOON)
      .toBeVisible();
    await expect.element(dialog().getByText(/cows in calf: .*16.*, now 24/)).toBeVisible();
    await expect.element(dialog().getByText('“A word more.” was added')).toBeVisible();
    // The figures of that day are those the notebook has once it is brought back.
    const row = dialog().getByRole('row', { name: /^Net cost a year Paddock/ });
    await expect.element(row, SOON).toBeVisible();
    const [before, after] = [...row.element().querySelectorAll('td')].map((td) =>
      td.textContent?.replace(td.querySelector('small')?.textContent ?? '', '').trim(),
    );
    expect(before).not.toBe(after);
    await expect.poll(() => row.element().querySelector('td small')?.textContent, SOON).toMatch(/\d/);
    expect(after).toBe(shownCost());
    const now = shell.open?.results.value[0].values.netCost;
    const steps = shell.open?.history.value.past.length ?? 0;
    const back = dialog().getByRole('button', { name: /^Bring .* back$/ });
    for (let k = 0; k < 8 && !back.element().matches(':focus'); k++) await userEvent.keyboard('{Tab}');
    await userEvent.keyboard('{Enter}');
    await expect.poll(text, SOON).toBe(TEXTS[0]);
    expect(shell.open?.history.value.past.length).toBe(steps + 1);
    expect(shell.open?.history.value.now.what).toMatch(/^the notebook of .* brought back$/);
    await expect.element(page.getByText(/^The notebook stands as on/), SOON).toBeVisible();
    await expect.poll(() => shell.open?.results.value[0].values.netCost, SOON).not.toBe(now);
    expect(before).toBe(shownCost());
    shell.open?.undo();
    expect(text()).toBe(TEXTS[2]);
  });

  it('say so where none is kept, or where nothing moved', async () => {
    await opened([example.text]);
    await page.getByRole('button', { name: 'Earlier days' }).click();
    await expect.element(dialog().getByText(/^None is kept yet/), SOON).toBeVisible();
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => dialog().elements().length, SOON).toBe(0);
    // A change of today: yesterday is a day of its own from now on.
    shell.open?.edit(example.text.replace(' # the spruce belt', ''), 'typing');
    await page.getByRole('button', { name: 'Earlier days' }).click();
    await dialog().getByRole('listitem').getByRole('button').click();
    await expect.element(dialog().getByText(/^Only remarks/), SOON).toBeVisible();
    await expect.element(dialog().getByText(/the same as now in every scenario/), SOON).toBeVisible();
  });

  it('can be brought back though they cannot be read', async () => {
    const broken = example.text.replace('texture: sandyLoam', 'texture: sand and loam');
    await opened([broken, example.text]);
    await page.getByRole('button', { name: 'Earlier days' }).click();
    await dialog().getByRole('listitem').getByRole('button').click();
    await expect.element(dialog().getByText(/^There are no figures of that day/), SOON).toBeVisible();
    await dialog()
      .getByRole('button', { name: /^Bring/ })
      .click();
    await expect.poll(text, SOON).toBe(broken);
  });

  it('are compared with each other, the later one as what has become of the earlier', async () => {
    await opened();
    await page.getByRole('button', { name: 'Earlier days' }).click();
    await expect
      .poll(() => dialog().getByRole('listitem').getByRole('button').elements().length, SOON)
      .toBe(2);
    const [newer, older] = dialog().getByRole('listitem').getByRole('button').elements();
    (newer as HTMLElement).click();
    const against = dialog().getByRole('combobox', { name: 'Held against' });
    await expect.element(against, SOON).toBeVisible();
    // The day picked is no choice: a day is not held against itself.
    expect([...(against.element() as HTMLSelectElement).options].map(({ text: words }) => words)).toEqual([
      'the notebook as it is now',
      older.firstChild?.textContent?.trim() ||
        older.textContent?.replace(older.querySelector('small')?.textContent ?? '', '').trim(),
    ]);
    await userEvent.selectOptions(against, (against.element() as HTMLSelectElement).options[1].value);
    await expect
      .element(dialog().getByRole('heading', { name: /^What has become different between .* and / }), SOON)
      .toBeVisible();
    // From the older to the newer day, though the newer one was picked first; what came today is not among it.
    await expect.element(dialog().getByText(/cows in calf: .*16.*, now 24/), SOON).toBeVisible();
    expect(dialog().getByText('“A word more.” was added').elements()).toHaveLength(0);
    const row = dialog().getByRole('row', { name: /^Net cost a year Paddock/ });
    await expect.element(row, SOON).toBeVisible();
    const shown = [...row.element().querySelectorAll('td')].map(
      (td) => td.firstChild?.nextSibling?.textContent ?? td.textContent,
    );
    expect(shown[0]).not.toBe(shown[1]);
    await userEvent.selectOptions(dialog().getByRole('combobox', { name: 'Held against' }), '');
    await expect
      .element(dialog().getByRole('heading', { name: /^What has become different since/ }), SOON)
      .toBeVisible();
    await expect.element(dialog().getByText('“A word more.” was added'), SOON).toBeVisible();
  });

  it('are reached from the list of kept notebooks, and leave the address of the notebook', async () => {
    await opened();
    location.hash = '#';
    const link = page.getByRole('link', { name: 'Earlier days of My farm' });
    await expect.element(link, SOON).toBeVisible();
    await link.click();
    await expect.element(dialog(), SOON).toBeVisible();
    expect(dialog().getByRole('listitem').elements()).toHaveLength(2);
    await expect.poll(() => location.hash, SOON).toBe('#kept=farm');
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => dialog().elements().length, SOON).toBe(0);
    expect(text()).toBe(TEXTS[2]);
  });

  it.each(LOOKS)('have no accessibility violation and fit at %i px in the %s', async (width, scheme) => {
    await page.viewport(width, 844);
    await colours(scheme);
    await opened();
    await page.getByRole('button', { name: 'Earlier days' }).click();
    await dialog().getByRole('listitem').getByRole('button').last().click();
    await expect.element(dialog().getByRole('row', { name: /^Net cost a year Paddock/ }), SOON).toBeVisible();
    expect(await faults()).toEqual([]);
    const box = dialog().element();
    expect(box.scrollWidth).toBeLessThanOrEqual(box.clientWidth);
  });
});
