// The page is built again exactly when something it is built from has changed.
import { cpSync, mkdirSync, mkdtempSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildStamp } from '../../src/cli/buildStamp.mjs';

const root = mkdtempSync(join(tmpdir(), 'winterkeep-stamp-'));
const at = (...path: string[]) => join(root, ...path);
let before: string;
beforeAll(() => {
  for (const folder of ['src/app', 'data/prices', 'notebooks']) mkdirSync(at(folder), { recursive: true });
  for (const file of [
    'vite.config.ts',
    'package.json',
    'package-lock.json',
    'src/app/a.ts',
    'data/prices/p.csv',
  ])
    writeFileSync(at(file), file);
  before = buildStamp(root);
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('what the page is built from', () => {
  it('is the same for the same files, whenever and wherever they were written', () => {
    utimesSync(at('src/app/a.ts'), 1, 1);
    expect(buildStamp(root)).toBe(before);
    const other = `${root}-copy`;
    cpSync(root, other, { recursive: true });
    expect(buildStamp(other)).toBe(before);
    rmSync(other, { recursive: true });
  });

  it.each(['vite.config.ts', 'package-lock.json', 'src/app/a.ts', 'data/prices/p.csv'])(
    'is another when a file of it is written: %s',
    (file) => {
      writeFileSync(at(file), `${file}!`);
      expect(buildStamp(root)).not.toBe(before);
      writeFileSync(at(file), file);
      expect(buildStamp(root)).toBe(before);
    },
  );

  it('is another when a file comes, goes or is renamed', () => {
    writeFileSync(at('notebooks/n.md'), '');
    expect(buildStamp(root)).not.toBe(before);
    rmSync(at('notebooks/n.md'));
    expect(buildStamp(root)).toBe(before);
    renameSync(at('src/app/a.ts'), at('src/app/b.ts'));
    expect(buildStamp(root)).not.toBe(before);
    renameSync(at('src/app/b.ts'), at('src/app/a.ts'));
  });
});
