import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarFile } from '../../src/season/calendarFile.ts';
import { seasonPlan } from '../../src/season/plan.ts';
import { coefficients, type Patch, resultWith } from '../model/checks/fixture.ts';
import { runMoney } from '../model/moneyRig.ts';

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

  it('gives the bedding the floor that the bill gives it, but for the margin and what lies under a roof', () => {
    const made = plan().stacks;
    const mix = resultWith().scenario.bed.mix;
    const loose = (material: string) => coefficients.get(`materialLooseDensityKgPerM3.${material}`)!.central;
    const baled = (material: string) => coefficients.get(`materialBaledFraction.${material}`)!.central;
    const row: Record<string, number> = { headCount: 24, bedShare: 1, beddingKg: 26_000, mixShareSum: 1 };
    mix.forEach(({ material, share }, k) => {
      row[`material${k + 1}Share`] = share;
      row[`material${k + 1}LooseDensityKgPerM3`] = loose(material);
      row[`material${k + 1}BaledFraction`] = baled(material);
    });
    const [{ values }] = runMoney(['building'], [{ ...row, beddingStoredShare: 1 }]);
    expect(made.reduce((sum, stack) => sum + stack.storeM2!, 0)).toBeCloseTo(
      values.billBeddingStoreM2 * 1.15,
      6,
    );
    // 26 t, 70 % of it straw in bales of 130 kg/m³ stacked 4 m high, the rest chips of 300 kg/m³ heaped to 2.5 m.
    expect(values.billBeddingStoreM2).toBeCloseTo(18_200 / 130 / 4 + 7800 / 300 / 2.5, 6);
  });

  it('calls nothing on hand that is bought, and names the margin that is in it', () => {
    const of = (kind: string) => plan().tasks.filter((task) => task.kind === kind);
    const [straw, chips] = of('stack').map(({ words }) => words);
    expect(straw).toContain('has to be bought');
    expect(straw).not.toMatch(/on hand|to make and bring/);
    expect(chips).toContain('of your own');
    expect(straw).toContain('A margin of 15 % for a hard winter is in it');
    expect(plan({}, { beddingTonnes: 60 }).tasks.find(({ kind }) => kind === 'stack')?.words).toContain(
      `${(60 * 0.7 * 1.15 - 30).toFixed(1)} t more than the notebook lists`,
    );
  });

  it('tells a window of days from the length of the work', () => {
    const cleanOut = plan().tasks.find(({ kind }) => kind === 'cleanOut');
    expect(cleanOut?.until).toBeDefined();
    expect(cleanOut?.words).toMatch(/^Any day between .*: the span is not how long the work takes\./);
    const fixed = plan({ bed: { cleanOut: '2026-05-20' } }).tasks.find(({ kind }) => kind === 'cleanOut');
    expect(fixed?.words).not.toContain('Any day');
  });

  it('says where the notebook counts with an earlier spreading than the manure allows', () => {
    const words = (month: number) =>
      plan({ place: { country: 'FR' }, rest: { spreading: { month } } }, { compostDays: 160 }).tasks.find(
        ({ kind }) => kind === 'spread',
      )?.words;
    expect(words(6)).toContain('The notebook counts with spreading around 15 Jun 2026, which is earlier');
    expect(words(12)).not.toContain('which is earlier');
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
    const { start } = resultWith().scenario.farm.winter;
    const heapDay = (Date.parse('2026-05-20') - Date.parse(start)) / 86_400_000;
    const turned = { rest: { compost: { way: 'turned', turns: 3 } } } as const;
    const made = plan(turned, {
      compostDays: 250,
      compostReadyDays: 197,
      heapPeakC: 50,
      heapDay,
      compostPeakClass: 2,
    });
    expect(made.heap?.made).toBe('2026-05-20');
    expect(made.heap?.turns.map((t) => t.day)).toEqual(['2026-06-03', '2026-06-17', '2026-07-01']);
    // Mean of the heap, and its middle by the row.
    expect(made.heap?.peakC).toEqual({ low: 50, high: 50 + 8 });
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
    // A heap that is not finished when it is due says so, and is spread all the same.
    const raw = plan(turned, { compostDays: 250, compostReadyDays: 0, compostStableDays: 0, heapDay });
    expect(raw.heap).toMatchObject({ ready: null, spreadFrom: '2027-01-25' });
    expect(raw.tasks.find((t) => t.kind === 'ready')?.title).toContain('not finished');
    expect(raw.heap?.words).toContain('let it lie longer');
  });

  it('tells the temperature the probe should find at each turning, from the weeks of the model', () => {
    const result = resultWith({ rest: { compost: { way: 'turned', turns: 2 } } }, 0.5, {
      compostDays: 120,
      heapDay: 215,
    });
    const weekHeapTemperatureC = Float64Array.from({ length: 53 }, (_, w) =>
      w >= 30 ? 20 + w - 30 : Number.NaN,
    );
    const { heap } = seasonPlan(
      { ...result, tracks: { ...result.tracks, weekHeapTemperatureC } },
      coefficients,
    );
    const weeks = (heap?.turns ?? []).map((_, k) => Math.floor((215 + 14 * (k + 1) - 1) / 7));
    expect(heap?.turns.map((t) => /about (\d+) °C/.exec(t.words)?.[1])).toEqual(
      weeks.map((w) => String(w - 10)),
    );
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
