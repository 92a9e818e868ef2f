import { createWriteStream } from 'node:fs';
import { mkdir, readdir, rename, rm, rmdir, stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { basename, join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { argumentsOf, wholeNumber } from './arguments.ts';
import { answersOf } from './batchCrew.ts';
import { arrowBytes, csvLines } from './batchFormats.ts';
import { keptFolder, programStamp } from './batchKept.ts';
import type { BatchAnswer } from './batchWorker.ts';
import { CommandError } from './error.ts';
import { tell } from './printed.ts';
import { type ProgressLine, progressLine } from './progress.ts';
import { clearParts, notWritten, partOf } from './writeWhole.ts';

export const usage = `batch FILES… --out FILE.arrow|FILE.csv [--keep-going] [--threads N]
Computes many notebooks (a folder stands for the .md files in it) into one file, a row for each scenario, on all
cores. Bad files are named on standard error; then nothing is written, or with --keep-going only the good ones.
What is done is kept beside FILE until it is whole: a batch that was stopped goes on where it was when called again.`;

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
  const folder = keptFolder(target);
  const whole = join(folder, basename(target));
  const part = partOf(whole);
  const tally: Tally = { files: 0, rows: 0, bad: 0, before: 0 };
  const line = progressLine('batch', files.length);
  try {
    await mkdir(folder).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
    await clearParts(whole);
    const answers = answersOf(files, threads, { folder, program: programStamp() });
    const counted = count(answers, tally, line);
    const bytes = format === 'arrow' ? arrowBytes(counted) : csvLines(counted);
    await pipeline(Readable.from(bytes), createWriteStream(part));
    if (tally.bad > 0 && !values['keep-going'])
      throw new CommandError(
        `${tally.bad} of ${files.length} files are wrong; nothing was written; mend them, or --keep-going to leave them out`,
      );
    await rename(part, target);
  } catch (error) {
    await rm(part, { force: true });
    // Stays where something in it is done.
    await rmdir(folder).catch(() => {});
    const { syscall, code } = error as NodeJS.ErrnoException;
    if (syscall !== undefined) throw new CommandError(notWritten(target, code));
    throw error;
  } finally {
    line.end();
  }
  await rm(folder, { recursive: true, force: true });
  out(
    `${target}: ${tally.rows} rows from ${files.length - tally.bad} files${tally.before > 0 ? `, ${tally.before} of them kept from before` : ''}\n`,
  );
  if (tally.bad > 0)
    throw new CommandError(`${tally.bad} of ${files.length} files are wrong and were left out`);
}

interface Tally {
  files: number;
  rows: number;
  bad: number;
  /** Files an earlier call had done. */
  before: number;
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
  tally: Tally,
  line: ProgressLine,
): AsyncGenerator<BatchAnswer> {
  for await (const answer of answers) {
    for (const problem of answer.problems) {
      line.end();
      tell(`${problem}\n`);
    }
    tally.files += answer.files;
    tally.bad += answer.problems.length;
    tally.rows += answer.text.file.length;
    if (answer.before) tally.before += answer.files;
    line.at(tally.files, tally.before);
    if (answer.text.file.length > 0) yield answer;
  }
}
