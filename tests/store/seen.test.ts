import { describe, expect, it } from 'vitest';
import { memoryBase } from '../../src/store/base.ts';
import { lookAt } from '../../src/store/seen.ts';

describe('what a reader saw', () => {
  it('is the version before the one on show, also when that one is opened again', async () => {
    const base = memoryBase();
    expect(await lookAt(base, 'farm', 'one', 1)).toBeUndefined();
    expect(await lookAt(base, 'farm', 'one', 2)).toBeUndefined();
    expect(await lookAt(base, 'farm', 'two', 3)).toEqual({ text: 'one', at: 1 });
    expect(await lookAt(base, 'farm', 'two', 4)).toEqual({ text: 'one', at: 1 });
    expect(await lookAt(base, 'farm', 'three', 5)).toEqual({ text: 'two', at: 3 });
    expect(await lookAt(base, 'other', 'three', 6)).toBeUndefined();
  });

  it('is forgotten for the notebook not looked at for longest, once there are more than twenty', async () => {
    const base = memoryBase();
    for (let k = 0; k < 20; k++) await lookAt(base, `farm ${k}`, 'one', k);
    await lookAt(base, 'farm 0', 'one', 20);
    await lookAt(base, 'farm 20', 'one', 21);
    expect(await lookAt(base, 'farm 0', 'two', 22)).toMatchObject({ text: 'one' });
    expect(await lookAt(base, 'farm 1', 'two', 23)).toBeUndefined();
    expect(await base.run((t) => t.keys('seen:'))).toHaveLength(20);
  });
});
