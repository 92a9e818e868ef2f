/** A notebook file read, bound and evaluated, or every problem in it as one error. */
import { readFile, stat } from 'node:fs/promises';
import { unknownIds } from '../model/idFaults.ts';
import { type NotebookWinters, notebookWinters } from '../model/weather/notebookWinters.ts';
import { CHOICE_OPTIONS } from '../notebook/choiceOptions.ts';
import { type Notebook, readNotebook } from '../notebook/read.ts';
import { evaluate, type Run } from '../study/evaluate.ts';
import { FigureFault } from '../study/invariants.ts';
import type { Tables } from '../tables/coefficient.ts';
import { loadTables } from '../tables/load.ts';
import { withLine } from '../units/problem.ts';
import { CommandError, refuse } from './error.ts';
import { readDataFiles } from './readData.ts';
import { weatherText } from './weatherFile.ts';

export interface Opened {
  readonly notebook: Notebook;
  readonly tables: Tables;
  readonly winters: NotebookWinters;
  readonly run: Run;
}

/** Larger files are no notebooks and no weather; not read, so that a mistaken path costs nothing. */
const LARGEST_BYTES = 20_000_000;

let loaded: Tables | undefined;

/** The shipped tables, read once; a fault in them is a fault of the program's files. */
export function shippedTables(): Tables {
  if (!loaded) {
    const { tables, problems } = loadTables(readDataFiles(), CHOICE_OPTIONS);
    if (problems.length > 0) refuse(problems);
    loaded = tables;
  }
  return loaded;
}

/** Opens, validates and evaluates a notebook. Throws `CommandError` with every problem by file and line. */
export async function openNotebook(file: string): Promise<Opened> {
  const sound = await readSound(file);
  const { notebook, tables, winters } = sound;
  return { ...sound, run: figuresIn(file, () => evaluate(notebook, tables, winters.winterOf)) };
}

/** A notebook with nothing wrong in it, not yet evaluated. Throws `CommandError` with every problem by file and line. */
export async function readSound(file: string): Promise<Omit<Opened, 'run'>> {
  const read = readNotebook(await bytesOf(file), file);
  if (!read.ok) refuse(read.problems);
  const { notebook } = read;
  const tables = shippedTables();
  const winters = await notebookWinters(notebook.scenarios, file, (name) =>
    weatherText(notebook, name, LARGEST_BYTES),
  );
  const problems = [...unknownIds(notebook, tables), ...winters.problems.map((p) => withLine(p, notebook))];
  if (problems.length > 0) refuse(problems);
  return { notebook, tables, winters };
}

/** What works the figures out, or why they cannot be as a problem of the file. */
export function figuresIn<Figures>(file: string, work: () => Figures): Figures {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof FigureFault)) throw error;
    return refuse([
      {
        what: 'the figures could not be computed',
        file,
        found: error.message,
        todo: 'look at the numbers of this scenario for one meant in another unit',
      },
    ]);
  }
}

async function bytesOf(file: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(file);
    if (size > LARGEST_BYTES)
      throw new CommandError(
        `${file}: too large to be a notebook; found ${size} bytes; allowed ${LARGEST_BYTES}; is it the right file?`,
      );
    return await readFile(file);
  } catch (error) {
    if (error instanceof CommandError) throw error;
    const { code } = error as NodeJS.ErrnoException;
    const why =
      code === 'ENOENT'
        ? 'there is no such file'
        : code === 'EISDIR'
          ? 'that is a folder, not a notebook'
          : `cannot be read (${code})`;
    throw new CommandError(`${file}: ${why}; give the path of a notebook, a .md file`);
  }
}
