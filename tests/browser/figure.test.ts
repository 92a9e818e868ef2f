import { afterEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../src/app/styles.css';
import '../../src/elements/parts/wk-figure.ts';
import '../../src/elements/cells/wk-ledger.ts';
import { compareFigure } from '../../src/plots/compare.ts';
import { ladderFigure } from '../../src/plots/ladder.ts';
import { ledgerFigure } from '../../src/plots/ledger.ts';
import { WEEK_SERIES, weekFigure } from '../../src/plots/weeks.ts';
import { evaluation, reading } from './fixtures/evaluation.ts';
import { faults } from './look.ts';

const { scenarios } = evaluation;
afterEach(() => document.body.replaceChildren());

async function shown(width: number, figure: ReturnType<typeof ledgerFigure>) {
  await page.viewport(width, 800);
  const element = document.createElement('wk-figure');
  element.figure = figure;
  document.body.append(element);
  await expect
    .poll(() => element.shadowRoot?.querySelector('.drawing svg'), { timeout: 15_000 })
    .toBeTruthy();
  return element.shadowRoot as ShadowRoot;
}

const FIGURES = {
  ledger: () => ledgerFigure(scenarios, 'nitrogen', reading),
  ladder: () => ladderFigure(scenarios, reading),
  compare: () => compareFigure(scenarios, 'netCost', reading),
  bed: () => weekFigure(scenarios, WEEK_SERIES.weekPackDepthM, reading),
  rain: () => weekFigure(scenarios, WEEK_SERIES.weekRainMm, reading),
};

describe('wk-figure', () => {
  it.each(
    Object.entries(FIGURES).flatMap(([name, figure]) =>
      [390, 1280].map((width) => [name, width, figure] as const),
    ),
  )('draws %s at %i px inside its column, with a name and a table', async (_, width, figure) => {
    const root = await shown(width, figure());
    const drawing = root.querySelector('[role=img]') as HTMLElement;
    expect(drawing.getAttribute('aria-label')).toBe(figure().finding);
    const svg = drawing.querySelector('svg') as SVGSVGElement;
    expect(svg.getBoundingClientRect().width).toBeLessThanOrEqual(width);
    for (const text of svg.querySelectorAll('text')) {
      const box = text.getBoundingClientRect();
      expect(box.left).toBeGreaterThanOrEqual(-1);
      expect(box.right).toBeLessThanOrEqual(width + 1);
    }
    root.querySelector('summary')?.click();
    await expect
      .poll(() => root.querySelectorAll('tbody tr').length, { timeout: 15_000 })
      .toBe(figure().table.rows.length);
  });

  it.each(Object.entries(FIGURES))(
    'says each mark of %s under pointer and keys, as its table has it',
    async (_, figure) => {
      const root = await shown(1280, figure());
      const drawing = root.querySelector('.drawing') as HTMLElement;
      const said = () => root.querySelector('.reading')?.textContent ?? '';
      const cells = figure()
        .table.rows.flat()
        .map((cell) => /-?[\d\u202F.]+/.exec(cell.replace('\u2212', '-'))?.[0]);
      drawing.focus();
      await expect.poll(said).toBe('The arrow keys read each mark.');
      const key = async (name: string) => {
        drawing.dispatchEvent(new KeyboardEvent('keydown', { key: name, bubbles: true }));
        await (root.host as HTMLElement & { updateComplete: Promise<unknown> }).updateComplete;
        return said();
      };
      const read = [await key('Home')];
      for (
        let next = await key('ArrowRight');
        next !== read.at(-1) && read.length < 200;
        next = await key('ArrowRight')
      )
        read.push(next);
      expect(read.length).toBeGreaterThanOrEqual(scenarios.length - 1);
      for (const text of read) {
        const amount = text.split(';')[0].split(': ').at(-1) ?? '';
        expect(cells, text).toContain(/-?[\d\u202F.]+/.exec(amount.replace('\u2212', '-'))?.[0]);
      }
      expect(await key('Escape')).toBe('');
      // The same under the pointer: over the mark, and beside it within a finger's width.
      await key('Home');
      const mark = drawing.querySelector('.read') as Element;
      const box = mark.getBoundingClientRect();
      drawing.dispatchEvent(new PointerEvent('pointerleave'));
      const point = {
        clientX: (box.left + box.right) / 2,
        clientY: (box.top + box.bottom) / 2,
        bubbles: true,
      };
      mark.dispatchEvent(new PointerEvent('pointermove', point));
      await expect.poll(said).toBe(read[0]);
      drawing.dispatchEvent(new PointerEvent('pointerleave'));
      await expect.poll(said).toBe('');
      expect(await faults(root.host)).toEqual([]);
    },
  );

  it('draws again when its figure changes', async () => {
    const root = await shown(800, FIGURES.compare());
    const first = root.querySelector('.drawing svg');
    const before = first?.innerHTML;
    const hours = compareFigure(scenarios, 'labourHours', reading);
    (root.host as HTMLElement & { figure: unknown }).figure = hours;
    const drawing = () => root.querySelector('[role=img]');
    await expect.poll(() => drawing()?.getAttribute('aria-label'), { timeout: 15_000 }).toBe(hours.finding);
    await expect.poll(() => first?.innerHTML, { timeout: 15_000 }).not.toBe(before);
    // In the same drawing, and nothing of the one before is left in it.
    expect(root.querySelector('.drawing svg')).toBe(first);
    const anew = (await shown(800, hours)).querySelector('.drawing svg') as Element;
    const bare = (svg: Element | null) => svg?.outerHTML.replace(/\bid="[^"]*"|url\(#[^)]*\)/g, '');
    expect(bare(first)).toBe(bare(anew));
    // The hours of the fixture, in its drawing.
    for (const amount of ['285', '190', '247'])
      expect(root.querySelector('.drawing svg')?.textContent).toContain(amount);
  });

  it('keeps the colour of what is kept with its scenario, and a pattern for every loss', async () => {
    const root = await shown(800, FIGURES.ledger());
    const fills = [...root.querySelectorAll('.drawing g[aria-label=bar] rect')].map((rect) =>
      rect.getAttribute('fill'),
    );
    expect(fills.filter((fill) => fill?.startsWith('#'))).toHaveLength(3);
    const patterns = fills.filter((fill) => fill?.startsWith('url(#'));
    // Five ways to be lost, and what bedding brought, in each of three bars.
    expect(new Set(patterns).size).toBe(6);
    expect(patterns).toHaveLength(18);
  });
});

describe('wk-ledger', () => {
  it('shows the element the reader chooses', async () => {
    await page.viewport(800, 800);
    const element = document.createElement('wk-ledger');
    element.results = scenarios;
    element.reading = reading;
    document.body.append(element);
    await page.getByRole('radio', { name: 'Potassium' }).click();
    await expect.element(page.getByText(/“Slats” keeps 542 kg of potassium/).first()).toBeVisible();
  });
});
