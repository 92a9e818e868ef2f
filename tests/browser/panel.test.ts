import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import { startEngine } from '../../src/app/engine.ts';
import { FEW_DRAWS } from './examples.ts';
import '../../src/elements/page/wk-page.ts';
import type { WkPage } from '../../src/elements/page/wk-page.ts';
import { type Engine, type OpenNotebook, openNotebook } from '../openNotebook.ts';
import { faults } from './look.ts';

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

async function show(width = 1280, height = 800, change = (text: string) => text): Promise<WkPage> {
  await page.viewport(width, height);
  const example = FEW_DRAWS.find(({ name }) => name === 'hill-farm-choice');
  if (!example) throw new Error('missing example');
  open = openNotebook(change(example.text), example.file, engine);
  const element = document.createElement('wk-page');
  element.open = open;
  document.body.append(element);
  await expect.element(page.getByRole('heading', { level: 1 }), SOON).toBeVisible();
  return element;
}

const dialog = () => page.getByRole('dialog');
const text = () => open?.text.value ?? '';
const steps = () => open?.history.value.past.length;

async function openPanel(name: string) {
  await page.getByRole('group', { name: 'Change inputs' }).getByRole('button', { name }).click();
  await expect.element(dialog().getByRole('heading', { level: 1 }), SOON).toHaveTextContent(name);
}

const summary = (words: string) => {
  const inside = [...(panel().shadowRoot?.querySelectorAll('summary') ?? [])];
  const found = inside.find((each) => each.textContent?.trim().toLowerCase().startsWith(words.toLowerCase()));
  return found;
};
const panel = () => document.querySelector('wk-page')?.shadowRoot?.querySelector('wk-panel') as HTMLElement;

async function fold(words: string) {
  await expect.poll(() => summary(words), SOON).toBeTruthy();
  summary(words)?.click();
  await expect.poll(() => summary(words)?.parentElement?.querySelector('wk-field, .row'), SOON).toBeTruthy();
}

async function type(label: RegExp, value: string) {
  const field = dialog().getByLabelText(label).first();
  await field.fill(value);
  await userEvent.keyboard('{Enter}');
}

describe('the panel of inputs', () => {
  it('leaves what is being typed alone while figures come in', async () => {
    await show();
    await openPanel('The farm');
    await userEvent.fill(dialog().getByLabelText('Find an input'), 'head');
    const head = dialog().getByRole('textbox', { name: /^Head/ }).first();
    await expect.element(head, SOON).toBeVisible();
    await userEvent.clear(head);
    await userEvent.type(head, '3');
    const shown = [...(panel().shadowRoot?.querySelectorAll('wk-field') ?? [])];
    expect(shown.length).toBeGreaterThan(0);
    // A new reading of the notebook hands every field over anew, its value as it stands.
    for (const field of shown) field.field = field.field && { ...field.field };
    await Promise.all(shown.map((field) => field.updateComplete));
    await expect.element(head).toHaveValue('3');
    await userEvent.type(head, '0{Enter}');
    await expect.poll(() => open?.run.value?.scenarios[0].values.headCount, SOON).toBe(31);
  });

  it('changes a herd in place, one step of undo, and figures follow', async () => {
    await show();
    const before = text();
    const kept = () => open?.run.value?.scenarios[0].values.headCount;
    expect(kept()).toBe(17);
    await openPanel('The farm');
    await fold('herd');
    await fold('cows');
    await type(/^Head/, '24');
    await expect.poll(kept, SOON).toBe(25);
    expect(steps()).toBe(1);
    expect(open?.history.value.now.what).toMatch(/head to 24 head$/);
    const changed = text()
      .split('\n')
      .filter((line, k) => line !== before.split('\n')[k]);
    expect(changed).toHaveLength(1);
    await dialog().getByRole('button', { name: 'Undo' }).click();
    expect(text()).toBe(before);
    await expect.poll(kept, SOON).toBe(17);
  });

  it('asks about what the tables have not seen, refuses what cannot be, and keeps what is meant', async () => {
    await show();
    await openPanel('The farm');
    await fold('feed');
    await fold('haylage');
    const before = text();
    await type(/^Crude protein/, '30');
    await expect.element(dialog().getByText(/30 % is outside what the tables have seen/)).toBeVisible();
    expect(text()).toBe(before);
    await dialog().getByRole('button', { name: 'Keep it' }).click();
    expect(text()).toContain('crudeProteinFraction: 0.3');
    await type(/^Crude protein/, '12 %');
    await expect.poll(text).toContain('crudeProteinFraction: 0.12');
    const sound = text();
    await type(/^Crude protein/, '130');
    await expect.element(dialog().getByText(/cannot be 130 %/)).toBeVisible();
    expect(text()).toBe(sound);
    await dialog().getByRole('button', { name: 'Put it back' }).click();
    await expect
      .element(
        dialog()
          .getByLabelText(/^Crude protein/)
          .first(),
      )
      .toHaveValue('12');
    await type(/^Share of dry matter/, '50');
    await expect.element(dialog().getByText(/^Together 100 %/)).toBeVisible();
  });

  it('adds, copies and takes out a group', async () => {
    await show();
    const before = text();
    await openPanel('The farm');
    await fold('herd');
    await dialog().getByRole('button', { name: 'Add to groups of the herd' }).click();
    await expect.poll(() => open?.notebook.value?.farm.herd.length, SOON).toBe(3);
    await dialog().getByRole('button', { name: 'Copy group 3' }).click();
    await expect.poll(() => open?.notebook.value?.farm.herd.length, SOON).toBe(4);
    await dialog().getByRole('button', { name: 'Take group 3, copy out' }).click();
    await dialog().getByRole('button', { name: 'Take group 3 out' }).click();
    await expect.poll(text).toBe(before);
  });

  it('marks in a scenario what differs from the farm, and sets it back', async () => {
    await show();
    const before = text();
    await openPanel('Slats');
    // A row is found by what it is called, too.
    await dialog().getByLabelText('Find an input').fill('cows head');
    await expect.element(dialog().getByLabelText(/^Head/).first(), SOON).toBeVisible();
    await dialog().getByLabelText('Find an input').fill('ground for manure');
    await type(/^Ground for manure/, '44');
    await expect.element(dialog().getByText('1 differs'), SOON).toBeVisible();
    await expect
      .poll(() => open?.notebook.value?.scenarios.map((s) => s.farm.land.receivingHa), SOON)
      .toEqual([expect.any(Number), 44, expect.any(Number)]);
    await dialog().getByRole('button', { name: 'As the farm' }).click();
    await expect.poll(text).toBe(before);
  });

  it('works by keyboard alone and gives the focus back', async () => {
    await show();
    const button = page
      .getByRole('group', { name: 'Change inputs' })
      .getByRole('button', { name: 'The farm' });
    (button.element() as HTMLElement).focus();
    await userEvent.keyboard('{Enter}');
    await expect.element(dialog().getByLabelText('Find an input'), SOON).toBeVisible();
    (dialog().getByLabelText('Find an input').element() as HTMLElement).focus();
    await userEvent.keyboard('worth of an own');
    await expect.element(dialog().getByLabelText(/^Worth of an own hour/)).toBeVisible();
    for (let k = 0; k < 4; k++) {
      await userEvent.keyboard('{Tab}');
      const field = panel().shadowRoot?.activeElement?.shadowRoot?.activeElement;
      if (field instanceof HTMLInputElement && field.id === 'input') break;
    }
    await userEvent.keyboard('{Control>}a{/Control}19{Enter}');
    await expect.poll(() => open?.notebook.value?.farm.money.labourPerHour, SOON).toBe(19);
    await userEvent.keyboard('{Escape}');
    await expect
      .poll(() => (button.element().getRootNode() as ShadowRoot).activeElement)
      .toBe(button.element());
  });

  it('says so where the text has a fault, and changes nothing', async () => {
    await show();
    await openPanel('The farm');
    open?.edit(text().replace('sandyLoam', 'sandyLoom'), 'a slip');
    await expect.element(dialog().getByRole('alert'), SOON).toHaveTextContent('has a fault');
  });

  it('takes US units where they are on', async () => {
    await show(1280, 800, (source) => source.replace('units: metric', 'units: us'));
    await openPanel('Straw bed');
    await dialog().getByLabelText('Find an input').fill('shed length');
    await type(/^Shed length/, '100');
    await expect.poll(() => open?.notebook.value?.scenarios[2].shed.lengthM, SOON).toBeCloseTo(30.48, 4);
  });

  it.each([
    ['laptop', 1280, 800],
    ['phone', 390, 844],
  ])('is within a %s and clean of faults of access, every subject open', async (_, width, height) => {
    await show(width, height);
    for (const name of ['The farm', 'Straw bed']) {
      await openPanel(name);
      expect(await faults(panel())).toEqual([]);
      for (const each of [
        ...(panel().shadowRoot?.querySelectorAll<HTMLElement>('.inside > details:not([open]) > summary') ??
          []),
      ])
        each.click();
      await expect
        .poll(() => panel().shadowRoot?.querySelectorAll('wk-field').length, SOON)
        .toBeGreaterThan(20);
      await expect.poll(() => panel().shadowRoot?.querySelectorAll('.row').length, SOON).toBeGreaterThan(1);
      for (const each of [
        ...(panel().shadowRoot?.querySelectorAll<HTMLElement>('.row:not([open]) > summary') ?? []),
      ])
        each.click();
      await expect
        .poll(() => panel().shadowRoot?.querySelectorAll('.row wk-field').length, SOON)
        .toBeGreaterThan(2);
      const inside = panel().shadowRoot?.querySelector('.inside') as HTMLElement;
      expect(inside.scrollWidth).toBeLessThanOrEqual(inside.clientWidth);
      expect(await faults(panel())).toEqual([]);
      await dialog().getByRole('button', { name: 'Close' }).click();
    }
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });
});

describe('a working', () => {
  const trace = () => document.querySelector('wk-page')?.shadowRoot?.querySelector('wk-trace');
  const explained = async (element: WkPage, quantity: string, scenario = 0) => {
    element.shadowRoot
      ?.querySelector('wk-cards')
      ?.dispatchEvent(
        new CustomEvent('wk-explain', { detail: { scenario, quantity }, bubbles: true, composed: true }),
      );
    await expect.element(dialog(), SOON).toBeVisible();
  };
  const branch = (words: string) =>
    [...(trace()?.shadowRoot?.querySelectorAll('summary') ?? [])].find((each) =>
      each.textContent?.includes(words),
    );

  it('that ends in an input lets it be changed there, and follows', async () => {
    const element = await show();
    await explained(element, 'headCount');
    await expect.poll(() => branch('head, '), SOON).toBeTruthy();
    branch('head, ')?.click();
    const before = text();
    await expect
      .element(
        dialog()
          .getByText(/Of the farm/)
          .first(),
        SOON,
      )
      .toBeVisible();
    await type(/^Head/, '20');
    await expect.poll(() => open?.notebook.value?.farm.herd[0].head, SOON).toBe(20);
    await expect.poll(() => trace()?.shadowRoot?.querySelector('.big')?.textContent, SOON).toContain('21');
    open?.undo();
    expect(text()).toBe(before);
  });

  it('takes an own number in per cent, asks, refuses, and marks every figure that rests on it', async () => {
    const element = await show();
    const marks = () =>
      element.shadowRoot?.querySelector('wk-cards')?.shadowRoot?.querySelectorAll('.own').length;
    expect(marks()).toBe(0);
    await explained(element, 'nitrogenExcretedKg');
    const row = await findRow('crude protein, wrapped haylage');
    if (!(row.parentElement as HTMLDetailsElement).open) row.click();
    const replace = () => row.parentElement?.querySelector<HTMLButtonElement>(':scope > .more > button.link');
    await expect.poll(replace, SOON).toBeTruthy();
    replace()?.click();
    const number = dialog().getByLabelText(/^Your number/);
    await dialog().getByLabelText('Where it comes from').fill('sampled twice');
    await number.fill('15');
    await dialog().getByRole('button', { name: 'Use it' }).click();
    await expect.element(dialog().getByText(/for 15 % type 0.15/)).toBeVisible();
    expect(text()).not.toContain('sampled twice');
    await number.fill('30 %');
    await dialog().getByRole('button', { name: 'Use it' }).click();
    await expect.element(dialog().getByText(/outside what the tables have seen/)).toBeVisible();
    await number.fill('12 %');
    await dialog().getByRole('button', { name: 'Keep it' }).click();
    await expect.poll(text, SOON).toContain('value: 0.12');
    await expect.poll(marks, SOON).toBeGreaterThan(3);
    expect(open?.problems.value).toEqual([]);
  });

  /** Opens branches until one of that name is found. */
  async function findRow(words: string): Promise<HTMLElement> {
    for (let round = 0; round < 8; round++) {
      const found = branch(words);
      if (found) return found;
      for (const each of trace()?.shadowRoot?.querySelectorAll<HTMLElement>(
        'details:not([open]) > summary',
      ) ?? [])
        each.click();
      await new Promise((resume) => setTimeout(resume, 200));
    }
    throw new Error(`no branch ${words}`);
  }
});
