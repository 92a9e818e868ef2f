// Regression tests: how our own page and command write numbers.
import { describe, expect, it } from 'vitest';
import { formatNumber, formatQuantity, formatRange, unitLabel } from '../../src/units/format.ts';

const plain = { plain: true } as const;

describe('quantities', () => {
  it('gives three figures, parted thousands and the unit', () => {
    expect(formatQuantity(1243.7, 'kg')).toBe('1\u202F240 kg');
    expect(formatQuantity(1243.7, 'kg', plain)).toBe('1 240 kg');
    expect(formatQuantity(0.012345, 'kg/ha', plain)).toBe('0.0123 kg/ha');
    expect(formatQuantity(24, 'm', plain)).toBe('24 m');
    expect(formatQuantity(1234567, 'kg', { ...plain, digits: 5 })).toBe('1 234 600 kg');
  });

  it('writes a real minus, and no minus before nothing', () => {
    expect(formatQuantity(-5.25, '°C')).toBe('\u22125.25 °C');
    expect(formatQuantity(-0, 'kg', plain)).toBe('0 kg');
  });

  it('shows shares as percent and counts whole', () => {
    expect(formatQuantity(0.7123, 'fraction')).toBe('71.2 %');
    expect(formatQuantity(1234, 'head', plain)).toBe('1 234 head');
  });

  it('never writes an absent quantity as a number', () => {
    for (const value of [null, undefined, Number.NaN, Number.POSITIVE_INFINITY])
      expect(formatQuantity(value, 'kg')).toBe('—');
    expect(formatRange(null, 3, 'kg')).toBe('—');
  });

  it('names the currency, and the year when asked', () => {
    const money = { ...plain, currency: 'SEK', year: 2024 };
    expect(formatQuantity(12345, 'money', money)).toBe('SEK 12 300');
    expect(formatQuantity(12345, 'money', { ...money, showYear: true })).toBe('SEK 12 300 (2024)');
    expect(formatQuantity(95.21, 'money/t', money)).toBe('SEK 95.2/t');
    expect(formatQuantity(95.21, 'EUR/t', money)).toBe('EUR 95.2/t');
    expect(formatQuantity(100, 'money/t', { ...money, system: 'us' })).toBe('SEK 90.7/short ton');
  });

  it('follows a locale when one is given', () => {
    expect(formatQuantity(1243.7, 'kg', { locale: 'de-DE', digits: 5 })).toBe('1.243,7 kg');
  });

  it('converts before it rounds', () => {
    expect(formatQuantity(1000, 'kg', { ...plain, system: 'us' })).toBe('2 200 lb');
    expect(formatQuantity(-2, '°C', { ...plain, system: 'us' })).toBe('28.4 °F');
  });
});

describe('ranges', () => {
  it('says both ends once, in order, with one unit', () => {
    expect(formatRange(1243, 1608, 'kg', plain)).toBe('1 240 to 1 610 kg');
    expect(formatRange(1608, 1243, 'kg', plain)).toBe('1 240 to 1 610 kg');
    expect(formatRange(1000, 2000, 'money', { ...plain, currency: 'EUR', year: 2024, showYear: true })).toBe(
      'EUR 1 000 to 2 000 (2024)',
    );
    expect(formatRange(0.6, 0.75, 'fraction')).toBe('60 to 75 %');
  });

  it('says about where the ends read the same', () => {
    expect(formatRange(100.01, 100.02, 'kg')).toBe('about 100 kg');
  });
});

describe('labels', () => {
  it('names units and bare figures for headings and axes', () => {
    expect(unitLabel('kg/ha', { system: 'us' })).toBe('lb/ac');
    expect(unitLabel('money/t', { currency: 'CAD' })).toBe('CAD/t');
    expect(unitLabel('fraction')).toBe('%');
    expect(formatNumber(0.5, 'fraction')).toBe('50');
  });
});

describe('amounts too small to matter', () => {
  it('are said to be less than the smallest shown, but coefficients keep their figures', () => {
    expect(formatQuantity(0.000261, 'kg')).toBe('< 0.01 kg');
    expect(formatQuantity(0, 'kg')).toBe('0 kg');
    expect(formatQuantity(0.0023, '°C^-1.5')).toContain('0.0023');
  });
});
