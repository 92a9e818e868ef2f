/** Where the options of a cell stand in the text, and how a cell is written. */
import type { Block } from './body.ts';
import type { Segment } from './segments.ts';
import { inFlow } from './yamlWrite.ts';

/** What stands between the marks of a cell's fence; empty where it has no options. */
export function cellYaml({ text, from }: Pick<Block, 'text' | 'from'>): Segment {
  const opening = text.indexOf('\n');
  if (opening < 0) return { from: from + text.length, to: from + text.length };
  const last = text.trimEnd().lastIndexOf('\n') + 1;
  const mark = /^ {0,3}(`{3,}|~{3,})/.exec(text)?.[1] ?? '```';
  const closing = new RegExp(`^ {0,3}\\${mark[0]}{${mark.length},}[ \\t]*$`);
  const closed = last > opening && closing.test(text.slice(last).trimEnd());
  return { from: from + opening + 1, to: from + (closed ? last : text.length) };
}

/** A cell as it is written: the fence, and an option a line. */
export function cellWritten(kind: string, options: Readonly<Record<string, unknown>>, eol: string): string {
  const lines = Object.entries(options).map(([key, value]) => `${key}: ${inFlow(value)}`);
  return [`\`\`\`${kind}`, ...lines, '```'].join(eol);
}
