import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { NOTEBOOKS, winterkeep } from './run.ts';

describe('check', () => {
  it('passes the shipped notebooks', async () => {
    const { code, out } = await winterkeep('check', ...NOTEBOOKS);
    expect(code).toBe(0);
    expect(out.trim().split('\n')).toHaveLength(NOTEBOOKS.length);
  });

  it('refuses a file that is not there, a folder, and one that is no text', async () => {
    expect(await winterkeep('check', 'notebooks/none.md')).toMatchObject({
      code: 1,
      error: expect.stringContaining('no such file'),
    });
    expect(await winterkeep('check', 'notebooks')).toMatchObject({
      code: 1,
      error: expect.stringContaining('folder'),
    });
    const file = join(mkdtempSync(join(tmpdir(), 'winterkeep-')), 'picture.md');
    writeFileSync(file, Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13]));
    const { code, error } = await winterkeep('check', file);
    expect(code).toBe(1);
    expect(error).toContain('picture.md');
  });

  it('refuses 50 MB without reading it', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'winterkeep-')), 'large.md');
    writeFileSync(file, Buffer.alloc(50_000_000, 'a'));
    const { code, error } = await winterkeep('check', file);
    expect(code).toBe(1);
    expect(error).toContain('too large');
  });
});

describe('explain', () => {
  it('ends in sources', async () => {
    const { code, out } = await winterkeep('explain', NOTEBOOKS[0], '1', 'nitrogenKeptKg');
    expect(code).toBe(0);
    expect(out).toContain('how: ');
    expect(out).toMatch(/source: .*(EMEP|IPCC)/);
    expect(out).toContain('from the notebook: ');
    expect(out).not.toMatch(/NaN|undefined/);
  });

  it('names the nearest when a name is mistyped', async () => {
    const { code, error } = await winterkeep('explain', NOTEBOOKS[0], '1', 'nitrogenKept');
    expect(code).toBe(1);
    expect(error).toContain('nitrogenKeptKg');
  });

  it('names the scenarios when there is none of that name', async () => {
    const { code, error } = await winterkeep('explain', NOTEBOOKS[0], 'Nowhere', 'netCost');
    expect(code).toBe(1);
    expect(error).toContain('allowed');
  });
});

describe('sweep', () => {
  it('starts and ends at the asked values, a line for each step and scenario', async () => {
    const { code, out } = await winterkeep(
      'sweep',
      NOTEBOOKS[0],
      '--over',
      'headCount',
      '--from',
      '8',
      '--to',
      '32',
      '--steps',
      '4',
      '--results',
      'netCost',
    );
    expect(code).toBe(0);
    const lines = out.trim().split('\n');
    expect(lines[0]).toBe('headCount,scenario,netCost');
    expect((lines.length - 1) % 4).toBe(0);
    expect(lines[1]).toMatch(/^8,/);
    expect(lines.at(-1)).toMatch(/^32,/);
  });

  it('builds to match a herd that is turned, or leaves the shed, as asked', async () => {
    const turned = async (...herd: string[]) => {
      const args = [
        '--over',
        'headCount',
        '--from',
        '17',
        '--to',
        '34',
        '--steps',
        '2',
        '--results',
        'capitalCost',
      ];
      const { code, out } = await winterkeep('sweep', 'notebooks/hill-farm-choice.md', ...args, ...herd);
      expect(code).toBe(0);
      return Number(out.trim().split('\n').at(-1)?.split(',').at(-1));
    };
    const built = await turned();
    expect(await turned('--herd', 'built')).toBe(built);
    expect(await turned('--herd', 'stays')).toBeLessThan(0.7 * built);
    const { code, error } = await winterkeep(
      'sweep',
      NOTEBOOKS[0],
      ...['--over', 'headCount', '--from', '8', '--to', '32', '--herd', 'grows'],
    );
    expect(code).toBe(2);
    expect(error).toContain('found grows; allowed built, stays');
  });

  it('refuses an input the model does not have, naming the nearest', async () => {
    const { code, error } = await winterkeep(
      'sweep',
      NOTEBOOKS[0],
      '--over',
      'rainfactor',
      '--from',
      '0',
      '--to',
      '2',
    );
    expect(code).toBe(1);
    expect(error).toContain('rainFactor');
  });
});

describe('the command', () => {
  it('prints its usage, with each command it has', async () => {
    const { code, out } = await winterkeep('--help');
    expect(code).toBe(0);
    for (const name of ['compare', 'check', 'explain', 'sweep', 'batch', 'case'])
      expect(out).toContain(`${name} FILE`);
  });

  it('refuses an unknown command with exit code 2', async () => {
    expect(await winterkeep('compute')).toMatchObject({
      code: 2,
      error: expect.stringContaining('unknown command: compute'),
    });
  });
});
