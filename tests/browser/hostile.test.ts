/**
 * Notebooks that mean harm, each opened on the page as a keeper would: no script of theirs runs, nothing is fetched, the page goes
 * on answering, and there is a readable error or safe text. Without the page's policy, so that what it would stop is found too.
 */
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../src/app/styles.css';
import { startEngine } from '../../src/app/engine.ts';
import '../../src/elements/page/below.ts';
import '../../src/elements/page/wk-page.ts';
import { BOMBS } from '../hostile/bombs.ts';
import { hostile, PLAIN_NOTEBOOK, SIGN } from '../hostile/corpus.ts';
import { type Engine, openNotebook } from '../openNotebook.ts';

const COUNT = 150;
const EACH = 50;
/** The page answers within this on a machine that is free: on a busy one within as much longer as a plain notebook takes there. */
const MOST_MS = 200;
const PLAIN_TIMES = 5;
/** Looked at so often again before a pause counts as the notebook's own. */
const AGAIN = 8;
/** What the plain notebook takes at most on two processors with nothing else at work. */
const PLAIN_MS = 80;

let engine: Engine;
let plainMs = 0;
const tasks: PerformanceEntry[] = [];
const fetched: string[] = [];
const longTasks = new PerformanceObserver((list) => tasks.push(...list.getEntries()));
const requests = new PerformanceObserver((list) =>
  fetched.push(...list.getEntries().map(({ name }) => name)),
);

beforeAll(async () => {
  await page.viewport(1000, 800);
  engine = startEngine();
  longTasks.observe({ type: 'longtask' });
  requests.observe({ type: 'resource' });
  await look(PLAIN_NOTEBOOK);
  for (let k = 0; k < PLAIN_TIMES; k++) plainMs = Math.max(plainMs, (await look(PLAIN_NOTEBOOK)).longestMs);
});
afterEach(() => document.body.replaceChildren());

const turn = () => new Promise<void>((resume) => setTimeout(resume));
const frame = () => new Promise<number>((resume) => requestAnimationFrame(resume));

/** Opens a notebook and gives what is wrong with how it was shown, and how long the page did not answer. */
async function look(text: string): Promise<{ readonly faults: string[]; readonly longestMs: number }> {
  await turn();
  const start = performance.now();
  const open = openNotebook(text, 'hostile.md', { ...engine, explorer: undefined });
  const element = document.createElement('wk-page');
  element.open = open;
  document.body.append(element);
  while (open.problems.value.length === 0 && open.results.value.length === 0) await turn();
  await element.updateComplete;
  const inner = element.shadowRoot?.querySelector('wk-notebook');
  await inner?.updateComplete;
  await frame();
  // Parts are set in turns.
  for (
    let before = -1, now = 0;
    before < now;
    now = inner?.shadowRoot?.querySelectorAll('.part').length ?? 0
  ) {
    before = now;
    await turn();
    await turn();
    await inner?.updateComplete;
  }
  for (const entry of longTasks.takeRecords()) tasks.push(entry);
  const longestMs = Math.max(
    0,
    ...tasks.filter((task) => task.startTime >= start).map(({ duration }) => duration),
  );
  tasks.length = 0;
  const faults = [...unsafeIn(element), ...ran()];
  const said = element.shadowRoot?.querySelector('wk-problems')?.shadowRoot?.textContent?.trim() ?? '';
  if (open.problems.value.length > 0 && said === '') faults.push('a problem that is not said');
  if (open.problems.value.length === 0 && !inner?.shadowRoot?.textContent?.trim())
    faults.push('nothing is shown');
  open.close();
  element.remove();
  return { faults, longestMs };
}

function ran(): string[] {
  for (const entry of requests.takeRecords()) fetched.push(entry.name);
  const out = fetched.filter((name) => name.includes(SIGN) && !/\/tests\/|hostile\.test/.test(name));
  fetched.length = 0;
  const faults = out.map((name) => `fetched ${name}`);
  if (SIGN in window) faults.push('a script ran');
  Reflect.deleteProperty(window, SIGN);
  return faults;
}

const FORBIDDEN =
  'script, iframe, object, embed, img, image, video, audio, link, meta, base, form, foreignObject, animate, set';
/** As the browser itself reads it. */
const isPlainLink = (to: string) =>
  ['http:', 'https:', 'mailto:'].includes(new URL(to, location.href).protocol);

/** What stands in the page and its shadows that could run or fetch. */
function unsafeIn(root: Element | ShadowRoot): string[] {
  const faults: string[] = [];
  for (const bad of root.querySelectorAll(FORBIDDEN))
    faults.push(`the page holds ${bad.outerHTML.slice(0, 120)}`);
  for (const element of root.querySelectorAll('*')) {
    for (const { name, value } of element.attributes) {
      if (name.startsWith('on')) faults.push(`${element.localName} has ${name}="${value.slice(0, 80)}"`);
      if (/href$|^src|^action|^data$|^formaction/.test(name) && !isPlainLink(value))
        faults.push(`${element.localName} leads to ${value.slice(0, 80)}`);
      if (name === 'style' && /url\(|@import/i.test(value))
        faults.push(`a style fetches: ${value.slice(0, 80)}`);
    }
    if (element.localName === 'style' && element.textContent?.includes(SIGN))
      faults.push('a style of the notebook’s');
    if (element.shadowRoot) faults.push(...unsafeIn(element.shadowRoot));
  }
  if (root instanceof Element && root.shadowRoot) faults.push(...unsafeIn(root.shadowRoot));
  return faults;
}

/** A pause that other work on the machine made does not come again; nor does it come to the hostile notebook alone. */
async function pausedFor(text: string, longestMs: number): Promise<string | undefined> {
  const limit = () => MOST_MS * Math.max(1, plainMs / PLAIN_MS);
  if (longestMs <= limit()) return undefined;
  let least = longestMs;
  for (let k = 0; k < AGAIN; k++) {
    plainMs = Math.max(plainMs, (await look(PLAIN_NOTEBOOK)).longestMs);
    least = Math.min(least, (await look(text)).longestMs);
    if (least <= limit()) return undefined;
  }
  return `no answer for ${Math.round(least)} ms, a plain one ${Math.round(plainMs)}`;
}

async function all(cases: readonly (readonly [string, string])[]): Promise<string[]> {
  const bad: string[] = [];
  for (const [name, text] of cases) {
    const { faults, longestMs } = await look(text);
    const paused = await pausedFor(text, longestMs);
    const found = paused === undefined ? faults : [...faults, paused];
    if (found.length > 0) bad.push(`${name}: ${found.slice(0, 3).join('; ')}`);
  }
  return bad;
}
describe('a notebook that means harm', () => {
  it.each(Array.from({ length: COUNT / EACH }, (_, k) => k * EACH))(
    `${EACH} from number %i on`,
    async (first) => {
      const cases = Array.from(
        { length: EACH },
        (_, k) => [`number ${first + k}`, hostile(first + k)] as const,
      );
      expect(await all(cases)).toEqual([]);
    },
  );

  it('or is made to hold the page', async () => {
    expect(await all(Object.entries(BOMBS).map(([name, make]) => [name, make()] as const))).toEqual([]);
  });
});
