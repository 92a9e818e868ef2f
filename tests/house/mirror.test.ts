/** Where the tests of a room are: a folder of its name, or the list here says otherwise. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const tracked = execFileSync('git', ['ls-files', '-co', '--exclude-standard', 'src', 'tests'], {
  cwd: ROOT,
  encoding: 'utf8',
})
  .split('\n')
  .filter((file) => file !== '' && existsSync(`${ROOT}${file}`));

/** Folders below `top`, without it: `model`, `model/bed` … */
const folders = (top: string): string[] => {
  const all = tracked
    .filter((file) => file.startsWith(`${top}/`))
    .flatMap((file) => {
      const parts = file.split('/').slice(1, -1);
      return parts.map((_, k) => parts.slice(0, k + 1).join('/'));
    });
  return [...new Set(all)].sort();
};

/** Folders of tests that are no room of src, and what is in them. */
const NO_ROOM: Readonly<Record<string, string>> = {
  bench: 'speed and memory, and a spreadsheet to compare with',
  hostile: 'notebooks that mean harm, for the tests in a browser and of reading',
  fuzz: 'damaged notebooks, tables, weather and links through everything',
  broken: 'files that must be refused, for the tests of the rooms that read them',
  browser: 'what needs a browser: elements and the page',
  house: 'rules on the files themselves',
  'plots/pictures': 'figures kept as text, whose change is reviewed',
  properties: 'what holds for any farm, over all stages',
  published: 'results against the world outside',
  reference: 'independent formulas that results are compared with',
  mutate: 'puts one fault at a time into code and tables and asks the tests that could notice it',
  torture: 'kills the browser while a notebook is edited',
  snapshot: 'every result of the shipped notebooks, which no change moves unnoticed',
};

/** Rooms of src without a folder of tests, and where they are tested. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  app: 'browser',
  elements: 'browser',
  study: 'properties',
};

describe('the tests', () => {
  const rooms = folders('src');
  const tests = folders('tests');

  it('have a folder only for a room of src, or for a reason', () => {
    const bad = tests.filter(
      (folder) => !rooms.includes(folder) && !(folder in NO_ROOM) && !(folder.split('/')[0] in NO_ROOM),
    );
    expect(bad).toEqual([]);
  });

  it('have a folder for every room of src, or say where it is tested', () => {
    const top = rooms.filter((room) => !room.includes('/'));
    expect(top.filter((room) => !tests.includes(room) && !(room in ELSEWHERE))).toEqual([]);
    expect(Object.keys(ELSEWHERE).filter((room) => tests.includes(room) || !top.includes(room))).toEqual([]);
    expect(Object.values(ELSEWHERE).filter((folder) => !tests.includes(folder))).toEqual([]);
  });

  it('of published figures all say what they are: a set-up file refuses those that do not', () => {
    const files = tracked.filter((file) => /^tests\/published\/.*\.test\.ts$/.test(file));
    const bad = files.filter((file) => !/from '\.\/labels\.ts'/.test(readFileSync(`${ROOT}${file}`, 'utf8')));
    expect(bad).toEqual([]);
  });
});
