/** Older formats are lifted, one version at a time, before they are checked; the text itself is left as it is. */
import { isPlain, type Plain } from './merge.ts';
import { FORMAT_VERSION } from './schema.ts';

/** From the front matter of a version to that of the next. */
export type Migration = (front: Plain) => Plain;

/** By the version they start from. There is one format so far. */
export const MIGRATIONS: Readonly<Record<number, Migration>> = {};

/** Oldest version that can still be read. */
export function oldestReadable(migrations: Readonly<Record<number, Migration>> = MIGRATIONS): number {
  let version: number = FORMAT_VERSION;
  while (migrations[version - 1]) version--;
  return version;
}

/** The front matter in today's format, with the version it was written in. */
export function migrate(
  front: unknown,
  migrations: Readonly<Record<number, Migration>> = MIGRATIONS,
): unknown {
  if (!isPlain(front)) return front;
  let lifted: Plain = front;
  for (let version = Number(front.winterkeep); version < FORMAT_VERSION && migrations[version]; version++)
    lifted = { ...migrations[version](lifted), winterkeep: version + 1 };
  return lifted;
}
