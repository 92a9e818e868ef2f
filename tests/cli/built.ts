/** The page as it is shipped, built into a folder of its own and served from there. */
import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
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

/** Builds into `outDir`, in a process of its own: what a test process calls itself would make another build of it. */
async function build(outDir: string, readable: boolean): Promise<void> {
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
}

/** A build of its own, which is taken away with it. `readable` keeps the names of functions, for a profile. */
export async function builtPage({ readable = false } = {}): Promise<Built> {
  const outDir = mkdtempSync(join(tmpdir(), 'winterkeep-'));
  await build(outDir, readable);
  return served(outDir, () => rmSync(outDir, { recursive: true, force: true }));
}

const WAIT_MS = 200;

/** The one build of a run of tests, in a folder that outlives each file of them: whoever comes first builds it. */
export async function sharedPage(folder: string): Promise<Built> {
  const outDir = join(folder, 'site');
  const [built, failed] = [join(folder, 'built'), join(folder, 'failed')];
  if (claimed(join(folder, 'building'))) {
    try {
      await build(outDir, false);
      writeFileSync(built, '');
    } catch (error) {
      writeFileSync(failed, String(error));
      throw error;
    }
  }
  while (!existsSync(built)) {
    if (existsSync(failed)) throw new Error(readFileSync(failed, 'utf8'));
    await setTimeout(WAIT_MS);
  }
  return served(outDir, () => {});
}

/** Whether this is the first to ask. */
function claimed(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch {
    return false;
  }
}

async function served(outDir: string, takeAway: () => void): Promise<Built> {
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
      takeAway();
    },
  };
}
