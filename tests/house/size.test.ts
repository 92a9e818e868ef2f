/** No file of the product over 400 lines, no function over 80, unless the reason is said. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));
const LINES = 400;
const FUNCTION_LINES = 80;

/** Longer files and why; what is no longer too long must leave the list. */
const LONG_FILES: Readonly<Record<string, string>> = {};

/** Files with one long function and why; a comment `long: <reason>` in the lines before a function says the same. */
const LONG_FUNCTIONS: Readonly<Record<string, string>> = {
  'model/weather/soilWater.ts':
    'one walk over days; what it carries from day to day would be handed to every part',
  'plots/cashFlow.ts': 'one drawing: scales, axes and marks share a frame',
  'plots/costStack.ts': 'one drawing: scales, axes and marks share a frame',
  'plots/ladder.ts': 'one drawing: scales, axes and marks share a frame',
  'plots/ledger.ts': 'one drawing: scales, axes and marks share a frame',
  'plots/sweepLines.ts': 'one drawing: scales, axes and marks share a frame',
  'plots/tornado.ts': 'one drawing: scales, axes and marks share a frame',
  'store/opening.ts': 'the open notebook is one closure over its signals',
  'tables/weatherApply.ts': 'one pass over the days of a file, each refused or taken where it stands',
  'worker/explorer.ts': 'the explorer is one closure over its port and its queue',
};

interface Found {
  readonly line: number;
  readonly lines: number;
  readonly head: string;
  readonly reason?: string;
}

/**
 * Functions longer than allowed, in text laid out by the formatter: a body opens at the end of a line after `)`, a
 * result type or `=>` and closes where a brace stands at the indent of that line.
 */
function longFunctions(text: string, most = FUNCTION_LINES): Found[] {
  const lines = text.split('\n');
  return lines.flatMap((head, k): Found[] => {
    const opened = /^(\s*)(.*\S)\s*\{$/.exec(head);
    if (!opened || !/(=>|\)(\s*:[^=]+)?)$/.test(opened[2])) return [];
    if (/^(\}\s*)?(else\s+)?(if|for|while|switch|catch)\b/.test(opened[2])) return [];
    const end = lines.findIndex((line, at) => at > k && line.startsWith(`${opened[1]}}`));
    const length = (end < 0 ? lines.length : end) - k + 1;
    if (length <= most) return [];
    const reason = /\b[Ll]ong: (\S.*?)(\*\/)?$/m.exec(lines.slice(Math.max(0, k - 8), k).join('\n'))?.[1];
    return [{ line: k + 1, lines: length, head: head.trim(), reason }];
  });
}

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /\.(ts|mjs)$/.test(file))
  .map((file) => ({ file, text: readFileSync(`${SRC}${file}`, 'utf8') }));

describe('the finder of long functions', () => {
  const body = (count: number) => Array.from({ length: count }, (_, k) => `    step(${k});`).join('\n');
  it.each([
    ['a function', (n: number) => `export function f(a: number): string {\n${body(n)}\n}\n`],
    ['a method', (n: number) => `class A {\n  #f({ a, b }: B) {\n${body(n)}\n  }\n}\n`],
    ['an arrow', (n: number) => `const f = (a: number) => {\n${body(n)}\n};\n`],
    [
      'a head over lines',
      (n: number) => `function f(\n  a: number,\n): Map<string, number> {\n${body(n)}\n}\n`,
    ],
    ['a generator of a class', (n: number) => `class A {\n  *f(): Generator<number> {\n${body(n)}\n  }\n}\n`],
  ])('counts %s from head to brace', (_, text) => {
    expect(longFunctions(text(78))).toEqual([]);
    expect(longFunctions(text(79)).map(({ lines }) => lines)).toEqual([81]);
  });

  it('takes a reason said before, and no long loop or list for a function', () => {
    expect(longFunctions(`// long: a walk\nfunction f() {\n${body(90)}\n}\n`)[0].reason).toBe('a walk');
    expect(longFunctions(`for (const a of b()) {\n${body(90)}\n}\nconst c = {\n${body(90)}\n};\n`)).toEqual(
      [],
    );
  });
});

describe('the product', () => {
  const long = files.filter(({ text }) => text.trimEnd().split('\n').length > LINES).map(({ file }) => file);
  const wide = files.flatMap(({ file, text }) => longFunctions(text).map((found) => ({ file, ...found })));

  it(`has no file over ${LINES} lines but those with a reason`, () => {
    expect(long.filter((file) => !(file in LONG_FILES))).toEqual([]);
  });

  it(`has no function over ${FUNCTION_LINES} lines but those with a reason`, () => {
    const bad = wide.filter(({ file, reason }) => !reason && !(file in LONG_FUNCTIONS));
    expect(bad.map(({ file, line, lines, head }) => `${file}:${line} ${lines} lines: ${head}`)).toEqual([]);
  });

  it('has none of the listed twice: one function a file', () => {
    const unsaid = wide.filter(({ reason }) => !reason).map(({ file }) => file);
    expect(unsaid.filter((file, k) => unsaid.indexOf(file) !== k)).toEqual([]);
  });

  it('has grown no list of excuses: what is short again leaves it', () => {
    expect(Object.keys(LONG_FILES).filter((file) => !long.includes(file))).toEqual([]);
    expect(Object.keys(LONG_FUNCTIONS).filter((f) => !wide.some(({ file }) => file === f))).toEqual([]);
  });
});
