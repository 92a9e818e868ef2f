import { readdirSync, readFileSync } from 'node:fs';

const FOLDER = new URL('../../notebooks/', import.meta.url);

/** Every shipped notebook: file name and text. */
export const shipped: readonly { readonly file: string; readonly text: string }[] = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.md'))
  .map((file) => ({ file, text: readFileSync(new URL(file, FOLDER), 'utf8') }));

const CASES = new URL('../../data/cases/', import.meta.url);

/** The notebooks of published studies, which no weather need be found for. */
export const readNotebookCases = () =>
  readdirSync(CASES)
    .filter((file) => file.endsWith('.md') && file !== 'README.md')
    .map((file) => ({ file, text: readFileSync(new URL(file, CASES), 'utf8') }));
