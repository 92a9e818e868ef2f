/** The worked examples that come with the page; each is fetched when it is opened. */
import examples from 'virtual:ahead/examples';
import type { Ahead } from '../study/ahead.ts';

export interface Example {
  /** File name without its ending. */
  readonly name: string;
  readonly file: string;
  readonly title: string;
  /** Where the farm lies. */
  readonly note: string;
  /** Its text, and what it says where the build could read it ahead. */
  readonly load: () => Promise<{ readonly text: string; readonly ahead?: Ahead }>;
}

/** The one that asks the general question, and so is read first. */
const FIRST = 'hill-farm-choice';

export const EXAMPLES: readonly Example[] = examples
  .map(({ file, load, ...said }) => ({
    ...said,
    file,
    name: file.replace(/\.md$/, ''),
    load: async () => (await load()).default,
  }))
  .sort((a, b) => Number(b.name === FIRST) - Number(a.name === FIRST));
