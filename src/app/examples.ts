/** The worked examples that come with the page. */
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
  readonly title: string;
  /** Where the farm lies. */
  readonly note: string;
}

/** The one that asks the general question, and so is read first. */
const FIRST = 'hill-farm-choice';

export const EXAMPLES: readonly Example[] = Object.entries(files)
  .map(([path, text]) => {
    const file = path.replace(/^.*\//, '');
    const name = file.replace(/\.md$/, '');
    return { name, file, text, title: titleOf(text) ?? name, note: noteOf(text) };
  })
  .sort((a, b) => Number(b.name === FIRST) - Number(a.name === FIRST));

/** The title in a notebook's front matter, without reading the rest. */
export function titleOf(text: string): string | undefined {
  const line = /^title:[ \t]*(.+?)[ \t]*\r?$/m.exec(text)?.[1];
  return line?.replace(/^(['"])(.*)\1$/, '$2');
}

/** The place in a notebook's front matter. */
function noteOf(text: string): string {
  const name = /^ {2}place:\r?\n {4}name:[ \t]*(.+?)[ \t]*\r?$/m.exec(text)?.[1];
  return name?.replace(/^(['"])(.*)\1$/, '$2') ?? '';
}
