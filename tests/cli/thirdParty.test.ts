import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { packagesOf } from '../../src/cli/thirdParty.ts';

const read = (path: string) => readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');
const lock = JSON.parse(read('package-lock.json'));
const packages = packagesOf(lock);
const [shipped, tools] = read('THIRD-PARTY.md').split('## For building and checks only');

/** Licences that ask for no more than to be named; others would bind whoever hands the page on. */
const PLAIN =
  /^(MIT|ISC|0BSD|Unlicense|BSD-[23]-Clause|Apache-2\.0|BlueOak-1\.0\.0|\(?MIT OR [\w.-]+\)?|MPL-2\.0|PSF-2\.0)$/;
/** Packages that ask to run a program when they are installed, and do without it. */
const WITHOUT_THEIR_SCRIPT = ['esbuild'];

describe('packages by others', () => {
  it('are all listed, each with its licence, those of the page apart', () => {
    expect(packages.length).toBe(Object.keys(lock.packages).length - 1);
    for (const { name, version, license, dev } of packages) {
      expect(license, name).not.toBe('');
      expect(dev ? tools : shipped, name).toContain(`| ${name} | ${version} | ${license} |`);
    }
  });

  it('and no other is', () => {
    const known = new Set(packages.map(({ name, version }) => `${name} ${version}`));
    const listed = [...`${shipped}${tools}`.matchAll(/^\| (\S+) \| (\d\S*) \|/gm)].map(
      ([, name, version]) => `${name} ${version}`,
    );
    expect(listed.length).toBe(known.size);
    expect(listed.filter((each) => !known.has(each))).toEqual([]);
  });

  it('that are asked for by name stand where they belong', () => {
    const { dependencies, devDependencies } = JSON.parse(read('package.json'));
    for (const name of Object.keys(dependencies)) expect(shipped).toContain(`| ${name} |`);
    for (const name of Object.keys(devDependencies)) expect(tools).toContain(`| ${name} |`);
  });

  it('in the page and the command bind nobody to more than naming them', () => {
    expect(packages.filter(({ dev, license }) => !dev && !PLAIN.test(license))).toEqual([]);
  });

  it('in the page say the same in their own folder', () => {
    const wrong = packages.flatMap(({ dev, optional, path, license, name }) => {
      const file = fileURLToPath(new URL(`../../${path}/package.json`, import.meta.url));
      if (dev || optional || !existsSync(file)) return [];
      const own = JSON.parse(readFileSync(file, 'utf8')).license;
      return own === undefined || own === license ? [] : [`${name}: ${own}`];
    });
    expect(wrong).toEqual([]);
  });

  it('run nothing when they are installed', () => {
    expect(packages.filter(({ script }) => script).map(({ name }) => name)).toEqual(WITHOUT_THEIR_SCRIPT);
    expect(read('src/cli/setup.mjs')).toContain("'--ignore-scripts'");
  });
});
