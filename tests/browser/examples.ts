/** The worked examples with their texts, as they stand in the repository but for the number of draws. */
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

/** Nothing here hangs on how many draws there are; thousands after each change would keep the machine from the rest. */
const fewDraws = (text: string) => text.replace('draws: { count: 10000,', 'draws: { count: 400,');

export const EXAMPLES: readonly Example[] = Object.entries(files).map(([path, text]) => {
  const file = path.replace(/^.*\//, '');
  return { name: file.replace(/\.md$/, ''), file, text: fewDraws(text) };
});
