import ICAL from 'ical.js';
import { afterEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { dataFiles } from './dataFiles.ts';
import '../../src/app/styles.css';
import '../../src/elements/cells/wk-calendar.ts';
import '../../src/elements/cells/wk-plan.ts';
import '../../src/elements/cells/wk-section.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import { loadTables } from '../../src/tables/load.ts';
import { type Patch, resultFrom } from '../model/checks/shedCase.ts';
import { faults, PART } from './look.ts';

const { coefficients } = loadTables(dataFiles, CHOICE_OPTIONS).tables;
afterEach(() => document.body.replaceChildren());

async function shown<T extends 'wk-section' | 'wk-plan' | 'wk-calendar'>(
  tag: T,
  width: number,
  patch: Patch = {},
) {
  await page.viewport(width, 800);
  const element = document.createElement(tag);
  element.result = resultFrom(coefficients, patch);
  element.coefficients = coefficients;
  document.body.append(element);
  await element.updateComplete;
  return element;
}

const drawn = (element: Element): SVGSVGElement | null | undefined =>
  element.shadowRoot?.querySelector('wk-figure')?.shadowRoot?.querySelector('.drawing svg');

describe('drawings of the shed', () => {
  for (const tag of ['wk-section', 'wk-plan'] as const)
    for (const width of [390, 1280])
      it.each(['deep-bedded', 'slatted'] as const)(
        `${tag} keeps every number inside its column at ${width} px: %s`,
        async (system) => {
          const element = await shown(tag, width, { system, shed: { depthM: 9 } });
          await expect.poll(() => drawn(element)).toBeTruthy();
          for (const text of drawn(element)?.querySelectorAll('text') ?? []) {
            const box = text.getBoundingClientRect();
            expect(box.left, text.textContent ?? '').toBeGreaterThanOrEqual(-1);
            expect(box.right, text.textContent ?? '').toBeLessThanOrEqual(width + 1);
          }
        },
      );

  it('turns the weeks with the arrow keys and redraws the bed', async () => {
    const element = await shown('wk-section', 800);
    await expect.poll(() => drawn(element)).toBeTruthy();
    const slider = element.shadowRoot?.querySelector('input') as HTMLInputElement;
    expect(slider.value).toBe('26');
    const before = drawn(element)?.querySelector('[data-part=bed]')?.getAttribute('d');
    slider.focus();
    await userEvent.keyboard('{ArrowLeft}{ArrowLeft}');
    expect(element.week).toBe(24);
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toContain('week 24 of 27');
    await expect
      .poll(() => drawn(element)?.querySelector('[data-part=bed]')?.getAttribute('d'))
      .not.toBe(before);
    await userEvent.keyboard('{Home}');
    expect(element.week).toBe(1);
  });

  it('puts one picture of a slatted shed on paper, where nothing rises', async () => {
    const element = await shown('wk-section', 800, { system: 'slatted', shed: { depthM: 9 } });
    await expect.poll(() => drawn(element)?.querySelector('[data-part=tank]')).toBeTruthy();
    dispatchEvent(new Event('beforeprint'));
    expect(element.shadowRoot?.querySelectorAll('.multiples figure svg')).toHaveLength(1);
    dispatchEvent(new Event('afterprint'));
  });

  it('puts four weeks on paper', async () => {
    const element = await shown('wk-section', 800);
    dispatchEvent(new Event('beforeprint'));
    expect(element.shadowRoot?.querySelectorAll('.multiples figure svg')).toHaveLength(4);
    expect(
      [...(element.shadowRoot?.querySelectorAll('.multiples figcaption') ?? [])].map(
        (f) => f.textContent?.split(' (')[0],
      ),
    ).toEqual(['Week 1', 'Week 9', 'Week 17', 'Week 26']);
    dispatchEvent(new Event('afterprint'));
  });

  it('says why there is no drawing', async () => {
    const element = await shown('wk-section', 800, { shed: { depthM: 1.5, stanceDepthM: 0 } });
    await expect
      .poll(
        () =>
          element.shadowRoot?.querySelector('wk-figure')?.shadowRoot?.querySelector('.finding')?.textContent,
      )
      .toContain('shallower than an animal');
  });
});

describe('the season list', () => {
  it('shows every task and saves a calendar that another library reads', async () => {
    const element = await shown('wk-calendar', 800, { shed: { stanceDepthM: 0 } });
    const items = element.shadowRoot?.querySelectorAll('li') ?? [];
    expect(items.length).toBeGreaterThan(6);
    let saved: Blob | undefined;
    const make = URL.createObjectURL;
    URL.createObjectURL = (blob) => {
      saved = blob as Blob;
      return 'data:text/calendar,';
    };
    const stop = (event: Event) => event.preventDefault();
    addEventListener('click', stop);
    const click = HTMLAnchorElement.prototype.click;
    HTMLAnchorElement.prototype.click = () => {};
    element.shadowRoot?.querySelector('button')?.click();
    HTMLAnchorElement.prototype.click = click;
    removeEventListener('click', stop);
    URL.createObjectURL = make;
    const calendar = new ICAL.Component(ICAL.parse((await saved?.text()) ?? ''));
    expect(calendar.getAllSubcomponents('vevent')).toHaveLength(items.length);
  });
});

describe('access', () => {
  it('has no fault that axe finds', async () => {
    const section = await shown('wk-section', 800);
    await expect.poll(() => drawn(section)).toBeTruthy();
    await shown('wk-plan', 800);
    await shown('wk-calendar', 800);
    expect(await faults(document.body, PART)).toEqual([]);
  });
});
