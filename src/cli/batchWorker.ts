/** One of the workers of `batch`: notebooks in, columns of results out. */
import { parentPort } from 'node:worker_threads';
import { RESULTS } from '../model/dictionary.ts';
import { CommandError } from './error.ts';
import { openNotebook } from './open.ts';

export interface BatchAsk {
  readonly id: number;
  readonly files: readonly string[];
}

/** Words that stand before the numbers of a row. */
export const TEXT_COLUMNS = ['file', 'scenario', 'system', 'currency'] as const;
/** Numbers of a row: the year of the money, the winter's days and every result. */
export const NUMBER_COLUMNS = ['year', 'winterDays', ...RESULTS.map((r) => r.name)] as const;

export interface BatchAnswer {
  readonly id: number;
  readonly text: Readonly<Record<(typeof TEXT_COLUMNS)[number], string[]>>;
  /** By `NUMBER_COLUMNS`; NaN where a scenario has no such quantity. */
  readonly numbers: readonly Float64Array[];
  /** One line for each bad file. */
  readonly problems: readonly string[];
}

export async function batchRows({ id, files }: BatchAsk): Promise<BatchAnswer> {
  const text = {
    file: [] as string[],
    scenario: [] as string[],
    system: [] as string[],
    currency: [] as string[],
  };
  const rows: (number | null)[][] = [];
  const problems: string[] = [];
  for (const file of files) {
    try {
      const { run } = await openNotebook(file);
      for (const { name, system, values } of run.results) {
        text.file.push(file);
        text.scenario.push(name);
        text.system.push(system);
        text.currency.push(run.currency);
        rows.push(NUMBER_COLUMNS.map((column) => (column === 'year' ? run.year : (values[column] ?? null))));
      }
    } catch (error) {
      problems.push(oneLine(file, error));
    }
  }
  return {
    id,
    text,
    numbers: NUMBER_COLUMNS.map((_, k) => Float64Array.from(rows, (row) => row[k] ?? Number.NaN)),
    problems,
  };
}

/** The first thing wrong with a file, and how many more there are. */
function oneLine(file: string, error: unknown): string {
  if (!(error instanceof CommandError))
    return `${file}: could not be computed; found ${error instanceof Error ? error.message : String(error)}`;
  const [first, ...rest] = error.message.split('\n').filter((line) => line.trim() !== '');
  return `${first.startsWith(file) ? first : `${file}: ${first}`}${rest.length > 0 ? ` (and ${rest.length} more)` : ''}`;
}

parentPort?.on('message', async (ask: BatchAsk) => {
  const answer = await batchRows(ask);
  parentPort?.postMessage(
    answer,
    answer.numbers.map(({ buffer }) => buffer as ArrayBuffer),
  );
});
