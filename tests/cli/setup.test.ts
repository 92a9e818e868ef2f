// The set-up in a folder of its own with an npm that only says it was called.
import { type ChildProcess, spawn } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';

const made: string[] = [];
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

let root: string;
function checkout(name = 'winterkeep-setup-'): string {
  const folder = mkdtempSync(join(tmpdir(), name));
  made.push(folder);
  chmodSync(folder, 0o755);
  mkdirSync(join(folder, 'src/cli'), { recursive: true });
  for (const file of ['setup.mjs', 'chromium.mjs'])
    copyFileSync(
      fileURLToPath(new URL(`../../src/cli/${file}`, import.meta.url)),
      join(folder, 'src/cli', file),
    );
  writeFileSync(join(folder, 'package-lock.json'), '{}');
  mkdirSync(join(folder, 'bin'));
  writeFileSync(join(folder, 'bin/npm'), `#!/bin/sh\necho "npm $*" >> called\nmkdir -p node_modules\n`);
  chmodSync(join(folder, 'bin/npm'), 0o755);
  return folder;
}
beforeEach(() => {
  root = checkout();
});

const lock = () => join(root, '.winterkeep-setup');
const calls = () =>
  existsSync(join(root, 'called')) ? readFileSync(join(root, 'called'), 'utf8').split('\n').length - 1 : 0;

interface Ran {
  readonly child: ChildProcess;
  readonly said: () => string;
  readonly done: Promise<number | null>;
}
function setup(options: { readonly uid?: number } = {}, ...args: string[]): Ran {
  let said = '';
  const child = spawn(process.execPath, [join(root, 'src/cli/setup.mjs'), ...args], {
    env: { ...process.env, PATH: `${join(root, 'bin')}${delimiter}${process.env.PATH}` },
    stdio: ['ignore', 'pipe', 'pipe'],
    ...options,
  });
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (part) => {
      said += part;
    });
  return { child, said: () => said, done: new Promise((resolve) => child.on('close', resolve)) };
}
/** A process that has ended: its id is nobody's. */
async function nobody(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '']);
  await new Promise((resolve) => child.on('close', resolve));
  return child.pid as number;
}

describe('the set-up', () => {
  it('installs without scripts of packages', async () => {
    expect(await setup().done).toBe(0);
    expect(readFileSync(join(root, 'called'), 'utf8')).toBe('npm ci --ignore-scripts --no-audit --no-fund\n');
  });

  it('installs once, and has nothing to do the second time', async () => {
    expect(await setup().done).toBe(0);
    const again = setup();
    expect(await again.done).toBe(0);
    expect([again.said(), calls(), existsSync(lock())]).toEqual(['', 1, false]);
  });

  it('does not wait for a set-up that was killed', async () => {
    writeFileSync(lock(), String(await nobody()));
    const ran = setup();
    expect(await ran.done).toBe(0);
    expect(ran.said()).toBe('Installing packages …\n');
    expect([calls(), existsSync(lock())]).toEqual([1, false]);
  });

  it('nor for a lock of the kind made before, which named no process', async () => {
    mkdirSync(lock());
    utimesSync(lock(), 0, 0);
    expect(await setup().done).toBe(0);
    expect(calls()).toBe(1);
  });

  it('waits for one that is at work, says whose it is, and goes on when it is done', async () => {
    writeFileSync(lock(), String(process.pid));
    const ran = setup();
    await new Promise<void>((resolve) => ran.child.stderr?.once('data', () => resolve()));
    expect(ran.said()).toContain(`process ${process.pid}`);
    expect(ran.said()).toContain(lock());
    expect(calls()).toBe(0);
    rmSync(lock());
    expect(await ran.done).toBe(0);
    expect(calls()).toBe(1);
  });

  it('ten at once install once', async () => {
    const codes = await Promise.all(Array.from({ length: 10 }, () => setup().done));
    expect(codes).toEqual(Array(10).fill(0));
    expect(calls()).toBe(1);
  });

  it('leaves packages alone that lie behind a link', async () => {
    const other = checkout();
    writeFileSync(join(other, 'kept'), 'kept');
    symlinkSync(other, join(root, 'node_modules'));
    const ran = setup();
    expect(await ran.done).toBe(1);
    expect(ran.said()).toContain(`node_modules is a link to ${other}`);
    expect([calls(), existsSync(join(other, 'kept')), existsSync(lock())]).toEqual([0, true, false]);
  });

  it('says so where the folder can only be read', async () => {
    chmodSync(root, 0o555);
    const ran = setup(process.getuid?.() === 0 ? { uid: 65_534 } : {});
    expect(await ran.done).toBe(1);
    expect(ran.said()).toMatch(
      /^Packages cannot be installed: .* cannot be written to \(EACCES\)\. Copy the folder/,
    );
    expect(ran.said()).not.toContain('    at ');
    chmodSync(root, 0o755);
  });

  it('says that the checks cannot run in a folder with # in its name', async () => {
    root = checkout('winterkeep-#-');
    const ran = setup({}, '--browser');
    expect(await ran.done).toBe(1);
    expect(ran.said()).toMatch(/folder with # in its name/);
  });
});
