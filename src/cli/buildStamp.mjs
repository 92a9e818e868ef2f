// What something is made from, as one number: the same as long as no file of it was written, added or taken away.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

// Files and folders that come into the page.
const FILES = ['vite.config.ts', 'package.json', 'package-lock.json'];
const FOLDERS = ['src', 'data', 'notebooks'];

/** Of the page as it would be built. */
export const buildStamp = (root) => stampOf(root, FOLDERS, FILES);

/** By contents, since a fresh clone or another branch gives files new times. */
export function stampOf(root, folders, files = []) {
  const inside = folders
    .filter((folder) => existsSync(join(root, folder)))
    .flatMap((folder) =>
      readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => join(entry.parentPath, entry.name)),
    );
  const hash = createHash('sha256');
  for (const path of [
    ...files.map((file) => join(root, file)).filter((path) => existsSync(path)),
    ...inside.sort(),
  ]) {
    const bytes = readFileSync(path);
    hash.update(`${path.slice(root.length)} ${bytes.length}\n`).update(bytes);
  }
  return hash.digest('hex');
}
