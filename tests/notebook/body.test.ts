import { describe, expect, it } from 'vitest';
import { CELL_KINDS, CELL_OPTIONS } from '../../src/notebook/cells.ts';
import { isInlineValue, readInlineValue } from '../../src/notebook/inline.ts';
import { proseParts } from '../../src/notebook/markdown.ts';
import { type Notebook, readNotebook } from '../../src/notebook/read.ts';
import { shipped } from './shipped.ts';
import { SMALL } from './small.ts';

const blocksOf = (text: string) => (readNotebook(text, 'small.md').notebook as Notebook).blocks;

describe('cells', () => {
  it('are fences of their own whose first word is a kind; all else is prose', () => {
    expect(blocksOf(SMALL).map((b) => [b.type, b.type === 'cell' ? b.kind : '', b.line])).toEqual([
      ['prose', '', 34],
      ['cell', 'ledger', 40],
      ['prose', '', 43],
      ['cell', 'sweep', 53],
    ]);
    expect(blocksOf(SMALL).flatMap((b) => (b.type === 'cell' ? [b.options] : []))).toEqual([
      { element: 'nitrogen' },
      { over: 'rainFactor', measure: 'netCost', steps: 41 },
    ]);
  });

  it('stand where they say: text, offsets and lines agree in every shipped notebook', () => {
    for (const text of [SMALL, ...shipped.map((s) => s.text)])
      for (const block of blocksOf(text)) {
        expect(text.slice(block.from, block.to)).toBe(block.text);
        expect(text.slice(0, block.from).split('\n').length).toBe(block.line);
      }
  });

  it('that cannot be read are kept, to be shown in place', () => {
    const { notebook, problems } = readNotebook(
      SMALL.replace('element: nitrogen', 'element: gold'),
      'small.md',
    );
    expect(notebook?.blocks[1]).toMatchObject({
      type: 'broken',
      kind: 'ledger',
      line: 40,
      text: '```ledger\nelement: gold\n```\n',
    });
    expect(problems).toHaveLength(1);
  });

  it.each([
    ['sweeep', 'sweep'],
    ['Ledger', 'ledger'],
    ['card', 'cards'],
    ['rian', 'rain'],
    ['draw', 'draws'],
    ['calender', 'calendar'],
    ['cash-flow', 'cashflow'],
  ])('of the mistyped kind %s are told, not passed over: %s', (written, kind) => {
    const text = SMALL.replace('```ledger', `\`\`\`${written}`);
    const { notebook, problems } = readNotebook(text, 'small.md');
    expect(notebook?.blocks[1]).toMatchObject({ type: 'broken', kind: written, line: 40 });
    expect(problems).toMatchObject([
      { what: `you wrote \`${written}\`: did you mean \`${kind}\`?`, file: 'small.md', line: 40 },
    ]);
  });

  it.each(
    'sh bash text txt plain json yaml toml csv tsv html css js ts sql python py r md markdown diff ini tex math mermaid'.split(
      ' ',
    ),
  )('are no fences of code: %s', (word) => {
    const { ok, notebook } = readNotebook(SMALL.replace('```ledger', `\`\`\`${word}`), 'small.md');
    expect(ok).toBe(true);
    expect(notebook?.blocks[0]).toMatchObject({ type: 'prose', line: 34 });
    expect(notebook?.blocks[0].text).toContain(`\`\`\`${word}\n`);
  });

  it('of every kind but those that need a measure can stand without options', () => {
    const needing = CELL_KINDS.filter((kind) => !CELL_OPTIONS[kind].safeParse({}).success);
    expect(needing).toEqual(['compare', 'sweep', 'flip', 'draws', 'rank']);
  });

  it('of every kind but the diary appear in the shipped notebooks', () => {
    const used = new Set(
      shipped.flatMap(({ text }) => blocksOf(text).map((b) => (b.type === 'cell' ? b.kind : ''))),
    );
    expect(CELL_KINDS.filter((kind) => !used.has(kind))).toEqual(['diary']);
  });
});

describe('values by name', () => {
  it('are found in the prose with their lines', () => {
    const [first] = blocksOf(SMALL);
    expect(first.type === 'prose' && first.values).toEqual([
      { quantity: 'nitrogenKeptKg', scenario: 'Deep bed', line: 37 },
      { quantity: 'nitrogenExcretedKg', scenario: null, line: 38 },
    ]);
  });

  it.each([
    ['=netCost of Deep bed, no grant', { quantity: 'netCost', scenario: 'Deep bed, no grant' }],
    ['= headCount', { quantity: 'headCount', scenario: null }],
    ['=a of b of c', { quantity: 'a', scenario: 'b of c' }],
  ])('%s', (code, expected) => {
    expect(readInlineValue(code, 3)).toEqual({ ...expected, line: 3 });
  });

  it.each(['=1+2', '=a+b', '=a of', '=', '=SUM(A1)', '=a.b', '=constructor()'])('%s is refused', (code) => {
    expect(isInlineValue(code)).toBe(true);
    expect(readInlineValue(code, 1)).toBeUndefined();
  });
});

describe('prose as HTML', () => {
  const html = (text: string) =>
    proseParts(text, ({ quantity, scenario }) => `<${quantity}|${scenario}>`).join('');

  it('shows values as buttons whose text is escaped', () => {
    expect(html('keeps `=netCost of A "b" <c>`.')).toBe(
      '<p>keeps <button type="button" class="inline-value" data-quantity="netCost" data-scenario="A &quot;b&quot; &lt;c&gt;">&lt;netCost|A &quot;b&quot; &lt;c&gt;&gt;</button>.</p>\n',
    );
  });

  it('lets through no HTML, no script address and no picture', () => {
    const made = html(
      '<script>x</script> <img src=x onerror=y> [a](javascript:b) ![p](http://example.org/p.png) [ok](other.md)',
    );
    expect(made).not.toMatch(/<script|<img|href="javascript/);
    expect(made).toContain('&lt;script&gt;');
    expect(made).toContain('<a href="other.md" rel="noopener noreferrer">ok</a>');
  });
});
