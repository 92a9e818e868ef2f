/**
 * Modules of the page that the build makes from data: tables as columns, and each worked example with what it says.
 * Declared in `src/app/ahead.d.ts`.
 */
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Plugin } from 'vite';

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
  return {
    name: 'winterkeep-ahead',
    resolveId: (id) => (id.startsWith(PREFIX) ? `\0${id}` : undefined),
    async load(id) {
      if (!id.startsWith(RESOLVED)) return undefined;
      const [kind, name] = id.slice(RESOLVED.length).split('/');
      const notebooks = below('notebooks', '.md');
      for (const file of [...below('data', '.csv'), ...notebooks]) this.addWatchFile(file);
      // Only when it is asked for: whoever reads the configuration alone need not wait for the model.
      const { examplesOf, packedTables, readExample } = await import('./readAhead.ts');
      if (kind === 'tables') return moduleOf(packedTables().numbers);
      if (kind === 'words') return moduleOf(packedTables().words);
      if (kind === 'example') return moduleOf(await readExample(join(root, 'notebooks', `${name}.md`)));
      if (kind === 'examples') return exampleList(await examplesOf(notebooks));
      throw new Error(`the build makes no module of the name ${PREFIX}${kind}`);
    },
  };
}

const moduleOf = (value: unknown) => `export default ${JSON.stringify(value)};`;

const exampleList = (examples: readonly { readonly file: string }[]) =>
  `export default [${examples
    .map((example) => {
      const from = JSON.stringify(`${PREFIX}example/${basename(example.file, '.md')}`);
      return `{ ...${JSON.stringify(example)}, load: () => import(${from}) }`;
    })
    .join(', ')}];`;
