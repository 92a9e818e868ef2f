/** The body part by part: each paragraph, heading, list or table of the prose, and each cell, as they stand in the text. */
import type { Block } from './body.ts';
import { markdown } from './markdown.ts';
import type { Segment } from './segments.ts';

export interface BodyPart extends Segment {
  /** The cell it is, or the prose it belongs to. */
  readonly block: Block;
  /** Line of the file it begins on. */
  readonly line: number;
}

/** All parts in their order, each without the line end it closes with. What belongs to none, such as the target of a link, is left out. */
export const partsOf = (blocks: readonly Block[]): BodyPart[] =>
  blocks.flatMap((block) => (block.type === 'prose' ? paragraphsOf(block) : [whole(block)]));

function whole(block: Block): BodyPart {
  return { block, line: block.line, from: block.from, to: block.from + block.text.trimEnd().length };
}

/** Paragraphs, headings, lists … of a stretch of prose. */
export function paragraphsOf(block: Block): BodyPart[] {
  const starts = [0];
  const { text } = block;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return markdown.parse(text, {}).flatMap((token) => {
    if (token.level !== 0 || token.nesting < 0 || !token.map) return [];
    const [first, end] = token.map;
    const from = starts[first];
    const to = from + text.slice(from, starts[end] ?? text.length).trimEnd().length;
    return [{ block, line: block.line + first, from: block.from + from, to: block.from + to }];
  });
}
