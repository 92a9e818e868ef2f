/** The fuzz with fixed seeds, and the seeds that once found something. */
import { describe, expect, it } from 'vitest';
import { type Found, KINDS, type Kind, tryCase } from './cases.ts';
import { FOUND } from './found.ts';

const EACH = 100;
/** A hang goes on for ever: a slow or a shared machine, and code that is not warm yet, take far less than this. */
const HANG_MS = 15_000;
const told = ({ kind, seed, faults }: Found) => `${kind} ${seed}: ${faults[0]}`;

describe('damaged on purpose, through all that a notebook goes through', () => {
  it.each(KINDS)(`${EACH} of %s: no exception, no hang, no nonsense`, async (kind) => {
    const bad: string[] = [];
    for (let k = 0; k < EACH; k++) {
      const found = await tryCase(kind, 42_000_000 + k, HANG_MS);
      if (found.faults.length > 0) bad.push(told(found));
    }
    expect(bad).toEqual([]);
  });

  it.each(FOUND)('%s %i, which once found: %s', async (kind, seed) => {
    const found = await tryCase(kind as Kind, seed, HANG_MS);
    expect(found.faults).toEqual([]);
  });
});
