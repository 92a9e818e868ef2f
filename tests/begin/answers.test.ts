import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answersFrom, answersText, isBegun, NO_ANSWERS } from '../../src/begin/answers.ts';
import { addRow, removeRow, setAnswer, setRow } from '../../src/begin/change.ts';
import { planOf } from '../../src/begin/plan.ts';
import { randomAnswers } from './randomAnswers.ts';
import { begun } from './setting.ts';

const plan = (answers = {}, home = 'IE') => planOf(begun(answers, home));

describe('answers', () => {
  it('come back as they were kept, every letter', () => {
    fc.assert(
      fc.property(randomAnswers(true), (answers) => {
        expect(answersFrom(answersText(answers))).toEqual(answers);
      }),
    );
  });

  it('are none where what was kept is something else', () => {
    for (const kept of [undefined, '', 'null', '[]', '7', '{"herd":[]}', '{"herd":[7],"step":9,"place":[]}'])
      expect(answersFrom(kept)).toEqual(NO_ANSWERS);
    expect(answersFrom('{"place":{"name":"x","evil key":"y","n":7}}').place).toEqual({ name: 'x' });
    expect(isBegun(NO_ANSWERS)).toBe(false);
    expect(isBegun(setAnswer(begun(), 'place', 'name', 'x'))).toBe(true);
  });

  it('are whole however they are read: a fault leaves the start in place', () => {
    fc.assert(
      fc.property(randomAnswers(true), (answers) => {
        const { faults, feed, herd, landHa } = planOf(begun(answers));
        expect(feed.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
        expect(herd.some(({ head }) => head > 0)).toBe(true);
        expect(landHa).toBeGreaterThan(0);
        for (const { words, at } of faults) expect(`${at} ${words}`).toMatch(/^[a-z]+\.\S+ .+/);
      }),
    );
  });

  it('touch a start and make it the keeper’s list', () => {
    const first = begun();
    const once = { ...first, answers: setRow(first, 'feed', 0, 'amount', '60') };
    expect(once.answers.feed).toEqual([{ feed: 'grassSilage', amount: '60' }, { feed: 'hay' }]);
    expect(planOf(once).feed).toEqual([
      { feed: 'grassSilage', share: 0.6 },
      { feed: 'hay', share: 0.4 },
    ]);
    const more = { ...once, answers: addRow(once, 'feed') };
    expect(more.answers.feed).toHaveLength(3);
    expect(removeRow(more, 'feed', 2).feed).toEqual(once.answers.feed);
    const one = { ...more, answers: { ...more.answers, feed: [{ feed: 'hay' }] } };
    expect(removeRow(one, 'feed', 0)).toBe(one.answers);
  });
});

describe('a plan', () => {
  it('takes the starts of the country, and each answer in place of one', () => {
    expect(plan({}, 'SE')).toMatchObject({
      country: 'SE',
      currency: 'SEK',
      labourPerHour: 200,
      system: 'metric',
    });
    expect(plan({}, 'ZZ').country).toBe('other');
    expect(plan({}, 'US').system).toBe('us');
    expect(plan({ money: { currency: 'GBP' } }, 'SE').labourPerHour).toBe(14);
    expect(plan({ money: { labourPerHour: '25' } }, 'SE').labourPerHour).toBe(25);
  });

  it('keeps the paddock inside the land', () => {
    expect(plan({ ground: { landHa: '3' } }).paddockHa).toBe(3);
    expect(plan({ ground: { paddockHa: '80' } }).landHa).toBe(80);
  });

  it('finds the winter that is on or the next one', () => {
    expect(plan().winter).toEqual({ start: '2026-11-01', end: '2027-04-05' });
    expect(planOf({ ...begun(), today: '2027-02-03' }).winter.start).toBe('2026-11-01');
    expect(planOf({ ...begun(), today: '2027-07-03' }).winter.start).toBe('2027-11-01');
    expect(plan({ place: { winterStart: '2027-12-01' } }).winter).toEqual({
      start: '2027-12-01',
      end: '2028-04-05',
    });
    expect(plan({ place: { winterStart: '2026-12-01', winterEnd: '2026-12-02' } }).faults[0].words).toContain(
      'makes 1 day.',
    );
  });

  it('says what is wrong with a list as a whole', () => {
    const words = (answers: object) =>
      plan(answers)
        .faults.map((fault) => fault.words)
        .join(' ');
    expect(
      words({
        feed: [
          { feed: 'hay', amount: '50' },
          { feed: 'haylage', amount: '40' },
        ],
      }),
    ).toContain('come to 90 %');
    expect(words({ feed: [{ feed: 'hay' }, { feed: 'hay' }] })).toContain('hay is on the list twice');
    expect(words({ herd: [{ class: 'bull', head: '0' }] })).toContain('There are no animals');
    expect(words({ there: { shed: 'bed', lengthM: '20' } })).toContain('Pace it out');
    expect(words({ place: { latitudeDeg: '-40' } })).toContain('South of the equator');
    expect(words({ materials: [{ material: 'bark' }, { material: 'bark' }] })).toContain(
      'bark is on the list twice',
    );
  });

  it('takes feed weighed in kilograms as shares and as what is eaten', () => {
    const kg = plan({
      feeding: { measure: 'kg' },
      feed: [
        { feed: 'hay', amount: '9' },
        { feed: 'barleyStraw', amount: '3' },
      ],
    });
    expect(kg.feed).toEqual([
      { feed: 'hay', share: 0.75 },
      { feed: 'barleyStraw', share: 0.25 },
    ]);
    expect(kg.herd.map((group) => group.dryMatterKgPerDay)).toEqual([12, 12]);
  });
});
