import fc from 'fast-check';
import { deflateSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { fromLink, LINK_LIMIT, toLink } from '../../src/store/link.ts';

describe('link', () => {
  it('gives back any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 3000 }), (text) => {
        expect(fromLink(`#${toLink(text)}`)).toEqual({ text });
      }),
    );
  });

  it('uses only letters that survive an address', () => {
    expect(toLink('æøå '.repeat(500))).toMatch(/^n1\.[\w-]+$/);
  });

  it('leaves other fragments alone', () => {
    expect(fromLink('#checks')).toBeUndefined();
    expect(fromLink('')).toBeUndefined();
  });

  it('says that a cut link is cut', () => {
    const link = toLink(Array.from({ length: 400 }, (_, k) => `line ${k * k}`).join('\n'));
    expect(fromLink(link.slice(0, link.length / 2))).toEqual({ problem: expect.stringContaining('damaged') });
    expect(fromLink('n1.!!!')).toEqual({ problem: expect.stringContaining('damaged') });
  });

  it('refuses a link that unfolds without end', () => {
    let binary = '';
    for (const byte of deflateSync(new Uint8Array(LINK_LIMIT * 20))) binary += String.fromCharCode(byte);
    const link = `n1.${btoa(binary).replaceAll('+', '-').replaceAll('/', '_')}`;
    expect(fromLink(link)).toEqual({ problem: expect.stringContaining('2 MB') });
  });
});
