/** First look at a weather file: is it text, is it small enough, which lines does it have. */
import type { Problem } from '../units/problem.ts';
import { MOST_LINES } from './weatherSeries.ts';

export interface TextLine {
  /** 1-based. */
  readonly line: number;
  readonly text: string;
}

/** The lines that hold anything, or the problem that stops the reading. */
export function linesOf(file: string, text: string): { lines: TextLine[]; problem?: Problem } {
  const packed = packing(text);
  if (packed)
    return {
      lines: [],
      problem: {
        what: `the file is ${packed}, not text`,
        file,
        found: packed,
        allowed: 'plain text with one day a line',
        todo: 'open it in a spreadsheet or unpack it, and save the days as CSV',
      },
    };
  const count = countLines(text);
  if (count > MOST_LINES)
    return {
      lines: [],
      problem: {
        what: 'the file is longer than any daily series',
        file,
        found: `${count} lines`,
        allowed: `at most ${MOST_LINES} lines, one a day`,
        todo: 'hourly values need to be summed to days first; or cut the years you need',
      },
    };
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((line, k) => ({ line: k + 1, text: line }))
    .filter(({ text: line }) => line.trim() !== '');
  if (lines.length === 0)
    return {
      lines,
      problem: {
        what: 'the file is empty',
        file,
        found: 'no line',
        todo: 'choose a file with daily rain and temperature',
      },
    };
  return { lines };
}

function packing(text: string): string | undefined {
  const head = text.slice(0, 4096);
  if (head.startsWith('PK')) return 'a workbook or zip archive';
  if (head.startsWith('%PDF')) return 'a PDF';
  if (head.startsWith('\u001f\u008b') || head.startsWith('\u001f\uFFFD')) return 'a gzip archive';
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  const odd = head.match(/[\u0000-\u0008\u000e-\u001f\uFFFD]/g)?.length ?? 0;
  return odd > head.length / 100 ? 'binary' : undefined;
}

function countLines(text: string): number {
  let count = 1;
  for (let at = text.indexOf('\n'); at >= 0 && count <= 10 * MOST_LINES; at = text.indexOf('\n', at + 1))
    count++;
  return count;
}
