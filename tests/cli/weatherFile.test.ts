// A notebook may come from anyone: the weather file it names stays within the notebook's own folder.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { winterkeep } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'winterkeep-weather-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const shipped = readFileSync('data/weather/balticHills.csv', 'utf8');
const text = readFileSync('notebooks/hill-farm-choice.md', 'utf8');
const [here, beside] = [join(folder, 'nb'), join(folder, 'nb2')];
mkdirSync(join(here, 'years'), { recursive: true });
mkdirSync(beside);
for (const path of [join(here, 'own.csv'), join(here, 'years', 'own.csv'), join(beside, 'x.csv')])
  writeFileSync(path, shipped);
symlinkSync(join(beside, 'x.csv'), join(here, 'link.csv'));
symlinkSync(beside, join(here, 'out'));
symlinkSync(join(here, 'own.csv'), join(here, 'inner.csv'));
symlinkSync(here, join(folder, 'door'));

function check(file: string, at = here) {
  const path = join(at, 'farm.md');
  writeFileSync(path, text.replace('file: balticHills.csv', `file: ${file}`));
  return winterkeep('check', path);
}

describe('a weather file', () => {
  it.each([
    'own.csv',
    './own.csv',
    'years/own.csv',
    'years/../own.csv',
    '../nb/own.csv',
    'inner.csv',
    'balticHills.csv',
  ])('in the notebook’s folder or shipped is read: %s', async (file) => {
    expect(await check(file)).toMatchObject({ code: 0, error: '' });
  });

  it('is read where the folder itself is reached by a link', async () => {
    expect(await check('own.csv', join(folder, 'door'))).toMatchObject({ code: 0, error: '' });
  });

  it.each([
    '../nb2/x.csv',
    join(beside, 'x.csv'),
    'years/../../nb2/x.csv',
    'link.csv',
    'out/x.csv',
    '..',
    '../balticHills.csv',
  ])('outside it is refused, though it be there: %s', async (file) => {
    const { code, error } = await check(file);
    expect(code).toBe(1);
    expect(error).toMatch(
      /farm\.md:15 farm\.weather\.file: .*outside the notebook’s folder.*copy the file beside/,
    );
  });

  it('that is nowhere is named', async () => {
    const { code, error } = await check('years/none.csv');
    expect(code).toBe(1);
    expect(error).toContain('the weather file is not there');
  });
});
