/** Runs test files of a tree in a process of their own and says which test failed first, if any. */
import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';

/**
 * A fault may make a loop endless: a process that has worked this long has noticed it. By the processor's time, so that a
 * busy machine notices no more than an idle one; by the clock only what waits for ever.
 */
const MOST_WORK_S = 240;
const MOST_WAIT_MS = 1_800_000;

interface Report {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[];
  }[];
}

export async function runTests(
  root: string,
  files: readonly string[],
  project: 'node' | 'browser',
): Promise<string | undefined> {
  const report = join(root, 'report.json');
  rmSync(report, { force: true });
  const words = ['run', '--project', project, '--bail', '1', '--reporter', 'json', '--outputFile', report];
  const vitest = join(root, 'node_modules/vitest/vitest.mjs');
  const limited = `ulimit -t ${MOST_WORK_S}; exec "$0" "$@"`;
  const child = spawn('sh', ['-c', limited, process.execPath, vitest, ...words, ...files], {
    cwd: root,
    stdio: 'ignore',
    detached: true,
  });
  const end = () => child.pid && process.kill(-child.pid, 'SIGKILL');
  // Whoever stops this stops the tests it started too.
  process.on('exit', end);
  const stop = setTimeout(end, MOST_WAIT_MS);
  const code = await new Promise<number | string | null>((resolve) =>
    child.on('exit', (ended, signal) => resolve(ended ?? signal)),
  );
  process.off('exit', end);
  clearTimeout(stop);
  if (code === 0) return undefined;
  return firstFailed(root, report) ?? `${files[0]} and others: the run ended with ${code}`;
}

function firstFailed(root: string, report: string): string | undefined {
  let written: Report;
  try {
    written = JSON.parse(readFileSync(report, 'utf8'));
  } catch {
    return undefined;
  }
  for (const { name, status, assertionResults } of written.testResults) {
    const failed = assertionResults.find((one) => one.status === 'failed');
    if (failed || status === 'failed')
      return `${relative(root, name)} ${failed?.fullName ?? 'could not be loaded'}`;
  }
  return undefined;
}
