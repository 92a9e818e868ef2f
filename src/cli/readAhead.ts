/** What a build reads so that a page need not: the tables as columns, and the worked examples. */
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Ahead } from '../study/ahead.ts';
import { packAhead } from '../study/packAhead.ts';
import { packTables } from '../tables/pack.ts';
import { weatherColumnsOf } from '../tables/weatherColumns.ts';
import { readSound, shippedTables } from './open.ts';

/** Throws `CommandError` with every fault of the tables by file and line: a build with faulty tables is none. */
export const packedTables = () => packTables(shippedTables());

/** What the list of worked examples says of each: its title, and where the farm lies. */
export async function examplesOf(paths: readonly string[]) {
  return Promise.all(
    paths.map(async (path) => {
      const { notebook } = await readSound(path);
      return { file: basename(path), title: notebook.title, note: notebook.farm.place.name };
    }),
  );
}

export interface ReadExample {
  readonly text: string;
  /** Undefined where the page has to read it itself. */
  readonly ahead: Ahead | undefined;
}

/** A worked example and what it says. Throws `CommandError` with every problem in it by file and line. */
export async function readExample(path: string): Promise<ReadExample> {
  const { notebook, winters } = await readSound(path);
  const ahead = packAhead(notebook, winters.winterOf, winters.seriesOf);
  return { text: notebook.text, ahead };
}

/** Days of a shipped weather file. Throws where they cannot be columns. */
export const weatherColumns = async (path: string) => weatherColumnsOf(await readFile(path, 'utf8'));
