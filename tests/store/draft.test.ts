import { describe, expect, it } from 'vitest';
import { openDraft } from '../../src/store/draft.ts';

/** Storage that can be full, or shut. */
function storage(full = false): Storage {
  const all = new Map<string, string>();
  return {
    getItem: (key: string) => all.get(key) ?? null,
    setItem: (key: string, value: string) => {
      if (full) throw new DOMException('no room', 'QuotaExceededError');
      all.set(key, value);
    },
    removeItem: (key: string) => void all.delete(key),
  } as unknown as Storage;
}

describe('a draft', () => {
  it('is there again, letter for letter, until it is cleared', () => {
    const store = storage();
    const draft = openDraft('a', () => store);
    expect(draft.read()).toBeUndefined();
    expect(draft.write('“22” cows\n')).toBe(true);
    expect(openDraft('a', () => store).read()).toBe('“22” cows\n');
    expect(openDraft('b', () => store).read()).toBeUndefined();
    draft.clear();
    expect(draft.read()).toBeUndefined();
  });

  it('says that nothing is kept where there is no room or no storage', () => {
    expect(openDraft('a', () => storage(true)).write('x')).toBe(false);
    const shut = openDraft('a', () => {
      throw new DOMException('denied', 'SecurityError');
    });
    expect(shut.write('x')).toBe(false);
    expect(shut.read()).toBeUndefined();
    expect(() => shut.clear()).not.toThrow();
  });
});
