import { mkdtempSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { winterkeep } from './run.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const commands = [...readme.matchAll(/^npm run --silent winterkeep -- (.+)$/gm)].map((m) => m[1]);
const folder = mkdtempSync(join(tmpdir(), 'winterkeep-readme-'));

/** Splits as a shell would: quotes kept together, `*` filled in. */
function words(line: string): string[] {
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].flatMap(([, quoted, plain]) => {
    if (quoted !== undefined) return [quoted];
    if (plain !== 'notebooks/*.md') return [plain];
    return readdirSync(new URL('../../notebooks', import.meta.url))
      .filter((f) => f.endsWith('.md'))
      .map((f) => `notebooks/${f}`);
  });
}

describe('the commands in the README', () => {
  it('are there', () => expect(commands.length).toBeGreaterThan(5));

  it.each(commands)('%s', async (line) => {
    const args = words(line);
    const out = args.indexOf('--out');
    if (out >= 0) args[out + 1] = join(folder, args[out + 1]);
    const { code, error } = await winterkeep(...args);
    expect([code, error]).toEqual([0, '']);
    if (out >= 0) expect(statSync(args[out + 1]).size).toBeGreaterThan(1000);
  });

  it('names the two that set up by themselves', () => {
    const { scripts } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    for (const name of ['start', 'test']) {
      expect(readme).toContain(`npm ${name} `);
      expect(scripts[`pre${name}`]).toContain('setup.mjs');
    }
  });
});
