/**
 * A version a day: each notebook as it stood when a day was over. The day that runs has none yet, since it is the notebook
 * itself; what was written in it can be undone step by step.
 */
import type { Transaction } from './base.ts';
import { type Entry, replay } from './journal.ts';

export interface VersionEntry {
  /** Day of the calendar where the keeper is: 2026-03-14. */
  readonly day: string;
  /** Milliseconds since 1970 of its last change that day. */
  readonly at: number;
  readonly title: string;
  /** Letters it holds. */
  readonly letters: number;
}

export interface Version extends Omit<VersionEntry, 'letters'> {
  readonly text: string;
}

/** Days kept of a notebook. */
export const MOST_DAYS = 30;
/** Letters all of them may hold together; own weather makes a text long. The newest stays whatever it holds. */
const MOST_LETTERS = 16_000_000;

const listKey = (id: string) => `versions:${id}`;
const textKey = (id: string, day: string) => `version:${id}/${day}`;

/** The day of the calendar, here, that a moment falls on. */
export function dayHere(at: number): string {
  const date = new Date(at);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** Oldest first. */
export const versionsOf = async (t: Transaction, id: string): Promise<readonly VersionEntry[]> =>
  (await t.get<readonly VersionEntry[]>(listKey(id))) ?? [];

export const versionText = (t: Transaction, id: string, day: string): Promise<string | undefined> =>
  t.get<string>(textKey(id, day));

/** Keeps what stood at the end of days before `now`; the oldest fall off. */
export async function keepVersions(
  t: Transaction,
  id: string,
  found: readonly Version[],
  now: number,
): Promise<void> {
  const today = dayHere(now);
  const over = found.filter(({ day }) => day < today);
  if (over.length === 0) return;
  let list = await versionsOf(t, id);
  for (const { day, at, title, text } of [...over].sort((a, b) => a.at - b.at)) {
    const there = list.find((each) => each.day === day);
    // A day is kept as it ended: an earlier moment of it does not take its place.
    if (there && there.at >= at) continue;
    const others = list.filter((each) => each !== there);
    const before = others.findLast((each) => each.day < day);
    if (before && (await versionText(t, id, before.day)) === text) continue;
    t.put(textKey(id, day), text);
    list = [...others, { day, at, title, letters: text.length }].sort((a, b) => (a.day < b.day ? -1 : 1));
  }
  t.put(listKey(id), bounded(t, id, list));
}

function bounded(t: Transaction, id: string, list: readonly VersionEntry[]): readonly VersionEntry[] {
  let from = Math.max(0, list.length - MOST_DAYS);
  let letters = list.slice(from).reduce((sum, each) => sum + each.letters, 0);
  while (letters > MOST_LETTERS && from < list.length - 1) letters -= list[from++].letters;
  for (const { day } of list.slice(0, from)) t.remove(textKey(id, day));
  return list.slice(from);
}

/** What a journal says the notebook was at the end of each day it reaches over. */
export function versionsIn(entries: readonly Entry[]): Version[] {
  const versions: Version[] = [];
  entries.forEach(({ at }, k) => {
    const day = dayHere(at);
    const next = entries[k + 1];
    if (next && dayHere(next.at) === day) return;
    const state = replay(entries.slice(0, k + 1));
    if (state) versions.push({ day, at: state.at, title: state.title, text: state.history.now.text });
  });
  return versions;
}

/** All of them with their texts, taken off the shelf. */
export async function takeVersions(t: Transaction, id: string): Promise<readonly Version[]> {
  const taken: Version[] = [];
  for (const { letters: _, ...entry } of await versionsOf(t, id)) {
    const text = await versionText(t, id, entry.day);
    if (text !== undefined) taken.push({ ...entry, text });
    t.remove(textKey(id, entry.day));
  }
  t.remove(listKey(id));
  return taken;
}
