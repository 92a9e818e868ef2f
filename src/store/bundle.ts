/** All kept notebooks in one file, and back: a plain zip of the text files, which any machine opens. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { fileNameOf } from './fileName.ts';

/** Larger than any farm's notebooks together, small enough for a phone's memory. */
const MOST_BYTES = 100_000_000;
const MOST_FILES = 1000;

export interface Named {
  readonly name: string;
  readonly text: string;
}

export function zipOf(notebooks: readonly { readonly title: string; readonly text: string }[]): Uint8Array {
  const files: Record<string, Uint8Array> = {};
  for (const { title, text } of notebooks) {
    const stem = fileNameOf(title).replace(/\.md$/, '');
    let name = `${stem}.md`;
    for (let k = 2; name in files; k++) name = `${stem}-${k}.md`;
    files[name] = strToU8(text);
  }
  return zipSync(files);
}

export type Unzipped = { readonly files: readonly Named[] } | { readonly problem: string };

/** The notebooks of a zip; folders in it and what is no `.md` are left out. */
export function unzip(bytes: Uint8Array, mostBytesEach: number): Unzipped {
  let total = 0;
  let count = 0;
  let tooMuch = false;
  try {
    const entries = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (!name.endsWith('.md') || originalSize > mostBytesEach) return false;
        total += originalSize;
        count++;
        if (total > MOST_BYTES || count > MOST_FILES) tooMuch = true;
        return !tooMuch;
      },
    });
    if (tooMuch)
      return {
        problem: `more than ${MOST_FILES} notebooks, or more than ${MOST_BYTES / 1e6} MB of them`,
      };
    return {
      files: Object.entries(entries).map(([path, data]) => ({
        name: path.replace(/^.*[/\\]/, ''),
        text: strFromU8(data),
      })),
    };
  } catch (error) {
    return { problem: error instanceof Error ? error.message : String(error) };
  }
}
