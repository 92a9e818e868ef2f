/** Parts of the page that are fetched when they are first needed. */
import type { Started } from './engine.ts';

export type Page = typeof import('./notebookPage.ts');

interface Loaded {
  readonly openNotebook: Page['openNotebook'];
  readonly started: Started;
}

/**
 * What an open notebook needs, fetched and started once, with what more is asked. Throws where a part cannot be fetched;
 * that is forgotten, so that the next one who asks tries again.
 */
export function partsOnce(fetchPage: () => Promise<Page>) {
  let once: Promise<Loaded> | undefined;
  return async <More = undefined>(
    more?: () => Promise<More>,
  ): Promise<Loaded & { readonly more: Awaited<More> }> => {
    once ??= fetchPage().then(({ openNotebook, startEngine }) => ({ openNotebook, started: startEngine() }));
    try {
      const [page, rest] = await Promise.all([once, more?.()]);
      return { ...page, more: rest as Awaited<More> };
    } catch (error) {
      once = undefined;
      throw error;
    }
  };
}
