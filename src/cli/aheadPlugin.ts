/**
 * Modules of the page that the build makes from data: tables and weather as columns, each worked example with
 * what it says, and the build's own stamp.
 * Declared in `src/app/ahead.d.ts`.
 */
import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { tsImport } from 'tsx/esm/api';
import type { Plugin } from 'vite';
import { buildStamp } from './buildStamp.mjs';

const PREFIX = 'virtual:ahead/';
/** So that no other plugin takes it for a file. */
const RESOLVED = `\0${PREFIX}`;

/** `root` is the folder that holds `data` and `notebooks`. */
export function aheadPlugin(root: string): Plugin {
  const below = (folder: string, ending: string) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith(ending))
      .sort()
      .map((file) => join(root, folder, file));
  // Not part of the configuration, which whoever starts the page would wait for: read when a module is asked for, once.
  let once: Promise<typeof import('./readAhead.ts')> | undefined;
  const reader = () => {
    once ??= tsImport(pathToFileURL(join(root, 'src/cli/readAhead.ts')).href, import.meta.url);
    return once;
  };
  return {
    name: 'winterkeep-ahead',
    resolveId: (id) => (id.startsWith(PREFIX) ? `\0${id}` : undefined),
    async load(id) {
      if (!id.startsWith(RESOLVED)) return undefined;
      const [kind, name] = id.slice(RESOLVED.length).split('/');
      if (kind === 'build') return moduleOf(buildStamp(root).slice(0, 16));
      const [notebooks, data] = [below('notebooks', '.md'), below('data', '.csv')];
      for (const file of [...notebooks, ...data]) this.addWatchFile(file);
      const { examplesOf, packedTables, readExample, weatherColumns } = await reader();
      if (kind === 'tables') return moduleOf(packedTables().numbers);
      if (kind === 'words') return moduleOf(packedTables().words);
      if (kind === 'example') return moduleOf(await readExample(join(root, 'notebooks', name)));
      if (kind === 'examples') return listOf('example', await examplesOf(notebooks));
      if (kind === 'days') return moduleOf(await weatherColumns(join(root, 'data', 'weather', name)));
      if (kind === 'weather') {
        const files = data.filter((file) => basename(dirname(file)) === 'weather');
        return listOf(
          'days',
          files.map((file) => ({ file: basename(file) })),
        );
      }
      throw new Error(`the build makes no module of the name ${PREFIX}${kind}`);
    },
  };
}

const moduleOf = (value: unknown) => `export default ${JSON.stringify(value)};`;

/** What can be fetched, each with what fetches it. */
const listOf = (kind: string, items: readonly { readonly file: string }[]) =>
  `export default [${items
    .map((item) => {
      const from = JSON.stringify(`${PREFIX}${kind}/${item.file}`);
      return `{ ...${JSON.stringify(item)}, load: () => import(${from}) }`;
    })
    .join(', ')}];`;
