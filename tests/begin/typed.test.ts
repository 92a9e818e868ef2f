import { describe, expect, it } from 'vitest';
import { readTyped, shownNumber, withUnitSaid } from '../../src/begin/typed.ts';

const KG = { unit: 'kg', min: 30, max: 1500 };
const HA = { unit: 'ha', min: 0.1, max: 5000 };
const SHARE = { unit: 'fraction', min: 0, max: 1 };

describe('a number as it is typed', () => {
  it.each([
    ['650', 650],
    [' 650 kg', 650],
    ['1 200', 1200],
    ['1.5e', undefined],
    ['612,5', 612.5],
    ['612.5 kilos', 612.5],
    ['1400 lb', 635.0293],
    ['1,400.5 lbs', 635.2561],
  ])('%s as kilograms', (text, value) => {
    const read = readTyped(text, KG, 'metric');
    if (value === undefined) expect(read).toHaveProperty('fault');
    else expect('value' in read && read.value).toBeCloseTo(value, 3);
  });

  it('reads a bare number in the units that are shown, another by its name', () => {
    expect(readTyped('74', HA, 'us')).toEqual({ value: expect.closeTo(29.9467, 3) });
    expect(readTyped('30 ha', HA, 'us')).toEqual({ value: 30 });
    expect(readTyped('74 acres', HA, 'metric')).toEqual({ value: expect.closeTo(29.9467, 3) });
  });

  it('reads shares in percent', () => {
    expect(readTyped('90', SHARE, 'metric')).toEqual({ value: 0.9 });
    expect(readTyped('12,5 %', SHARE, 'us')).toEqual({ value: 0.125 });
    expect(readTyped('120', SHARE, 'metric')).toEqual({ fault: expect.stringContaining('0 to 100 %') });
  });

  it('asks where a number can be read in two ways, and says what to write', () => {
    expect(readTyped('1,200', KG, 'metric')).toEqual({
      fault: '1,200 can be read in two ways. Write 1200 or 1.200.',
    });
    expect(readTyped('1.234.567', { ...KG, max: 1e9 }, 'metric')).toEqual({ value: 1234567 });
  });

  it.each([
    ['about 20', 'not a number'],
    ['20 cows', 'not a unit known here'],
    ['2', 'outside what this can be: 30 to 1500 kg'],
    ['1..2', 'not a number'],
  ])('refuses %s in words', (text, words) => {
    expect(readTyped(text, KG, 'metric')).toEqual({ fault: expect.stringContaining(words) });
  });

  it('keeps the unit a number was typed in when others are shown', () => {
    expect(withUnitSaid('1400', 'kg', 'us')).toBe('1400 lb');
    expect(withUnitSaid('1400 kg', 'kg', 'us')).toBe('1400 kg');
    expect(withUnitSaid('90', 'fraction', 'us')).toBe('90');
    expect(withUnitSaid('about', 'kg', 'us')).toBe('about');
    expect(shownNumber(29.9467, 'ha', 'us')).toBe('74');
  });
});
