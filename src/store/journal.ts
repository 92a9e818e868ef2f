/**
 * The journal of an open notebook: each small step on its own, so that saving costs as little as the change. It begins
 * with the whole, so that it can be read whatever has become of the notebook meanwhile, and is folded into it later.
 */
import { checksum } from './checksum.ts';
import { type Change, type History, type HistoryChange, historyChange, laterHistory } from './history.ts';

/** What an open notebook is when it is kept. */
export interface State {
  readonly title: string;
  readonly history: History;
}

/** What a session knew of the notebook on the shelf: if that is another by now, both are kept. */
export interface Basis {
  readonly revision: number;
  /** Checksums of the text it began from and of what it wrote last. */
  readonly from: readonly number[];
}

interface Start {
  readonly text: string;
  readonly past: readonly Change[];
  readonly future: readonly Change[];
  readonly basis: Basis;
  readonly file?: string;
}

export interface Entry {
  readonly title: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly start?: Start;
  readonly change?: HistoryChange;
  /** Checksum of the text after this step. */
  readonly sum: number;
}

const BEGINS = 'step/';
export const journalOf = (id: string) => `${BEGINS}${id}/`;
export const journalOfTab = (id: string, tab: string) => `${BEGINS}${id}/${tab}/`;
/** Numbers of one width, so that keys are in their order. */
export const entryKey = (id: string, tab: string, place: number) =>
  `${journalOfTab(id, tab)}${String(place).padStart(9, '0')}`;
/** Every journal there is. */
export const JOURNALS = BEGINS;
export const idInKey = (key: string) => key.split('/')[1];
export const tabInKey = (key: string) => key.split('/')[2];

export function startEntry({ title, history }: State, basis: Basis, at: number, file?: string): Entry {
  const { past, now, future } = history;
  const start = { text: now.text, past, future, basis, ...(file === undefined ? {} : { file }) };
  return { title, at, start, sum: checksum(now.text) };
}

export function stepEntry(before: History, { title, history }: State, at: number): Entry {
  return { title, at, change: historyChange(before, history), sum: checksum(history.now.text) };
}

export interface Replayed extends State {
  readonly basis: Basis;
  readonly at: number;
  readonly file?: string;
}

/** The state a journal leads to. What follows a step that is missing or damaged is left out, up to the next whole one. */
export function replay(entries: readonly Entry[]): Replayed | undefined {
  let state: Replayed | undefined;
  let whole = true;
  for (const { title, at, start, change, sum } of entries) {
    if (start) {
      const { text, past, future, basis, file } = start;
      if (checksum(text) !== sum) continue;
      const what = past.at(-1)?.what ?? 'opened';
      state = { title, at, basis, file, history: { past, now: { text, what }, future } };
      whole = true;
    } else if (state && change && whole) {
      const history = tried(state.history, change, sum);
      whole = history !== undefined;
      if (history) state = { ...state, title, at, history };
    }
  }
  return state;
}

function tried(history: History, change: HistoryChange, sum: number): History | undefined {
  try {
    const later = laterHistory(history, change);
    return checksum(later.now.text) === sum ? later : undefined;
  } catch {
    return undefined;
  }
}
