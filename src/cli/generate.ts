/** Writes the files that follow from the sources: `npm run generate`. Tests refuse them when they are stale. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { GENERATED } from './contracts.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
for (const [path, text] of Object.entries(GENERATED)) {
  writeFileSync(join(root, path), text());
  process.stdout.write(`${path}\n`);
}
