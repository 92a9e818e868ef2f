/** Cells as the page shows them: every kind, from the text to its element. */
import { LitElement } from 'lit';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../src/app/styles.css';
import { startEngine } from '../../src/app/engine.ts';
import { EXAMPLES } from './examples.ts';
import '../../src/elements/page/below.ts';
import '../../src/elements/page/wk-page.ts';
import type { WkPage } from '../../src/elements/page/wk-page.ts';
import { CELL_KINDS, CELL_OPTIONS, type CellKind } from '../../src/notebook/cells.ts';
import { formatQuantity } from '../../src/units/format.ts';
import { type Engine, type OpenNotebook, openNotebook } from '../openNotebook.ts';
import { faults } from './look.ts';

const SOON = { timeout: 20_000 };
const HILL = EXAMPLES.find(({ name }) => name === 'hill-farm-choice')?.text ?? '';
/** The front matter of a shipped notebook, to stand over cells of our own. */
const FRONT = HILL.slice(0, HILL.indexOf('\n---\n', 4));
const DIARY = `diary:
  - { date: 2025-12-24, kind: temperature, temperatureC: 41.5, atDepthM: 0.25, note: by the gate }
  - { date: 2025-12-01, kind: load, material: barleyStraw, tonnes: 1.2345, moistureFraction: 0.145 }
  - { date: 2026-01-10, kind: depth, depthM: 0.455, scenario: Straw bed }
  - { date: 2026-01-11, kind: note, note: the trough froze, scenario: Paddock }
  - { date: 2026-01-12, kind: moisture, moistureFraction: 0.631 }
  - { date: 2026-01-13, kind: head, head: 15 }`;

let engine: Engine;
let open: OpenNotebook | undefined;
beforeAll(() => {
  engine = startEngine();
});
afterEach(() => {
  open?.close();
  document.body.replaceChildren();
});

const fence = (kind: string, options = '') =>
  `\`\`\`${kind}\n${options === '' ? '' : `${options}\n`}\`\`\`\n`;

/** The page of a notebook whose text holds just these cells. */
async function shown(cells: string, front = FRONT, width = 1280): Promise<WkPage> {
  await page.viewport(width, 900);
  open = openNotebook(`${front}\n---\n\n${cells}`, 'cells.md', engine);
  const element = document.createElement('wk-page');
  element.open = open;
  document.body.append(element);
  await expect.element(page.getByRole('heading', { level: 1 }), SOON).toBeVisible();
  return element;
}

const text = (root: ParentNode | null | undefined) => (root?.textContent ?? '').replace(/\s+/gu, ' ').trim();
const inText = (element: WkPage) => element.shadowRoot?.querySelector('wk-notebook')?.shadowRoot;
const cellOf = (element: WkPage, tag: string) => inText(element)?.querySelector<LitElement>(`.cell ${tag}`);
describe('every kind', () => {
  /** What a kind cannot do without. */
  const options = (kind: CellKind) =>
    CELL_OPTIONS[kind].safeParse({}).success
      ? kind === 'cards'
        ? 'measures: [netCost]'
        : ''
      : `measure: netCost${kind === 'sweep' || kind === 'flip' ? '\nover: rainFactor\nsteps: 3' : ''}`;

  it('has an element that knows what it is given', async () => {
    const element = await shown(
      CELL_KINDS.map((kind) => fence(kind, options(kind))).join('\n'),
      FRONT.replace('count: 10000', 'count: 50'),
    );
    expect(open?.problems.value).toEqual([]);
    await expect.poll(() => inText(element)?.querySelectorAll('.cell').length, SOON).toBe(CELL_KINDS.length);
    const elements = [...(inText(element)?.querySelectorAll<LitElement>('.cell > *') ?? [])];
    expect(elements).toHaveLength(CELL_KINDS.length);
    customElements.define('wk-bare', class extends LitElement {});
    const bare = document.createElement('wk-bare') as LitElement;
    document.body.append(bare);
    await bare.updateComplete;
    for (const [k, cell] of elements.entries()) {
      cell.scrollIntoView();
      await expect
        .poll(() => cell.shadowRoot?.childElementCount, { ...SOON, message: CELL_KINDS[k] })
        .toBeGreaterThan(0);
      // A property the element does not declare would stand on it unseen.
      const unknown = Object.keys(cell).filter((name) => !name.startsWith('_') && !Object.hasOwn(bare, name));
      expect(unknown, CELL_KINDS[k]).toEqual([]);
    }
  });
});

describe('a mistyped kind', () => {
  it('is told where it stands, and the figures around it stay', async () => {
    const element = await shown(`Words.\n\n${fence('sweeep', 'over: rainFactor')}\n${fence('sources')}`);
    await expect
      .poll(() => text(inText(element)?.querySelector('wk-problems')?.shadowRoot), SOON)
      .toMatch(/Line \d+: you wrote `sweeep`: did you mean `sweep`\?/);
    expect(cellOf(element, 'wk-sources')).toBeTruthy();
  });
});

describe('cards in the text', () => {
  const names = ['nutrientValue', 'nitrogenKeptKg', 'slurryM3', 'labourHours'] as const;

  it('hold exactly the results they name, in their order', async () => {
    const element = await shown(fence('cards', `measures: [${names.join(', ')}]\ncaption: What I ask.`));
    await expect.poll(() => cellOf(element, 'wk-cards'), SOON).toBeTruthy();
    const cards = [...(cellOf(element, 'wk-cards')?.shadowRoot?.querySelectorAll('.card') ?? [])];
    const results = open?.run.value?.scenarios ?? [];
    expect(cards).toHaveLength(results.length);
    const units = ['money', 'kg', 'm³', 'h'];
    for (const [k, card] of cards.entries()) {
      const rows = [...card.querySelectorAll('.row')];
      expect(rows.map((row) => text(row.querySelector('dt')))).toEqual([
        'Worth of nutrients kept',
        'Nitrogen kept',
        'Slurry',
        'Hours of work',
      ]);
      for (const [at, row] of rows.entries()) {
        const value = results[k].values[names[at]];
        const number = row.querySelector('.number');
        if (value == null) expect(number).toBeNull();
        else expect(number?.textContent).toBe(formatQuantity(value, units[at], { currency: 'EUR' }));
      }
    }
    expect(text(cellOf(element, 'wk-cards')?.shadowRoot)).toContain('What I ask.');
    expect(text(cellOf(element, 'wk-cards')?.shadowRoot?.querySelector('.names'))).toContain('EUR of 2024');
    await expect.poll(faults, SOON).toEqual([]);
  });

  it('of some scenarios keep the notebook’s colours and open the right working', async () => {
    const element = await shown(fence('cards', 'measures: [netCost]\nscenarios: [Straw bed]'));
    await expect.poll(() => cellOf(element, 'wk-cards'), SOON).toBeTruthy();
    const card = cellOf(element, 'wk-cards')?.shadowRoot?.querySelector<HTMLElement>('.card');
    const at = open?.run.value?.scenarios.findIndex(({ name }) => name === 'Straw bed') ?? -1;
    const above = element.shadowRoot
      ?.querySelector('wk-cards')
      ?.shadowRoot?.querySelectorAll<HTMLElement>('.card')[at];
    expect(at).toBeGreaterThan(0);
    expect(card?.style.getPropertyValue('--colour')).toBe(above?.style.getPropertyValue('--colour'));
    card?.querySelector<HTMLElement>('button.number')?.click();
    await expect
      .element(page.getByRole('dialog').getByRole('heading', { level: 2 }), SOON)
      .toHaveTextContent('Straw bed');
  });

  it('without options are those above the text, not a second time', async () => {
    const element = await shown(`${fence('cards')}\n${fence('sources')}`);
    await expect.poll(() => cellOf(element, 'wk-sources'), SOON).toBeTruthy();
    expect(inText(element)?.querySelector('wk-cards')).toBeNull();
    expect(inText(element)?.querySelectorAll('.cell')).toHaveLength(1);
  });
});

describe('the diary', () => {
  const rows = (element: WkPage) =>
    [...(cellOf(element, 'wk-diary')?.shadowRoot?.querySelectorAll('tbody tr') ?? [])].map((row) =>
      [...row.children].map(text),
    );

  it('stands by day as it was written', async () => {
    const element = await shown(fence('diary'), `${FRONT}\n${DIARY}`, 390);
    await expect
      .poll(() => rows(element), SOON)
      .toEqual([
        ['2025-12-01', 'Bedding put on', '1.2345 t of barley straw, 14.5 % moisture'],
        ['2025-12-24', 'Temperature in the bed', '41.5 °C, 0.25 m deep. By the gate'],
        ['2026-01-10', 'Depth of the bed Straw bed', '0.455 m'],
        ['2026-01-11', 'Note Paddock', 'The trough froze'],
        ['2026-01-12', 'Moisture of the bed', '63.1 %'],
        ['2026-01-13', 'Animals in the shed', '15 head'],
      ]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
    expect(await faults()).toEqual([]);
  });

  it('of a scenario leaves out what belongs to another', async () => {
    const element = await shown(fence('diary', 'scenario: Straw bed'), `${FRONT}\n${DIARY}`);
    await expect.poll(() => rows(element).length, SOON).toBe(5);
    expect(rows(element).flat().join()).not.toContain('trough');
  });

  it('without an entry says how one is written', async () => {
    const element = await shown(fence('diary'));
    await expect
      .poll(() => text(cellOf(element, 'wk-diary')?.shadowRoot), SOON)
      .toContain('Nothing is written down yet.');
  });
});

describe('the cheapest mix', () => {
  it('is sought with the keeper’s own numbers', async () => {
    const own = 'coefficients:\n  - { id: snowSafetyFactor, value: 1.6, because: a test }';
    const element = await shown(fence('mix'), `${FRONT}\n${own}`);
    await expect.poll(() => cellOf(element, 'wk-mix'), SOON).toBeTruthy();
    expect(open?.notebook.value?.overrides).toHaveLength(1);
    expect(Reflect.get(cellOf(element, 'wk-mix') as LitElement, 'overrides')).toBe(
      open?.notebook.value?.overrides,
    );
  });
});

describe('the draws a notebook asks for', () => {
  it('are those of every cell that draws', async () => {
    const front = FRONT.replace('count: 10000', 'count: 440');
    expect(front).toContain('count: 440');
    const element = await shown(
      // Of a result the page itself does not keep, so that the cell draws for itself.
      [
        fence('draws', 'measure: excretaM3'),
        fence('rank', 'measure: netCost'),
        fence('bed'),
        fence('cashflow'),
      ].join('\n'),
      front,
    );
    expect(open?.problems.value).toEqual([]);
    const said = (tag: string) => {
      const cell = cellOf(element, tag);
      cell?.scrollIntoView();
      return text(cell?.shadowRoot?.querySelector('wk-figure')?.shadowRoot);
    };
    await expect.poll(() => said('wk-draws'), SOON).toContain('440 draws');
    await expect.poll(() => said('wk-bed'), SOON).toContain('8 of 10 of 440 draws');
    await expect.poll(() => said('wk-cashflow'), SOON).toContain('8 of 10 of 440 draws');
    const rank = cellOf(element, 'wk-rank');
    expect(Reflect.get(rank as LitElement, 'count')).toBe(440);
  });
});
