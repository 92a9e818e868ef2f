import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTyped, typedForm, typedUnit } from '../../src/units/typed.ts';

const METRIC = { system: 'metric', currency: 'EUR' } as const;
const US = { system: 'us', currency: 'USD' } as const;

describe('what is typed', () => {
  it.each([
    ['12 %', 'fraction', 0.12],
    ['12%', 'fraction', 0.12],
    ['12', 'fraction', 0.12],
    ['12,5', 'fraction', 0.125],
    ['0.31', 'fraction', 0.0031],
    ['12 %', 'kg/kg DM', 0.12],
    ['12 %', 'kg N/kg N', 0.12],
    ['2,3 %', 'kg DM/kg LW/d', 0.023],
    ['0.12', 'kg/kg DM', 0.12],
    ['1 200', 'kg', 1200],
    ['1\u202F200', 'kg', 1200],
    ['1.200.000', 'money', 1_200_000],
    ['1,200.5', 'kg', 1200.5],
    ['1.200,5', 'kg', 1200.5],
    ['−3', '°C', -3],
    ['.5', 'm', 0.5],
    ['4,2 m', 'm', 4.2],
    ['30 m2', 'm²', 30],
    ['30 tonnes', 't', 30],
    ['95 EUR/t', 'money/t', 95],
    ['1 ft', 'm', 0.3048],
  ])('%s for %s', (text, unit, value) => {
    expect(readTyped(text, unit, METRIC)).toEqual({ value: expect.closeTo(value, 9) });
  });

  it.each([
    ['twelve', 'kg', 'not a number'],
    ['12 %', 'kg', 'not a unit of this number: type it in kg'],
    ['12 kg', 'm', 'type it in m'],
    ['1,200', 'kg', 'type 1200 or 1.200'],
    ['12 cows', '', 'it has no unit'],
    ['1.2.3,4,5', 'kg', 'not a number'],
  ])('refuses %s for %s', (text, unit, words) => {
    const read = readTyped(text, unit, METRIC);
    expect('refused' in read && read.refused).toContain(words);
  });

  it('in US units is read in them, and in metric where that is said', () => {
    expect(readTyped('10', 'm', US)).toEqual({ value: expect.closeTo(3.048, 6) });
    expect(readTyped('10 m', 'm', US)).toEqual({ value: 10 });
    expect(readTyped('32', '°C', US)).toEqual({ value: expect.closeTo(0, 6) });
    expect(typedUnit('kg', US)).toBe('lb');
    expect(typedUnit('money/t', US)).toBe('USD/short ton');
  });

  it('comes back as it stands in the field', () => {
    const unit = fc.constantFrom('fraction', 'kg', 'm', 'm²', '°C', 'money/t', 'kg/kg DM', 'ha', '');
    fc.assert(
      fc.property(unit, fc.integer({ min: -999_999, max: 999_999 }), fc.boolean(), (of, digits, us) => {
        const value = digits / 1000;
        const as = us ? US : METRIC;
        const read = readTyped(typedForm(value, of, as), of, as);
        const near = us ? Math.abs(value) * 1e-4 + 1e-3 : 1e-9;
        expect('value' in read && Math.abs(read.value - value)).toBeLessThanOrEqual(near);
      }),
      { seed: 20251101, numRuns: 300 },
    );
  });
});
