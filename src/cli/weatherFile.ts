/** The text of a weather file that a notebook names. */
import { readFile, realpath, stat } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import type { Notebook } from '../notebook/read.ts';
import { CommandError, refuse } from './error.ts';
import { findRoot } from './readData.ts';

/**
 * In the notebook itself, then beside it, then among the shipped files; undefined where it is in neither. A notebook may come from
 * anyone, so a path that leads out of its folder, by dots or by a link, is refused and not read.
 */
export async function weatherText(
  { file, lineOf, weather }: Notebook,
  name: string,
  largestBytes: number,
): Promise<string | undefined> {
  const inside = weather.get(name);
  if (inside !== undefined) return inside;
  const folder = resolve(dirname(file));
  const beside = resolve(folder, name);
  const real = await realpath(beside).catch(() => undefined);
  const realFolder = await realpath(folder);
  if (!isInside(folder, beside) || (real !== undefined && !isInside(realFolder, real)))
    refuse([
      {
        what: 'the weather file lies outside the notebook’s folder',
        file,
        line: lineOf('farm.weather.file'),
        key: 'farm.weather.file',
        found: name,
        allowed: 'a file in the notebook’s folder, or the name of one that is shipped',
        todo: 'copy the file beside the notebook',
      },
    ]);
  const found = real === undefined ? undefined : await stat(real).catch(() => undefined);
  if (real === undefined || !found?.isFile()) return shippedText(basename(name));
  if (found.size > largestBytes)
    throw new CommandError(
      `${name}: too large for a weather file; found ${found.size} bytes; allowed ${largestBytes}`,
    );
  return readFile(real, 'utf8');
}

const shipped = new Map<string, string | undefined>();

/** A shipped file, read once: thousands of notebooks may name it. */
async function shippedText(name: string): Promise<string | undefined> {
  if (!shipped.has(name)) {
    const text = await readFile(join(findRoot(), 'data', 'weather', name), 'utf8').catch(() => undefined);
    shipped.set(name, text);
  }
  return shipped.get(name);
}

/** By parts of the path, so that `/farm2` is not inside `/farm`. */
function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}
