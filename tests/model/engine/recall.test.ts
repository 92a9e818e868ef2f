import { describe, expect, it } from 'vitest';
import { recall } from '../../../src/model/engine/recall.ts';

describe('what is recalled', () => {
  it('is the same while it is in use, and made anew after others have taken its place', () => {
    const kept = new Map<string, { of: string; nth: number }>();
    let made = 0;
    const ask = (key: string) => recall(kept, key, 2, () => ({ of: key, nth: ++made }));
    const a = ask('a');
    const b = ask('b');
    expect(ask('a')).toBe(a);
    // `b` was asked for longest ago.
    const c = ask('c');
    expect([...kept.keys()]).toEqual(['a', 'c']);
    expect(ask('a')).toBe(a);
    expect(ask('c')).toBe(c);
    expect(ask('b')).not.toBe(b);
    expect(ask('b')).toEqual({ of: 'b', nth: 4 });
    expect(kept.size).toBe(2);
  });
});
