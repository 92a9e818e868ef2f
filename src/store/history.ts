/**
 * Undo and redo as values: a stack of texts with the words for the step that made each. A drag is one step,
 * because only letting go pushes; typing in one go is one step, because a push with the same `mark` replaces.
 */
export interface Step {
  readonly text: string;
  /** What was done, for the undo button: "head to 24". */
  readonly what: string;
  /** Steps with the same mark, one after the other, are one step. */
  readonly mark?: string;
}

export interface History {
  readonly past: readonly Step[];
  readonly now: Step;
  readonly future: readonly Step[];
}

/** Steps kept; the oldest fall off. */
const DEPTH = 200;

export function startHistory(text: string): History {
  return { past: [], now: { text, what: 'opened' }, future: [] };
}

/** Does nothing when the text is the same; forgets what was undone. */
export function push({ past, now, future }: History, step: Step): History {
  if (step.text === now.text) return { past, now, future };
  if (step.mark !== undefined && step.mark === now.mark && past.length > 0)
    return { past, now: step, future: [] };
  return { past: [...past, now].slice(-DEPTH), now: step, future: [] };
}

export function undo(history: History): History {
  const { past, now, future } = history;
  if (past.length === 0) return history;
  return { past: past.slice(0, -1), now: past[past.length - 1], future: [now, ...future] };
}

export function redo(history: History): History {
  const { past, now, future } = history;
  if (future.length === 0) return history;
  return { past: [...past, now], now: future[0], future: future.slice(1) };
}
