/** A file is there whole or not at all: written beside its name first, then moved into place. */
import { readdir, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { CommandError } from './error.ts';

/** Throws `CommandError` where the place cannot be written to. */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const beside = partOf(path);
  try {
    await clearParts(path);
    await writeFile(beside, content);
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    throw new CommandError(notWritten(path, (error as NodeJS.ErrnoException).code));
  }
}

/** Where a file is written before it is whole: hidden, beside it, named by the process that writes. */
export const partOf = (path: string): string => join(dirname(path), `.${basename(path)}.${process.pid}.part`);

/** Takes away what runs that were killed left beside this file; what a living process writes stays. */
export async function clearParts(path: string): Promise<void> {
  const names = await readdir(dirname(path)).catch(() => []);
  for (const name of names) {
    const pid = name.startsWith(`.${basename(path)}.`) ? /\.(\d+)\.part$/.exec(name)?.[1] : undefined;
    if (pid === undefined || name !== `.${basename(path)}.${pid}.part` || lives(Number(pid))) continue;
    await rm(join(dirname(path), name), { force: true });
  }
}

function lives(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ESRCH';
  }
}

const WHY: Readonly<Record<string, string>> = {
  ENOENT: 'its folder does not exist',
  ENOTDIR: 'its folder does not exist',
  EISDIR: 'that is a folder',
  ENOSPC: 'the disk is full',
  EDQUOT: 'no more may be kept on this disk',
  EROFS: 'the disk can only be read',
  EACCES: 'it may not be written to',
  EPERM: 'it may not be written to',
};

export const whyNot = (code: string | undefined): string =>
  (code && WHY[code]) ?? `it cannot be written (${code})`;

/** Why a file could not be written, in words. */
export const notWritten = (path: string, code: string | undefined): string =>
  `${path}: ${whyNot(code)}; name another file`;
