/** Runs test files of a tree in a process of their own and says which test failed first, if any. */
import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';

/** A fault may make a loop endless; a run longer than this on a loaded machine has noticed it. */
const MOST_MS = 120_000;
const MOST_MS_A_FILE = 10_000;

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
  const child = spawn(process.execPath, [join(root, 'node_modules/vitest/vitest.mjs'), ...words, ...files], {
    cwd: root,
    stdio: 'ignore',
    detached: true,
  });
  const most = MOST_MS + files.length * MOST_MS_A_FILE;
  const stop = setTimeout(() => child.pid && process.kill(-child.pid, 'SIGKILL'), most);
  const [code, signal] = await new Promise<[number | null, string | null]>((resolve) =>
    child.on('exit', (...how) => resolve(how)),
  );
  clearTimeout(stop);
  if (signal === 'SIGKILL') return `${files[0]} and others: no end after ${most / 1000} s`;
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
