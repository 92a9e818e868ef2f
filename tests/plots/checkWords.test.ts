// The number beside a limit: what was found, what passes, and never the same for both where the limit is broken.
import { describe, expect, it } from 'vitest';
import { newNotebook } from '../../src/begin/begin.ts';
import { openNotebook } from '../../src/cli/open.ts';
import type { Check } from '../../src/model/checks/check.ts';
import { say } from '../../src/model/checks/say.ts';
import { limitText } from '../../src/plots/checkWords.ts';
import { begun, setting } from '../begin/setting.ts';
import { NOTEBOOKS } from '../cli/run.ts';

const reading = { currency: 'EUR', year: 2024, system: 'metric' } as const;
const bed = (value: number, status: Check['status']) =>
  ({ id: 'bedDepth', status, value, limit: 1, unit: 'm', week: 29 }) as unknown as Check;
const said = (value: number, status: Check['status'] = 'look', id = 'cleanOutDepth') =>
  limitText({ ...bed(value, status), id } as Check, reading);

describe('a limit beside its value', () => {
  it('says that it is broken where both would read the same', () => {
    expect(said(1.0002)).toMatch(/^just over 1 m/);
    expect(said(0.9998)).toMatch(/^just under 1 m/);
  });
  it('says the plain number where it reads otherwise, or is the limit, or keeps it', () => {
    expect(said(1.01)).toMatch(/^1\.01 m/);
    expect(said(1)).toMatch(/^1 m/);
    expect(said(0.9998, 'pass')).toMatch(/^1 m/);
  });
});

describe('the sentence of a check', () => {
  const decimals = (text: string) => text.split('.')[1]?.length ?? 0;
  /** A number in the words that speaks of the value beside them, but does not round to the same. */
  const atOdds = ({ id, value, unit, words }: Check): string[] => {
    if (value === null || value === 0 || unit === '') return [];
    const shown = limitText({ id, value, unit, limit: null, status: 'pass' } as Check, reading)
      .replace(/\u202f/g, '')
      .match(/^[\d.]+/)?.[0];
    if (shown === undefined) return [];
    return [...words.matchAll(/(?<![\d.])\d+(?:\.\d+)?/g)].flatMap(([said]) => {
      const near = Math.abs(Number(said) / value - 1) < 0.009 && Number(said) !== Math.round(value);
      const fewest = Math.min(decimals(said), decimals(shown));
      return near && say(Number(said), fewest) !== say(Number(shown), fewest)
        ? [`${id}: ${shown} ${unit} beside ${said}`]
        : [];
    });
  };

  it('says the number beside it, rounded the same way', async () => {
    const runs = [];
    for (const file of NOTEBOOKS) runs.push((await openNotebook(file)).run);
    const { run } = await newNotebook(begun(), setting);
    if (!run) throw new Error('no notebook');
    const found = [...runs, run].flatMap(({ scenarios }) => scenarios.flatMap(({ checks }) => checks));
    expect(found.length).toBeGreaterThan(300);
    // Numbers of the rule that happen to be near the value, as the limit itself, are no speaking of it.
    const odd = found.flatMap((check) => {
      const rule = [check.limit, check.limitHigh].flatMap((each) =>
        each == null ? [] : [say(each), say(each, 1)],
      );
      return atOdds(check).filter((text) => !rule.includes(text.split(' ').at(-1) ?? ''));
    });
    expect([...new Set(odd)]).toEqual([]);
  });

  it('rounds a half up, whatever the machine stores', () => {
    expect([21.45, 1.005, 0.285, -1.005].map((value) => say(value, decimals(String(value)) - 1))).toEqual([
      '21.5', '1.01', '0.29', '-1.01',
    ]); // biome-ignore format: one list
    expect([say(1e-9), say(0), say(Number.NaN), say(12345.678, 1)]).toEqual(['0', '0', '–', '12345.7']);
  });
});
