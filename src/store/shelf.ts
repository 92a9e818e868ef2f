/** Notebooks kept in this browser. Nothing that was there is ever written over unseen: see `put` and `settle`. */
import { type Base, memoryBase, type Transaction } from './base.ts';
import { checksum } from './checksum.ts';
import type { Change, History } from './history.ts';
import {
  type Basis,
  type Entry,
  entryKey,
  idInKey,
  JOURNALS,
  journalOf,
  journalOfTab,
  type Replayed,
  replay,
  type State,
  startEntry,
  tabInKey,
} from './journal.ts';
import { aheadKey } from './keptAhead.ts';
import {
  dayHere,
  keepVersions,
  takeVersions,
  type Version,
  type VersionEntry,
  versionsIn,
  versionsOf,
  versionText,
} from './versions.ts';

export interface Kept {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** Counts up with each fold. */
  readonly revision: number;
  /** Milliseconds since 1970. */
  readonly saved: number;
  /** Set on a copy put aside because two tabs wrote at once. */
  readonly aside?: boolean;
  /** Name of the file it was opened from. */
  readonly file?: string;
  readonly past?: readonly Change[];
  readonly future?: readonly Change[];
}

/** What was taken off the shelf, with the days that were kept of it. */
export interface Removed extends Kept {
  readonly versions?: readonly Version[];
}

/** A line of the list: without the text, which may be long. */
export type Listed = Omit<Kept, 'text' | 'past' | 'future'> & { readonly sum?: number };

export interface Put {
  readonly kept: Kept;
  /** The other tab's text, put aside under its own id, when it was newer than what this tab had seen. */
  readonly aside: Kept | undefined;
}

/** A word between tabs: this notebook was changed by that tab. */
export interface Word {
  readonly id: string;
  readonly tab: string;
}

export interface Shelf {
  list(): Promise<readonly Listed[]>;
  get(id: string): Promise<Kept | undefined>;
  /** Folds a tab's state into the notebook, and its journal with it. */
  put(id: string, state: State, basis: Basis, more?: { tab?: string; file?: string }): Promise<Put>;
  /** One small step into a tab's journal. */
  append(id: string, tab: string, place: number, entry: Entry): Promise<void>;
  /** A notebook of its own with the same text; its id. */
  copy(id: string): Promise<string | undefined>;
  /** Takes it off the shelf and hands it back, so that it can be restored. */
  remove(id: string): Promise<Removed | undefined>;
  restore(removed: Removed): Promise<void>;
  /** Days on which it stood otherwise, the newest first. */
  versions(id: string): Promise<readonly VersionEntry[]>;
  versionText(id: string, day: string): Promise<string | undefined>;
}

const INDEX = 'index';
const key = (id: string) => `notebook:${id}`;

/** Not by the clock alone: two tabs may ask in one millisecond. */
export const randomId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(8)), (byte) => byte.toString(36).padStart(2, '0')).join(
    '',
  );

export const newId = (name: string): string =>
  `${
    name
      .replace(/\.md$/, '')
      .replace(/[^\w-]+/g, '-')
      .slice(0, 60) || 'notebook'
  }-${randomId()}`;

export const historyOf = ({ text, past = [], future = [] }: Kept): History => ({
  past,
  now: { text, what: past.at(-1)?.what ?? 'opened' },
  future,
});

export interface ShelfOptions {
  readonly base: Base;
  readonly now?: () => number;
}

export function openShelf({ base, now = Date.now }: ShelfOptions): Shelf {
  const get = (id: string) =>
    base.run(async (t) => {
      await settle(t, id, now());
      return t.get<Kept>(key(id));
    });
  const restore = async ({ versions = [], ...kept }: Removed) => {
    await base.run(async (t) => {
      await write(t, kept);
      await keepVersions(t, kept.id, versions, now());
    });
  };
  return {
    get,
    restore,
    list: () =>
      base.run(async (t) => {
        const ids = new Set((await t.keys(JOURNALS)).map(idInKey));
        for (const id of ids) await settle(t, id, now());
        return (await t.get<readonly Listed[]>(INDEX)) ?? [];
      }),
    put: (id, { title, history }, basis, { tab, file } = {}) =>
      base.run(async (t) => {
        const there = await t.get<Kept>(key(id));
        const { past, now: is, future } = history;
        const mine = tab === undefined ? [] : await t.keys(journalOfTab(id, tab));
        const began = mine.length > 0 ? (await t.get<Entry>(mine[0]))?.start?.basis : undefined;
        const aside =
          there &&
          unseen(there, basis) &&
          (began === undefined || unseen(there, began)) &&
          there.text !== is.text
            ? await putAside(t, there, now())
            : undefined;
        await keepEarlier(t, { id, text: is.text }, there, await stepsOverDays(t, mine, now()), now());
        const kept = await write(t, {
          id,
          title,
          text: is.text,
          revision: Math.max(there?.revision ?? 0, basis.revision) + 1,
          saved: now(),
          ...withFile(there?.file ?? file),
          past,
          future,
        });
        for (const each of mine) t.remove(each);
        return { kept, aside };
      }),
    append: (id, tab, place, entry) => base.put(entryKey(id, tab, place), entry),
    async copy(id) {
      const kept = await get(id);
      if (!kept) return undefined;
      const { aside: _, file: _file, ...rest } = kept;
      const copied = { ...rest, id: newId(id.replace(/-[^-]*$/, '')), title: `${kept.title} (copy)` };
      await restore({ ...copied, revision: 1, saved: now() });
      return copied.id;
    },
    async remove(id) {
      const kept = await get(id);
      const versions = await base.run(async (t) => {
        const index = (await t.get<readonly Listed[]>(INDEX)) ?? [];
        t.put(
          INDEX,
          index.filter((entry) => entry.id !== id),
        );
        for (const each of await t.keys(journalOf(id))) t.remove(each);
        t.remove(key(id));
        t.remove(aheadKey(id));
        return takeVersions(t, id);
      });
      return kept && { ...kept, versions };
    },
    versions: (id) => base.run(async (t) => [...(await versionsOf(t, id))].reverse()),
    versionText: (id, day) => base.run((t) => versionText(t, id, day)),
  };
}

const withFile = (file: string | undefined) => (file === undefined ? {} : { file });

/** Whether the shelf holds what a session has neither begun from nor written itself. */
const unseen = (there: Kept, { revision, from }: Basis) =>
  there.revision > revision && !from.includes(checksum(there.text));

async function write(t: Transaction, kept: Kept): Promise<Kept> {
  t.put(key(kept.id), kept);
  const { text, past: _past, future: _future, ...entry } = kept;
  const index = (await t.get<readonly Listed[]>(INDEX)) ?? [];
  t.put(INDEX, [{ ...entry, sum: checksum(text) }, ...index.filter(({ id }) => id !== kept.id)]);
  return kept;
}

/** A journal's steps where it reaches over midnight; none where it holds no day but the one that runs. */
async function stepsOverDays(t: Transaction, journal: readonly string[], now: number): Promise<Entry[]> {
  const first = journal.length > 0 ? await t.get<Entry>(journal[0]) : undefined;
  if (!first || dayHere(first.at) === dayHere(now)) return [];
  const entries = await Promise.all(journal.map((each) => t.get<Entry>(each)));
  return entries.filter((entry) => entry !== undefined);
}

/** What the days before ended with: as the notebook was last kept, and as the steps of a journal say. */
const keepEarlier = (
  t: Transaction,
  { id, text }: Pick<Kept, 'id' | 'text'>,
  there: Kept | undefined,
  steps: readonly Entry[],
  now: number,
): Promise<void> =>
  keepVersions(
    t,
    id,
    [...(there && there.text !== text ? [versionOf(there)] : []), ...versionsIn(steps)],
    now,
  );

const versionOf = ({ saved, title, text }: Kept): Version => ({
  day: dayHere(saved),
  at: saved,
  title,
  text,
});

const putAside = (t: Transaction, kept: Kept, saved: number) =>
  write(t, {
    ...kept,
    id: newId(kept.id),
    title: `${kept.title} (from another tab)`,
    saved,
    aside: true,
  });

/** A journal whose last step is younger may belong to a tab that is at work: longer than a tab lets it lie. */
const AT_WORK_MS = 120_000;

/**
 * Folds what journals of a notebook are left, of a browser that was killed or of a tab that is at work. What may be
 * gone on with is kept as its newest state, so that the next step fits. A journal that began from another revision
 * than the one kept becomes a notebook of its own.
 */
async function settle(t: Transaction, id: string, now: number): Promise<void> {
  const tabs = new Map<string, string[]>();
  for (const each of await t.keys(journalOf(id)))
    tabs.set(tabInKey(each), [...(tabs.get(tabInKey(each)) ?? []), each]);
  const found: { readonly last: string; readonly state: Replayed; readonly entries: readonly Entry[] }[] = [];
  for (const keys of tabs.values()) {
    const entries: Entry[] = [];
    for (const each of keys) {
      const entry = await t.get<Entry>(each);
      if (entry) entries.push(entry);
      t.remove(each);
    }
    const state = replay(entries);
    if (state) found.push({ last: keys[keys.length - 1], state, entries });
  }
  for (const { last, state, entries } of found.sort((a, b) => a.state.at - b.state.at)) {
    const basis = await fold(t, id, state, entries, now);
    if (now - state.at < AT_WORK_MS) t.put(last, startEntry(state, basis, state.at, state.file));
  }
}

/** One journal into its notebook, or beside it; what the journal knows of the shelf from now on. */
async function fold(
  t: Transaction,
  id: string,
  state: Replayed,
  entries: readonly Entry[],
  now: number,
): Promise<Basis> {
  const there = await t.get<Kept>(key(id));
  const { past, now: is, future } = state.history;
  // Of the same text the later steps count: what a killed tab left behind lies here for a while.
  if (there?.text === is.text && (there.past?.length === past.length || there.saved > state.at))
    return basisOf(there);
  const kept: Kept = {
    id,
    title: state.title,
    text: is.text,
    revision: (there?.revision ?? 0) + 1,
    saved: state.at,
    ...withFile(there?.file ?? state.file),
    past,
    future,
  };
  if (!there || there.text === is.text || !unseen(there, state.basis)) {
    await keepEarlier(t, kept, there, entries, state.at);
    return basisOf(await write(t, kept));
  }
  // Its tab may come here again before it folds by itself: one copy of one text is enough.
  const sum = checksum(is.text);
  const index = (await t.get<readonly Listed[]>(INDEX)) ?? [];
  if (!index.some((entry) => entry.aside && entry.sum === sum)) await putAside(t, kept, now);
  return state.basis;
}

const basisOf = ({ revision, text }: Kept): Basis => ({ revision, from: [checksum(text)] });

/** A shelf for where there is no storage. Forgotten with the page. */
export const memoryShelf = (): Shelf => openShelf({ base: memoryBase() });
