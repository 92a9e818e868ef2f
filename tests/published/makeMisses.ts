/** Writes `misses.json`: the outputs of cases that the model misses. Run it with tsx where a change of the model is meant. */
import { writeFileSync } from 'node:fs';
import { keyOf, scoredCases } from './scoredCases.ts';

const missed = (await scoredCases()).filter(({ verdict }) => verdict !== 'pass').map(keyOf);
writeFileSync(new URL('./misses.json', import.meta.url), `${JSON.stringify(missed, null, 2)}\n`);
console.log(`misses.json: ${missed.length} misses`);
