/** What this reader last saw of a notebook that others keep: by the notebook's own id, so that it need not be kept here. */
import type { Base } from './base.ts';

export interface Seen {
  readonly text: string;
  /** Milliseconds since 1970. */
  readonly at: number;
}

interface Entry {
  readonly now: Seen;
  /** The version before: still what the one on show is compared with when it is opened again. */
  readonly before?: Seen;
}

/** Notebooks remembered; the one not looked at for longest falls off. */
const MOST_SEEN = 20;
const ORDER = 'seen';
const key = (id: string) => `seen:${id}`;

/** Remembers that this text was seen, and gives the version that was seen before it. */
export const lookAt = (base: Base, id: string, text: string, at: number): Promise<Seen | undefined> =>
  base.run(async (t) => {
    const there = await t.get<Entry>(key(id));
    const same = there?.now.text === text;
    const before = same ? there.before : there?.now;
    if (!same) t.put(key(id), { now: { text, at }, ...(before ? { before } : {}) } satisfies Entry);
    const order = [id, ...((await t.get<readonly string[]>(ORDER)) ?? []).filter((each) => each !== id)];
    for (const old of order.slice(MOST_SEEN)) t.remove(key(old));
    t.put(ORDER, order.slice(0, MOST_SEEN));
    return before;
  });
