import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { GENERATED } from '../../src/cli/contracts.ts';

it.each(Object.keys(GENERATED))('%s is what the sources say (else run `npm run generate`)', (path) => {
  const file = fileURLToPath(new URL(`../../${path}`, import.meta.url));
  expect(readFileSync(file, 'utf8')).toBe(GENERATED[path]());
});
