/** Files from the built page, under its own content policy, against the commands and against results worked out apart. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvParseRows } from 'd3-dsv';
import { strFromU8, unzipSync } from 'fflate';
import { parseHTML } from 'linkedom';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { FEW } from '../fewDraws.ts';
import { inBrowser, quickPage } from './inBrowser.ts';
import { winterkeep } from './run.ts';

const PATIENCE = 180_000;
const FILE = 'notebooks/hill-farm-choice.md';
const LENDER = 'notebooks/coast-lender-case.md';
const held = inBrowser(PATIENCE);
const asked: string[] = [];

async function opened(file: string, width = 1280): Promise<Page> {
  const page = await quickPage(held.browser, {
    viewport: { width, height: 900 },
    colorScheme: 'dark',
    acceptDownloads: true,
  });
  page.on('request', (request) => asked.push(request.url()));
  page.on('console', (message) => {
    if (message.type() === 'error') asked.push(`fault: ${message.text()}`);
  });
  await page.goto(`${held.built.url}#example=${file.replace(/^.*\/|\.md$/g, '')}`);
  await page.getByText('Take the figures along').waitFor();
  return page;
}

interface Taken {
  readonly name: string;
  readonly bytes: Uint8Array;
}

async function take(page: Page, press: () => Promise<void>): Promise<Taken> {
  const [download] = await Promise.all([page.waitForEvent('download', { timeout: PATIENCE }), press()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

/** Each figure's files, by their names. */
async function figureFiles(page: Page, tag: string): Promise<ReadonlyMap<string, Taken>> {
  const cell = page.locator(tag).first();
  await cell.scrollIntoViewIfNeeded();
  const menu = cell.locator('wk-take').first();
  await menu.getByRole('button', { name: 'Take this figure along' }).click({ timeout: PATIENCE });
  const found = new Map<string, Taken>();
  for (const words of ['Drawing, SVG', 'Picture, PNG', 'Numbers, CSV'])
    found.set(words.slice(-3), await take(page, () => menu.getByRole('button', { name: words }).click()));
  return found;
}

const rowsOf = (bytes: Uint8Array) => csvParseRows(strFromU8(bytes));

describe('a figure as a file', () => {
  it(
    'holds its own numbers, draws alone, and has pixels',
    async () => {
      const page = await opened(FILE);
      const files = await figureFiles(page, 'wk-ledger');
      const { run, notebook } = await openNotebook(FILE);
      const rows = rowsOf(files.get('CSV')?.bytes ?? new Uint8Array());
      expect(rows[0].slice(1)).toEqual(run.results.map(({ name }) => expect.stringContaining(name)));
      const kept = rows.find(([label]) => label === 'kept');
      expect(kept?.slice(1).map(Number)).toEqual(
        run.results.map(({ values }) => Number((values.nitrogenKeptKg as number).toPrecision(3))),
      );
      expect(rows[0][0]).toContain('kg');

      const svg = files.get('SVG');
      expect(svg?.name).toMatch(/^[a-z0-9-]+\.svg$/);
      const text = strFromU8(svg?.bytes ?? new Uint8Array());
      const { document } = parseHTML(text);
      expect(document.querySelector('title')?.textContent).toBeTruthy();
      expect(document.querySelector('desc')?.textContent).toContain(notebook.title);
      const said = [...document.querySelectorAll('text')].map((each) => each.textContent).join(' ');
      expect(said).toContain('which names the source of every number');
      expect(text).not.toMatch(/NaN|<script|var\(--|https?:(?!\/\/www\.w3\.org)/);
      expect(await parses(page, text)).toBe('svg');

      const png = files.get('PNG')?.bytes ?? new Uint8Array();
      expect([...png.subarray(1, 4)]).toEqual([...'PNG'].map((letter) => letter.charCodeAt(0)));
      const size = new DataView(png.buffer, png.byteOffset + 16, 8);
      const [, height] = /<svg[^>]* height="(\d+)"/.exec(text) ?? [];
      expect([size.getUint32(0), size.getUint32(4)]).toEqual([1600, 2 * Number(height)]);
      expect(png.length).toBeGreaterThan(20_000);
      if (process.env.KEEP_CARRIED) keep(files);
      await page.close();
    },
    PATIENCE,
  );

  it.each([
    [LENDER, ['wk-plan', 'wk-costs']],
    [FILE, ['wk-section', 'wk-draws']],
  ])(
    'of %s: %s parse and have pixels at the width of a phone',
    async (file, tags) => {
      const page = await opened(file, 390);
      for (const tag of tags) {
        const files = await figureFiles(page, tag);
        expect(await parses(page, strFromU8(files.get('SVG')?.bytes ?? new Uint8Array())), tag).toBe('svg');
        expect(files.get('PNG')?.bytes.length, tag).toBeGreaterThan(10_000);
        expect(rowsOf(files.get('CSV')?.bytes ?? new Uint8Array()).length, tag).toBeGreaterThan(1);
        if (process.env.KEEP_CARRIED) keep(files);
      }
      await page.close();
    },
    PATIENCE,
  );
});

function keep(files: ReadonlyMap<string, Taken>): void {
  for (const { name, bytes } of files.values())
    writeFileSync(join(process.env.KEEP_CARRIED ?? '', name), bytes);
}

/** Two builds of one engine differ in the last digit of a power or a logarithm. */
const told = (_: string, value: unknown) =>
  typeof value === 'number' ? Number(value.toPrecision(11)) : value;
const toldLine = (text: string) =>
  text
    .split('\n')
    .map((line) =>
      line.split(',').map((cell) => (/^-?[\d.]+(e[-+]?\d+)?$/.test(cell) ? told('', Number(cell)) : cell)),
    );

/** As a strict reader of SVG takes it. */
const parses = (page: Page, text: string) =>
  page.evaluate(
    (markup) => new DOMParser().parseFromString(markup, 'image/svg+xml').documentElement.localName,
    text,
  );

describe('the notebook as a file', () => {
  it(
    'is what the commands write',
    async () => {
      const page = await opened(FILE);
      await page.getByText('Take the figures along').click();
      const press = (name: RegExp) => () => page.getByRole('button', { name }).click();
      const { seed } = (await openNotebook(FILE)).notebook.draws;
      const command = (format: string) =>
        winterkeep('compare', FILE, '--format', format, '--draws', String(FEW), '--seed', String(seed));

      const json = await take(page, press(/^For programs, JSON/));
      expect(json.name).toMatch(/^[a-z0-9-]+\.json$/);
      const [own, theirs] = [strFromU8(json.bytes), (await command('json')).out].map((text) =>
        JSON.parse(text, told),
      );
      expect({ ...own, notebook: FILE }).toEqual(theirs);

      const csv = await take(page, press(/^Table, CSV/));
      expect(toldLine(strFromU8(csv.bytes))).toEqual(toldLine((await command('csv')).out));

      const xlsx = unzipSync((await take(page, press(/^Spreadsheet, XLSX/))).bytes);
      const sheets = [...strFromU8(xlsx['xl/workbook.xml']).matchAll(/<sheet [^>]*name="([^"]*)"/g)].map(
        (m) => m[1],
      );
      expect(sheets.slice(0, 3)).toEqual(['figures', 'checks', 'bill']);
      const netCost = theirs.scenarios[0].values.netCost as number;
      const cells = [...strFromU8(xlsx['xl/worksheets/sheet1.xml']).matchAll(/<v>([^<]*)<\/v>/g)];
      expect(cells.map(([, value]) => told('', Number(value)))).toContain(netCost);
      await page.close();
    },
    PATIENCE,
  );

  it(
    'has the lender’s paper as a file, with no script in it',
    async () => {
      const page = await opened(LENDER);
      await page.getByText('Take the figures along').click();
      const paper = await take(page, () => page.getByRole('button', { name: /^Lender’s paper/ }).click());
      expect(paper.name).toMatch(/^[a-z0-9-]+-case\.html$/);
      const text = strFromU8(paper.bytes);
      expect(text).toContain('The case for “Deep bed”');
      expect(text).not.toMatch(/<script/);
      await page.close();
    },
    PATIENCE,
  );

  it('was made without a request off the page’s origin or a breach of its policy', () => {
    const off = asked.filter((url) => !url.startsWith(held.built.url) && !/^(data|blob):/.test(url));
    expect(off).toEqual([]);
  });
});
