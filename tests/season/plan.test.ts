import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarFile } from '../../src/season/calendarFile.ts';
import { seasonPlan } from '../../src/season/plan.ts';
import { coefficients, type Patch, resultWith } from '../model/checks/fixture.ts';

const plan = (patch: Patch = {}, values: Record<string, number | null> = {}) =>
  seasonPlan(resultWith(patch, 0.5, values), coefficients);
const STAMP = new Date('2025-09-01T08:00:00Z');

describe('the season plan', () => {
  it('stacks each material with the margin before the first day', () => {
    const [straw, chips] = plan().stacks;
    expect(straw.tonnes).toBeCloseTo(26 * 0.7 * 1.15, 9);
    expect(straw.looseM3).toBeCloseTo((26 * 0.7 * 1.15 * 1000) / 40, 6);
    // 145 kg a round bale and 365 kg a big square one (Irish Farmers Journal, published).
    expect(straw.roundBales).toBe(Math.ceil((26 * 0.7 * 1.15 * 1000) / 145));
    expect(straw.squareBales).toBe(Math.ceil((26 * 0.7 * 1.15 * 1000) / 365));
    expect(chips.roundBales).toBeNull();
    expect(chips.hours).toBeGreaterThan(0);
    expect(chips.storeM2).toBeCloseTo((26 * 0.3 * 1.15 * 1000) / 300 / 2.5, 6);
    expect(straw.by).toBe('2025-10-13');
    expect(straw.missingTonnes).toBe(0);
    expect(plan({}, { beddingTonnes: 60 }).stacks[0].missingTonnes).toBeCloseTo(60 * 0.7 * 1.15 - 30, 9);
  });

  it('spreads the bedding over the weeks without losing a kilogram', () => {
    const { weeks } = plan({}, { startMaterialKg: 6000 });
    expect(weeks).toHaveLength(27);
    expect(weeks.reduce((sum, w) => sum + w.beddingKg, 0)).toBeCloseTo(26_000, 6);
    expect(weeks[0].beddingKg - weeks[1].beddingKg).toBeCloseTo(6000, 6);
    expect(weeks[0].day).toBe('2025-10-20');
  });

  it('lifts the barrier on the dates the checks give', () => {
    const raises = plan({ shed: { stanceDepthM: 0 } }).tasks.filter((t) => t.kind === 'raise');
    expect(raises.length).toBeGreaterThanOrEqual(3);
    expect(plan().tasks.some((t) => t.kind === 'raise')).toBe(false);
  });

  it('turns the heap after the clean-out, waits for the law and names the area', () => {
    const made = plan({ rest: { compost: { way: 'turned', turns: 3 } } }, { compostDays: 190 });
    expect(made.heap?.turns.map((t) => t.day)).toEqual(['2026-06-10', '2026-06-24', '2026-07-08']);
    expect(made.heap?.peakC).toEqual({ low: 43, high: 55 });
    // Ready on 3 December, inside the Swedish closed period: first open day 1 March.
    expect(made.heap?.ready).toBe('2026-12-03');
    expect(made.spreading).toMatchObject({
      earliest: '2027-03-01',
      known: true,
      areaForPhosphorusHa: 9,
      receivingHa: 20,
    });
    const days = made.tasks.map((t) => t.day);
    expect(days).toEqual([...days].sort());
  });

  it('has no bed, heap or spreading for cattle that winter outside', () => {
    const made = plan({ system: 'outwintered' });
    expect(made).toMatchObject({
      stacks: [],
      weeks: [],
      raises: [],
      cleanOut: null,
      heap: null,
      spreading: null,
    });
    expect(made.tasks.map((t) => t.kind)).toEqual(['feed']);
    expect(made.feedKgPerDay).toBeCloseTo(60_000 / 189, 9);
  });

  it('says nothing that is not a number', () => {
    for (const patch of [
      {},
      { system: 'slatted' },
      { system: 'outwintered' },
      { rest: { compost: { way: 'none' } } },
    ] as Patch[])
      expect(
        JSON.stringify(plan(patch, { compostDays: null, feedTonnes: null, packTonnes: null })),
      ).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('the calendar file', () => {
  it('is iCalendar by RFC 5545, read back by another library', () => {
    const made = plan({ shed: { stanceDepthM: 0 } });
    const text = calendarFile(made, STAMP);
    // RFC 5545 section 3.1: lines end with CR LF and hold at most 75 octets.
    expect(
      text.split('\r\n').every((line) => new TextEncoder().encode(line).length <= 75 && !line.includes('\n')),
    ).toBe(true);
    const calendar = new ICAL.Component(ICAL.parse(text));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(String(calendar.getFirstPropertyValue('prodid'))).toContain('winterkeep');
    const events = calendar.getAllSubcomponents('vevent').map((e) => new ICAL.Event(e));
    expect(events).toHaveLength(made.tasks.length);
    expect(new Set(events.map((e) => e.uid)).size).toBe(events.length);
    events.forEach((event, k) => {
      const task = made.tasks[k];
      expect(event.summary).toBe(task.title);
      expect(event.description).toBe(task.words);
      expect(event.startDate.isDate).toBe(true);
      expect(event.startDate.toString()).toBe(task.day);
      // RFC 5545 section 3.6.1: the end of a whole-day event is not part of it.
      expect(event.endDate.compare(event.startDate)).toBe(1);
    });
    const cleanOut = events.find((e) => e.summary.startsWith('Clean out'));
    expect([cleanOut?.startDate.toString(), cleanOut?.endDate.toString()]).toEqual([
      '2026-05-04',
      '2026-05-28',
    ]);
  });

  it('keeps commas, semicolons, line breaks and long letters whole', () => {
    const made = plan();
    const words = `one, two; three\nfour \\ ${'å'.repeat(90)}`;
    const text = calendarFile(
      {
        ...made,
        name: 'Hill; farm, “north”',
        tasks: [{ kind: 'feed', day: '2025-11-01', title: 'a, b; c', words }],
      },
      STAMP,
    );
    const [event] = new ICAL.Component(ICAL.parse(text))
      .getAllSubcomponents('vevent')
      .map((e) => new ICAL.Event(e));
    expect(event.description).toBe(words);
    expect(event.summary).toBe('a, b; c');
  });

  it('gives the same identifiers when it is written again', () => {
    const ids = (stamp: Date) => [...calendarFile(plan(), stamp).matchAll(/UID:(.*)/g)].map((m) => m[1]);
    expect(ids(STAMP)).toEqual(ids(new Date('2025-10-01T08:00:00Z')));
  });
});
