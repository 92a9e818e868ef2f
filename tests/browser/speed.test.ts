import { afterEach, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../src/app/styles.css';
import { startEngine } from '../../src/app/engine.ts';
import { EXAMPLES } from './examples.ts';
import '../../src/elements/page/below.ts';
import '../../src/elements/page/wk-page.ts';
import { openNotebook } from '../openNotebook.ts';

afterEach(() => document.body.replaceChildren());

const frame = () => new Promise<number>((resume) => requestAnimationFrame(resume));
const quantile = (sorted: readonly number[], q: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))];

// Reports the time from a slider's event to cards and ledger laid out anew; other work on the machine would make a limit a lie.
it('reports how long a slider step takes', async () => {
  await page.viewport(1280, 1700);
  const engine = startEngine();
  const [example] = EXAMPLES.filter(({ name }) => name === 'hill-farm-choice');
  const open = openNotebook(example.text, example.file, { ...engine, explorer: undefined });
  const element = document.createElement('wk-page');
  element.open = open;
  document.body.append(element);
  await expect.element(page.getByRole('heading', { level: 1 }), { timeout: 15_000 }).toBeVisible();
  const slider = page.getByRole('slider', { name: /^Animals/ }).element() as HTMLInputElement;
  const drawing = () =>
    element.shadowRoot
      ?.querySelector('wk-notebook')
      ?.shadowRoot?.querySelector('wk-ledger')
      ?.shadowRoot?.querySelector('wk-figure')
      ?.shadowRoot?.querySelector('.drawing');
  // Only what is in sight is drawn.
  element.shadowRoot?.querySelector('wk-notebook')?.shadowRoot?.querySelector('wk-ledger')?.scrollIntoView();
  await expect.poll(() => drawing()?.innerHTML, { timeout: 15_000 }).toContain('kept');
  const times: number[] = [];
  const model: number[] = [];
  for (let step = 0; step < 60; step++) {
    const before = drawing()?.innerHTML;
    const start = performance.now();
    // Up and down within its span, so that each step changes what is shown.
    slider.value = String(10 + ((step * 7) % 50));
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    model.push(performance.now() - start);
    for (let k = 0; k < 20 && drawing()?.innerHTML === before; k++) await frame();
    document.body.getBoundingClientRect();
    if (step >= 10) times.push(performance.now() - start);
    expect(drawing()?.innerHTML).not.toBe(before);
  }
  times.sort((a, b) => a - b);
  model.sort((a, b) => a - b);
  console.log(
    `slider step, cards and figures: median ${quantile(times, 0.5).toFixed(1)} ms, p95 ${quantile(times, 0.95).toFixed(1)} ms; of it the model ${quantile(model, 0.5).toFixed(1)} ms`,
  );
  open.close();
});
