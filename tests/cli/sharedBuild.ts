/** The folder of the page that all tests of a run share: made before them, taken away after the last. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Built into by the first file that asks for it. */
    sharedBuild: string;
  }
}

export default function setUp(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'winterkeep-'));
  project.provide('sharedBuild', folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
