/**
 * How much a notebook may hold, looked at in one quick pass before anything is parsed: what is longer, deeper or fuller of marks
 * than anyone writes would keep the page from answering. How far each goes is our own judgement: several times the longest
 * notebook shipped, and little enough to be read within 200 ms.
 */

/** Lines of front matter or a cell, and what one line may open. */
const MOST_LINES = 4000;
const MOST_OPENED = 200;
/** List or key marks one after the other on one line: the parser goes one level deeper for each. */
const NESTED = /(?:[-?][ \t]+){31}/;
const MOST_CELL = 5000;

export interface Bound {
  /** 0-based line within what was looked at. */
  readonly line: number;
  readonly found: string;
  readonly allowed: string;
}

/** What makes YAML too deep or too long to be parsed at once; undefined where nothing does. */
export function yamlBound(source: string): Bound | undefined {
  let line = 0;
  for (let from = 0; from <= source.length; line++) {
    const end = source.indexOf('\n', from);
    const to = end < 0 ? source.length : end;
    let opened = 0;
    for (let k = from; k < to; k++) {
      const code = source.charCodeAt(k);
      if (code === 91 || code === 123) opened++;
    }
    if (opened > MOST_OPENED)
      return {
        line,
        found: `${opened} brackets opened on one line`,
        allowed: `${MOST_OPENED}; a line for each entry`,
      };
    if (NESTED.test(source.slice(from, Math.min(to, from + 2000))))
      return { line, found: 'lists nested dozens deep', allowed: '30 levels' };
    from = to + 1;
  }
  return line > MOST_LINES + 1
    ? { line: 0, found: `${line} lines`, allowed: `at most ${MOST_LINES}` }
    : undefined;
}

export const cellBound = (content: string): Bound | undefined =>
  content.length > MOST_CELL
    ? { line: 0, found: `${content.length} letters`, allowed: `at most ${MOST_CELL}` }
    : yamlBound(content);

const MARKS = new Set([...'[]*_`<|&!\\~'].map((mark) => mark.charCodeAt(0)));

/** Paragraphs, lists, tables: lines without an empty one between. Longer, or fuller of marks, are shown as they are written. */
const MOST_PARAGRAPH = 20_000;
const MOST_MARKS_IN_ONE = 3000;
const MOST_LINES_IN_ONE = 1500;
/** A table is filled up to the columns of its first line, in every row. */
const MANY_COLUMNS = /(?:\|[^|\n]*){60}/;

/** Whether a paragraph can be set; else it is shown as text. */
export function canBeSet(paragraph: string): boolean {
  if (paragraph.length > MOST_PARAGRAPH || MANY_COLUMNS.test(paragraph.slice(0, 2000))) return false;
  let lines = 0;
  for (let at = paragraph.indexOf('\n'); at >= 0; at = paragraph.indexOf('\n', at + 1)) lines++;
  return lines <= MOST_LINES_IN_ONE && marksIn(paragraph) <= MOST_MARKS_IN_ONE;
}

function marksIn(text: string): number {
  let marks = 0;
  for (let k = 0; k < text.length; k++) if (MARKS.has(text.charCodeAt(k))) marks++;
  return marks;
}

const MOST_WORDS = 200_000;
const MOST_MARKS = 20_000;
const MOST_PARAGRAPHS = 2000;
const MOST_FENCES = 120;
/** Each is written anew whenever an input is turned. */
const MOST_VALUES = 1000;
const FENCE = /^ {0,3}(`{3,}|~{3,})/;

/** What of the body is more than a page can hold: letters, marks and paragraphs outside of fences, and the fences. */
export function bodyBound(source: string): Bound | undefined {
  let [line, letters, marks, paragraphs, fences, values] = [0, 0, 0, 0, 0, 0];
  let fence = '';
  let empty = true;
  for (let from = 0; from <= source.length; line++) {
    const end = source.indexOf('\n', from);
    const to = end < 0 ? source.length : end;
    const opening = FENCE.exec(source.slice(from, Math.min(to, from + 200)))?.[1];
    if (fence !== '') {
      if (opening?.startsWith(fence)) fence = '';
    } else if (opening !== undefined) {
      fence = opening;
      fences++;
    } else {
      const words = source.slice(from, to);
      letters += words.length + 1;
      marks += marksIn(words);
      for (let at = words.indexOf('`='); at >= 0; at = words.indexOf('`=', at + 2)) values++;
      const blank = words.trim() === '';
      // A heading or a rule stands by itself, with or without an empty line.
      if (!blank && (empty || /^ {0,3}(#|---|===|\*\*\*)/.test(words))) paragraphs++;
      empty = blank;
    }
    for (const [found, most, words] of [
      [letters, MOST_WORDS, 'letters'],
      [marks, MOST_MARKS, 'marks such as [ * _ and |'],
      [paragraphs, MOST_PARAGRAPHS, 'paragraphs'],
      [fences, MOST_FENCES, 'figures and fences'],
      [values, MOST_VALUES, 'values by name'],
    ] as const)
      if (found > most) return { line, found: `more than ${most} ${words}`, allowed: `at most ${most}` };
    from = to + 1;
  }
  return undefined;
}
