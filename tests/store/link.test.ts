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
    expect(toLink('æøå '.repeat(500))).toMatch(/^n2\.[\w-]+$/);
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

  it('opens links made before there was a checksum', () => {
    let binary = '';
    for (const byte of deflateSync(new TextEncoder().encode('an old notebook')))
      binary += String.fromCharCode(byte);
    expect(fromLink(`#n1.${btoa(binary).replace(/=+$/, '')}`)).toEqual({ text: 'an old notebook' });
  });

  it('notices any one exchanged letter', () => {
    const text = Array.from({ length: 60 }, (_, k) => `head: ${k * 7}`).join('\n');
    const link = toLink(text);
    const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
    let other = 0;
    for (let at = 3; at < link.length; at++)
      for (const letter of [letters[(at * 7) % 64], letters[(at * 31 + 5) % 64]]) {
        const found = fromLink(link.slice(0, at) + letter + link.slice(at + 1));
        if (!found || ('text' in found && found.text !== text)) other++;
      }
    expect(other).toBe(0);
  });
});
