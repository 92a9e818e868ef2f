/**
 * What a kept notebook says, remembered beside it, so that its first cards need no reader the next time it is opened. A
 * copy that can always be made again: it is never taken for the notebook, and of another text or build it is nothing.
 */
import { effect } from '@preact/signals-core';
import type { Notebook } from '../notebook/read.ts';
import type { Ahead } from '../study/ahead.ts';
import type { Base } from './base.ts';
import { checksum } from './checksum.ts';
import type { OpenNotebook } from './opening.ts';

export interface AheadOf {
  /** On the shelf. */
  readonly id: string;
  readonly text: string;
  /** Of the build that read it: another may read the same text otherwise. */
  readonly build: string;
}

interface Entry {
  readonly build: string;
  readonly sum: number;
  readonly length: number;
  readonly ahead: Ahead;
}

/** Notebooks remembered; the one that was read longest ago falls off. */
const MOST_KEPT = 20;
const ORDER = 'ahead';
export const aheadKey = (id: string) => `ahead:${id}`;

/** Undefined where this text was not read ahead by this build. */
export const findAhead = (base: Base, { id, text, build }: AheadOf): Promise<Ahead | undefined> =>
  base.run(async (t) => {
    const entry = await t.get<Entry>(aheadKey(id));
    const same = entry?.build === build && entry.length === text.length && entry.sum === checksum(text);
    return same ? entry.ahead : undefined;
  });

export const keepAhead = (base: Base, { id, text, build }: AheadOf, ahead: Ahead): Promise<void> =>
  base.run(async (t) => {
    t.put(aheadKey(id), { build, sum: checksum(text), length: text.length, ahead } satisfies Entry);
    const order = [id, ...((await t.get<readonly string[]>(ORDER)) ?? []).filter((each) => each !== id)];
    for (const old of order.slice(MOST_KEPT)) t.remove(aheadKey(old));
    t.put(ORDER, order.slice(0, MOST_KEPT));
  });

/** A notebook that is being changed is not read ahead at every step. */
const STILL_MS = 2000;

/** Hands over each notebook whose text stands for a while and could be read, until the function it gives back is called. */
export function whenStill({ notebook, text }: OpenNotebook, take: (notebook: Notebook) => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    clearTimeout(timer);
    const now = notebook.value;
    if (now?.text === text.value) timer = setTimeout(() => take(now), STILL_MS);
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}
