/**
 * `npm run published`: counts the checks of this folder by what they prove. One line, and the known misses.
 * Only lists the tests: whether they pass is for the tests to say.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { LABELS, MISS } from './labelTexts.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const vitest = fileURLToPath(new URL('../../node_modules/vitest/vitest.mjs', import.meta.url));
const words = ['list', 'tests/published', '--project', 'node', '--json'];
const listed: { readonly name: string }[] = JSON.parse(
  execFileSync(process.execPath, [vitest, ...words], { cwd: root, encoding: 'utf8', maxBuffer: 2 ** 26 }),
);
const count = (label: string) => listed.filter(({ name }) => name.includes(`[${label}]`)).length;
const misses = listed.filter(({ name }) => name.includes(MISS) && name.includes(LABELS.published));
console.log(
  `published: ${listed.length} checks: ${count(LABELS.published)} ${LABELS.published} (${misses.length} known misses), ${count(LABELS.recalled)} ${LABELS.recalled}, ${count(LABELS.fitted)} ${LABELS.fitted}, ${count(LABELS.row)} ${LABELS.row}, ${count(LABELS.sum)} ${LABELS.sum}`,
);
for (const { name } of misses) console.log(`miss: ${name.replace(/ \[.*$/, '')}`);
