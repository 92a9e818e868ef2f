/** The page as a stranger prints it: every cell of every shipped notebook stands on paper, with its answer. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { readNotebook } from '../../src/notebook/read.ts';
import { fewDraws } from '../fewDraws.ts';
import { inBrowser, quickPage } from './inBrowser.ts';
import { NOTEBOOKS } from './run.ts';

const PATIENCE = 180_000;
const held = inBrowser(PATIENCE);
const folder = process.env.KEEP_PRINTED ?? mkdtempSync(join(tmpdir(), 'winterkeep-printed-'));

afterAll(() => {
  if (!process.env.KEEP_PRINTED) rmSync(folder, { recursive: true, force: true });
});

/** Letters alone: lines break and spaces widen where the paper ends. */
const bare = (text: string) => text.replace(/[\s\u00ad]+/gu, '').normalize('NFKC');

const pdfText = (file: string) => execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' });

async function opened(file: string, width: number): Promise<Page> {
  const page = await quickPage(held.browser, { viewport: { width, height: 800 }, colorScheme: 'dark' });
  await page.addInitScript(() => {
    const held = window as unknown as { prints: number };
    held.prints = 0;
    window.print = () => {
      held.prints++;
    };
  });
  await page.goto(`${held.built.url}#example=${file.replace(/^.*\/|\.md$/g, '')}`);
  await page.getByRole('button', { name: 'Print', exact: true }).waitFor();
  await page.locator('wk-cards').first().waitFor();
  return page;
}

const printed = (page: Page) =>
  page.waitForFunction(() => (window as unknown as { prints: number }).prints === 1, undefined, {
    timeout: PATIENCE,
  });

interface OnPage {
  readonly line: number;
  /** Sentences over the figures of the cell. */
  readonly findings: readonly string[];
  /** Headings of the cell, those of its parts with them. */
  readonly headings: readonly string[];
  readonly missing: number;
}

/** What the cells say, through every shadow root. */
const cellsOf = (page: Page): Promise<readonly OnPage[]> =>
  page.evaluate(() => {
    const under = (root: ParentNode): Element[] =>
      [...root.querySelectorAll('*')].flatMap((each) => [
        each,
        ...(each.shadowRoot ? under(each.shadowRoot) : []),
      ]);
    return under(document)
      .filter((each) => each.matches('.cell[data-line]'))
      .map((cell) => {
        const inside = under(cell);
        const texts = (what: string) =>
          inside
            .filter((each) => each.matches(what) && !each.matches('.hidden'))
            .map((each) => each.textContent ?? '');
        return {
          line: Number((cell as HTMLElement).dataset.line),
          findings: texts('.finding'),
          headings: texts('h2, h3'),
          missing: texts('p.paper').filter((words) => /not ready/.test(words)).length,
        };
      });
  });

describe.each(NOTEBOOKS)('%s printed', (file) => {
  it(
    'waits for every cell and drops none',
    async () => {
      const page = await opened(file, 1280);
      await page.getByRole('button', { name: 'Print', exact: true }).click();
      await printed(page);
      const pdf = await page.pdf({ format: 'A4' });
      const path = join(folder, `${file.replace(/^.*\/|\.md$/g, '')}.pdf`);
      writeFileSync(path, pdf);
      const raw = pdfText(path);
      const paper = bare(raw);

      const { notebook } = readNotebook(fewDraws(readFileSync(file, 'utf8')), file);
      const asked = notebook?.blocks.filter(({ type }) => type === 'cell') ?? [];
      const shown = await cellsOf(page);
      // Cards without options of their own stand above the text, once, and that is said in their place.
      const wanted = asked.filter((block) => block.type === 'cell' && block.kind !== 'cards');
      expect(wanted.length).toBeGreaterThan(5);
      const lines = shown.map(({ line }) => line);
      expect(wanted.map(({ line }) => line).filter((line) => !lines.includes(line))).toEqual([]);
      for (const { line, findings, headings, missing } of shown) {
        expect(missing, `line ${line}`).toBe(0);
        expect([...findings, ...headings].join('').trim(), `line ${line}`).not.toBe('');
        for (const words of [...findings, ...headings]) expect(paper, `line ${line}`).toContain(bare(words));
      }
      expect(paper).not.toContain(bare('not ready when this was printed'));
      await page.close();
    },
    PATIENCE,
  );
});

describe('printing', () => {
  it(
    'can be stopped',
    async () => {
      const page = await opened(NOTEBOOKS[0], 390);
      await page.getByRole('button', { name: 'Print', exact: true }).click();
      await page.getByRole('button', { name: 'Do not print' }).click();
      await page.getByRole('button', { name: 'Do not print' }).waitFor({ state: 'detached' });
      await page.waitForTimeout(1500);
      expect(await page.evaluate(() => (window as unknown as { prints: number }).prints)).toBe(0);
      await page.close();
    },
    PATIENCE,
  );

  it(
    'by the browser’s own menu prints what is there, light, and says what is missing',
    async () => {
      const page = await opened(NOTEBOOKS[3], 1280);
      // A click scrolls there itself, and looks again when the page has set the button anew.
      await page.getByRole('button', { name: 'Full screen' }).first().click();
      await page.locator('dialog[open] .drawing svg').first().waitFor();
      const path = join(folder, 'own-menu.pdf');
      writeFileSync(path, await page.pdf({ format: 'A4' }));
      expect(bare(pdfText(path))).toContain(bare('it was not ready when this was printed'));
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      const looks = await page.evaluate(() => {
        const under = (root: ParentNode): Element[] =>
          [...root.querySelectorAll('*')].flatMap((each) => [
            each,
            ...(each.shadowRoot ? under(each.shadowRoot) : []),
          ]);
        const all = under(document);
        return {
          paper: getComputedStyle(document.documentElement).backgroundColor,
          dialogs: all
            .filter((each) => each.matches('dialog[open]'))
            .map((each) => getComputedStyle(each).display),
          filters: [
            ...new Set(
              all
                .filter((each) => each.matches('.drawing > svg'))
                .map((each) => getComputedStyle(each).filter),
            ),
          ],
        };
      });
      expect(looks).toEqual({ paper: 'rgb(255, 255, 255)', dialogs: ['none'], filters: ['none'] });
      await page.close();
    },
    PATIENCE,
  );
});
