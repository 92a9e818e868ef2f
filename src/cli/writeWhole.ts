/** A file is there whole or not at all: written beside its name first, then moved into place. */
import { rename, rm, writeFile } from 'node:fs/promises';
import { CommandError } from './error.ts';

/** Throws `CommandError` where the place cannot be written to. */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const beside = `${path}.${process.pid}.part`;
  try {
    await writeFile(beside, content);
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    throw new CommandError(notWritten(path, (error as NodeJS.ErrnoException).code));
  }
}

/** Why a file could not be written, in words. */
export function notWritten(path: string, code: string | undefined): string {
  const why =
    code === 'ENOENT' || code === 'ENOTDIR'
      ? 'its folder does not exist'
      : code === 'EISDIR'
        ? 'that is a folder'
        : `cannot be written (${code})`;
  return `${path}: ${why}; name another file`;
}
