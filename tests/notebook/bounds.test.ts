// How much a notebook may hold: what is beyond is said with its line, and the rest stays as it is.
import { describe, expect, it } from 'vitest';
import { proseParts } from '../../src/notebook/markdown.ts';
import { partsOf } from '../../src/notebook/parts.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { formatProblem } from '../../src/units/problem.ts';
import { BOMBS, FRONT } from '../hostile/bombs.ts';
import { SMALL } from './small.ts';

const read = (text: string) => readNotebook(text, 'x.md');
const body = (words: string) => read(`${FRONT}\n${words}\n`);
const html = (words: string) => proseParts(words, () => '1').join('');

describe('what is more than a page can hold', () => {
  it.each([
    ['letters', 'word '.repeat(39).concat('\n\n').repeat(1030), 'more than 200000 letters'],
    ['marks', '*a '.repeat(200).concat('\n\n').repeat(101), 'more than 20000 marks such as [ * _ and |'],
    ['paragraphs', 'a\n\n'.repeat(2001), 'more than 2000 paragraphs'],
    ['headings without a line between', '# a\n'.repeat(2001), 'more than 2000 paragraphs'],
    ['values by name', '`=netCost` '.repeat(5).concat('\n\n').repeat(201), 'more than 1000 values by name'],
    ['fences', '```js\n```\n'.repeat(121), 'more than 120 figures and fences'],
  ])('%s are counted and said, and the figures above stay', (_, words, found) => {
    const { ok, notebook, problems } = body(words);
    expect(ok).toBe(false);
    expect(problems).toMatchObject([{ found, what: expect.stringContaining('more than a page can hold') }]);
    expect(problems[0].line).toBeGreaterThan(100);
    expect(notebook?.scenarios.length).toBe(2);
    expect(notebook?.blocks.map(({ type }) => type)).toEqual(['broken']);
  });

  it('is not what travels in a fence: days of weather are no words', () => {
    const days = '2020-01-01,1,2,3\n'.repeat(7700);
    expect(body(`Words.\n\n\`\`\`weather own.csv\nday,rain\n${days}\`\`\``).problems).toEqual([]);
  });

  it.each([
    [
      'options',
      `\`\`\`sources\ncaption: ${'word '.repeat(1200)}\n\`\`\``,
      /sources: the figure’s options are too long.*at most 5000/,
    ],
    [
      'brackets',
      `\`\`\`ladder\nscenarios: ${'['.repeat(201)}\n\`\`\``,
      /too long or too deep; found 201 brackets/,
    ],
  ])('a cell with too many %s is said by itself', (_, words, said) => {
    const { notebook, problems } = body(words);
    expect(problems.map(formatProblem).join('\n')).toMatch(said);
    expect(notebook?.blocks.map(({ type }) => type)).toEqual(['broken']);
  });

  it.each([
    ['lines', `${'# a\n'.repeat(4001)}`, /found 40\d\d lines; allowed at most 4000/],
    ['dashes', `a: ${'- '.repeat(31)}b\n`, /found lists nested dozens deep; allowed 30 levels/],
    ['brackets', `a: ${'['.repeat(201)}\n`, /found 201 brackets opened on one line/],
  ])('front matter with too many %s', (_, words, said) => {
    expect(
      read(SMALL.replace('scenarios:\n', `${words}scenarios:\n`))
        .problems.map(formatProblem)
        .join('\n'),
    ).toMatch(said);
  });

  it('unknown keys by the thousand are named for the first, and the rest counted', () => {
    const { problems } = read(
      SMALL.replace(
        'scenarios:\n',
        `${Array.from({ length: 3000 }, (_, k) => `k${k}: 1\n`).join('')}scenarios:\n`,
      ),
    );
    expect(problems.length).toBeLessThan(60);
    expect(problems.some(({ what }) => what === 'and 2950 more keys that are not known')).toBe(true);
  });
});

describe('a paragraph that cannot be set', () => {
  it.each([
    ['its length', 'word '.repeat(4100)],
    ['its marks', '**a** '.repeat(800)],
    ['its lines', 'a\n'.repeat(1600)],
    ['its columns', `${'|a'.repeat(70)}|\n${'|-'.repeat(70)}|`],
  ])('for %s stands as it is written, and the next one is set', (_, words) => {
    const text = `## Before\n\n${words}\n\n**after**\n`;
    const set = html(text);
    expect(set).toContain('<h2>Before</h2>');
    expect(set).toContain('<pre class="as-text" tabindex="0">');
    expect(set).toContain('<strong>after</strong>');
    expect(set.match(/<strong>/g)).toHaveLength(1);
    expect(set.length).toBeLessThan(6000);
    // As many parts as are set, each where it stands.
    const { notebook } = body(text);
    expect(partsOf(notebook?.blocks ?? []).map(({ from, to }) => notebook?.text.slice(from, to))).toEqual([
      '## Before',
      words.trimEnd(),
      '**after**',
    ]);
  });

  it('never swallows the fence behind it', () => {
    const { notebook } = body(`${'a\n'.repeat(1600)}\`\`\`ledger\n\`\`\``);
    expect(notebook?.blocks.map(({ type }) => type)).toEqual(['prose', 'cell']);
  });
});

describe('links', () => {
  it.each(['https://a.example', 'http://a.example', 'mailto:a@b.example', 'other.md', '#words', './a/b.md'])(
    'to %s lead there',
    (to) => {
      expect(html(`[a](${to})`)).toContain(`href="${to}"`);
    },
  );
  it.each([
    'javascript:x',
    'JaVaScRiPt:x',
    'java&#115;cript:x',
    'blob:x',
    'file:///x',
    'vbscript:x',
    'data:text/html,x',
    'data:image/png;base64,x',
    'ms-word:x',
    'intent:x',
    'tel:1',
  ])('to %s are words', (to) => {
    expect(html(`[a](${to})`)).not.toContain('href');
  });
});

describe('bombs', () => {
  it.each(Object.keys(BOMBS))('%s: a notebook or problems that can be read', (name) => {
    const { notebook, problems } = read(BOMBS[name]());
    for (const problem of problems) {
      expect(formatProblem(problem).length).toBeLessThan(1500);
      expect(formatProblem(problem)).not.toMatch(/call stack|RangeError/);
    }
    expect(notebook !== undefined || problems.length > 0).toBe(true);
    for (const { type, text } of notebook?.blocks ?? [])
      if (type === 'prose') expect(html(text).length).toBeLessThan(1_000_000);
  });
});
