import { utcDay } from 'd3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dateOf,
  dayAfter,
  dayNumber,
  dayOf,
  daysBetween,
  midnightMs,
  partsOf,
} from '../../src/units/days.ts';

const anyDay = fc.integer({ min: -25_000, max: 47_000 });

describe('calendar days', () => {
  it('go from date to number and back', () => {
    fc.assert(fc.property(anyDay, (day) => dayNumber(dateOf(day)) === day));
    expect(dayNumber('1970-01-01')).toBe(0);
    expect(dayNumber('2000-03-01')).toBe(11_017);
  });

  it('refuse what is no date', () => {
    for (const date of ['2026-02-29', '2025-11-31', '2025-13-01', '25-11-01', '', '2025-11-01T00:00'])
      expect([date, dayNumber(date)]).toEqual([date, Number.NaN]);
  });

  it('count as another calendar does, over leap days and clock changes', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -800, max: 800 }), (day, more) => {
        const from = dateOf(day);
        const to = dayAfter(from, more);
        expect(daysBetween(from, to)).toBe(more);
        const later = utcDay.offset(new Date(`${from}T00:00:00Z`), more);
        expect(to).toBe(later.toISOString().slice(0, 10));
        expect(midnightMs(to)).toBe(later.getTime());
      }),
    );
    expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2);
    expect(dayAfter('2025-10-25', 1.6)).toBe('2025-10-27');
  });

  it('come apart and together', () => {
    fc.assert(
      fc.property(anyDay, (at) => {
        const { year, month, day } = partsOf(at);
        expect(dayOf(year, month, day)).toBe(at);
        expect(dateOf(at)).toBe(
          `${year}-${String(month + 1).padStart(2, '0')}-${String(day).padStart(2, '0')}`,
        );
      }),
    );
    // The eve of March is the last of February.
    expect(partsOf(dayOf(2024, 2, 0))).toEqual({ year: 2024, month: 1, day: 29 });
  });
});
