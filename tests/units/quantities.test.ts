// Oracle: factors of NIST Special Publication 811 (2008), appendix B.8. Basis: from memory, to the figures printed there.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toSystem } from '../../src/units/quantities.ts';

/** 1 customary unit in the metric unit, as SP 811 prints it. */
const SP811: [metric: string, us: string, factor: number][] = [
  ['kg', 'lb', 0.4535924],
  ['t', 'short ton', 0.9071847],
  ['m', 'ft', 0.3048],
  ['mm', 'in', 25.4],
  ['m²', 'ft²', 0.09290304],
  ['m³', 'yd³', 0.7645549],
  ['ha', 'ac', 0.4046856],
  ['L', 'gal', 3.785412],
  ['kg/ha', 'lb/ac', 1.120851],
  ['kg/m³', 'lb/yd³', 0.5932764],
  ['kN/m²', 'lbf/ft²', 0.04788026],
];

describe('conversion', () => {
  for (const [metric, us, factor] of SP811)
    it(`${us} is ${factor} ${metric}`, () => {
      const shown = toSystem(factor, metric, 'us');
      expect(shown.unit).toBe(us);
      expect(shown.value).toBeCloseTo(1, 5);
    });

  // Published bedding unit weights, Agricultural Waste Management Field Handbook chapter 4: 2.5 lb/ft³ is 40, 9 is 144
  // kg/m³; and On-Farm Composting Handbook: 227 lb/yd³ is 135, 1458 is 865 kg/m³. Basis: from memory.
  it.each([
    [135, 'kg/m³', 'lb/yd³', 227],
    [865, 'kg/m³', 'lb/yd³', 1458],
    [40, 'kg/m³', 'lb/yd³', 2.5 * 27],
    [144, 'kg/m³', 'lb/yd³', 9 * 27],
    // ASABE D384.2: the cow of 1200 lb and 125 lb of manure a day is printed as 544 and 57 kg. Basis: from memory.
    [57, 'kg', 'lb', 125],
    [544, 'kg', 'lb', 1200],
  ])('prints %i %s as the %s of the handbooks: %f', (metric, unit, us, printed) => {
    const shown = toSystem(metric, unit, 'us');
    expect(shown.unit).toBe(us);
    // The metric figures were rounded to whole units.
    expect(Math.abs(shown.value - printed)).toBeLessThanOrEqual(0.5 * toSystem(1, unit, 'us').value);
  });

  it('shifts temperatures, and scales what is a degree', () => {
    expect(toSystem(0, '°C', 'us')).toEqual({ value: 32, unit: '°F' });
    expect(toSystem(100, '°C', 'us').value).toBeCloseTo(212, 12);
    expect(toSystem(-7.8, '°C', 'us').value).toBeCloseTo(18, 0);
    expect(toSystem(1.8, 'kg/°C', 'us').value).toBeCloseTo(1.8 / 0.45359237 / 1.8, 12);
  });

  it('converts each part of a composite unit, and carries substances along', () => {
    expect(toSystem(1, 'kg N/ha', 'us').unit).toBe('lb N/ac');
    expect(toSystem(1, 'L/head/d', 'us').unit).toBe('gal/head/d');
    expect(toSystem(100, 'EUR/t', 'us')).toMatchObject({
      unit: 'EUR/short ton',
      value: expect.closeTo(90.718, 3),
    });
    expect(toSystem(1.3, 'kg/100 kg/d', 'us')).toEqual({ value: 1.3, unit: 'lb/100 lb/d' });
  });

  it('leaves alone what has no twin', () => {
    for (const unit of ['g/kg', 'MJ/kg', 'fraction', 'head', 'd', 'money', ''])
      expect(toSystem(7, unit, 'us')).toEqual({ value: 7, unit });
    expect(toSystem(7, 'kg/ha', 'metric')).toEqual({ value: 7, unit: 'kg/ha' });
  });

  it('is a straight line in the value, through nothing but for temperatures', () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    const units = [...SP811.map(([metric]) => metric), '°C', 'g/kg', 'money/t', 'kg/head/d'];
    fc.assert(
      fc.property(value, value, fc.constantFrom(...units), (x, y, unit) => {
        const us = (v: number) => toSystem(v, unit, 'us').value;
        const middle = (us(x) + us(y)) / 2;
        expect(Math.abs(us((x + y) / 2) - middle)).toBeLessThanOrEqual(
          1e-9 * Math.max(1, Math.abs(x), Math.abs(y)) * 2,
        );
        if (unit !== '°C') expect(us(0)).toBe(0);
      }),
    );
  });
});
