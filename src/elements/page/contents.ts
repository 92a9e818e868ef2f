/** What stands on the page, in its order: for the contents at the side. */
import { CELL_WORDS } from '../../notebook/cellWords.ts';
import { type BodyPart, partsOf } from '../../notebook/parts.ts';
import type { Notebook } from '../../notebook/read.ts';

export interface ContentsEntry {
  /** Id of the place it leads to. */
  readonly to: string;
  readonly words: string;
  /** 1 for the page's own sections and the headings of the text, 2 for a figure under one. */
  readonly rank: 1 | 2;
}

/** What the page adds at its end where the text has none, in the order it stands. */
const ADDED = [
  ['ledger', 'Where each nutrient went'],
  ['compare', 'Side by side'],
  ['checks', 'Limits checked'],
  ['cautions', 'Before you act on this'],
  ['sources', 'What the figures stand on'],
] as const;

/** A list of more leads nowhere faster than the text itself. */
const MOST_LISTED = 250;

export function contentsOf({ blocks, title }: Notebook): readonly ContentsEntry[] {
  const has = (kind: string) => blocks.some((block) => block.type === 'cell' && block.kind === kind);
  return [
    { to: 'verdict', words: 'Which way', rank: 1 },
    { to: 'cards', words: 'Scenarios side by side', rank: 1 },
    ...partsOf(blocks)
      .flatMap((part, place) => entryOf(part, place, title))
      .slice(0, MOST_LISTED),
    ...ADDED.filter(([kind]) => !has(kind)).map(([to, words]) => ({ to, words, rank: 1 as const })),
  ];
}

function entryOf({ block, from, to }: BodyPart, place: number, title: string): ContentsEntry[] {
  const at = `place-${place}`;
  if (block.type === 'broken') return [{ to: at, words: `To be mended: ${block.kind}`, rank: 2 }];
  if (block.type === 'cell')
    return block.kind === 'cards' && Object.keys(block.options).length === 0
      ? []
      : [{ to: at, words: CELL_WORDS[block.kind].name, rank: 2 }];
  const [, heading] = /^#{1,6} +(.+)/.exec(block.text.slice(from - block.from, to - block.from)) ?? [];
  const words = heading?.replace(/[*_`]/g, '').trim();
  return words === undefined || words === title.trim() ? [] : [{ to: at, words, rank: 1 }];
}
