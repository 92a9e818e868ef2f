/** What the page says of kept notebooks, and how one leaves it as a file. */
import type { KeptEntry } from '../elements/page/wk-kept.ts';
import { offer } from '../elements/parts/offer.ts';
import { fileNameOf } from '../store/fileName.ts';
import type { Kept, Removed, Shelf } from '../store/shelf.ts';
import type { Problem } from '../units/problem.ts';
import { daysHref, keptHref } from './routes.ts';

/** Newest first. */
export async function keptEntries(shelf: Shelf): Promise<KeptEntry[]> {
  const list = await shelf.list();
  const days = await Promise.all(list.map(({ id }) => shelf.versions(id).catch(() => [])));
  const kept = new Map(list.map(({ id }, k) => [id, days[k].length]));
  return [...list]
    .sort((a, b) => b.saved - a.saved)
    .map(({ id, title, saved, file }) => ({
      id,
      href: keptHref(id),
      ...(kept.get(id) ? { days: daysHref(id) } : {}),
      title,
      note: `changed ${new Date(saved).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}${file === undefined ? '' : `, from the file ${file}`}`,
    }));
}

export interface Done {
  readonly problems?: readonly Problem[];
  readonly words?: string;
  /** What was deleted and can be brought back. */
  readonly removed?: Removed;
}

export const gone = (id: string): Problem => ({
  what: 'this browser no longer keeps that notebook',
  file: id,
  todo: 'open its file instead',
});

export const keepsNothing = (found: string): Problem => ({
  what: 'this browser keeps nothing here: what you change lasts until this page is closed',
  file: 'storage',
  found,
  todo: 'save each notebook as a file, or leave the private window',
});

export function download(text: string, file: string): void {
  offer(new Blob([text], { type: 'text/markdown' }), file.endsWith('.md') ? file : `${file}.md`);
}

export const fileFor = (kept: Pick<Kept, 'file' | 'title'>): string => kept.file ?? fileNameOf(kept.title);
