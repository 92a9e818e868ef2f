/** Shares that make one whole: where one is changed, the others take up the rest in the proportion they stood in. */

import { optionWords } from '../notebook/inputWords.ts';
import type { Path } from '../notebook/path.ts';
import type { Notebook } from '../notebook/read.ts';
import type { Value } from '../notebook/write.ts';

type Edits =
  | { readonly edits: readonly (readonly [Path, Value | undefined])[]; readonly said?: string }
  | { readonly refused: string };

/** Figures kept of a share. */
const PLACES = 1e4;
const rounded = (value: number) => Math.round(value * PLACES) / PLACES;

/** The other shares beside `mine` at `k`, rounded, their sum with it 1; undefined where the others are all 0. */
export function sharing(shares: readonly number[], k: number, mine: number): number[] | undefined {
  const others = shares.reduce((sum, share, j) => (j === k ? sum : sum + share), 0);
  const rest = 1 - mine;
  if (Math.abs(rest) < 1e-9) return shares.map((_, j) => (j === k ? mine : 0));
  if (!(others > 0)) return undefined;
  const next = shares.map((share, j) => (j === k ? mine : rounded((share / others) * rest)));
  // What rounding leaves goes to the largest of the others.
  const largest = next.reduce(
    (best, share, j) => (j !== k && (best < 0 || share > next[best]) ? j : best),
    -1,
  );
  const sum = next.reduce((total, share) => total + share, 0);
  next[largest] = Number((next[largest] + 1 - sum).toPrecision(12));
  return next;
}

const PLACEMENT = ['bedShare', 'slatsShare', 'yardShare', 'pastureShare'] as const;
const PLACES_OF_DAY: Readonly<Record<string, string>> = {
  bedShare: 'bed',
  slatsShare: 'slats',
  yardShare: 'stance or yard',
  pastureShare: 'pasture',
};

const percent = (share: number) => `${Number((share * 100).toFixed(2))} %`;

/** The edits one changed share makes; undefined where the place is no share of a whole. */
export function shareEdits(notebook: Notebook, path: Path, value: Value | undefined): Edits | undefined {
  const key = String(path.at(-1));
  if (typeof value !== 'number') return undefined;
  if (path.at(-2) === 'placement') return ofDay(notebook, path, key, value);
  const list = path.slice(0, -2);
  if (key !== 'share' || !['feed', 'mix'].includes(String(list.at(-1)))) return undefined;
  const items = valueIn(notebook, list) as readonly { share: number; feed?: string; material?: string }[];
  const k = Number(path.at(-2));
  const next = sharing(
    items.map(({ share }) => share),
    k,
    value,
  );
  if (!next)
    return {
      refused:
        items.length === 1
          ? 'it is the only one, so it is 100 %: add another first'
          : 'the others stand at 0 %: raise one of them, and this one gives way',
    };
  return {
    edits: next.flatMap((share, j) =>
      share === items[j].share ? [] : [[[...list, j, 'share'], share] as const],
    ),
    said: saidOf(next.map((share, j) => [optionWords(items[j].feed ?? items[j].material ?? ''), share])),
  };
}

function ofDay(notebook: Notebook, path: Path, key: string, value: number): Edits | undefined {
  const { placement } = notebook.scenarios[Number(path[1])];
  const k = PLACEMENT.indexOf(key as (typeof PLACEMENT)[number]);
  if (k < 0) return undefined;
  const next = sharing(
    PLACEMENT.map((name) => placement[name]),
    k,
    value,
  );
  if (!next) return { refused: 'the others stand at 0 %: raise one of them, and this one gives way' };
  return {
    edits: PLACEMENT.flatMap((name, j) =>
      next[j] === placement[name] ? [] : [[[...path.slice(0, -1), name], next[j]] as const],
    ),
    said: saidOf(PLACEMENT.map((name, j) => [PLACES_OF_DAY[name], next[j]] as const)),
  };
}

const saidOf = (parts: readonly (readonly [string, number])[]) =>
  `Together 100 %: ${parts.map(([name, share]) => `${name} ${percent(share)}`).join(', ')}.`;

const valueIn = (notebook: Notebook, path: Path): unknown =>
  path.reduce<unknown>((here, part) => (here as Record<PropertyKey, unknown> | undefined)?.[part], notebook);
