import { createWriteStream } from 'node:fs';
import { readdir, rename, rm, stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Worker } from 'node:worker_threads';
import { argumentsOf, wholeNumber } from './arguments.ts';
import { arrowBytes, csvLines } from './batchFormats.ts';
import type { BatchAnswer, BatchAsk } from './batchWorker.ts';
import { CommandError } from './error.ts';
import { tell } from './printed.ts';
import { clearParts, notWritten, partOf } from './writeWhole.ts';

export const usage = `batch FILES… --out FILE.arrow|FILE.csv [--keep-going] [--threads N]
Computes many notebooks (a folder stands for the .md files in it) into one file, a row for each scenario, on all
cores. Bad files are named on standard error; then nothing is written, or with --keep-going only the good ones.`;

/** Notebooks a worker takes at once: enough to be busy, few enough that all cores end together. */
const TOGETHER = 16;
/** Parcels given out before the oldest has been written, for each worker: keeps the memory flat. */
const AHEAD = 2;

export async function run(args: readonly string[], out: (text: string) => void): Promise<void> {
  const { values, positionals } = argumentsOf(args, usage, 1, 1_000_000, {
    out: { type: 'string' },
    'keep-going': { type: 'boolean', default: false },
    threads: { type: 'string' },
  });
  const target = values.out;
  const format = /\.(arrow|csv)$/.exec(target ?? '')?.[1];
  if (target === undefined || format === undefined)
    throw new CommandError(
      `--out: not an .arrow or .csv file; found ${target ?? 'nothing'}\nUsage: winterkeep ${usage}`,
      2,
    );
  const threads = wholeNumber(values.threads ?? String(availableParallelism()), 'threads', 1, 256);
  const files = await filesOf(positionals);
  // Beside the target, so that the last step is a rename that cannot be seen half done.
  const part = partOf(target);
  await clearParts(target);
  const tally = { rows: 0, bad: 0 };
  const answers = compute(files, Math.min(threads, Math.ceil(files.length / TOGETHER)));
  try {
    const counted = count(answers, tally);
    const bytes = format === 'arrow' ? arrowBytes(counted) : csvLines(counted);
    await pipeline(Readable.from(bytes), createWriteStream(part));
    if (tally.bad > 0 && !values['keep-going'])
      throw new CommandError(
        `${tally.bad} of ${files.length} files are wrong; nothing was written; mend them, or --keep-going to leave them out`,
      );
    await rename(part, target);
  } catch (error) {
    const { syscall, code } = error as NodeJS.ErrnoException;
    if (syscall !== undefined) throw new CommandError(notWritten(target, code));
    throw error;
  } finally {
    await rm(part, { force: true });
  }
  out(`${target}: ${tally.rows} rows from ${files.length - tally.bad} files\n`);
  if (tally.bad > 0)
    throw new CommandError(`${tally.bad} of ${files.length} files are wrong and were left out`);
}

/** Folders opened one level; the order of the arguments, each folder sorted. */
async function filesOf(paths: readonly string[]): Promise<string[]> {
  const out: string[] = [];
  for (const path of paths) {
    const folder = await stat(path)
      .then((s) => s.isDirectory())
      .catch(() => false);
    if (!folder) out.push(path);
    else {
      const names = (await folderNames(path)).filter((name) => name.endsWith('.md')).sort();
      if (names.length === 0)
        throw new CommandError(`${path}: there is no notebook in this folder; found no .md file`);
      out.push(...names.map((name) => join(path, name)));
    }
  }
  return out;
}

async function folderNames(path: string): Promise<string[]> {
  return readdir(path).catch((error: NodeJS.ErrnoException) => {
    throw new CommandError(`${path}: the folder cannot be read (${error.code})`);
  });
}

/** Tells of bad files as they come, and hands on what has rows. */
async function* count(
  answers: AsyncIterable<BatchAnswer>,
  tally: { rows: number; bad: number },
): AsyncGenerator<BatchAnswer> {
  for await (const answer of answers) {
    for (const line of answer.problems) tell(`${line}\n`);
    tally.bad += answer.problems.length;
    tally.rows += answer.text.file.length;
    if (answer.text.file.length > 0) yield answer;
  }
}

/**
 * Answers in the order of the files. A parcel is given out only when the one `AHEAD × workers` before it has been
 * taken, so that slow writing holds the computing back.
 */
async function* compute(files: readonly string[], workers: number): AsyncGenerator<BatchAnswer> {
  const parcels = Array.from(
    { length: Math.ceil(files.length / TOGETHER) },
    (_, id): BatchAsk => ({ id, files: files.slice(id * TOGETHER, (id + 1) * TOGETHER) }),
  );
  const done = new Map<number, BatchAnswer>();
  let wake: () => void = () => {};
  let failure: Error | undefined;
  let given = 0;
  let taken = 0;
  const idle: Worker[] = [];
  const crew = Array.from({ length: workers }, () => {
    const worker = new Worker(new URL('./batchStart.mjs', import.meta.url), { execArgv: [] });
    worker.on('message', (answer: BatchAnswer) => {
      done.set(answer.id, answer);
      idle.push(worker);
      wake();
    });
    worker.on('error', (error) => {
      failure = error;
      wake();
    });
    idle.push(worker);
    return worker;
  });
  try {
    while (taken < parcels.length) {
      while (idle.length > 0 && given < parcels.length && given < taken + AHEAD * workers)
        idle.pop()?.postMessage(parcels[given++]);
      const next = done.get(taken);
      if (next) {
        done.delete(taken++);
        yield next;
        continue;
      }
      await new Promise<void>((resolve) => {
        wake = resolve;
        if (failure || done.has(taken)) resolve();
      });
      if (failure) throw failure;
    }
  } finally {
    await Promise.all(crew.map((worker) => worker.terminate()));
  }
}
