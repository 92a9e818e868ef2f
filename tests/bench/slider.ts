/** How long a step of a slider takes on the page as it is shipped: from the event to cards and ledger drawn anew. */
import { loadavg } from 'node:os';
import { chromium, type Page } from 'playwright-core';
import { CHROMIUM_ARGS, findChromium } from '../../src/cli/chromium.mjs';
import { type Built, builtPage } from '../cli/built.ts';

/** One frame at 60 a second, ms: what a step may take for the figures to stay under the finger. */
const FRAME_MS = 1000 / 60;
const STEPS = 60;
/** The first steps meet code that has not run yet. */
const WARM = 10;

export interface SliderTimes {
  /** Milliseconds of each step, from the event until cards and ledger are laid out and painted. */
  readonly steps: readonly number[];
  /** Of it, until the event's own handlers returned: the model. */
  readonly model: readonly number[];
}

export interface SliderOptions {
  readonly width?: number;
  readonly height?: number;
  /** How many times slower than this machine. */
  readonly slowdown?: number;
  /** Built with the names of its functions. */
  readonly readable?: boolean;
}

/** Opens the first notebook, waits for its draws, and hands over the page and a way to drag its rain through its span. */
export async function atTheSlider<T>(
  { width = 1280, height = 1700, slowdown = 1, readable = false }: SliderOptions,
  then: (page: Page, drag: () => Promise<SliderTimes>) => Promise<T>,
  already?: Built,
): Promise<T> {
  const built = already ?? (await builtPage({ readable }));
  const browser = await chromium.launch({
    executablePath: findChromium(),
    args: CHROMIUM_ARGS,
  });
  try {
    const page = await browser.newPage({ viewport: { width, height } });
    await page.goto(built.url);
    await page.getByRole('listitem').getByRole('link').first().click();
    await page
      .getByText(/of 100/)
      .first()
      .waitFor({ timeout: 60_000 });
    if (slowdown > 1) {
      const session = await page.context().newCDPSession(page);
      await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
    }
    return await then(
      page,
      async () => (await page.evaluate(IN_PAGE.replace('STEPS', String(STEPS)))) as SliderTimes,
    );
  } finally {
    await browser.close();
    if (!already) await built.remove();
  }
}

/** Drags the rain of the first notebook through its span. */
const sliderTimes = (options: SliderOptions, built: Built) =>
  atTheSlider(options, (_, drag) => drag(), built);

/** Text, since the compiler of this process would write its own helpers into a function. */
const IN_PAGE = `(async () => {
  const page = document.querySelector('wk-shell').shadowRoot.querySelector('wk-page').shadowRoot;
  const deep = (root, tag) => {
    for (const each of root.querySelectorAll('*')) {
      if (each.localName === tag) return each;
      const inside = each.shadowRoot && deep(each.shadowRoot, tag);
      if (inside) return inside;
    }
  };
  const frame = () => new Promise((resume) => requestAnimationFrame(resume));
  const painted = () => new Promise((resume) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = resume;
    requestAnimationFrame(() => port2.postMessage(0));
  });
  const ledger = deep(page, 'wk-ledger');
  ledger.scrollIntoView({ block: 'end' });
  for (let k = 0; k < 200 && !ledger.shadowRoot.querySelector('wk-figure').shadowRoot.querySelector('.drawing svg'); k++) await frame();
  const drawing = () => ledger.shadowRoot.querySelector('wk-figure').shadowRoot.querySelector('.drawing').innerHTML;
  const cards = page.querySelector('wk-cards').shadowRoot;
  const said = () => cards.querySelector('.grid').textContent;
  const slider = page.querySelector('wk-inputs').shadowRoot.querySelector('#rainFactor');
  const [min, max] = [Number(slider.min), Number(slider.max)];
  const steps = [], model = [];
  for (let k = 0; k < STEPS; k++) {
    // What is drawn in above the ledger moves it; what is out of sight is not drawn.
    ledger.scrollIntoView({ block: 'end' });
    await frame();
    await frame();
    const [before, words] = [drawing(), said()];
    const start = performance.now();
    // Up and down, so that each step changes what is shown.
    slider.value = String(min + ((k * 7) % 20 + 1) / 21 * (max - min));
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    model.push(performance.now() - start);
    // The frame that follows the event draws; its paint is over when a message sent in it comes back.
    await painted();
    for (let wait = 0; wait < 60 && (drawing() === before || said() === words); wait++) await painted();
    if (drawing() === before || said() === words) throw new Error('step ' + k + ' of the slider changed nothing in ' + (drawing() === before ? 'the ledger' : 'the cards'));
    steps.push(performance.now() - start);
  }
  return { steps, model };
})()`;

const quantile = (sorted: readonly number[], q: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))];

const MACHINES = [
  { what: '1280 px', width: 1280, slowdown: 1 },
  { what: '390 px, a processor four times slower', width: 390, slowdown: 4 },
] as const;

/** A few lines for a person. */
export async function sliderReport(built: Built): Promise<string> {
  const lines = [
    `Slider, page as shipped, ${STEPS - WARM} steps of rain on the first notebook, event to cards and ledger painted:`,
  ];
  for (const { what, width, slowdown } of MACHINES) {
    const times = await sliderTimes({ width, slowdown }, built);
    const [steps, model] = [times.steps, times.model].map((all) => all.slice(WARM).sort((a, b) => a - b));
    const ms = (n: number) => n.toFixed(1);
    lines.push(
      `  ${what}: median ${ms(quantile(steps, 0.5))} ms, 95 of 100 within ${ms(quantile(steps, 0.95))} ms, beside a frame of ${ms(FRAME_MS)} ms;` +
        ` of it the model ${ms(quantile(model, 0.5))} ms; load ${loadavg()[0].toFixed(1)}`,
    );
  }
  return lines.join('\n');
}
