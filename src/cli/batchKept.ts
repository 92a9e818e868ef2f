/**
 * What a batch has done, kept beside its target until it is whole, so that one that was stopped goes on where it was.
 * A parcel of notebooks is found again only while its notebooks, the weather beside them, the program and its tables
 * are what they were; anything else is worked out anew.
 */
import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { stampOf } from './buildStamp.mjs';
import { findRoot } from './readData.ts';

/** The folder for what is done of `target`: on its disk, so that the last step is a rename. */
export const keptFolder = (target: string): string => join(dirname(target), `.${basename(target)}.parcels`);

/** Size and time of a file, or that it is not there. */
async function fileStamp(path: string): Promise<string> {
  const found = await stat(path).catch(() => undefined);
  return `${resolve(path)} ${found?.isFile() ? `${found.size} ${found.mtimeMs}` : 'none'}`;
}

/** The program and its tables. */
export const programStamp = (): string => `${process.version} ${stampOf(findRoot(), ['src', 'data'])}`;

/** Where the parcel of these notebooks, as they are now, is kept. */
export async function parcelPath(folder: string, program: string, files: readonly string[]): Promise<string> {
  const hash = createHash('sha256').update(program);
  // As they were named, too: the names stand in the rows.
  for (const file of files) hash.update(`\n${file} ${await fileStamp(file)}`);
  return join(folder, hash.digest('hex'));
}

interface Held<Answer> {
  readonly answer: Answer;
  /** Files beside the notebooks that were looked for, as they were. */
  readonly beside: readonly (readonly [path: string, stamp: string])[];
}

const sumOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest();

/**
 * Keeps an answer. It is there whole or not at all. Where there is no room the batch goes on without it: its end says
 * whether the target could be written.
 */
export async function keepParcel(path: string, answer: unknown, beside: Iterable<string>): Promise<void> {
  const stamps = await Promise.all([...beside].map(async (file) => [file, await fileStamp(file)] as const));
  const bytes = serialize({ answer, beside: stamps } satisfies Held<unknown>);
  const half = `${path}.${process.pid}.half`;
  try {
    await mkdir(dirname(path), { recursive: true });
    await writeFile(half, [sumOf(bytes), bytes]);
    await rename(half, path);
  } catch {
    await rm(half, { force: true });
  }
}

/** What was kept, unless it is damaged or a file beside the notebooks has changed. */
export async function takeParcel<Answer>(path: string): Promise<Answer | undefined> {
  const whole = await readFile(path).catch(() => undefined);
  if (!whole || !sumOf(whole.subarray(32)).equals(whole.subarray(0, 32))) return undefined;
  const { answer, beside } = deserialize(whole.subarray(32)) as Held<Answer>;
  for (const [file, stamp] of beside) if ((await fileStamp(file)) !== stamp) return undefined;
  return answer;
}
