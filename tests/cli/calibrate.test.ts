// Every shipped case runs, and the score that is printed is the one the README and the page show.
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { KEPT, scoreAll } from '../../src/cli/calibrate.ts';
import { inReadme, scoreJson } from '../../src/cli/calibrateText.ts';
import { openCases } from '../../src/cli/cases.ts';
import { shippedTables } from '../../src/cli/open.ts';
import { winterkeep } from './run.ts';

const rows = await scoreAll(KEPT);

describe('the shipped cases', () => {
  it('are pairs of a notebook and a file of what was measured', () => {
    const names = readdirSync('data/cases').filter((name) => name !== 'README.md' && name !== 'score.json');
    const of = (ending: string) =>
      names.filter((n) => n.endsWith(ending)).map((n) => n.slice(0, -ending.length));
    expect(of('.md')).toEqual(of('.yaml'));
    expect(names).toHaveLength(2 * of('.md').length);
  });

  it('hold the model against at least 40 outputs of 20 studies it was not fitted to', () => {
    const counted = rows.filter((row) => row.class === 'independent');
    expect(counted.length).toBeGreaterThanOrEqual(40);
    expect(new Set(counted.map((row) => row.source)).size).toBeGreaterThanOrEqual(20);
  });

  it.each(rows.map((row) => [`${row.case}: ${row.output}`, row] as const))('%s has a figure', (_, row) => {
    expect(row.model).not.toBeNull();
    expect(row.p10).not.toBeNull();
    expect(row.p90 as number).toBeGreaterThanOrEqual(row.p10 as number);
  });

  it('name no row of their own study among those counted', async () => {
    const { coefficients } = shippedTables();
    for (const row of rows.filter((r) => r.class === 'calibration'))
      for (const id of row.fittedBy) expect(coefficients.has(id), `${row.case} ${id}`).toBe(true);
    expect(rows.filter((r) => r.class === 'independent' && r.fittedBy.length > 0)).toEqual([]);
  });
});

describe('the score', () => {
  const stale = 'the model has moved: npm run calibrate -- --write';

  it('in data/cases/score.json is the one that is computed', () => {
    expect(JSON.parse(readFileSync('data/cases/score.json', 'utf8')), stale).toEqual(scoreJson(rows));
  });

  it('in the README is the one that is computed', () => {
    const readme = readFileSync('README.md', 'utf8');
    expect(readme, stale).toBe(inReadme(readme, rows));
  });

  it('is refused a README without its block', () => {
    expect(() => inReadme('# nothing\n', rows)).toThrow(/no block for the score/);
  });
});

describe('calibrate', () => {
  it('prints every output, the score line, and what the spread rests on', async () => {
    const { code, out } = await winterkeep('calibrate');
    expect(code).toBe(0);
    for (const row of rows) expect(out).toContain(`${row.case}: ${row.output}`);
    const { independent } = scoreJson(rows);
    expect(out).toContain(
      `Score: ${independent.pass} of ${independent.outputs} pass, ${independent.near} near, ${independent.fail} fail; measured value inside P10–P90 in ${independent.insideDraws} of ${independent.outputs}`,
    );
    for (const name of readdirSync('notebooks').filter((n) => n.endsWith('.md'))) expect(out).toContain(name);
    expect(out).not.toMatch(/NaN|undefined/);
  });

  it('prints the same as JSON and as CSV, whose best guesses hang on no draws', async () => {
    const { code, out } = await winterkeep('calibrate', '--format', 'json', '--draws', '20', '--seed', '5');
    expect(code).toBe(0);
    const { draws, outputs, restsOn } = JSON.parse(out);
    expect(draws).toEqual({ count: 20, seed: 5 });
    const shown = (all: typeof rows) => all.map(({ output, model, verdict }) => [output, model, verdict]);
    expect(shown(outputs)).toEqual(shown(rows));
    for (const { figures } of restsOn)
      for (const { shares, publishedOrDerived } of figures)
        expect(publishedOrDerived).toBeCloseTo(shares.published + shares.derived, 12);
    const csv = await winterkeep('calibrate', '--format', 'csv', '--draws', '20');
    expect(csv.out.split('\n').filter((line) => /,(pass|near|fail),(yes|no)$/.test(line))).toHaveLength(
      rows.length,
    );
  });

  it('refuses an unknown format, and to keep a score made with other draws', async () => {
    expect(await winterkeep('calibrate', '--format', 'xml')).toMatchObject({
      code: 2,
      error: expect.stringContaining('allowed text, json, csv'),
    });
    expect(await winterkeep('calibrate', '--write', '--draws', '50')).toMatchObject({
      code: 2,
      error: expect.stringContaining('leave --draws and --seed out'),
    });
  });

  it('names every wrong case by file and line', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'winterkeep-cases-'));
    for (const id of ['eghball-1997-windrows', 'paillat-2005-heaps', 'sommer-1993-store'])
      for (const ending of ['md', 'yaml'])
        cpSync(`data/cases/${id}.${ending}`, join(folder, `${id}.${ending}`));
    const paillat = join(folder, 'paillat-2005-heaps.yaml');
    writeFileSync(paillat, readFileSync(paillat, 'utf8').replace('scenario: Heap', 'scenario: Pile'));
    const eghball = join(folder, 'eghball-1997-windrows.yaml');
    writeFileSync(eghball, readFileSync(eghball, 'utf8').replace('unit: fraction', 'units: fraction'));
    rmSync(join(folder, 'sommer-1993-store.md'));
    await expect(openCases(folder)).rejects.toThrow(
      /eghball-1997-windrows\.yaml:\d+ measured\.0[\s\S]*paillat-2005-heaps\.yaml:\d+ measured\.0\.scenario[\s\S]*sommer-1993-store\.yaml: the notebook of the case is missing/,
    );
  });
});
