/** Where the front matter stands in a notebook's text. */
import type { Problem } from '../units/problem.ts';

/** Parsing must stay fast on hostile text, and no farm needs as much. */
const MAX_FRONT_MATTER = 150_000;

export interface FrontMatter {
  /** The YAML between the two marks, line ends included. */
  readonly source: string;
  /** Offset of `source` in the text. */
  readonly from: number;
  /** 1-based line of the text on which `source` begins. */
  readonly firstLine: number;
  /** Offset at which the body begins, after the closing mark's line. */
  readonly bodyFrom: number;
}

const OPENING = /^\uFEFF?---[ \t]*\r?\n/;
const CLOSING = /^---[ \t]*\r?$/gm;

/** Finds the front matter: the file's first line is `---`, and a later line `---` closes it. */
export function findFrontMatter(text: string, file: string): FrontMatter | Problem {
  const opening = OPENING.exec(text);
  if (!opening)
    return {
      what: 'there is no front matter',
      file,
      line: 1,
      found: quoteStart(text),
      allowed: '---',
      todo: 'the first line of a notebook is ---, then the farm and scenarios in YAML, then --- again',
    };
  const from = opening[0].length;
  CLOSING.lastIndex = from;
  const closing = CLOSING.exec(text);
  if (!closing)
    return {
      what: 'the front matter is not closed',
      file,
      line: 1,
      found: 'the end of the file',
      allowed: 'a line ---',
      todo: 'put --- on a line of its own after the last scenario',
    };
  const source = text.slice(from, closing.index);
  if (source.length > MAX_FRONT_MATTER)
    return {
      what: 'the front matter is too long',
      file,
      line: 2,
      found: `${Math.round(source.length / 1000)} kB`,
      allowed: `at most ${MAX_FRONT_MATTER / 1000} kB`,
    };
  const closed = closing.index + closing[0].length;
  return { source, from, firstLine: 2, bodyFrom: text[closed] === '\n' ? closed + 1 : closed };
}

export const isProblem = (found: FrontMatter | Problem): found is Problem => 'what' in found;

function quoteStart(text: string): string {
  const line = text
    .replace(/^\uFEFF/, '')
    .split('\n', 1)[0]
    .trim();
  return line === '' ? 'an empty line' : `"${line.length > 40 ? `${line.slice(0, 40)}…` : line}"`;
}
