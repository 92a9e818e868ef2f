/** Engine and notebook page, fetched and started once, by whoever needs them first. */
import type { Started } from './engine.ts';

interface Loaded {
  readonly openNotebook: typeof import('./notebookPage.ts').openNotebook;
  readonly started: Started;
}

let once: Promise<Loaded> | undefined;

export function engineOnce(): Promise<Loaded> {
  once ??= import('./notebookPage.ts').then(({ openNotebook, startEngine }) => ({
    openNotebook,
    started: startEngine(),
  }));
  return once;
}
