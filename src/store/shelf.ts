/** Notebooks kept in this browser. Nothing that was there is ever written over unseen: see `put`. */
import { createStore, get, set, type UseStore, update } from 'idb-keyval';

export interface Kept {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** Counts up with each save. */
  readonly revision: number;
  /** Milliseconds since 1970. */
  readonly saved: number;
  /** Set on a copy put aside because two tabs wrote at once. */
  readonly aside?: boolean;
}

type Entry = Omit<Kept, 'text'>;
export interface Put {
  readonly kept: Kept;
  /** The other tab's text, put aside under its own id, when it was newer than what this tab had seen. */
  readonly aside: Kept | undefined;
}

export interface Shelf {
  list(): Promise<readonly Entry[]>;
  get(id: string): Promise<Kept | undefined>;
  /** Saves `text`; `seen` is the revision this tab last read or wrote. */
  put(id: string, title: string, text: string, seen: number): Promise<Put>;
  remove(id: string): Promise<void>;
}

const INDEX = 'index';
const key = (id: string) => `notebook:${id}`;

/** The shelf in IndexedDB; `now` and the store can be given by a test. */
export function openShelf(
  store: UseStore = createStore('winterkeep', 'notebooks'),
  now: () => number = Date.now,
): Shelf {
  const list = async () => (await get<readonly Entry[]>(INDEX, store)) ?? [];
  const note = ({ text: _, ...entry }: Kept) =>
    update<readonly Entry[]>(INDEX, (old) => [entry, ...(old ?? []).filter((e) => e.id !== entry.id)], store);
  const write = async (kept: Kept) => {
    await set(key(kept.id), kept, store);
    await note(kept);
    return kept;
  };
  return {
    list,
    get: (id) => get<Kept>(key(id), store),
    async put(id, title, text, seen) {
      const there = await get<Kept>(key(id), store);
      const stamp = now();
      const clash = there !== undefined && there.revision > seen && there.text !== text;
      const aside = clash
        ? await write({
            ...there,
            id: `${id}-${stamp}`,
            title: `${there.title} (from another tab)`,
            aside: true,
          })
        : undefined;
      const kept = await write({
        id,
        title,
        text,
        revision: Math.max(there?.revision ?? 0, seen) + 1,
        saved: stamp,
      });
      return { kept, aside };
    },
    async remove(id) {
      await update<readonly Entry[]>(INDEX, (old) => (old ?? []).filter((e) => e.id !== id), store);
      await set(key(id), undefined, store);
    },
  };
}

/** A shelf for where there is no storage: a private window, a locked-down browser. Forgotten with the tab. */
export function memoryShelf(): Shelf {
  const all = new Map<string, Kept>();
  return {
    list: async () => [...all.values()].map(({ text: _, ...entry }) => entry),
    get: async (id) => all.get(id),
    put: async (id, title, text, seen) => {
      const kept = { id, title, text, revision: seen + 1, saved: Date.now() };
      all.set(id, kept);
      return { kept, aside: undefined };
    },
    remove: async (id) => void all.delete(id),
  };
}
