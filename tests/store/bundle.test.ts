import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { unzip, zipOf } from '../../src/store/bundle.ts';
import { fileNameOf } from '../../src/store/fileName.ts';

describe('all notebooks in one file', () => {
  it('come back as they were, each under a name of its own', () => {
    const all = [
      { title: 'Mäe talu', text: 'one\r\n' },
      { title: 'Mäe talu', text: 'two 🐄' },
      { title: '…', text: 'three' },
    ];
    const back = unzip(zipOf(all), 1000);
    expect('files' in back && [...back.files].sort((a, b) => a.name.localeCompare(b.name))).toEqual([
      { name: 'ma-e-talu-2.md', text: 'two 🐄' },
      { name: 'ma-e-talu.md', text: 'one\r\n' },
      { name: 'notebook.md', text: 'three' },
    ]);
  });

  it('leaves out what is no notebook or too large, and folders', () => {
    const zip = zipSync({
      'a/b/farm.md': strToU8('farm'),
      'notes.txt': strToU8('x'),
      'big.md': strToU8('x'.repeat(2000)),
    });
    expect(unzip(zip, 1000)).toEqual({ files: [{ name: 'farm.md', text: 'farm' }] });
  });

  it('says what is wrong with what is no zip, or holds too much', () => {
    expect(unzip(strToU8('not a zip'), 1000)).toEqual({ problem: expect.any(String) });
    const many = Object.fromEntries(Array.from({ length: 1001 }, (_, k) => [`${k}.md`, strToU8('x')]));
    expect(unzip(zipSync(many), 1000)).toEqual({ problem: expect.stringContaining('1000') });
  });

  it('makes a name any system takes', () => {
    expect(fileNameOf('../../x: "<y>" \u0000')).toBe('x-y.md');
  });
});
