import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tableFromIPC } from 'apache-arrow';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { openNotebook } from '../../src/cli/open.ts';
import { NOTEBOOKS } from './run.ts';

/** A farm with monthly normals, so that it needs no file beside it; invented. */
const farm = (head: number) => `---
winterkeep: 1
title: Farm of ${head}
invented: true
farm:
  place: { name: Nowhere, latitudeDeg: 57, longitudeDeg: 26 }
  winter: { start: 2025-11-01, end: 2026-04-15 }
  weather:
    monthly:
      rainMm: [40, 30, 35, 40, 50, 70, 80, 80, 60, 60, 55, 50]
      temperatureC: [-5, -5, -1, 5, 11, 15, 17, 16, 11, 6, 1, -3]
  soil: { texture: loam }
  herd: [{ name: cows, class: sucklerCow, head: ${head}, weightKg: 600 }]
  feed: [{ feed: hay, share: 1 }]
  land: { receivingHa: 10 }
  money: { currency: EUR, year: 2024, labourPerHour: 12 }
scenarios:
  - { name: Out, system: outwintered, because: it is so }
  - { name: "Slats, old", system: slatted, because: it could be }
---
`;

// A worker starts by reading the whole program, which takes seconds on a busy machine.
describe('batch', { timeout: 180_000 }, () => {
  let folder: string;
  let good: string[];
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'winterkeep-batch-'));
    good = Array.from({ length: 18 }, (_, k) => {
      const file = join(folder, `farm${String(k).padStart(2, '0')}.md`);
      writeFileSync(file, farm(k + 1));
      return file;
    });
    writeFileSync(join(folder, 'bad.txt'), farm(3).replace('class: sucklerCow', 'class: unicorn'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  /** Exit code, standard output and standard error of one call. */
  async function call(...args: string[]) {
    let out = '';
    let err = '';
    const spy = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
      err += String(text);
      return true;
    });
    try {
      const code = await main(['batch', ...args], (text) => {
        out += text;
      });
      return { code, out, err };
    } finally {
      spy.mockRestore();
    }
  }
  const left = () => readdirSync(folder).filter((name) => name.includes('.parcels'));

  it('writes an Arrow file that another reader reads, in the order of the files', async () => {
    const target = join(folder, 'all.arrow');
    const { code, out } = await call(folder, '--out', target, '--threads', '2');
    expect(code).toBe(0);
    expect(out).toBe(`${target}: 36 rows from 18 files\n`);
    const table = tableFromIPC(readFileSync(target));
    expect(table.numRows).toBe(36);
    expect(table.batches.length).toBe(2);
    const heads = Array.from(table.getChild('headCount') ?? []);
    expect(heads).toEqual(good.flatMap((_, k) => [k + 1, k + 1]));
    const { run } = await openNotebook(good[6]);
    expect(table.get(13)?.file).toBe(good[6]);
    expect(table.get(13)?.scenario).toBe('Slats, old');
    expect(table.get(13)?.netCost).toBe(run.results[1].values.netCost);
    // Absent is null, not a number.
    expect(table.get(12)?.slurryM3).toBeNull();
    expect(left()).toEqual([]);
  });

  it('gives the figures of a whole evaluation, to the bit, for every shipped notebook', async () => {
    const target = join(folder, 'shipped.arrow');
    await call(...NOTEBOOKS, '--out', target, '--threads', '1');
    const rows = tableFromIPC(readFileSync(target)).toArray();
    for (const file of NOTEBOOKS) {
      const { run } = await openNotebook(file);
      for (const { name, values } of run.results) {
        const row = rows.find((r) => r.file === file && r.scenario === name);
        for (const [quantity, value] of Object.entries(values)) expect(row[quantity], quantity).toBe(value);
      }
    }
  });

  it('is the same file with one worker as with two', async () => {
    const [one, two] = ['1', '2'].map((threads) => join(folder, `threads${threads}.csv`));
    await call(...good, '--out', one, '--threads', '1');
    await call(...good, '--out', two, '--threads', '2');
    expect(readFileSync(one)).toEqual(readFileSync(two));
  });

  it('writes CSV with absent as empty and names in quotes where they need it', async () => {
    const target = join(folder, 'all.csv');
    await call(good[0], good[1], '--out', target);
    const [head, first, second] = readFileSync(target, 'utf8').split('\n');
    expect(head).toMatch(/^file,scenario,system,currency,year,winterDays,headCount,/);
    expect(second).toContain('"Slats, old",slatted,EUR,2024,165,1,');
    expect(first.split(',')[head.split(',').indexOf('slurryM3')]).toBe('');
  });

  it('names a bad file in one line and writes nothing', async () => {
    const target = join(folder, 'none.csv');
    const { code, err } = await call(
      good[0],
      join(folder, 'bad.txt'),
      join(folder, 'gone.md'),
      '--out',
      target,
    );
    expect(code).toBe(1);
    // On a busy machine a line of progress may stand among them.
    const lines = err
      .trimEnd()
      .split('\n')
      .filter((line) => !line.startsWith('batch: '));
    expect(lines).toHaveLength(3);
    expect(lines[0]).toMatch(/bad\.txt.*unicorn/);
    expect(lines[1]).toMatch(/gone\.md: there is no such file/);
    expect(lines[2]).toMatch(/2 of 3 files are wrong; nothing was written/);
    expect(readdirSync(folder)).not.toContain('none.csv');
    expect(left()).toEqual([]);
  });

  it('with --keep-going writes the good rows and still exits with 1', async () => {
    const target = join(folder, 'some.arrow');
    const { code, out } = await call(join(folder, 'bad.txt'), good[0], '--out', target, '--keep-going');
    expect(code).toBe(1);
    expect(out).toContain('2 rows from 1 files');
    expect(tableFromIPC(readFileSync(target)).numRows).toBe(2);
  });

  it('says what is wrong with a call', async () => {
    expect((await call(good[0])).err).toMatch(/--out: not an \.arrow or \.csv file; found nothing/);
    expect((await call(good[0], '--out', join(folder, 'no', 'such', 'x.csv'))).err).toMatch(
      /its folder does not exist/,
    );
    expect((await call(good[0], '--out', 'x.xls')).code).toBe(2);
  });
});
