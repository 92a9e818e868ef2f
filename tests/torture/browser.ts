/** A browser that can be killed as a machine would: every process at once, without a word. */
import { type ChildProcess, spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { CHROMIUM_ARGS, findChromium } from '../../src/cli/chromium.mjs';

export interface Mortal {
  readonly page: Page;
  kill(): Promise<void>;
}

export async function launch(profile: string, url: string): Promise<Mortal> {
  const path = findChromium();
  if (!path) throw new Error('no Chromium found; set CHROMIUM_PATH');
  const child = spawn(
    path,
    [
      '--headless',
      ...CHROMIUM_ARGS,
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    // A group of its own, so that all its processes can be ended and nobody else's.
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const browser: Browser = await chromium.connectOverCDP(await endpointOf(child));
  const page = await browser.contexts()[0].newPage();
  await page.goto(url);
  return {
    page,
    async kill() {
      const gone = new Promise((resolve) => child.once('exit', resolve));
      process.kill(-(child.pid as number), 'SIGKILL');
      await gone;
      await browser.close().catch(() => {});
    },
  };
}

function endpointOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stderr?.on('data', (part) => {
      said += part;
      const found = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (found) resolve(found);
    });
    child.once('exit', () => reject(new Error(`the browser did not start: ${said.slice(-500)}`)));
  });
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
};

export async function serve(folder: string): Promise<{ url: string; server: Server }> {
  const server = createServer(async ({ url = '/' }, response) => {
    const path = normalize(new URL(url, 'http://localhost').pathname);
    const file = path.endsWith('/') ? `${path}index.html` : path;
    try {
      const body = await readFile(join(folder, file));
      response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' });
      response.end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  return { url: `http://127.0.0.1:${address.port}/`, server };
}
