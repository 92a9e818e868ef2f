/** Calls and notebooks that once crashed, were let through, or said nothing. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { NOTEBOOKS, winterkeep } from './run.ts';

const HILL = readFileSync(NOTEBOOKS[0], 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'winterkeep-'));

/** The hill farm with parts of its text replaced, written to a file. */
function changed(name: string, ...changes: readonly (readonly [string, string])[]): string {
  const file = join(folder, `${name}.md`);
  const text = changes.reduce((t, [from, to]) => {
    expect(t).toContain(from);
    return t.replace(from, () => to);
  }, HILL);
  writeFileSync(file, text);
  return file;
}

const LAST_FINANCE = 'spreading: { month: 9 }\n    finance: { baseline: Paddock }';
const finance = (words: string) => [LAST_FINANCE, `spreading: { month: 9 }\n    finance: ${words}`] as const;

describe('a wrong call', () => {
  it.each(['constructor', '__proto__', 'toString'])('is refused when the command is %s', async (name) => {
    expect(await winterkeep(name)).toMatchObject({
      code: 2,
      error: expect.stringContaining('unknown command'),
    });
  });

  it('takes a negative number as the value of the option before it', async () => {
    for (const call of [
      ['compare', NOTEBOOKS[0], '--draws', '-5'],
      ['case', NOTEBOOKS[0], '--draws', '-1'],
    ])
      expect(await winterkeep(...call)).toMatchObject({
        code: 2,
        error: expect.stringMatching(
          /^--draws: not a whole number in range; found -\d; allowed \d+ to \d+\n$/,
        ),
      });
  });

  it('needs a dot before the ending of a batch file', async () => {
    const out = join(folder, 'xcsv');
    expect((await winterkeep('batch', NOTEBOOKS[0], '--out', out)).code).toBe(2);
    expect(existsSync(out)).toBe(false);
  });

  it('names a missing folder without naming the file it would have used', async () => {
    const { code, error } = await winterkeep('batch', NOTEBOOKS[0], '--out', join(folder, 'none', 'x.csv'));
    expect(code).toBe(1);
    expect(error).toContain('its folder does not exist');
    expect(error).not.toContain('.part');
  });

  it('writes no tables when the paper beside them has nowhere to go', async () => {
    const tables = join(folder, 'tables');
    const out = join(folder, 'none', 'x.html');
    const call = ['case', NOTEBOOKS[0], '--draws', '0', '--out', out, '--tables', tables];
    expect(await winterkeep(...call)).toMatchObject({ code: 1, error: expect.stringContaining('folder') });
    expect(existsSync(tables)).toBe(false);
  });

  it('refuses a scenario as its own baseline', async () => {
    const call = [
      'case',
      NOTEBOOKS[0],
      '--scenario',
      'Slats',
      '--baseline',
      'Slats',
      '--out',
      join(folder, 's.html'),
    ];
    expect(await winterkeep(...call)).toMatchObject({
      code: 1,
      error: expect.stringContaining('with itself'),
    });
  });
});

describe('a sweep', () => {
  it.each([
    ['headCount', '-5', '5', '--from', '0 to 100000'],
    ['bedShare', '0', '2', '--to', '0 to 1'],
    ['winterDays', '1', '2000', '--to', '1 to 366'],
    ['interestRate', '-1', '0.1', '--from', '0 to 1'],
    ['eaveM', '0', '4', '--from', '0.5 to 25'],
    ['rainFactor', '-1', '1', '--from', '0 to 5'],
    ['packDecayAt20CPerDay', '-0.1', '0.1', '--from', '0 to 2'],
  ])('does not take %s from %s to %s', async (over, from, to, option, allowed) => {
    const { code, out, error } = await winterkeep(
      'sweep',
      NOTEBOOKS[0],
      '--over',
      over,
      '--from',
      from,
      '--to',
      to,
    );
    expect([code, out]).toEqual([1, '']);
    expect(error).toContain(`${option}: ${over}`);
    expect(error).toContain(allowed);
  });
});

describe('check', () => {
  it('tells Fahrenheit of a cold place in one line', async () => {
    const rows = Array.from({ length: 400 }, (_, k) => {
      const day = new Date(Date.UTC(2024, 7, 1 + k)).toISOString().slice(0, 10);
      const low = Math.round(22 + 20 * Math.cos(k / 58));
      return `${day},2.1,${low},${low + 8}`;
    });
    writeFileSync(join(folder, 'cold.csv'), ['date,rainMm,minC,maxC', ...rows, ''].join('\n'));
    const file = changed('cold', ['{ file: balticHills.csv, year: 2016 }', '{ file: cold.csv }']);
    const { code, error } = await winterkeep('check', file);
    expect(code).toBe(1);
    expect(error).toContain('the temperatures look like Fahrenheit');
    expect(error.trim().split('\n')).toHaveLength(1);
  });

  it('says to quote a name that reads as a number', async () => {
    const { error } = await winterkeep('check', changed('number', ['name: Slats\n', 'name: 12\n']));
    expect(error).toContain('put it in quotes: "12"');
  });

  it('names the faults of every file, not of the first bad one only', async () => {
    const bad = changed('bad', ['head: 16', 'head: -3']);
    const { code, out, error } = await winterkeep('check', 'nowhere.md', bad, NOTEBOOKS[0]);
    expect(code).toBe(1);
    expect(error).toContain('nowhere.md');
    expect(error).toContain('farm.herd.0.head');
    expect(out).toContain('nothing wrong');
  });

  const bad: readonly (readonly [string, readonly (readonly [string, string])[], string])[] = [
    ['a herd beyond counting', [['head: 16', 'head: 1e308']], 'farm.herd.0.head: the number is too large'],
    ['a shed beyond building', [['lengthM: 24\n', 'lengthM: 1e9\n']], 'shed.lengthM: the number is too large'],
    ['bays of no width', [['barrierLiftM: 1.2', 'barrierLiftM: 1.2\n      bayM: 0.00001']], 'shed.bayM: the number is too small'],
    ['a blank name', [['name: Slats\n', 'name: " "\n']], 'words on one line'],
    ['a name of two lines', [['name: Slats\n', 'name: "Sl\\nats"\n']], 'words on one line'],
    ['itself as baseline', [finance('{ baseline: Straw bed }')], 'cannot be compared with itself'],
    ['a share above the whole', [['draws: {', 'coefficients:\n  - { id: excretaDegradableFraction, value: 40, because: x }\ndraws: {']], 'coefficients.0.value: the coefficient cannot have this value; found 40; allowed a number from 0 to 1'],
    ['a mass below nothing', [['draws: {', 'coefficients:\n  - { id: packDecayAt20CPerDay, value: 0.01, low: -1, because: x }\ndraws: {']], 'coefficients.0.low: the coefficient cannot'],
    ['brackets without end', [['units: metric', `units: ${'['.repeat(20_000)}${']'.repeat(20_000)}`]], 'brackets opened on one line'],
  ]; // biome-ignore format: a table
  it.each(bad)('refuses %s', async (name, changes, says) => {
    const { code, out, error } = await winterkeep('check', changed(name.replace(/ /g, '-'), ...changes));
    expect([code, out]).toEqual([1, '']);
    expect(error).toMatch(/\.md:\d+[ :]/);
    expect(error).toContain(says);
    expect(error).not.toMatch(/call stack/);
  });

  it('takes odd but readable names, and file names with blanks', async () => {
    const odd = changed(
      'with blanks & ünï',
      ['name: Slats\n', 'name: "Sl\\"a,ts; 床 =1+1"\n'],
      ['of Slats', 'of Paddock'],
      ['[Paddock, Slats]', '[Paddock, Straw bed]'],
    );
    const text = readFileSync(odd, 'utf8').replace(/ of Slats/g, ' of Paddock');
    writeFileSync(odd, text);
    const { code, out } = await winterkeep('compare', odd, '--format', 'csv');
    expect(code).toBe(0);
    expect(out.split('\n')[0]).toBe('quantity,unit,Paddock,"Sl""a,ts; 床 =1+1",Straw bed');
  });
});

describe('compare', () => {
  it('has P10, P50 and P90 in order for every quantity that has a value in every draw', async () => {
    const { out } = await winterkeep('compare', NOTEBOOKS[0], '--format', 'json', '--draws', '40');
    for (const { values, p10, p50, p90 } of JSON.parse(out).scenarios)
      for (const name of Object.keys(values)) {
        expect([name, name in p10, name in p50, name in p90]).toEqual([name, true, true, true]);
        if (p10[name] === null) continue;
        expect(p10[name]).toBeLessThanOrEqual(p50[name]);
        expect(p50[name]).toBeLessThanOrEqual(p90[name]);
      }
  });

  it('loses no less to water and as nitrogen gas in wetter winters, and leaches more than in dry ones', async () => {
    const WAYS = ['nitrogenLeachedKg', 'nitrogenRunoffKg', 'nitrogenNitrousKg', 'nitrogenDinitrogenKg'];
    for (const notebook of NOTEBOOKS) {
      const call = ['--over', 'rainFactor', '--from', '0.5', '--to', '2', '--steps', '13'];
      const rows: Record<string, number[]>[] = [];
      for (const way of WAYS) {
        const { out } = await winterkeep('sweep', notebook, ...call, '--results', way);
        const by: Record<string, number[]> = {};
        for (const line of out.trim().split('\n').slice(1)) {
          const [, scenario, kg] = /^[^,]+,(.*),([^,]*)$/.exec(line) ?? [];
          by[scenario] ??= [];
          by[scenario].push(Number(kg));
        }
        rows.push(by);
      }
      expect(Object.keys(rows[0]).length).toBeGreaterThanOrEqual(3);
      for (const [scenario, leached] of Object.entries(rows[0])) {
        // What runs off or turns to gas on wet ground cannot leach: the parts compete, their sum does not fall.
        const sums = leached.map((_, k) => rows.reduce((sum, by) => sum + by[scenario][k], 0));
        sums.slice(1).forEach((sum, k) => {
          expect(sum).toBeGreaterThanOrEqual(sums[k] * (1 - 1e-3));
        });
        expect(leached[12]).toBeGreaterThanOrEqual(leached[0]);
        if (leached[6] > 1) expect(leached[6]).toBeGreaterThan(1.05 * leached[0]);
      }
    }
  });

  it('stops the roof clearance, with its week, when the eave is a metre lower', async () => {
    const { out } = await winterkeep(
      'compare',
      changed('eave', ['eaveM: 4.8', 'eaveM: 3.8']),
      '--format',
      'json',
    );
    const { checks } = JSON.parse(out).scenarios[2];
    const roof = checks.find(({ id }: { id: string }) => id === 'roofClearance');
    expect(roof.status).toBe('stop');
    expect(roof.week).toBeGreaterThan(1);
    expect(roof.words).toContain(`week ${roof.week}`);
  });
});

describe('what is worth knowing is said on standard error', () => {
  it('of a grant and loans above what the works cost', async () => {
    const file = changed('grant', finance('{ grant: 9999999 }'));
    for (const format of ['text', 'json']) {
      const { code, error } = await winterkeep('compare', file, '--format', format);
      expect(code).toBe(0);
      expect(error).toMatch(/note: .*grant\.md:\d+ finance\.grant: Straw bed: the grant is .* more than/);
    }
  });

  it('of gaps in the weather, and of winters left out for them', async () => {
    const days = Array.from({ length: 700 }, (_, k) =>
      new Date(Date.UTC(2024, 7, 1 + k)).toISOString().slice(0, 10),
    );
    const rows = days.filter((_, k) => !(k > 100 && k < 130) && k !== 400).map((day) => `${day},2.1,-1,4`);
    writeFileSync(join(folder, 'gaps.csv'), ['date,rainMm,minC,maxC', ...rows, ''].join('\n'));
    const file = changed('gaps', ['{ file: balticHills.csv, year: 2016 }', '{ file: gaps.csv }']);
    for (const command of ['check', 'compare']) {
      const { code, error } = await winterkeep(command, file);
      expect(code).toBe(0);
      expect(error).toMatch(/note: .*gaps of at most 5 days were filled.*found .*2025-09-05/);
      expect(error).toMatch(/note: .*winters that touch them are left out.*2024-11-10 to 2024-12-08/);
    }
  });

  it('and leaves nothing behind', () => {
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});
