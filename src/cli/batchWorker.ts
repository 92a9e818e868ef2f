/** One of the workers of `batch`: notebooks in, columns of results out. */
import { dirname, join } from 'node:path';
import { parentPort } from 'node:worker_threads';
import { RESULTS } from '../model/dictionary.ts';
import { numbersOf } from '../study/evaluate.ts';
import { keepParcel, parcelPath, takeParcel } from './batchKept.ts';
import { CommandError } from './error.ts';
import { figuresIn, readSound } from './open.ts';

export interface BatchAsk {
  readonly id: number;
  readonly files: readonly string[];
  /** Where what is done is kept, and what else than the files it hangs on. */
  readonly keep: { readonly folder: string; readonly program: string };
}

/** Words that stand before the numbers of a row. */
export const TEXT_COLUMNS = ['file', 'scenario', 'system', 'currency'] as const;
/** Numbers of a row: the year of the money, the winter's days and every result. */
export const NUMBER_COLUMNS = ['year', 'winterDays', ...RESULTS.map((r) => r.name)] as const;

export interface BatchAnswer {
  readonly id: number;
  /** How many files it is of. */
  readonly files: number;
  /** Done by an earlier call. */
  readonly before: boolean;
  readonly text: Readonly<Record<(typeof TEXT_COLUMNS)[number], string[]>>;
  /** By `NUMBER_COLUMNS`; NaN where a scenario has no such quantity. */
  readonly numbers: readonly Float64Array[];
  /** One line for each bad file. */
  readonly problems: readonly string[];
}

/** Rows of a parcel, from what is kept or worked out and then kept; one with bad files is not, so that they can be mended. */
async function answerTo({ id, files, keep }: BatchAsk): Promise<BatchAnswer> {
  const path = await parcelPath(keep.folder, keep.program, files);
  const before = await takeParcel<BatchAnswer>(path);
  // What is read back shares one buffer, and each column is handed on with its own.
  if (before) return { ...before, id, before: true, numbers: before.numbers.map((column) => column.slice()) };
  const { beside, ...rows } = await rowsOf(files);
  const answer = { id, files: files.length, before: false, ...rows };
  if (answer.problems.length === 0) await keepParcel(path, answer, beside);
  return answer;
}

async function rowsOf(files: readonly string[]) {
  const text = {
    file: [] as string[],
    scenario: [] as string[],
    system: [] as string[],
    currency: [] as string[],
  };
  const columns: number[][] = NUMBER_COLUMNS.map(() => []);
  const problems: string[] = [];
  const beside = new Set<string>();
  for (const file of files) {
    try {
      const { notebook, tables, winters } = await readSound(file);
      for (const { farm } of notebook.scenarios)
        if (farm.weather.file !== undefined) beside.add(join(dirname(file), farm.weather.file));
      // All of a notebook or nothing: its numbers are there before the first of its rows is.
      const numbers = figuresIn(file, () => numbersOf(notebook, tables, winters.winterOf));
      const { currency, year } = notebook.scenarios[0].farm.money;
      for (const { name, system, values } of numbers) {
        text.file.push(file);
        text.scenario.push(name);
        text.system.push(system);
        text.currency.push(currency);
        NUMBER_COLUMNS.forEach((column, k) => {
          columns[k].push(column === 'year' ? year : (values[column] ?? Number.NaN));
        });
      }
    } catch (error) {
      problems.push(oneLine(file, error));
    }
  }
  return { text, numbers: columns.map((column) => Float64Array.from(column)), problems, beside };
}

/** The first thing wrong with a file, and how many more there are. */
function oneLine(file: string, error: unknown): string {
  if (!(error instanceof CommandError))
    return `${file}: could not be computed; found ${error instanceof Error ? error.message : String(error)}`;
  const [first, ...rest] = error.message.split('\n').filter((line) => line.trim() !== '');
  return `${first.startsWith(file) ? first : `${file}: ${first}`}${rest.length > 0 ? ` (and ${rest.length} more)` : ''}`;
}

parentPort?.on('message', async (ask: BatchAsk) => {
  const answer = await answerTo(ask);
  parentPort?.postMessage(
    answer,
    answer.numbers.map(({ buffer }) => buffer as ArrayBuffer),
  );
});
