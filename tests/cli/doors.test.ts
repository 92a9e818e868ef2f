// What a command says and leaves behind where a title holds codes, a disk is full, a run was killed, or a folder has an odd name.
import { spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { clearParts, notWritten, partOf, writeWhole } from '../../src/cli/writeWhole.ts';
import { NOTEBOOKS, winterkeep } from './run.ts';

const here = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'winterkeep-doors-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const text = readFileSync(NOTEBOOKS[0], 'utf8');
/** A screen cleared, a title of the window set, a line above rewritten, and words that run from right to left. */
const CODES = ['\\x1b[2J', '\\x1b]0;mine\\a', '\\x9b1A', '\\u202e'];

describe('codes for the terminal', () => {
  it.each(CODES)('%s in a title and in a name are not printed', async (code) => {
    const path = join(folder, 'codes.md');
    const named = text.replaceAll('Straw bed', `"S${code}"`).replace(/^title: .*$/m, `title: "T ${code} t"`);
    writeFileSync(path, named.slice(0, named.lastIndexOf('\n---\n') + 5));
    for (const args of [
      ['check', path],
      ['compare', path],
      ['compare', path, '--format', 'csv'],
      ['explain', path, 'none', 'netCost'],
      ['explain', path, 'Paddock', `x${String.fromCharCode(27)}[2J`],
    ]) {
      const { out, error } = await winterkeep(...args);
      expect(out + error, args.join(' ')).not.toBe('');
      expect((out + error).replace(/[\n\t]/g, ''), args.join(' ')).not.toMatch(
        /\p{Cc}|[\u202a-\u202e\u2066-\u2069]/u,
      );
    }
  });

  it('nor in a file that is refused, nor in the name of a command', async () => {
    const path = join(folder, 'refused.md');
    writeFileSync(path, text.replace('class: sucklerCow', 'class: "\\x1b[2Jcow"'));
    const code27 = String.fromCharCode(27);
    for (const args of [['check', path], [`${code27}[2J`], ['check', join(folder, `${code27}[2J.md`)]]) {
      const { code, error } = await winterkeep(...args);
      expect(code).toBeGreaterThan(0);
      expect(error).not.toContain(code27);
    }
  });
});

describe('a disk that is full', () => {
  const full = existsSync('/dev/full');
  it.runIf(full)('is said, with an exit code, where the output goes to it', () => {
    const { status, stderr } = spawnSync(
      'sh',
      ['-c', '"$0" --import tsx src/cli/main.ts check "$1" > /dev/full', process.execPath, NOTEBOOKS[0]],
      { cwd: here('.'), encoding: 'utf8' },
    );
    expect([status, stderr]).toEqual([1, 'the output is not whole: the disk is full\n']);
  });

  it('is said of a file, with what to do', () => {
    expect(notWritten('a.pdf', 'ENOSPC')).toBe('a.pdf: the disk is full; name another file');
  });
});

describe('a run that was killed', () => {
  it('leaves nothing beside the file after the next one; what a living process writes stays', async () => {
    const child = spawn(process.execPath, ['-e', '']);
    await new Promise((resolve) => child.on('close', resolve));
    const path = join(folder, 'case.html');
    const gone = partOf(path).replace(String(process.pid), String(child.pid));
    const [living, other] = [partOf(path), join(folder, `.other.html.${child.pid}.part`)];
    for (const part of [gone, living, other]) writeFileSync(part, 'half');
    await clearParts(path);
    expect([gone, living, other].map((part) => existsSync(part))).toEqual([false, true, true]);
    writeFileSync(gone, 'half');
    await writeWhole(path, 'whole');
    expect(readFileSync(path, 'utf8')).toBe('whole');
    expect(readdirSync(folder).filter((name) => name.startsWith('.case'))).toEqual([]);
  });
});

describe('the command in a folder', () => {
  it.each(['winter # keep', 'winter%41', 'wïnter "keep"'])(
    'named %s, and through a link, is the same',
    (name) => {
      const root = join(folder, name);
      mkdirSync(root);
      for (const part of ['src', 'data', 'node_modules', 'package.json'])
        symlinkSync(here(part), join(root, part));
      symlinkSync(root, join(folder, `${name} link`));
      for (const at of [root, join(folder, `${name} link`)]) {
        const { status, stdout } = spawnSync(
          process.execPath,
          ['--import', 'tsx', join(at, 'src/cli/main.ts'), 'check', here(NOTEBOOKS[0])],
          { cwd: at, encoding: 'utf8' },
        );
        expect([status, stdout]).toEqual([0, expect.stringContaining('nothing wrong')]);
      }
    },
  );
});

describe('words that every object knows', () => {
  it.each([
    [
      'a price',
      'labourPerHour: 14',
      'labourPerHour: 14, prices: { toString: { value: 1, because: x } }',
      /prices\.toString/,
    ],
    [
      'an own number',
      '\nscenarios:',
      '\ncoefficients: [{ id: constructor, value: 1, because: x }]\nscenarios:',
      /coefficients\.0\.id/,
    ],
  ])('are no name of %s', async (_, from, to, said) => {
    const path = join(folder, 'objects.md');
    writeFileSync(path, text.replace(from, to));
    const { code, error } = await winterkeep('check', path);
    expect(code).toBe(1);
    expect(error).toMatch(said);
    expect(error).not.toContain('a fault of winterkeep');
  });
});
