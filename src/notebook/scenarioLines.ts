/** Where each scenario stands in the front matter, with the comments that belong to it. */
import { isMap, isSeq, type Node, parseDocument } from 'yaml';
import { findFrontMatter, isProblem } from './frontMatter.ts';
import type { Segment } from './segments.ts';

export interface ScenarioLines {
  readonly segments: readonly Segment[];
  /** Column of the dashes; undefined where the list is written between brackets. */
  readonly indent: number | undefined;
}

/** Undefined where the text has no list of scenarios that can be found line by line. */
export function scenarioLines(text: string): ScenarioLines | undefined {
  const front = findFrontMatter(text, '');
  if (isProblem(front)) return undefined;
  const { source, from } = front;
  const document = parseDocument(source, {
    version: '1.2',
    schema: 'core',
    prettyErrors: false,
    logLevel: 'silent',
  });
  const list = isMap(document.contents) ? document.contents.get('scenarios', true) : undefined;
  if (!isSeq(list) || list.items.length === 0) return undefined;
  const items = list.items as Node[];
  const shift = ({ from: a, to: b }: Segment): Segment => ({ from: a + from, to: b + from });
  if (list.flow)
    return {
      indent: undefined,
      segments: items.map((item) => shift({ from: item.range?.[0] ?? 0, to: item.range?.[1] ?? 0 })),
    };
  const start = list.range?.[0] ?? 0;
  const indent = start - (source.lastIndexOf('\n', start - 1) + 1);
  const found = blockSegments(source, items, indent);
  return found && { indent, segments: found.map(shift) };
}

interface Line extends Segment {
  readonly text: string;
}

function blockSegments(source: string, items: readonly Node[], indent: number): Segment[] | undefined {
  const lines = linesOf(source);
  const lineAt = (offset: number) => lines.findIndex(({ from, to }) => offset >= from && offset <= to);
  const dash = new RegExp(`^ {${indent}}-(\\s|$)`);
  const firsts = items.map((item) => {
    let at = lineAt(item.range?.[0] ?? 0);
    while (at >= 0 && !dash.test(lines[at].text)) at--;
    return at;
  });
  if (firsts.some((at) => at < 0)) return undefined;
  const depth = (line: Line) => line.text.search(/\S/);
  const isComment = (line: Line | undefined) => line?.text.trimStart().startsWith('#') ?? false;
  return items.map((item, k) => {
    let first = firsts[k];
    // Comments right above the dash, no deeper than it, speak of what follows.
    while (first > 0 && isComment(lines[first - 1]) && depth(lines[first - 1]) <= indent) first--;
    let last = lineAt(Math.max(0, endOf(source, item) - 1));
    // Deeper comments right below, such as a key set aside, belong to what they stand under.
    while (isComment(lines[last + 1]) && depth(lines[last + 1]) > indent) last++;
    return { from: lines[first].from, to: lines[last].to };
  });
}

function endOf(source: string, node: Node): number {
  let end = node.range?.[1] ?? 0;
  while (end > (node.range?.[0] ?? 0) && /\s/.test(source[end - 1])) end--;
  return end;
}

/** Lines without their line ends. */
function linesOf(source: string): Line[] {
  const out: Line[] = [];
  for (let from = 0; from <= source.length; ) {
    const feed = source.indexOf('\n', from);
    const next = feed < 0 ? source.length : feed;
    const to = next > from && source[next - 1] === '\r' ? next - 1 : next;
    out.push({ from, to, text: source.slice(from, to) });
    from = next + 1;
  }
  return out;
}
