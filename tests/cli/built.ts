/** The page as it is shipped, built into a folder of its own and served from there. */
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { preview } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const configFile = here('../../vite.config.ts');

export interface Built {
  readonly outDir: string;
  readonly url: string;
  /** Cuts the server off, whatever is still connected to it. */
  readonly cut: () => Promise<void>;
  /** Cuts the server off and takes the folder away. */
  readonly remove: () => Promise<void>;
}

/**
 * Builds in a process of its own: what a test process calls itself would make another build of it. `readable` keeps the
 * names of functions, for a profile.
 */
export async function builtPage({ readable = false } = {}): Promise<Built> {
  const outDir = mkdtempSync(join(tmpdir(), 'winterkeep-'));
  const { NODE_ENV: _, VITEST: __, ...env } = process.env;
  await promisify(execFile)(
    process.execPath,
    [
      here('../../node_modules/vite/bin/vite.js'),
      'build',
      '--config',
      configFile,
      '--outDir',
      outDir,
      '--emptyOutDir',
      ...(readable ? ['--minify', 'false'] : []),
    ],
    { env },
  );
  // Any free port, so that two runs at once do not meet.
  const server = await preview({
    configFile,
    logLevel: 'error',
    build: { outDir },
    preview: { port: 20_000 + (process.pid % 20_000), host: '127.0.0.1' },
  });
  let open = true;
  const cut = async () => {
    if (!open) return;
    open = false;
    const closed = server.close();
    if ('closeAllConnections' in server.httpServer) server.httpServer.closeAllConnections();
    await closed;
  };
  return {
    outDir,
    url: server.resolvedUrls?.local[0] ?? '',
    cut,
    async remove() {
      await cut();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
}
