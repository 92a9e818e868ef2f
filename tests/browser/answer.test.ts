// Above the cards which way, and below them the limits in order of use, on a phone and on a desk.
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../src/app/styles.css';
import { startEngine } from '../../src/app/engine.ts';
import { FEW_DRAWS } from './examples.ts';
import '../../src/elements/page/wk-page.ts';
import type { WkPage } from '../../src/elements/page/wk-page.ts';
import { groupOf } from '../../src/model/checks/titles.ts';
import { formatQuantity } from '../../src/units/format.ts';
import { type Engine, type OpenNotebook, openNotebook } from '../openNotebook.ts';
import { faults } from './look.ts';

/** The machine may be busy with other tests. */
const SOON = { timeout: 30_000 };
const WIDTHS = [
  [390, 844],
  [1280, 800],
] as const;
let engine: Engine;
let open: OpenNotebook | undefined;

beforeAll(() => {
  engine = startEngine();
});
afterEach(() => {
  open?.close();
  document.body.replaceChildren();
});

async function show(name: string, width: number, height: number): Promise<WkPage> {
  await page.viewport(width, height);
  const example = FEW_DRAWS.find((each) => each.name === name);
  if (!example) throw new Error(`missing example: ${name}`);
  open = openNotebook(example.text, example.file, engine);
  const element = document.createElement('wk-page');
  element.open = open;
  document.body.append(element);
  await expect.element(page.getByRole('heading', { level: 1 }), SOON).toBeVisible();
  return element;
}

const answer = (element: WkPage) => element.shadowRoot?.querySelector('wk-answer')?.shadowRoot;
const text = (element: WkPage) =>
  answer(element)?.querySelector('section')?.textContent?.replace(/\s+/g, ' ') ?? '';
const checks = (element: WkPage) => {
  const inText = element.shadowRoot?.querySelector('wk-notebook')?.shadowRoot?.querySelector('wk-checks');
  return (inText ?? element.shadowRoot?.querySelector('wk-checks'))?.shadowRoot;
};

describe.each(WIDTHS)('at %i by %i', (width, height) => {
  it('says which way before any scrolling, at once, and completes it', async () => {
    const element = await show('atlantic-rain-and-herd', width, height);
    await expect.poll(() => text(element), SOON).toMatch(/“Slats” costs least net a year/);
    await expect.poll(() => text(element), SOON).toContain('of 100 draws');
    await expect.poll(() => text(element), SOON).toMatch(/would turn it is|puts another first/);
    await expect.poll(() => text(element), SOON).toContain('Most doubtful is');
    expect(text(element)).not.toContain('being looked for');
    // All of the paragraph is in sight: above the fold, and on a phone above the strip that stands on it.
    expect(scrollY).toBe(0);
    const box = answer(element)?.querySelector('section')?.getBoundingClientRect() as DOMRect;
    const strip = element.shadowRoot?.querySelector('wk-inputs')?.getBoundingClientRect() as DOMRect;
    expect(box.top).toBeGreaterThanOrEqual(0);
    expect(box.bottom).toBeLessThanOrEqual(Math.min(height, strip.top));
    expect(box.right).toBeLessThanOrEqual(width);
    // What it says of the first is what its card says.
    const { values } = open?.results.value[1] ?? {};
    const cost = formatQuantity(values?.netCost, 'money', { currency: 'EUR', plain: true });
    expect(text(element)).toContain(cost);
  });

  it('says nothing found for another herd while an input is turned', async () => {
    const element = await show('atlantic-rain-and-herd', width, height);
    await expect.poll(() => text(element), SOON).toMatch(/would turn it is/);
    open?.preview('head', 12);
    await expect.poll(() => text(element), SOON).not.toMatch(/would turn it is|Most doubtful/);
  });

  it('shows stops and what can be changed, folds the rest by scenario, and counts only the first two on the cards', async () => {
    const element = await show('hill-farm-choice', width, height);
    await expect.poll(() => checks(element)?.querySelectorAll('.stop').length ?? 0, SOON).toBeGreaterThan(0);
    await expect.poll(() => open?.draws.value?.count ?? 0, SOON).toBeGreaterThan(300);
    await element.updateComplete;
    const shown = checks(element) as ShadowRoot;
    const order = [...shown.querySelectorAll('li.stop, li.change')].map(({ className }) => className.trim());
    expect(order.lastIndexOf('stop')).toBeLessThan(order.indexOf('change'));
    for (const details of shown.querySelectorAll('details')) expect(details.open).toBe(false);
    const counted = open?.results.value.map(({ checks: all }) =>
      ['stop', 'change'].map((group) => all.filter((check) => groupOf(check) === group).length),
    );
    const cards = element.shadowRoot?.querySelector('wk-cards')?.shadowRoot;
    const said = [...(cards?.querySelectorAll('.card section:last-of-type dd button') ?? [])].map((button) =>
      button.textContent?.trim(),
    );
    expect(said).toEqual(
      counted?.map(([stops, changes]) =>
        [
          stops > 0 ? `${stops} ${stops === 1 ? 'stop' : 'stops'}` : '',
          changes > 0 ? `${changes} to change` : '',
        ]
          .filter((part) => part !== '')
          .join(', '),
      ),
    );
    // Every limit in one format, beside its value.
    for (const numbers of shown.querySelectorAll('li.stop .numbers'))
      expect(numbers.textContent).toMatch(/at (least|most) /);
    expect(shown.textContent).toContain('Space is held against common practice');
  });

  it('is clean for readers by ear and by key', async () => {
    const element = await show('hill-farm-choice', width, height);
    await expect.poll(() => text(element), SOON).toContain('of 100 draws');
    await expect
      .poll(() => checks(element)?.querySelectorAll('.change').length ?? 0, SOON)
      .toBeGreaterThan(0);
    for (const details of checks(element)?.querySelectorAll('details') ?? []) details.open = true;
    expect(await faults(element)).toEqual([]);
  });
});
