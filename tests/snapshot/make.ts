/**
 * Writes `figures.json.gz`, what `figures.test.ts` compares with. Run it with tsx, only when figures are meant to
 * move, and say in the change why they do: written again after every change, the file would hold nothing fast. It writes
 * nothing while a headline moved that "Unreleased" of CHANGELOG.md does not say, and prints the rows to paste there.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gunzipSync, gzipSync } from 'node:zlib';
import { allFigures } from './figures.ts';
import { headlinesMoved, unsaid } from './headlines.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const file = new URL('./figures.json.gz', import.meta.url);
const fresh = await allFigures(root);
const moved = headlinesMoved(JSON.parse(gunzipSync(readFileSync(file)).toString()), fresh);
const missing = unsaid(moved, readFileSync(`${root}/CHANGELOG.md`, 'utf8'));
if (missing.length > 0) {
  console.error(
    `${missing.length} of ${moved.length} headlines that moved are not in CHANGELOG.md. Paste these rows under "Unreleased", say why they moved, and run this again; figures.json.gz is as it was.\n\n| where | what | before → after |\n|---|---|---|\n${missing.join('\n')}`,
  );
  process.exitCode = 1;
} else {
  const packed = gzipSync(JSON.stringify(fresh), { level: 9 });
  // The byte that names the system which packed it: the same figures give the same file anywhere.
  packed[9] = 255;
  writeFileSync(file, packed);
  console.log(`figures.json.gz: ${packed.length} bytes, ${moved.length} headlines moved`);
}
