import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { CATALOGUE_OF_INPUTS } from '../../src/notebook/catalogue.ts';
import { type FrontMatter, findFrontMatter } from '../../src/notebook/frontMatter.ts';
import { type Notebook, readNotebook } from '../../src/notebook/read.ts';
import { change, type Outcome } from '../../src/store/change.ts';
import { type Field, type FieldsOf, inputsOf, type Scope } from '../../src/store/fields.ts';
import { push, startHistory, undo } from '../../src/store/history.ts';
import { weighOwn } from '../../src/store/ownNumber.ts';
import { changeRows } from '../../src/store/rows.ts';
import { sharing } from '../../src/store/shares.ts';
import { typedForm } from '../../src/units/typed.ts';
import { shipped } from '../notebook/shipped.ts';
import { SMALL } from '../notebook/small.ts';
import { tables } from '../shippedTables.ts';

const AS = { system: 'metric', currency: 'EUR' } as const;

const read = (text: string) => readNotebook(text, 'x.md').notebook as Notebook;
const of = (text: string): FieldsOf => ({ notebook: read(text), text, tables });
const front = (text: string) => parse((findFrontMatter(text, 'x.md') as FrontMatter).source);
const at = (data: unknown, path: readonly (string | number)[]): unknown =>
  path.reduce<unknown>((here, part) => (here as Record<PropertyKey, unknown> | undefined)?.[part], data);
const done = (outcome: Outcome) => {
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome));
  return outcome;
};
const to = (text: string, path: readonly (string | number)[], typed: string, sure = false) =>
  change(of(text), { at: path, typed, sure, as: AS });
const hill = shipped.find(({ file }) => file.startsWith('hill'))?.text as string;

/** Lines that are not the same at their place, head and tail cut off. */
function diff(a: string, b: string) {
  const [before, after] = [a.split('\n'), b.split('\n')];
  let head = 0;
  while (head < before.length && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < Math.min(before.length, after.length) - head && before.at(-1 - tail) === after.at(-1 - tail))
    tail++;
  return { gone: before.slice(head, before.length - tail), come: after.slice(head, after.length - tail) };
}

describe('an input changed in place', () => {
  it('takes a share as per cent, with its mark or without', () => {
    for (const typed of ['12 %', '12', '12%', '12,0'])
      expect(
        at(front(done(to(SMALL, ['farm', 'herd', 0, 'pregnantShare'], typed)).text), ['farm', 'herd', 0]),
      ).toMatchObject({
        pregnantShare: 0.12,
      });
  });

  it('refuses what cannot be, in the unit shown, and changes nothing', () => {
    expect(to(SMALL, ['farm', 'herd', 0, 'pregnantShare'], '150')).toEqual({
      kind: 'refused',
      words: 'share in calf cannot be 150 %: it is at least 0 %, at most 100 %',
    });
    expect(to(SMALL, ['farm', 'herd', 0, 'weightKg'], '10')).toMatchObject({
      words: 'weight cannot be 10 kg: it is at least 15 kg, at most 1500 kg',
    });
    expect(to(SMALL, ['farm', 'land', 'receivingHa'], '')).toMatchObject({
      words: 'ground for manure or compost cannot be left empty: type a number in ha',
    });
    expect(to(SMALL, ['scenarios', 1, 'compost', 'turns'], '2.5')).toMatchObject({ kind: 'refused' });
    expect(to(SMALL, ['farm', 'winter', 'end'], '2025-01-01')).toMatchObject({
      words: expect.stringContaining('the winter ends before it starts'),
    });
    expect(to(SMALL, ['scenarios', 1, 'shed', 'stanceDepthM'], '3.2', true).kind).toBe('done');
    expect(to(SMALL, ['scenarios', 1, 'shed', 'stanceDepthM'], '20', true)).toMatchObject({
      words: expect.stringContaining('leaves no room for the bed'),
    });
    expect(to(SMALL, ['scenarios', 0, 'name'], 'x')).toMatchObject({ kind: 'refused' });
  });

  it('asks where the tables have seen nothing like it, once', () => {
    const path = ['farm', 'feed', 0, 'crudeProteinFraction'];
    const asked = to(SMALL, path, '30');
    expect(asked).toMatchObject({
      kind: 'ask',
      words: expect.stringMatching(
        /^30 % is outside what the tables have seen for crude protein: 6 % to 1[0-9.]+ %\. Keep it\?$/,
      ),
    });
    expect(to(SMALL, path, '0.09')).toMatchObject({ words: expect.stringContaining('Was 9 % meant?') });
    expect(at(front(done(to(SMALL, path, '30', true)).text), path)).toBe(0.3);
    expect(at(front(done(to(SMALL, path, '9.5')).text), path)).toBe(0.095);
  });

  it('writes one line, says what it did, and goes back to the byte', () => {
    const edit = done(to(SMALL, ['farm', 'herd', 0, 'head'], '24'));
    expect(diff(SMALL, edit.text).come).toEqual([
      '    - { name: cows, class: sucklerCow, head: 24, weightKg: 620 } # counted in October',
    ]);
    expect(edit.what).toBe('cows: head to 24 head');
    expect(done(to(edit.text, ['farm', 'herd', 0, 'head'], '16')).text).toBe(SMALL);
    expect(done(to(SMALL, ['scenarios', 1, 'shed', 'eaveM'], '5')).what).toBe(
      'Deep bed: lowest roof member to 5 m',
    );
  });

  it('keeps keys that are read over', () => {
    const old = SMALL.replace('latitudeDeg: 57', 'elevationM: 240, latitudeDeg: 57');
    const { text } = done(to(old, ['farm', 'place', 'latitudeDeg'], '58'));
    expect(diff(old, text).come).toEqual([
      '  place: { name: Nowhere, elevationM: 240, latitudeDeg: 58, longitudeDeg: 15 }',
    ]);
  });

  it('in a scenario differs from the farm, is marked, and is set back', () => {
    const path = ['scenarios', 1, 'farm', 'land', 'receivingHa'];
    const find = (text: string): Field =>
      inputsOf(of(text), 1)
        .flatMap(({ fields }) => fields)
        .find((field) => field.at.join() === path.join()) as Field;
    expect(find(SMALL)).toMatchObject({ value: 20, origin: 'farm', differs: false });
    const there = done(to(SMALL, path, '35')).text;
    expect(find(there)).toMatchObject({ value: 35, origin: 'written', differs: true, farmValue: 20 });
    expect(read(there).farm.land.receivingHa).toBe(20);
    const back = done(to(there, path, ''));
    expect(back.text).toBe(SMALL);
    expect(back.what).toBe('Deep bed: ground for manure or compost as the farm');
  });

  it('moves the other shares when one of a whole moves', () => {
    const edit = done(to(SMALL, ['farm', 'feed', 0, 'share'], '70'));
    expect(read(edit.text).farm.feed.map(({ share }) => share)).toEqual([0.7, 0.3]);
    expect(edit.said).toBe('Together 100 %: hay 70 %, haylage 30 %.');
    const day = done(to(SMALL, ['scenarios', 1, 'placement', 'bedShare'], '50'));
    expect(read(day.text).scenarios[1].placement).toMatchObject({ bedShare: 0.5, yardShare: 0.5 });
    expect(to(SMALL, ['scenarios', 1, 'bed', 'mix', 0, 'share'], '50')).toMatchObject({
      words: expect.stringContaining('the only one'),
    });
  });
});

describe('rows', () => {
  const act = (text: string, asked: Parameters<typeof changeRows>[1]) => changeRows(of(text), asked);

  it('of the herd are added, copied and taken out', () => {
    const list = ['farm', 'herd'];
    const copy = done(act(SMALL, { act: 'copy', list, row: 0 }));
    expect(read(copy.text).farm.herd.map(({ name, head }) => [name, head])).toEqual([
      ['cows', 16],
      ['bull', 1],
      ['cows, copy', 16],
    ]);
    expect(diff(SMALL, copy.text).gone).toEqual([]);
    expect(done(act(copy.text, { act: 'remove', list, row: 2 })).text).toBe(SMALL);
    expect(read(done(act(SMALL, { act: 'add', list })).text).farm.herd[2]).toMatchObject({
      head: 0,
      name: 'group 3',
    });
    const one = done(act(SMALL, { act: 'remove', list, row: 1 })).text;
    expect(act(one, { act: 'remove', list, row: 0 }).kind).toBe('refused');
  });

  it('of feeds and mixes share what one of them gave', () => {
    const more = done(act(SMALL, { act: 'add', list: ['farm', 'feed'], choice: 'grassSilage' })).text;
    expect(read(more).farm.feed.map(({ feed, share }) => [feed, share])).toEqual([
      ['hay', 0.6],
      ['haylage', 0.4],
      ['grassSilage', 0],
    ]);
    const less = done(act(more, { act: 'remove', list: ['farm', 'feed'], row: 0 })).text;
    expect(read(less).farm.feed.map(({ feed, share }) => [feed, share])).toEqual([
      ['haylage', 1],
      ['grassSilage', 0],
    ]);
    // A material a bed is made of is not taken from the farm under it.
    expect(act(SMALL, { act: 'remove', list: ['farm', 'materials'], row: 0 })).toMatchObject({
      kind: 'refused',
      words: expect.stringContaining("not among the farm's materials"),
    });
    const mix = ['scenarios', 1, 'bed', 'mix'];
    const mixed = done(act(SMALL, { act: 'add', list: mix, choice: 'softwoodChips' })).text;
    const half = done(to(mixed, [...mix, 1, 'share'], '25')).text;
    expect(read(half).scenarios[1].bed.mix.map(({ share }) => share)).toEqual([0.75, 0.25]);
  });

  it('of a scenario are its own list from the first change on, and the farm’s again', () => {
    const list = ['scenarios', 1, 'farm', 'herd'];
    const more = done(act(SMALL, { act: 'copy', list, row: 1 })).text;
    expect(read(more).scenarios.map((s) => s.farm.herd.length)).toEqual([2, 3]);
    const herd = inputsOf(of(more), 1).find(({ subject }) => subject === 'herd');
    expect(herd?.lists[0]).toMatchObject({ differs: true, ofFarm: true });
    expect(done(act(more, { act: 'asTheFarm', list })).text).toBe(SMALL);
  });

  it('of loans, weights and own prices come and go', () => {
    const loans = ['scenarios', 1, 'finance', 'loans'];
    const lent = done(act(SMALL, { act: 'add', list: loans })).text;
    expect(read(lent).scenarios[1].finance.loans).toMatchObject([{ amount: 0, rate: 0.05, years: 10 }]);
    expect(done(act(lent, { act: 'remove', list: loans, row: 0 })).text).toBe(SMALL);
    const weighed = done(act(SMALL, { act: 'add', list: ['decide', 'weights'], choice: 'netCost' })).text;
    expect(read(weighed).decide.weights).toEqual({ netCost: 1 });
    expect(read(done(to(weighed, ['decide', 'weights', 'netCost'], '3')).text).decide.weights).toEqual({
      netCost: 3,
    });
    expect(done(act(weighed, { act: 'remove', list: ['decide', 'weights'], row: 'netCost' })).text).toBe(
      SMALL,
    );
  });
});

describe('shares of a whole', () => {
  it('sum to 1 whatever is set', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 2, maxLength: 6 }),
        fc.nat(),
        fc.integer({ min: 0, max: 1000 }),
        (parts, pick, mine) => {
          const total = parts.reduce((sum, part) => sum + part, 0);
          fc.pre(total > 0);
          const k = pick % parts.length;
          const next = sharing(
            parts.map((part) => part / total),
            k,
            mine / 1000,
          );
          if (!next) {
            expect(parts.every((part, j) => j === k || part === 0)).toBe(true);
            return;
          }
          expect(next.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
          expect(next[k]).toBe(mine / 1000);
          expect(next.every((share) => share >= 0 && share <= 1)).toBe(true);
        },
      ),
      { seed: 20251101, numRuns: 500 },
    );
  });
});

describe('an own number in place of a row', () => {
  const own = (id: string, typed: string, sure = false) =>
    weighOwn(tables, 'EUR', { id, typed, sure, as: AS });

  it('is read in per cent where it is a part of something, and refused where it cannot be', () => {
    expect(own('feedCrudeProteinFraction.hay', '12 %')).toEqual({ kind: 'value', value: 0.12 });
    expect(own('feedCrudeProteinFraction.hay', '0.11')).toEqual({ kind: 'value', value: 0.11 });
    expect(own('feedCrudeProteinFraction.hay', '15')).toMatchObject({
      kind: 'refused',
      words: expect.stringContaining('for 15 % type 0.15 kg/kg DM, or 15 %'),
    });
    expect(own('houseAmmoniaTanFraction', '15')).toMatchObject({ kind: 'value', value: 0.15 });
    // Nobody eats more than itself in a day.
    expect(own('groupIntakeFraction.sucklerCow', '99')).toMatchObject({ kind: 'refused' });
    expect(own('groupIntakeFraction.sucklerCow', '0.2')).toMatchObject({
      kind: 'ask',
      words: expect.stringContaining('8 times the highest'),
    });
    expect(own('groupIntakeFraction.sucklerCow', '0.2', true)).toEqual({ kind: 'value', value: 0.2 });
  });
});

describe('any change through the catalogue', () => {
  const texts = [SMALL, SMALL.replaceAll('\n', '\r\n'), hill, ...shipped.map(({ text }) => text)];

  /** Every field of every panel of a text, rows too. */
  const fieldsOf = (text: string): Field[] => {
    const from = of(text);
    const scopes: Scope[] = ['farm', ...from.notebook.scenarios.map((_, k) => k)];
    return scopes.flatMap((scope) =>
      inputsOf(from, scope).flatMap(({ fields, lists }) => [
        ...fields,
        ...lists.flatMap(({ rows }) => rows.flatMap((row) => row.fields)),
      ]),
    );
  };

  it('shows every input of a notebook in one of its panels', () => {
    const seen = new Set(texts.flatMap(fieldsOf).map(({ pattern }) => pattern));
    // Lists that stand empty in every shipped notebook have no row to show, and normals are shown where they are written.
    const empty =
      /(quotes|loans|gains|amendments|prices|weights|alreadyHave\.lines)\.\*|^coefficients|monthly|weather\.seed/;
    expect(CATALOGUE_OF_INPUTS.filter(({ pattern }) => !seen.has(pattern) && !empty.test(pattern))).toEqual(
      [],
    );
  });

  it('leaves a text that holds what was asked, other lines as they were, and comes back to the byte by undo', () => {
    const pick = fc.record({
      field: fc.nat(),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      word: fc.nat(),
    });
    let kept = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.array(pick, { minLength: 1, maxLength: 6 }),
        (start, picks) => {
          let history = startHistory(start);
          for (const { field: n, share, word } of picks) {
            const text = history.now.text;
            const all = fieldsOf(text);
            const field = all[n % all.length];
            const typed = typedFor(field, share, word);
            const outcome = change(of(text), { at: field.at, typed, sure: true, as: AS });
            if (outcome.kind !== 'done') continue;
            kept++;
            const after = read(outcome.text);
            expect(after).toBeDefined();
            checkWritten(field, typed, outcome.text);
            checkLines(text, outcome.text, field);
            history = push(history, { text: outcome.text, what: outcome.what });
          }
          while (history.past.length > 0) history = undo(history);
          expect(history.now.text).toBe(start);
        },
      ),
      { seed: 20251101, numRuns: 25 },
    );
    // Most of what is asked within the limits is taken, or nothing was tested.
    expect(kept).toBeGreaterThan(30);
  });
});

/** Something a person might type in the field. */
function typedFor({ kind, limits, whole, unit, options, value }: Field, share: number, word: number): string {
  if (kind === 'number' && limits) {
    const low = Math.max(limits.low, -50);
    const high = Math.min(limits.high, Math.max(100, Number(value ?? 1) * 2));
    const number = low + share * (high - low);
    return typedForm(whole ? Math.round(number) : Number(number.toPrecision(3)), unit, AS);
  }
  if (kind === 'choice') return options?.[word % options.length]?.value ?? '';
  if (kind === 'yesNo') return String(word % 2 === 0);
  if (kind === 'date') return `2026-0${1 + (word % 4)}-1${word % 9}`;
  if (kind === 'several') return ['unknown', '', 'phosphorus', 'phosphorus potassium'][word % 4];
  if (kind === 'numbers') return Array.from({ length: 12 }, (_, k) => 1 + ((word + k) % 20)).join(' ');
  return ['A plain word', "it's: so", 'två ord, ett till', '# none', 'true'][word % 5];
}

/** The file, parsed by the library alone, holds what was typed. */
function checkWritten(field: Field, typed: string, text: string): void {
  const found = at(front(text), field.at);
  if (typed === '' && field.kind !== 'several') expect(found).toBeUndefined();
  else if (field.kind === 'number')
    expect(found).toBeCloseTo(field.unit === 'fraction' ? Number(typed) / 100 : Number(typed), 9);
  else if (field.kind === 'yesNo') expect(found).toBe(typed === 'true');
  else if (field.kind === 'choice' || field.kind === 'text' || field.kind === 'date')
    expect(found).toBe(typed);
}

/** A list of its own is new lines; shares of one whole are lines of one list; everything else is one line. */
function checkLines(before: string, after: string, field: Field): void {
  const { gone, come } = diff(before, after);
  const shares = field.key === 'share' || field.at.includes('placement');
  if (!shares) expect(gone.length).toBeLessThanOrEqual(1);
  expect(gone.length).toBeLessThanOrEqual(6);
  if (field.at[2] !== 'farm' && !shares) expect(come.length).toBeLessThanOrEqual(2);
  const body = (text: string) => text.slice(text.indexOf('---', 4));
  expect(body(after).split('\n---').at(-1)).toBe(body(before).split('\n---').at(-1));
}
