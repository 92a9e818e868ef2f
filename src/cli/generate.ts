/** Writes the files that follow from the sources: `npm run generate`. Tests refuse them when they are stale. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { GENERATED } from './contracts.ts';
import { demoWeather } from './makeWeather.ts';
import { findRoot } from './readData.ts';

const files = [
  ...Object.entries(GENERATED).map(([file, text]) => ({ file, text: text() })),
  ...demoWeather(),
];
for (const { file, text } of files) {
  writeFileSync(join(findRoot(), file), text);
  process.stdout.write(`${file}\n`);
}
