/** `THIRD-PARTY.md`: every package in the lock file with its licence, and whose it is. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findRoot } from './readData.ts';

export interface Package {
  readonly name: string;
  readonly version: string;
  readonly license: string;
  /** Only for checks and building, never part of the page or the command. */
  readonly dev: boolean;
  /** For another kind of machine, or only where it can be had. */
  readonly optional: boolean;
  /** Whether it asks to run a program of its own when it is installed; the set-up lets none. */
  readonly script: boolean;
  readonly path: string;
}

/** Packages whose own description does not say it, as their licence file does. */
const BY_FILE: Readonly<Record<string, string>> = { suncalc: 'BSD-2-Clause' };

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly devOptional?: boolean;
  readonly hasInstallScript?: boolean;
}

/** Every package of the lock file but this one, by name and version. */
export function packagesOf(lock: { readonly packages: Readonly<Record<string, Locked>> }): Package[] {
  const all = Object.entries(lock.packages).flatMap(([path, locked]): Package[] => {
    if (path === '') return [];
    const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
    return [
      {
        name,
        path,
        version: locked.version,
        license: locked.license ?? BY_FILE[name] ?? '',
        dev: locked.dev === true || locked.devOptional === true,
        optional: locked.optional === true || locked.devOptional === true,
        script: locked.hasInstallScript === true,
      },
    ];
  });
  return all.sort((a, b) =>
    a.name === b.name ? (a.version < b.version ? -1 : 1) : a.name < b.name ? -1 : 1,
  );
}

export function thirdPartyText(): string {
  const packages = packagesOf(JSON.parse(readFileSync(join(findRoot(), 'package-lock.json'), 'utf8')));
  const table = (heads: readonly string[], rows: readonly (readonly string[])[]) =>
    [heads, heads.map(() => '---'), ...new Set(rows.map((row) => row.join(' | ')))]
      .map((row) => `| ${typeof row === 'string' ? row : row.join(' | ')} |`)
      .join('\n');
  const shipped = packages.filter(({ dev }) => !dev);
  const tools = packages.filter(({ dev }) => dev);
  return `# Packages by others

Written by \`npm run generate\` from package-lock.json. None of them may run a program of its own when it is installed: the
set-up installs with \`--ignore-scripts\`.

## In the page and the command

${table(
  ['package', 'version', 'licence', 'whose'],
  shipped.map((each) => [each.name, each.version, each.license, each.optional ? '' : ownerOf(each.path)]),
)}

## For building and checks only

${table(
  ['package', 'version', 'licence'],
  tools.map(({ name, version, license }) => [name, version, license]),
)}
`;
}

/** The line of its licence file that says whose it is. */
function ownerOf(path: string): string {
  const folder = join(findRoot(), path);
  if (!existsSync(folder)) return '';
  const file = readdirSync(folder).find((name) => /^licen[cs]e/i.test(name));
  const line = file && /^.*copyright.*\d{4}.*$/im.exec(readFileSync(join(folder, file), 'utf8'))?.[0];
  return (line ?? '').replace(/[|\r]|https?:\S+/g, '').replace(/^[\s*#/]+|[\s*#/]+$/g, '');
}
