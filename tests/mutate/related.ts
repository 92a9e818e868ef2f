/** Which tests could notice a change of a file: those that import it, the nearest first. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

const IMPORT = /(?:from|import)\s*\(?\s*'(\.[^']+)'/g;

/** What each file imports of the repository. */
function importsOf(root: string, file: string): string[] {
  const text = readFileSync(join(root, file), 'utf8');
  return [...text.matchAll(IMPORT)]
    .map(([, path]) => normalize(join(dirname(file), path.split('?')[0])))
    .filter((path) => /\.(ts|mjs)$/.test(path) && existsSync(join(root, path)));
}

/** For every file that a test reaches: the tests that reach it, with the number of imports between. */
export class Graph {
  private readonly reached = new Map<string, Map<string, number>>();
  private readonly imports = new Map<string, string[]>();

  constructor(
    private readonly root: string,
    private readonly tests: readonly string[],
  ) {
    for (const test of tests) this.reached.set(test, this.walk(test));
  }

  private walk(test: string): Map<string, number> {
    const found = new Map([[test, 0]]);
    for (let ring = [test], far = 1; ring.length > 0; far++) {
      ring = ring.flatMap((file) => {
        let of = this.imports.get(file);
        if (!of) {
          of = importsOf(this.root, file);
          this.imports.set(file, of);
        }
        return of.filter((each) => !found.has(each) && found.set(each, far));
      });
    }
    return found;
  }

  /** Tests that import `file`, those of its own room first, then by distance. */
  of(file: string): string[] {
    const room = file
      .replace(/^src\//, 'tests/')
      .split('/')
      .slice(0, -1)
      .join('/');
    return this.tests
      .flatMap((test) => {
        const far = this.reached.get(test)?.get(file);
        return far === undefined ? [] : [{ test, far: far - (test.startsWith(`${room}/`) ? 100 : 0) }];
      })
      .sort((a, b) => a.far - b.far || a.test.localeCompare(b.test))
      .map(({ test }) => test);
  }
}
