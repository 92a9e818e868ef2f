import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/app/styles.css';
import { startExplorer } from '../../src/app/startExplorer.ts';
import { dataFiles } from './dataFiles.ts';
import '../../src/elements/cells/wk-draws.ts';
import '../../src/elements/cells/wk-flip.ts';
import type { WkFlip } from '../../src/elements/cells/wk-flip.ts';
import '../../src/elements/cells/wk-rain.ts';
import '../../src/elements/cells/wk-rank.ts';
import '../../src/elements/cells/wk-sweep.ts';
import type { WkSweep } from '../../src/elements/cells/wk-sweep.ts';
import '../../src/elements/page/wk-weather.ts';
import type { WkWeather } from '../../src/elements/page/wk-weather.ts';
import type { Run } from '../../src/study/evaluate.ts';
import type { Explorer } from '../../src/worker/explorer.ts';
import { farm, winterOf } from '../farm.ts';
import { faults, PART } from './look.ts';

const reading = { currency: 'EUR', year: 2024, system: 'metric' } as const;
let run: Run;
let explorer: Explorer;
beforeAll(() => {
  run = farm(dataFiles);
  // A real worker: what the page uses.
  explorer = startExplorer();
});
afterAll(() => explorer.close());
afterEach(() => document.body.replaceChildren());

const WINTERS = Array.from({ length: 8 }, (_, k) => ({
  ...winterOf(k, 0.5 + 0.2 * k),
  label: `${2001 + k}/${String(k + 2).padStart(2, '0')}`,
}));

const CELLS = {
  'wk-rain': { show: 'winter' },
  'wk-rain winters': { show: 'winters', winters: WINTERS, measure: 'nitrogenLeachedKg' },
  'wk-sweep': { over: 'rainFactor', steps: 11, measure: 'nitrogenLeachedKg' },
  'wk-sweep map': { over: 'labourPricePerHour', across: 'headCount', steps: 13, measure: 'netCost' },
  'wk-flip': {
    over: 'labourPricePerHour',
    from: 0,
    to: 200,
    steps: 11,
    measure: 'netCost',
    between: ['Paddock', 'Slats'],
  },
  'wk-draws': { measure: 'netCost', count: 400, seed: 2 },
  'wk-rank': { measure: 'netCost', count: 800, seed: 2, top: 6 },
} as const;

async function mounted(name: string, options: object, width = 800): Promise<ShadowRoot> {
  await page.viewport(width, 900);
  const element = Object.assign(document.createElement(name.split(' ')[0]), {
    run,
    explorer,
    reading,
    ...options,
  });
  const main = document.createElement('main');
  main.append(element);
  document.body.append(main);
  const figure = () => element.shadowRoot?.querySelector('wk-figure')?.shadowRoot;
  await expect.poll(() => figure()?.querySelector('.drawing svg'), { timeout: 40_000 }).toBeTruthy();
  return figure() as ShadowRoot;
}

/** The rows of a figure's table, once it has been opened. */
async function tableOf(figure: ShadowRoot): Promise<HTMLTableRowElement[]> {
  (figure.querySelector('details') as HTMLDetailsElement).open = true;
  await expect.poll(() => figure.querySelector('tbody tr')).toBeTruthy();
  return [...figure.querySelectorAll<HTMLTableRowElement>('tbody tr')];
}

describe.each(Object.entries(CELLS))('%s', (name, options) => {
  it.each([390, 1280])('draws at %i px inside the page', async (width) => {
    const figure = await mounted(name, options, width);
    for (const text of figure.querySelectorAll('.drawing text')) {
      const { left, right } = text.getBoundingClientRect();
      expect(left, text.textContent ?? '').toBeGreaterThanOrEqual(-1);
      expect(right, text.textContent ?? '').toBeLessThanOrEqual(width + 1);
    }
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    expect((await tableOf(figure)).length).toBeGreaterThan(1);
  });

  it('is sound for people who cannot see it', async () => {
    await mounted(name, options);
    expect(await faults(document.body, PART)).toEqual([]);
  });
});

describe('what the cells say', () => {
  const finding = (figure: ShadowRoot) => figure.querySelector('.finding')?.textContent ?? '';

  it('the flip names the tie, and plain numbers on both sides agree', async () => {
    const figure = await mounted('wk-flip', CELLS['wk-flip']);
    expect(finding(figure)).toMatch(
      /^(Below|Above) EUR [\d.]+\/h \(own labour's worth\) “\w+” does not pay for itself against “\w+”/,
    );
    const rows = (await tableOf(figure)).map((row) =>
      [...row.querySelectorAll('td')].map((cell) => Number(cell.textContent?.replace(/[^\d.]/g, ''))),
    );
    expect(Math.sign(rows[0][0] - rows[0][1])).toBe(
      -Math.sign(rows[rows.length - 1][0] - rows[rows.length - 1][1]),
    );
  });

  it.each([
    ['wk-sweep', { over: 'headCount', steps: 5, measure: 'capitalCost' }],
    ['wk-sweep map', CELLS['wk-sweep map']],
    ['wk-flip', { over: 'headCount', steps: 5, measure: 'netCost' }],
  ])('%s says what turning the herd means for the shed, by the choice it is given', async (name, options) => {
    const figure = await mounted(name, options);
    expect(finding(figure)).toContain('built to match the herd');
    const element = document.querySelector(name.split(' ')[0]) as WkSweep | WkFlip;
    element.herd = 'stays';
    await expect
      .poll(() => finding(element.shadowRoot?.querySelector('wk-figure')?.shadowRoot as ShadowRoot), {
        timeout: 20_000,
      })
      .toContain('the shed stays as it is');
  });

  it('an unknown input is said, not drawn', async () => {
    const element = Object.assign(document.createElement('wk-sweep'), {
      run,
      explorer,
      reading,
      over: 'rainfactor',
    });
    document.body.append(element);
    await expect
      .poll(() => element.shadowRoot?.textContent, { timeout: 20_000 })
      .toContain('No scenario has an input named “rainfactor”.');
  });

  it('the ranking ends in what to measure', async () => {
    await mounted('wk-rank', CELLS['wk-rank']);
    const items = document.querySelector('wk-rank')?.shadowRoot?.querySelectorAll('ol li') ?? [];
    expect(items.length).toBeGreaterThan(0);
    expect(items[0].textContent).toMatch(/settles about \d+ % of how far the difference varies/);
  });

  it('a late answer does not overwrite what is asked now', async () => {
    const element = Object.assign(document.createElement('wk-draws'), {
      run,
      explorer,
      reading,
      measure: 'netCost',
      count: 4_000,
      seed: 2,
    });
    document.body.append(element);
    await new Promise((resolve) => setTimeout(resolve, 60));
    Object.assign(element, { measure: 'labourHours', count: 200 });
    await expect
      .poll(() => element.shadowRoot?.querySelector('wk-figure')?.shadowRoot?.textContent ?? '', {
        timeout: 40_000,
      })
      .toContain('200 draws');
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(element.shadowRoot?.querySelector('wk-figure')?.shadowRoot?.textContent).not.toContain(
      '4\u202F000 draws',
    );
  });
});

describe('wk-weather', () => {
  const csv = (fahrenheit: boolean, names = 'Tmax;Tmin') =>
    `Day;Precip (mm);${names}\n${Array.from({ length: 400 }, (_, k) => {
      const date = new Date(Date.UTC(2020, 8, 1) + k * 86_400_000).toISOString().slice(0, 10);
      const high = 12 + 14 * Math.cos(((k - 300) / 365) * 2 * Math.PI);
      const said = (c: number) => (fahrenheit ? (c * 9) / 5 + 32 : c).toFixed(1);
      if (k > 20 && k < 24) return `${date};;${said(high)};${said(high - 8)}`;
      return `${date};${k % 3 === 0 ? 7.2 : 0};${said(high)};${said(high - 8)}`;
    }).join('\n')}\n`;

  async function dropped(text: string) {
    const element = document.createElement('wk-weather') as WkWeather;
    const main = document.createElement('main');
    main.append(element);
    document.body.append(main);
    const data = new DataTransfer();
    data.items.add(new File([text], 'gauge.csv', { type: 'text/csv' }));
    await element.updateComplete;
    element.shadowRoot
      ?.querySelector('.drop')
      ?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    await expect.poll(() => element.shadowRoot?.querySelector('.guess'), { timeout: 5_000 }).toBeTruthy();
    return element;
  }
  const words = (element: HTMLElement) => element.shadowRoot?.textContent?.replace(/\s+/g, ' ') ?? '';

  it('shows the guess, the gaps and how they were filled', async () => {
    const element = await dropped(csv(false));
    const chosen = [...(element.shadowRoot?.querySelectorAll('select') ?? [])].map(
      (s) => s.selectedOptions[0].textContent,
    );
    expect(chosen).toEqual([
      'Day',
      'Precip (mm)',
      'Tmin',
      'Tmax',
      'none',
      'none',
      'mm',
      '°C',
      'year, month, day',
    ]);
    expect(words(element)).toContain('400 days from 2020-09-01 to 2021-10-05');
    expect(words(element)).toContain('rain, 2020-09-22 to 2020-09-24');
    expect(await faults(document.body, PART)).toEqual([]);
  });

  it('lets columns be named that it did not know', async () => {
    const element = await dropped(csv(false, 'Warm;Cold'));
    const choose = async (label: string, column: string) => {
      const select = [...(element.shadowRoot?.querySelectorAll('select') ?? [])].find((s) =>
        s.parentElement?.textContent?.includes(label),
      );
      await userEvent.selectOptions(select as HTMLSelectElement, column);
    };
    expect(words(element)).not.toContain('400 days');
    await choose('Lowest of the day', '3');
    await choose('Highest of the day', '2');
    await expect.poll(() => words(element)).toContain('400 days from 2020-09-01 to 2021-10-05');
  });

  it('lets a unit be corrected, and hands the series on in our own form', async () => {
    const element = await dropped(csv(true));
    expect(words(element)).toMatch(/°F/);
    const selects = [...(element.shadowRoot?.querySelectorAll('select') ?? [])];
    const rain = selects.find((s) =>
      s.parentElement?.textContent?.includes('Rain is in'),
    ) as HTMLSelectElement;
    await userEvent.selectOptions(rain, 'tenthsMm');
    await expect.poll(() => words(element)).toMatch(/8\d mm of rain a year/);
    let text = '';
    element.addEventListener('wk-weather-file', (event) => {
      text = (event as CustomEvent<{ text: string }>).detail.text;
    });
    await userEvent.click([...(element.shadowRoot?.querySelectorAll('button') ?? [])].at(-1) as HTMLElement);
    expect(text.split('\n').slice(0, 2).join('\n')).toMatch(/^date,rainMm,minC,maxC\n2020-09-01,0\.7,/);
  });

  it('says what is wrong with a file that is none', async () => {
    const element = await dropped('a,b\n1,x\n2,y\n');
    expect(element.shadowRoot?.querySelector('wk-problems')?.shadowRoot?.textContent).toContain(
      'no column found for the date',
    );
    expect(
      [...(element.shadowRoot?.querySelectorAll('button') ?? [])].map((b) => b.textContent),
    ).not.toContain('Use this weather');
  });
});
