// Cards: side by side on a desk, one at a time on a phone, and how far each stands from the one chosen as base.
import { afterEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../src/app/styles.css';
import '../../src/elements/cells/wk-cards.ts';
import type { WkCards } from '../../src/elements/cells/wk-cards.ts';
import { evaluation, reading } from './fixtures/evaluation.ts';
import { faults } from './look.ts';

const { scenarios } = evaluation;
const names = scenarios.map(({ name }) => name);
afterEach(() => document.body.replaceChildren());

async function shown(width: number): Promise<ShadowRoot> {
  await page.viewport(width, 844);
  const element = document.createElement('wk-cards') as WkCards;
  element.results = scenarios;
  element.reading = reading;
  document.body.append(element);
  await element.updateComplete;
  return element.shadowRoot as ShadowRoot;
}

const cards = (root: ShadowRoot) => [...root.querySelectorAll<HTMLElement>('.card')];
const rowOf = (card: HTMLElement, label: string) =>
  [...card.querySelectorAll<HTMLElement>('.row')].find(
    (row) => row.querySelector('dt')?.textContent === label,
  );
const numberIn = (text: string) => Number(text.replace(/[^\d.]/g, ''));
const clean = async (root: ShadowRoot) => expect(await faults(root.host)).toEqual([]);

describe('on a desk', () => {
  it('tells the difference to the scenario that is chosen, as the numbers shown give it', async () => {
    const root = await shown(1280);
    expect(root.querySelector('.apart')).toBeNull();
    const select = root.querySelector('select') as HTMLSelectElement;
    for (const base of names) {
      select.value = base;
      select.dispatchEvent(new Event('change'));
      await (root.host as WkCards).updateComplete;
      const of = cards(root)[names.indexOf(base)];
      expect(of.querySelector('.apart')).toBeNull();
      for (const card of cards(root).filter((each) => each !== of))
        for (const label of ['Nitrogen kept', 'Net cost a year', 'To build']) {
          const [there, here] = [of, card].map((each) =>
            numberIn(rowOf(each, label)?.querySelector('.number')?.textContent ?? ''),
          );
          const said = rowOf(card, label)?.querySelector('.apart')?.textContent ?? '';
          expect(said.startsWith(here > there ? '+' : '\u2212'), `${label}: ${said}`).toBe(true);
          expect(numberIn(said), label).toBeCloseTo(Math.abs(here - there), 6);
        }
    }
    await clean(root);
  });
});

describe('on a phone', () => {
  it('shows one card at a time, against the base, and goes to another by its name', async () => {
    const root = await shown(390);
    const grid = root.querySelector('.grid') as HTMLElement;
    const inSight = () =>
      cards(root).flatMap((card, k) => {
        const { left, right } = card.getBoundingClientRect();
        return left > -2 && right < 392 ? [names[k]] : [];
      });
    expect(inSight()).toEqual([names[0]]);
    const tabs = [...root.querySelectorAll<HTMLButtonElement>('.tabs button')];
    expect(tabs.map((tab) => tab.textContent)).toEqual(names);
    tabs[1].click();
    await expect.poll(inSight, { timeout: 15_000 }).toEqual([names[1]]);
    expect(tabs[1].getAttribute('aria-pressed')).toBe('true');
    expect(rowOf(cards(root)[1], 'Nitrogen kept')?.querySelector('.apart')).not.toBeNull();
    expect(cards(root)[1].querySelector('header')?.textContent).toContain(`against “${names[0]}”`);
    // By swiping the name follows.
    grid.scrollTo({ left: 2 * grid.clientWidth, behavior: 'instant' });
    await expect.poll(() => tabs[2].getAttribute('aria-pressed'), { timeout: 15_000 }).toBe('true');
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
    await clean(root);
  });
});
