// The number beside a limit: what was found, what passes, and never the same for both where the limit is broken.
import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/model/checks/check.ts';
import { limitText } from '../../src/plots/checkWords.ts';

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
