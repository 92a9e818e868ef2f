/**
 * Writes `figures.json.gz`, what `figures.test.ts` compares with. Run it with tsx, only when figures are meant to
 * move, and say in the change why they do: written again after every change, the file would hold nothing fast.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { allFigures } from './figures.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const packed = gzipSync(JSON.stringify(await allFigures(root)), { level: 9 });
// The byte that names the system which packed it: the same figures give the same file anywhere.
packed[9] = 255;
writeFileSync(new URL('./figures.json.gz', import.meta.url), packed);
console.log(`figures.json.gz: ${packed.length} bytes`);
