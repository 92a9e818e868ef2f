// A batch that is killed leaves nothing half under the final name and goes on where it was.
import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { keepParcel, keptFolder, parcelPath, takeParcel } from '../../src/cli/batchKept.ts';
import { progressLine } from '../../src/cli/progress.ts';
import { winterkeep } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'winterkeep-stopped-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const herds = join(folder, 'herds');
mkdirSync(herds);
const text = readFileSync('notebooks/hill-farm-choice.md', 'utf8');
const FILES = 96;
for (let k = 0; k < FILES; k++)
  writeFileSync(
    join(herds, `farm${String(k).padStart(3, '0')}.md`),
    text.replace(/head: \d+/, `head: ${k + 1}`),
  );

const kept = (target: string) => {
  const at = keptFolder(target);
  return existsSync(at) ? readdirSync(at).filter((name) => /^[0-9a-f]{64}$/.test(name)) : [];
};

/** Kills the command outright once some parcels are done. */
function killedAfter(parcels: number, target: string): Promise<void> {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', 'src/cli/main.ts', 'batch', herds, '--out', target, '--threads', '1'],
    { stdio: 'ignore' },
  );
  const look = setInterval(() => kept(target).length >= parcels && child.kill('SIGKILL'), 5);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('exit', (_, signal) => {
      clearInterval(look);
      if (signal === 'SIGKILL') resolve();
      else reject(new Error('it ended before it was killed'));
    });
  });
}

describe('a batch that is killed', { timeout: 180_000 }, () => {
  it.each(['csv', 'arrow'])('goes on where it was: %s', async (format) => {
    const target = join(folder, `all.${format}`);
    await killedAfter(2, target);
    expect(existsSync(target)).toBe(false);
    const parcels = kept(target).length;
    expect(parcels).toBeGreaterThanOrEqual(2);
    expect(parcels).toBeLessThan(FILES / 16);
    // One of the notebooks done is changed meanwhile: its parcel is worked out anew.
    const first = join(herds, 'farm000.md');
    writeFileSync(first, text.replace(/head: \d+/, 'head: 77'));
    const { code, out } = await winterkeep('batch', herds, '--out', target, '--threads', '1');
    expect(code).toBe(0);
    expect(out).toContain(`from ${FILES} files, ${(parcels - 1) * 16} of them kept from before`);
    expect(existsSync(keptFolder(target))).toBe(false);
    // And it is the file that one call without a stop makes.
    const whole = join(folder, `whole.${format}`);
    await winterkeep('batch', herds, '--out', whole, '--threads', '2');
    expect(readFileSync(target).equals(readFileSync(whole))).toBe(true);
    writeFileSync(first, text.replace(/head: \d+/, 'head: 1'));
  });

  it('keeps what is done beside a bad file, for the call after it is mended', async () => {
    const target = join(folder, 'mended.csv');
    const bad = join(herds, 'farm095.md');
    const good = readFileSync(bad);
    writeFileSync(bad, 'nothing');
    const refused = await winterkeep('batch', herds, '--out', target, '--threads', '2');
    expect(refused.code).toBe(1);
    expect(existsSync(target)).toBe(false);
    writeFileSync(bad, good);
    const { out } = await winterkeep('batch', herds, '--out', target, '--threads', '2');
    expect(out).toContain(`${FILES - 16} of them kept from before`);
    expect(existsSync(keptFolder(target))).toBe(false);
  });
});

describe('a parcel that is kept', () => {
  const at = join(folder, 'parcels');
  const farm = join(folder, 'one.md');
  const weather = join(folder, 'days.csv');
  const answer = { id: 3, numbers: [Float64Array.of(1, Number.NaN)] };
  const put = async () => {
    writeFileSync(farm, 'a');
    writeFileSync(weather, 'b');
    const path = await parcelPath(at, 'program', [farm]);
    await keepParcel(path, answer, [weather, join(folder, 'none.csv')]);
    return path;
  };

  it('comes back as it was', async () => {
    const path = await put();
    expect(await takeParcel(path)).toEqual(answer);
    expect(await parcelPath(at, 'program', [farm])).toBe(path);
  });

  it('is another one for another program, another order or a notebook that was written again', async () => {
    const path = await put();
    expect(await parcelPath(at, 'programme', [farm])).not.toBe(path);
    expect(await parcelPath(at, 'program', [farm, weather])).not.toBe(
      await parcelPath(at, 'program', [weather, farm]),
    );
    utimesSync(farm, 1, 1);
    expect(await parcelPath(at, 'program', [farm])).not.toBe(path);
  });

  it('is not taken when weather beside it changed, came or went, nor when it is damaged', async () => {
    const path = await put();
    writeFileSync(weather, 'bb');
    expect(await takeParcel(path)).toBeUndefined();
    await put();
    writeFileSync(join(folder, 'none.csv'), 'now it is there');
    expect(await takeParcel(path)).toBeUndefined();
    rmSync(join(folder, 'none.csv'));
    const again = await put();
    rmSync(weather);
    expect(await takeParcel(again)).toBeUndefined();
    const whole = await put();
    const bytes = readFileSync(whole);
    for (const cut of [0, 10, 32, bytes.length - 1]) {
      writeFileSync(whole, bytes.subarray(0, cut));
      expect(await takeParcel(whole)).toBeUndefined();
    }
    bytes[bytes.length - 3] ^= 1;
    writeFileSync(whole, bytes);
    expect(await takeParcel(whole)).toBeUndefined();
  });
});

describe('progress', () => {
  const lines = (
    isTTY: boolean,
    turns: readonly (readonly [ms: number, done: number, before?: number])[],
  ) => {
    let time = 0;
    let out = '';
    const line = progressLine('batch', 100, { isTTY, write: (t) => (out += t) }, () => time);
    for (const [ms, done, before] of turns) {
      time = ms;
      line.at(done, before);
    }
    line.end();
    return out;
  };

  it('is a line now and then in a log, with what is left at the pace since the first was done', () => {
    expect(
      lines(false, [
        [5_000, 10],
        [9_000, 20],
        [20_000, 40],
        [25_000, 50],
        [1_205_000, 60],
      ]),
    ).toBe('batch: 40 of 100, about 30 s left\nbatch: 60 of 100, about 16 min left\n');
  });

  it('leaves what was kept from before out of the pace', () => {
    expect(
      lines(false, [
        [11_000, 50, 50],
        [12_000, 51, 50],
        [22_000, 61, 50],
      ]),
    ).toBe(
      'batch: 50 of 100, 50 of them kept from before\nbatch: 61 of 100, 50 of them kept from before, about 39 s left\n',
    );
  });

  it('stands in place on a terminal and is gone at the end', () => {
    expect(
      lines(true, [
        [100, 10],
        [600, 20],
      ]),
    ).toBe('\r\x1b[Kbatch: 20 of 100, about 4 s left\r\x1b[K');
    expect(lines(true, [[100, 10]])).toBe('');
  });
});
