// `npm start` in a folder of its own, with a build that is one line.
import { type ChildProcess, spawn } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { HEADERS } from '../../src/cli/policy.ts';

const here = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const made: string[] = [];
const running: ChildProcess[] = [];
afterEach(() => {
  for (const child of running.splice(0)) child.kill('SIGKILL');
});
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

function checkout({ name = 'winterkeep-start-', built = true } = {}): string {
  const root = mkdtempSync(join(tmpdir(), name));
  made.push(root);
  chmodSync(root, 0o755);
  cpSync(here('src/cli'), join(root, 'src/cli'), { recursive: true });
  cpSync(here('vite.config.ts'), join(root, 'vite.config.ts'));
  mkdirSync(join(root, 'src/app'));
  writeFileSync(join(root, 'src/app/index.html'), '<!doctype html><title>x</title>');
  symlinkSync(here('node_modules'), join(root, 'node_modules'));
  if (built) {
    mkdirSync(join(root, 'dist'));
    writeFileSync(join(root, 'dist/index.html'), '<!doctype html><title>built before</title>');
  }
  return root;
}

/** Runs until it ends or has said where it is. */
async function start(root: string, args: readonly string[], options: { readonly uid?: number } = {}) {
  const child = spawn(process.execPath, [join(root, 'src/cli/start.mjs'), ...args], {
    ...options,
    stdio: 'pipe',
  });
  running.push(child);
  let said = '';
  const code = await new Promise<number | null | undefined>((resolve) => {
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (part) => {
        said += part;
        if (/Ctrl\+C/.test(said)) resolve(undefined);
      });
    child.on('close', resolve);
  });
  return { code, said, url: /http:\S+/.exec(said)?.[0] };
}

/** A port that somebody holds. */
async function taken() {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, 'localhost', resolve));
  const at = server.address();
  return { server, port: typeof at === 'object' && at ? at.port : 0 };
}

describe('start', () => {
  it.each([
    ['--port', '0'],
    ['--port', '70000'],
    ['--port', 'x'],
    ['--port', '4173.5'],
    ['--port', ''],
    ['--prot', '4173'],
  ])('%s %s is told what is allowed', async (...args) => {
    const { code, said } = await start(checkout(), [...args, '--no-build']);
    expect(code).toBe(2);
    expect(said).toContain('Usage: npm start -- [--port N] [--no-build]');
    if (args[0] === '--port') expect(said).toContain('allowed 1 to 65535');
    expect(said).not.toContain('    at ');
  });

  it('says that its port is in use, takes the next one, and sends the policy with the page', async () => {
    const { server, port } = await taken();
    const { said, url } = await start(checkout(), ['--no-build', '--port', String(port)]);
    expect(said).toContain(`Port ${port} is in use`);
    expect(url).not.toContain(`:${port}/`);
    const answer = await fetch(url as string);
    expect(await answer.text()).toContain('built before');
    for (const [name, value] of Object.entries(HEADERS)) expect(answer.headers.get(name)).toBe(value);
    server.close();
  });

  it('builds in a folder with % in its name', async () => {
    const { said, url } = await start(checkout({ name: 'winter%41keep %20-', built: false }), [
      '--port',
      '20011',
    ]);
    expect(url, said).toBeDefined();
    expect((await fetch(url as string)).status).toBe(200);
  });

  it('says that it cannot build in a folder with #', async () => {
    const { code, said } = await start(checkout({ name: 'winter#keep-', built: false }), []);
    expect([code, said.split('\n').length]).toEqual([1, 2]);
    expect(said).toMatch(/cannot be built in a folder with # in its name; found .*; rename the folder/);
  });

  it.each([true, false])('in a folder that can only be read, with a build before: %s', async (built) => {
    const root = checkout({ built });
    for (const folder of ['', 'dist']) if (built || folder === '') chmodSync(join(root, folder), 0o555);
    const { code, said, url } = await start(
      root,
      ['--port', '20031'],
      process.getuid?.() === 0 ? { uid: 65_534 } : {},
    );
    expect(said).not.toContain('    at ');
    if (!built) {
      expect([code, url]).toEqual([1, undefined]);
      expect(said).toMatch(/cannot be built into .*dist: it may not be written to; copy this folder/);
      return;
    }
    expect(said).toContain('this is the last build');
    expect(await (await fetch(url as string)).text()).toContain('built before');
  });
});

describe('the policy', () => {
  const policy = HEADERS['Content-Security-Policy'];

  it('is the same in the page, and only the header keeps others from framing it', () => {
    const page = /Content-Security-Policy"\s+content="([^"]+)"/.exec(
      readFileSync(here('src/app/index.html'), 'utf8'),
    )?.[1];
    expect(policy).toBe(`${page}; frame-ancestors 'none'`);
  });

  it('stands in the docs for any other host', () => {
    const docs = readFileSync(here('DEVELOPERS.md'), 'utf8');
    for (const [name, value] of Object.entries(HEADERS)) expect(docs).toContain(`${name}: ${value}`);
  });
});
