/** What is known here of a notebook that was sent: the version seen before, the copy that is kept, and notes to take in. */
import '../elements/page/wk-asked.ts';
import type { AskedSetting, EarlierText } from '../elements/page/wk-asked.ts';
import { notebookIdOf, takeInNotes } from '../notebook/noteEdits.ts';
import { gainedNotes } from '../notebook/noteMerge.ts';
import { readNotebook } from '../notebook/read.ts';
import { checksum } from '../store/checksum.ts';
import type { Engine } from '../store/engine.ts';
import { figuresOf } from '../store/figuresOf.ts';
import { push } from '../store/history.ts';
import type { Seen } from '../store/seen.ts';
import { historyOf, type Kept, type Shelf } from '../store/shelf.ts';
import { formatProblem } from '../units/problem.ts';
import type { Keeper } from './keeper.ts';
import { titleOf } from './titles.ts';

/** What was sent, and what it is held against. */
export interface Sent {
  readonly setting: AskedSetting;
  /** The kept copy that lacks some of its notes. */
  readonly mine: Kept | undefined;
}

const DAY = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' });

/** The copy of a notebook that was changed here last; `apart` is what was opened itself. */
async function keptOf(shelf: Shelf, id: string, apart: string | undefined): Promise<Kept | undefined> {
  const list = [...(await shelf.list())].sort((a, b) => b.saved - a.saved);
  for (const entry of list) {
    if (entry.id === apart) continue;
    const kept = await shelf.get(entry.id);
    if (kept && notebookIdOf(kept.text) === id) return kept;
  }
  return undefined;
}

export async function sentHere(
  text: string,
  file: string,
  {
    keeper,
    engine,
    kept,
  }: { readonly keeper: Keeper; readonly engine: () => Promise<Engine>; readonly kept: Kept | undefined },
): Promise<Sent | undefined> {
  const id = notebookIdOf(text);
  const link = kept === undefined;
  const nothing = { earlier: undefined, mine: undefined, count: 0 };
  // A browser that keeps nothing knows nothing, and says no more than that.
  const { earlier, mine, count } =
    id === undefined ? nothing : await known(text, file, keeper, id, kept?.id).catch(() => nothing);
  if (!link && count === 0) return undefined;
  return {
    mine: count > 0 ? mine : undefined,
    setting: {
      link,
      keeps: keeper.blocked === '',
      text,
      ...(earlier ? { earlier } : {}),
      ...(mine && count > 0 ? { offered: { title: mine.title, count } } : {}),
      figuresOf: async (was, keep, ranged) => figuresOf(was, file, await engine(), keep, ranged),
    },
  };
}

async function known(text: string, file: string, keeper: Keeper, id: string, apart: string | undefined) {
  const mine = await keptOf(keeper.shelf, id, apart);
  const seen = await keeper.saw(id, text);
  const theirs = readNotebook(text, file).notebook?.readerNotes ?? [];
  const own = mine && readNotebook(mine.text, file).notebook;
  return {
    mine,
    earlier: earlierOf(mine, seen),
    count: own ? gainedNotes(own.readerNotes, theirs).length : 0,
  };
}

/** What this reader has of it themselves tells more than what they once were sent. */
function earlierOf(mine: Kept | undefined, seen: Seen | undefined): EarlierText | undefined {
  if (mine) return { text: mine.text, words: `the copy you keep, “${mine.title}”`, short: 'Yours' };
  return (
    seen && {
      text: seen.text,
      words: `the version you saw on ${DAY.format(new Date(seen.at))}`,
      short: 'Then',
    }
  );
}

/** Takes the notes of what was sent into the kept copy, as one step of its own; a refusal in words. */
export async function takeIn(
  shelf: Shelf,
  { mine, setting }: Sent,
): Promise<string | { readonly id: string }> {
  // As it is kept now: another tab may have gone on with it.
  const kept = mine && (await shelf.get(mine.id));
  if (!kept) return 'The copy you kept is no longer there.';
  const theirs = readNotebook(setting.text, kept.title).notebook?.readerNotes ?? [];
  const edited = takeInNotes({ text: kept.text, file: kept.title, read: readNotebook }, theirs);
  if ('refused' in edited) return formatProblem(edited.refused);
  const state = { title: titleOf(edited.text) ?? kept.title, history: push(historyOf(kept), edited) };
  await shelf.put(kept.id, state, { revision: kept.revision, from: [checksum(kept.text)] });
  return { id: kept.id };
}
