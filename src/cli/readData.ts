/** The data folder for Node: the same map of path → text that the page gets from its build. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds `data/`, wherever the command is called from. */
export function findRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'data', 'sources.csv'))) {
    const above = dirname(folder);
    if (above === folder)
      throw new Error('the data folder is missing: no data/sources.csv above this program');
    folder = above;
  }
  return folder;
}

/** Tables by path in the repository, for `loadTables`. */
export function readDataFiles(root: string = findRoot()): Map<string, string> {
  const paths = [
    'data/sources.csv',
    'data/movements.csv',
    'data/measuring.csv',
    'data/priceIndices.csv',
    'data/starts.csv',
    'data/materials.csv',
    ...csvsIn(root, 'coefficients'),
    ...csvsIn(root, 'prices'),
  ];
  const files = new Map<string, string>();
  for (const path of paths) {
    const full = join(root, path);
    if (existsSync(full)) files.set(path, readFileSync(full, 'utf8'));
  }
  return files;
}

function csvsIn(root: string, folder: string): string[] {
  const full = join(root, 'data', folder);
  if (!existsSync(full)) return [];
  const names = readdirSync(full).filter((name) => name.endsWith('.csv'));
  return names.sort().map((name) => `data/${folder}/${name}`);
}
