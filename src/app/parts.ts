/** Parts of the page that are fetched when they are first needed. */
import type { WholeEngine } from '../store/engine.ts';

export type Page = typeof import('./notebookPage.ts');

/** Fetches once, for all who ask. Where that fails it is forgotten, so that the next one who asks tries again. */
function once<T>(fetch: () => Promise<T>): () => Promise<T> {
  let on: Promise<T> | undefined;
  return () => {
    on ??= fetch().catch((error) => {
      on = undefined;
      throw error;
    });
    return on;
  };
}

export interface Parts {
  /** What draws an open notebook and works out its first cards. */
  readonly page: () => Promise<Page>;
  /** What reads and writes any text, with numbers alone. */
  readonly reader: () => Promise<WholeEngine>;
  /** The same with the tables whole and the workers; started once. */
  readonly started: () => Promise<WholeEngine>;
}

export const partsOnce = (fetchPage: () => Promise<Page>): Parts => ({
  page: once(fetchPage),
  reader: once(() => import('./readerEngine.ts').then(({ readerEngine }) => readerEngine())),
  started: once(() => import('./engine.ts').then(({ startEngine }) => startEngine())),
});
