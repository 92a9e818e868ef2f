/** The worked examples with their texts, as they stand in the repository. */
import { fewDraws } from '../fewDraws.ts';

const files = import.meta.glob<string>('../../notebooks/*.md', {
  query: '?raw',
  import: 'default',
  eager: true,
});

export interface Example {
  /** File name without its ending. */
  readonly name: string;
  readonly file: string;
  readonly text: string;
}

export const EXAMPLES: readonly Example[] = Object.entries(files).map(([path, text]) => {
  const file = path.replace(/^.*\//, '');
  return { name: file.replace(/\.md$/, ''), file, text };
});

/** The same with few draws. */
export const FEW_DRAWS: readonly Example[] = EXAMPLES.map((example) => ({
  ...example,
  text: fewDraws(example.text),
}));
