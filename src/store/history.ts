/**
 * Undo and redo as values: the text as it stands and what changed it, as differences. A drag is one step, because
 * only letting go pushes; typing in one go is one step, because a push with the same `mark` joins the one before.
 */
import { apply, type Difference, difference, reversed, weightOf } from './difference.ts';

export interface Step {
  readonly text: string;
  /** What was done, for the undo button: "head to 24". */
  readonly what: string;
  /** Steps with the same mark, one after the other, are one step. */
  readonly mark?: string;
}

export interface Change extends Omit<Step, 'text'> {
  readonly difference: Difference;
}

export interface History {
  /** Oldest first; the last one made the text as it stands. */
  readonly past: readonly Change[];
  readonly now: Pick<Step, 'text' | 'what'>;
  /** What was undone; the first is redone first. */
  readonly future: readonly Change[];
}

/** Steps kept; the oldest fall off, some at a time, so that the list is not written anew with each step. */
const DEPTH = 200;
const SLACK = 50;
/** Letters all steps may hold together: 16 MB. A single larger step stays, so that it can be undone. */
const MOST_LETTERS = 8_000_000;

export function startHistory(text: string): History {
  return history([], text, []);
}

function history(past: readonly Change[], text: string, future: readonly Change[]): History {
  return { past, now: { text, what: past.at(-1)?.what ?? 'opened' }, future };
}

/** Does nothing when the text is the same; forgets what was undone. */
export function push({ past, now, future }: History, { text, what, mark }: Step): History {
  if (text === now.text) return { past, now, future };
  const last = past.at(-1);
  const joins = last !== undefined && mark !== undefined && mark === last.mark;
  const before = joins ? apply(now.text, reversed(last.difference)) : now.text;
  const change = { what, ...(mark === undefined ? {} : { mark }), difference: difference(before, text) };
  return history(bounded([...(joins ? past.slice(0, -1) : past), change]), text, []);
}

function bounded(past: readonly Change[]): readonly Change[] {
  let from = past.length > DEPTH + SLACK ? past.length - DEPTH : 0;
  let letters = past.slice(from).reduce((sum, change) => sum + weightOf(change.difference), 0);
  while (letters > MOST_LETTERS && from < past.length - 1) letters -= weightOf(past[from++].difference);
  return from === 0 ? past : past.slice(from);
}

export function undo(all: History): History {
  const { past, now, future } = all;
  const last = past.at(-1);
  if (!last) return all;
  return history(past.slice(0, -1), apply(now.text, reversed(last.difference)), [last, ...future]);
}

export function redo(all: History): History {
  const { past, now, future } = all;
  if (future.length === 0) return all;
  return history([...past, future[0]], apply(now.text, future[0].difference), future.slice(1));
}

/** What leads from one history to a later one: small when the later was made of the first. */
export interface HistoryChange {
  readonly text: Difference;
  readonly past: ListChange;
  readonly future: ListChange;
}
interface ListChange {
  /** How many stay at either end; between them stands `put`. */
  readonly front: number;
  readonly back: number;
  readonly put: readonly Change[];
}

export function historyChange(before: History, after: History): HistoryChange {
  return {
    text: difference(before.now.text, after.now.text),
    past: listChange(before.past, after.past),
    future: listChange(before.future, after.future),
  };
}

/** @throws when the change was made of another history. */
export function laterHistory({ past, now, future }: History, change: HistoryChange): History {
  return history(
    changedList(past, change.past),
    apply(now.text, change.text),
    changedList(future, change.future),
  );
}

function listChange(before: readonly Change[], after: readonly Change[]): ListChange {
  const shortest = Math.min(before.length, after.length);
  let front = 0;
  while (front < shortest && before[front] === after[front]) front++;
  let back = 0;
  while (back < shortest - front && before[before.length - 1 - back] === after[after.length - 1 - back])
    back++;
  return { front, back, put: after.slice(front, after.length - back) };
}

function changedList(list: readonly Change[], { front, back, put }: ListChange): readonly Change[] {
  if (front + back > list.length) throw new Error('the steps do not fit');
  return [...list.slice(0, front), ...put, ...list.slice(list.length - back)];
}
