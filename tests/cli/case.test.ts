/** The lender's paper end to end: the PDF as a stranger's tools read it, and its tables against `compare`. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openNotebook, shippedTables } from '../../src/cli/open.ts';
import { paperDocument } from '../../src/paper/document.ts';
import { answerHere, gather } from '../../src/paper/gather.ts';
import type { Report } from '../../src/paper/report.ts';
import { caseTables } from '../../src/paper/tables.ts';
import { evaluate } from '../../src/study/evaluate.ts';
import { winterkeep } from './run.ts';

const LENDER = 'notebooks/coast-lender-case.md';
const TEXT = readFileSync(LENDER, 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'winterkeep-case-'));
const path = (name: string) => join(folder, name);
const chromium = process.env.CHROMIUM_PATH;

afterEach(() => {
  if (chromium === undefined) delete process.env.CHROMIUM_PATH;
  else process.env.CHROMIUM_PATH = chromium;
});

/** A notebook made from the shipped one by replacing words in it. */
function changed(name: string, ...edits: readonly (readonly [string, string])[]): string {
  const text = edits.reduce((all, [from, to]) => {
    expect(all).toContain(from);
    return all.replace(from, to);
  }, TEXT);
  writeFileSync(path(name), text);
  return path(name);
}

const pdfText = (file: string) => execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
const pdfInfo = (file: string) => execFileSync('pdfinfo', [file], { encoding: 'utf8' });
/** Spaces of every width as one, so that words can be looked for. */
const plain = (text: string) => text.replace(/\s+/gu, ' ');

/** Rows of a sheet as text and numbers, read from the parts of the spreadsheet. */
function sheetRows(file: string, name: string): (string | number | null)[][] {
  const parts = unzipSync(readFileSync(file));
  const text = (part: string) => strFromU8(parts[part]);
  const names = [...text('xl/workbook.xml').matchAll(/<sheet [^>]*name="([^"]*)"/g)].map((m) => m[1]);
  const strings = [...text('xl/sharedStrings.xml').matchAll(/<si>.*?<t[^>]*>(.*?)<\/t>.*?<\/si>/gs)].map(
    (m) => m[1],
  );
  const xml = text(`xl/worksheets/sheet${names.indexOf(name) + 1}.xml`);
  return [...xml.matchAll(/<row [^>]*>(.*?)<\/row>/gs)].map(([, row]) => {
    const cells: (string | number | null)[] = [];
    for (const [, attributes, value] of row.matchAll(/<c ([^>]*?)(?:\/>|>(?:<v>(.*?)<\/v>)?.*?<\/c>)/gs)) {
      const letters = /r="([A-Z]+)\d+"/.exec(attributes)?.[1] ?? '';
      const column = [...letters].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0) - 1;
      if (value !== undefined)
        cells[column] = /t="s"/.test(attributes) ? strings[Number(value)] : Number(value);
    }
    return Array.from(cells, (cell) => cell ?? null);
  });
}

describe('the lender’s paper', () => {
  let compared: { scenarios: { name: string; values: Record<string, number | null> }[] };
  let text = '';
  let deepBed: Record<string, number | null>;

  beforeAll(async () => {
    const { code, out, error } = await winterkeep(
      'case',
      LENDER,
      '--out',
      path('case.pdf'),
      '--tables',
      path('tables'),
      '--draws',
      '300',
    );
    expect(error).toBe('');
    expect(code).toBe(0);
    expect(out).toContain('case.pdf: the case for “Deep bed”');
    text = plain(pdfText(path('case.pdf')));
    compared = JSON.parse((await winterkeep('compare', LENDER, '--format', 'json')).out);
    deepBed = compared.scenarios.find(({ name }) => name === 'Deep bed')?.values ?? {};
  }, 120_000);

  it('has 4 to 12 tagged A4 pages with a title', () => {
    const info = pdfInfo(path('case.pdf'));
    const pages = Number(/Pages:\s+(\d+)/.exec(info)?.[1]);
    expect(pages).toBeGreaterThanOrEqual(4);
    expect(pages).toBeLessThanOrEqual(12);
    expect(info).toMatch(/Page size:\s+59[45][\d.]* x 84[12][\d.]* pts \(A4\)/);
    expect(info).toMatch(/Tagged:\s+yes/);
    expect(info).toMatch(/Title:\s+A shed for sixty cows on the coast, for the lender/);
    expect(text).toContain(`1 of ${pages}`);
  });

  it('says everything a stranger needs, in order', () => {
    const headings = [
      'In five lines',
      'How it is paid',
      'In more words',
      'The systems compared',
      'The proposal: Deep bed',
      'What must be built',
      'Finance over the years',
      'What could go wrong',
      'Assumptions',
      'Cautions',
      'What was left out',
    ];
    const places = headings.map((heading) => text.indexOf(heading));
    expect(
      places.every((place) => place >= 0),
      headings.filter((_, k) => places[k] < 0).join(),
    ).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    for (const words of [
      'invented farm',
      'Slurry gas kills',
      'licensed engineer',
      'check the local rule',
      'not financial advice',
      'income and property tax',
      'Money in CAD of 2024',
    ])
      expect(text).toContain(words);
    for (const { name } of compared.scenarios) expect(text).toContain(name);
  });

  it('prints the sums of compare', () => {
    const money = (value: number | null | undefined, digits: number) => {
      const [units, part] = (value as number).toFixed(digits).split('.');
      return `${units.replace(/\B(?=(\d{3})+$)/g, ' ')}${part ? `.${part}` : ''}`;
    };
    expect(text).toContain(money(deepBed.capitalCost, 2));
    expect(text).toContain(`CAD ${money(deepBed.capitalCost, 0)}`);
    expect(text).toContain(`at most CAD ${money(deepBed.loanPayment, 0)} a year, in years 2 to 15`);
    expect(text).toContain(`${deepBed.debtServiceCover?.toFixed(2)} times the payment`);
  });

  it('writes a spreadsheet with numbers as numbers, equal to compare', () => {
    const bill = sheetRows(path('tables/case.xlsx'), 'bill');
    const amount = bill[0].indexOf('amount');
    const lines = bill.slice(
      1,
      bill.findIndex(([label]) => label === 'in cash'),
    );
    expect(lines.length).toBeGreaterThan(15);
    const sum = lines.reduce((all, row) => all + (row[amount] as number), 0);
    expect(sum).toBeCloseTo(deepBed.capitalCost as number, 2);
    expect(bill.find(([label]) => label === 'together')?.[amount]).toBeCloseTo(
      deepBed.capitalCost as number,
      6,
    );
    const costs = sheetRows(path('tables/case.xlsx'), 'costs');
    const at = costs[0].indexOf('Deep bed');
    for (const name of ['annualCost', 'netCost', 'beddingCost', 'labourCost'])
      expect(costs.find(([id]) => id === name)?.[at], name).toBeCloseTo(deepBed[name] as number, 6);
  });

  it('writes the same rows as text, and drawings that hold no script', () => {
    const files = readdirSync(path('tables')).sort();
    expect(files).toEqual([
      'assumptions.csv',
      'bill.csv',
      'case.xlsx',
      'cash-flow.svg',
      'cash-months.csv',
      'cash.csv',
      'costs.csv',
      'costs.svg',
      'economics.csv',
      'gains.csv',
      'plan-2.svg',
      'plan-3.svg',
      'plan-4.svg',
      'section-2.svg',
      'section-3.svg',
      'section-4.svg',
      'stress.csv',
      'timber.csv',
      'tornado.svg',
    ]);
    const csv = readFileSync(path('tables/cash.csv'), 'utf8').trim().split('\n');
    expect(csv.length - 1).toBe(sheetRows(path('tables/case.xlsx'), 'cash').length - 1);
    for (const svg of files.filter((file) => file.endsWith('.svg')))
      expect(readFileSync(path(`tables/${svg}`), 'utf8')).toMatch(
        /^<svg [^>]*viewBox(?!.*<script).*<\/svg>\n$/s,
      );
    const assumptions = readFileSync(path('tables/assumptions.csv'), 'utf8');
    for (const basis of ['published', 'derived', 'common practice', 'from memory', 'invented'])
      expect(assumptions).toContain(`,${basis},`);
  });

  it('takes Letter, another proposal and another baseline', async () => {
    const { code } = await winterkeep(
      'case',
      LENDER,
      '--out',
      path('letter.pdf'),
      '--paper',
      'letter',
      '--scenario',
      'Slats',
      '--baseline',
      'Deep bed',
      '--draws',
      '0',
    );
    expect(code).toBe(0);
    const info = pdfInfo(path('letter.pdf'));
    expect(info).toMatch(/Page size:\s+612 x 792 pts/);
    expect(Number(/Pages:\s+(\d+)/.exec(info)?.[1])).toBeLessThanOrEqual(12);
    const words = plain(pdfText(path('letter.pdf')));
    expect(words).toContain('The case for “Slats”');
    expect(words).toContain('against “Deep bed”, own hours');
  });
});

describe('where there is no browser', () => {
  for (const [what, place] of [
    ['no such program', '/nowhere/chromium'],
    ['a program that is no browser', '/bin/false'],
  ] as const)
    it(`${what}: says so and leaves an HTML paper beside`, async () => {
      process.env.CHROMIUM_PATH = place;
      const name = what.replace(/\W+/g, '-');
      const { code, error } = await winterkeep('case', LENDER, '--out', path(`${name}.pdf`), '--draws', '0');
      expect(code).toBe(1);
      expect(error).toContain(`${name}.html instead`);
      expect(error).toContain('CHROMIUM_PATH');
      expect(existsSync(path(`${name}.pdf`))).toBe(false);
      const html = readFileSync(path(`${name}.html`), 'utf8');
      expect(html).toContain('What must be built');
      expect(html).not.toMatch(/<script|<link|<img|https?:\/\/(?!www\.w3\.org)/);
      expect(readdirSync(folder).filter((file) => file.endsWith('.part'))).toEqual([]);
    });
});

describe('bad input', () => {
  const refused = async (file: string, words: RegExp) => {
    const { code, error } = await winterkeep('case', file, '--out', path('none.pdf'), '--draws', '0');
    expect(code).toBe(1);
    expect(error).toMatch(words);
    expect(existsSync(path('none.pdf'))).toBe(false);
  };
  const paper = async (file: string): Promise<string> => {
    const { code, error } = await winterkeep('case', file, '--out', path('paper.html'), '--draws', '0');
    expect(error).toBe('');
    expect(code).toBe(0);
    return plain(readFileSync(path('paper.html'), 'utf8'));
  };

  it('a term of 0 years names the line', () =>
    refused(
      changed('term.md', ['years: 15, graceYears: 1', 'years: 0, graceYears: 0']),
      /term\.md:\d+ scenarios\.1\.finance\.loans\.0\.years/,
    ));
  it('a negative price names the line', () =>
    refused(
      changed('price.md', ['tonnes: 140 }', 'tonnes: 140, pricePerTonne: -5 }']),
      /price\.md:\d+ .*pricePerTonne.*-5/,
    ));
  it('a negative own price of a table row is refused', () =>
    refused(
      changed('negative.md', [
        'decide:',
        'coefficients:\n  - { id: roofPricePerM2, value: -5, because: a slip of the pen }\n\ndecide:',
      ]),
      /negative\.md:\d+ coefficients\.0\.value: .*found -5; allowed a number from 0 to /,
    ));
  it('currencies side by side are refused', () =>
    refused(
      changed('mixed.md', [
        'because: The shed the loan is asked for',
        'because: The shed the loan is asked for\n    farm: { money: { currency: SEK } }',
      ]),
      /mixed\.md.*currenc.*SEK/s,
    ));
  it('a currency without prices is refused', () =>
    refused(changed('currency.md', ['currency: CAD', 'currency: CHF']), /no table of prices.*CHF.*CAD/));
  it('a grant above the cost is said and only the cost counted', async () => {
    const html = await paper(changed('grant.md', ['grant: 40000', 'grant: 4000000']));
    expect(html).toMatch(/The grant is [\d.]+ CAD more than the works cost; only what they cost is counted/);
  });
  it('a scenario, paper or ending nobody knows is refused', async () => {
    expect(await winterkeep('case', LENDER, '--scenario', 'Tent')).toMatchObject({
      code: 1,
      error: expect.stringContaining('found Tent; allowed As it is'),
    });
    expect(await winterkeep('case', LENDER, '--paper', 'a5')).toMatchObject({
      code: 2,
      error: expect.stringContaining('allowed a4, letter'),
    });
    expect(await winterkeep('case', LENDER, '--out', 'case.doc')).toMatchObject({
      code: 2,
      error: expect.stringContaining('.pdf or .html'),
    });
    expect(
      await winterkeep('case', LENDER, '--out', path('no/such/case.html'), '--draws', '0'),
    ).toMatchObject({ code: 1, error: expect.stringContaining('folder does not exist') });
  });

  it('a price missing from the table is a marked gap in paper and tables, and no sum is made up', async () => {
    const { notebook, winters } = await openNotebook(LENDER);
    const tables = shippedTables();
    const prices = new Map(
      [...(tables.prices.get('CAD') ?? [])].filter(([id]) => id !== 'pushWallPricePerM2'),
    );
    const run = evaluate(notebook, { ...tables, prices: new Map([['CAD', prices]]) }, winters.winterOf);
    const asked = { notebook, run, index: 1, draws: { count: 0, seed: 1 }, day: '1 January 2026' };
    const report = (await gather(asked, answerHere(run))) as Report;
    const html = plain(paperDocument(report, 'a4'));
    expect(html).toContain('No price given for push walls in CAD');
    expect(html).toContain('A price is missing for “Deep bed” and “Deep bed, no grant”');
    expect(html).toContain('No sum can be given: no price given for push walls.');
    expect(run.results[1].values.capitalCost).toBeNull();
    const bill = caseTables(report)[0];
    expect(bill.rows.find(([label]) => label === 'push walls')?.[bill.head.indexOf('amount')]).toBeNull();
  });

  it('words of a stranger stay words', async () => {
    const html = await paper(
      changed(
        'words.md',
        [
          'title: A shed for sixty cows on the coast, for the lender',
          `title: '</style><script>alert(1)</script>'`,
        ],
        ['because: The shed the loan is asked for', `because: '<img src=x onerror=alert(1)> =1+1'`],
      ),
    );
    expect(html).not.toMatch(/<script|<img/);
    expect(html).toContain('&lt;script&gt;');
  });
});
