import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const tracked = execFileSync('git', ['ls-files', '-co', '--exclude-standard'], {
  cwd: ROOT,
  encoding: 'utf8',
})
  .split('\n')
  .filter((file) => file !== '' && existsSync(join(ROOT, file)));
const text = (file: string) => readFileSync(join(ROOT, file), 'utf8');
const TEXT = /\.(ts|mjs|js|json|md|csv|css|html|svg|yaml|yml)$|^\.ci\/run$|^LICENSE$/;

/** The top level is fixed; what is not listed does not belong there. */
const TOP = [
  '.ci',
  '.gitattributes',
  '.gitignore',
  '.npmrc',
  'CHANGELOG.md',
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'THIRD-PARTY.md',
  'biome.json',
  'data',
  'knip.json',
  'notebooks',
  'package-lock.json',
  'package.json',
  'shared',
  'src',
  'tests',
  'tsconfig.json',
  'vite.config.ts',
];

describe('the files', () => {
  it('keep the top level as it is', () => {
    const found = new Set(tracked.map((file) => file.split('/')[0]));
    expect([...found].filter((name) => !TOP.includes(name))).toEqual([]);
  });

  it('name no host in the lock file', () => {
    const lock = text('package-lock.json');
    expect(lock).not.toMatch(/"resolved"/);
    const hosts = [...lock.matchAll(/https?:\/\/([^/"]+)/g)].map((m) => m[1]);
    // Funding and home pages are prose of the packages' authors, never a place to fetch from.
    expect(hosts.filter((host) => /registry|npmjs|artifact|mirror|proxy/.test(host))).toEqual([]);
  });

  it('carry no path of a machine and no registry host', () => {
    const bad = tracked
      .filter(
        (file) => TEXT.test(file) && file !== 'package-lock.json' && file !== 'tests/house/files.test.ts',
      )
      .filter((file) =>
        /(\/home\/\w|\/Users\/\w|\/root\/|\/work\/|[A-Z]:\\\\|registry\.npmjs|localhost:\d{4,5}\/artifact)/.test(
          text(file),
        ),
      );
    expect(bad).toEqual([]);
  });

  it('link only to files and headings that exist', () => {
    const broken: string[] = [];
    for (const file of tracked.filter((f) => f.endsWith('.md') && !f.startsWith('tests/'))) {
      const body = text(file).replace(/```[\s\S]*?```/g, '');
      for (const [, target] of body.matchAll(/\]\(([^)\s]+)\)/g)) {
        if (/^[a-z]+:/.test(target)) continue;
        const [path, hash] = target.split('#');
        const at = path === '' ? file : join(dirname(file), path);
        if (!existsSync(join(ROOT, at))) broken.push(`${file}: ${target}`);
        else if (hash && at.endsWith('.md') && !headings(text(at)).includes(hash))
          broken.push(`${file}: ${target}`);
      }
    }
    expect(broken).toEqual([]);
  });

  it('end with one new line', () => {
    const bad = tracked
      .filter((file) => TEXT.test(file) && !file.startsWith('tests/broken/'))
      .filter((file) => !/[^\n]\n$/.test(text(file)));
    expect(bad).toEqual([]);
  });
});

function headings(markdown: string): string[] {
  return [...markdown.matchAll(/^#+\s+(.+)$/gm)].map(([, title]) =>
    title
      .toLowerCase()
      .replace(/[^\w\s-]/g, '')
      .trim()
      .replace(/\s+/g, '-'),
  );
}
