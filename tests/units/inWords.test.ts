import { describe, expect, it } from 'vitest';
import { labelIn, wordsIn } from '../../src/units/inWords.ts';

const us = (text: string) => wordsIn(text, 'us').replace(/\u00A0/g, ' ');

describe('sentences in United States units', () => {
  it.each([
    // Worked by hand: 1 ft is 0.3048 m, 1 lb 0.45359237 kg, 1 acre 0.40468564 ha, 1 short ton 0.90718474 t.
    ['The shed is 8 m deep.', 'The shed is 26.2 ft deep.'],
    ['0.84 to 1.38 m above', '2.76 to 4.53 ft above'],
    ['107 kg N/ha are dropped', '95.5 lb N/ac are dropped'],
    ['keep 50 kg N a hectare', 'keep 44.6 lb N an acre'],
    ['2.3 livestock units a hectare all winter', '0.931 livestock units an acre all winter'],
    ['3 kN on each metre of wall', '206 lbf on each foot of wall'],
    ['Snow 2.00 kN/m² of plan', 'Snow 41.8 lbf/ft² of plan'],
    ['(25 to 60 L a head)', '(6.6 to 15.9 gal a head)'],
    ['daily above 55 °C,', 'daily above 131 °F,'],
    ['at 13 °C; 50 mm of rain', 'at 55.4 °F; 1.97 in of rain'],
    ['12.60 × 48.00 m', '41.3 × 157 ft'],
    ['CAD 421 a square metre of plan', 'CAD 39.1 a square foot of plan'],
    ['70 EUR a tonne', '63.5 EUR a short ton'],
    ['1\u202F200 m³ below', '1\u202F570 yd³ below'],
  ])('%s', (metric, said) => {
    expect(us(metric)).toBe(said);
    expect(wordsIn(metric, 'metric')).toBe(metric);
  });

  it('leave what is no metric number alone', () => {
    for (const text of [
      '17 head against 3 bays',
      'week 26 (16 Apr 2026)',
      '5 months',
      '12 % of 40 draws',
      '3 to 4 turns a day',
    ])
      expect(us(text)).toBe(text);
  });

  it('say labels and units without a number', () => {
    const label = (text: string) => labelIn(text, 'us');
    expect(label('Cost a kg of nitrogen kept')).toBe('Cost a lb of nitrogen kept');
    expect(label('EUR a tonne')).toBe('EUR a short ton');
    expect(label('kg/100 kg a day')).toBe('lb/100 lb a day');
    expect(label('Bedding strewn a day per 100 kg live weight')).toBe(
      'Bedding strewn a day per 100 lb live weight',
    );
    expect(label('Bed, m')).toBe('Bed, ft');
    expect(label('Middle')).toBe('Middle');
  });
});
