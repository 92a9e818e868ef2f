/** Which words and which figures of a notebook stand side by side. */
import type { Block } from '../../notebook/body.ts';
import type { CellKind } from '../../notebook/cells.ts';
import type { BodyPart } from '../../notebook/parts.ts';

/** Words and the figures that follow them, by their places among the parts. */
export interface Pair {
  readonly said: readonly number[];
  readonly shown: readonly number[];
}

/** Tables and papers too wide to stand beside words. */
const WIDE: ReadonlySet<CellKind> = new Set([
  'bill', 'calendar', 'cards', 'case', 'cashflow', 'checks', 'costs', 'diary', 'sources',
]); // biome-ignore format: one short list

/** What reads at a glance from across a room; papers and lists to work through are left out. */
const BOARD: ReadonlySet<CellKind> = new Set([
  'bed', 'cashflow', 'compare', 'costs', 'draws', 'flip', 'ladder', 'ledger', 'plan', 'rain', 'section', 'sweep',
]); // biome-ignore format: one short list

export const isForBoard = (block: Block): boolean => block.type === 'cell' && BOARD.has(block.kind);

/** A bare `cards` cell shows nothing of its own: the cards stand above the text. */
const isShown = ({ block }: BodyPart) =>
  block.type === 'broken' ||
  (block.type === 'cell' && (block.kind !== 'cards' || Object.keys(block.options).length > 0));

const isWide = ({ block }: BodyPart) =>
  block.type === 'broken' || (block.type === 'cell' && WIDE.has(block.kind));

const startsSection = ({ block, from }: BodyPart) =>
  block.type === 'prose' && /^#{1,6} /.test(block.text.slice(from - block.from));

/**
 * Parts in their order, cut where words begin again after figures, where a heading stands, and around what needs
 * the whole measure. Every part is in exactly one pair.
 */
export function pairsOf(parts: readonly BodyPart[]): Pair[] {
  const pairs: { said: number[]; shown: number[]; wide: boolean }[] = [];
  parts.forEach((part, place) => {
    const last = pairs.at(-1);
    if (!isShown(part)) {
      if (last && last.shown.length === 0 && !startsSection(part)) last.said.push(place);
      else pairs.push({ said: [place], shown: [], wide: false });
    } else if (isWide(part)) pairs.push({ said: [], shown: [place], wide: true });
    else if (last && !last.wide) last.shown.push(place);
    else pairs.push({ said: [], shown: [place], wide: false });
  });
  return pairs;
}
