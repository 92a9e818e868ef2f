/** What has to be there before a notebook is opened: fetched for one that was read ahead, or for any text. */
import type { FirstEngine } from '../store/engine.ts';
import type { Kept } from '../store/shelf.ts';
import type { Sent } from './asked.ts';
import type { Example } from './examples.ts';
import type { Keeper } from './keeper.ts';
import { painted } from './painted.ts';
import type { Page, Parts } from './parts.ts';

export interface Ready {
  readonly text: string;
  readonly file: string;
  readonly page: Page;
  readonly engine: FirstEngine;
  readonly kept?: Kept | undefined;
  /** What is known of who sent it. */
  readonly found?: Sent | undefined;
}

/** An example's first cards need no reader: what it says comes with it. Throws where a part cannot be fetched. */
export async function readyExample({ file, load }: Example, parts: Parts): Promise<Ready> {
  const [{ text, ahead }, page] = await Promise.all([load(), parts.page()]);
  const engine = ahead ? page.firstEngine(ahead, text, parts.started) : await parts.started();
  return { text, file, page, engine };
}

/** A kept text that this build has read before needs no reader either; one that was sent is looked at first. */
export async function readyKept(
  kept: Kept,
  { file, ...how }: { file: string; parts: Parts; keeper: Keeper; sent: boolean },
): Promise<Ready> {
  const { parts, keeper, sent } = how;
  const [page, ahead] = await Promise.all([parts.page(), sent ? undefined : keeper.ahead(kept)]);
  const { text } = kept;
  if (!ahead) return readyText(text, file, { ...how, kept });
  return { text, file, page, kept, engine: page.firstEngine(ahead, text, parts.started) };
}

/** Any text; `sent` is one by somebody else, as far as is known. Throws where a part cannot be fetched. */
export async function readyText(
  text: string,
  file: string,
  { parts, keeper, kept, sent }: { parts: Parts; keeper: Keeper; kept?: Kept; sent?: boolean },
): Promise<Ready> {
  const asked = sent ? import('./asked.ts') : undefined;
  const [page, reader, more] = await Promise.all([parts.page(), parts.reader(), asked]);
  const found = await more?.sentHere(text, file, { keeper, engine: parts.started, kept });
  return {
    text,
    file,
    page,
    engine: { ...reader, whole: () => painted().then(parts.started) },
    kept,
    found,
  };
}
