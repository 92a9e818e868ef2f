import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type FrontMatter, findFrontMatter } from '../../src/notebook/frontMatter.ts';
import { type Notebook, readNotebook } from '../../src/notebook/read.ts';
import { addItem, removeOverride, setInput, setOverride } from '../../src/notebook/write.ts';
import { shipped } from './shipped.ts';
import { SMALL } from './small.ts';

const front = (text: string) => parse((findFrontMatter(text, 'x.md') as FrontMatter).source);
const read = (text: string) => readNotebook(text, 'x.md').notebook as Notebook;
/** Lines of `b` that are not in `a` at their place, and of `a` that are gone. */
function diff(a: string, b: string) {
  const [before, after] = [a.split('\n'), b.split('\n')];
  let head = 0;
  while (head < before.length && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < Math.min(before.length, after.length) - head && before.at(-1 - tail) === after.at(-1 - tail))
    tail++;
  return { gone: before.slice(head, before.length - tail), come: after.slice(head, after.length - tail) };
}

type Leaf = readonly [path: readonly (string | number)[], value: string | number | boolean];
const leaves = (data: unknown, path: readonly (string | number)[] = []): Leaf[] => {
  if (Array.isArray(data)) return data.flatMap((item, k) => leaves(item, [...path, k]));
  if (data !== null && typeof data === 'object')
    return Object.entries(data).flatMap(([key, v]) => leaves(v, [...path, key]));
  return [[path, data as string]];
};

describe('setting an input', () => {
  it('changes its line only, comments kept', () => {
    expect(diff(SMALL, setInput(SMALL, 'farm.money.labourPerHour', 18))).toEqual({
      gone: ['    labourPerHour: 15   # what a day elsewhere would bring'],
      come: ['    labourPerHour: 18   # what a day elsewhere would bring'],
    });
    expect(diff(SMALL, setInput(SMALL, 'farm.herd.0.head', 24)).come).toEqual([
      '    - { name: cows, class: sucklerCow, head: 24, weightKg: 620 } # counted in October',
    ]);
    expect(diff(SMALL, setInput(SMALL, 'scenarios.1.because', "To see what's left")).come).toEqual([
      "    because: 'To see what''s left'",
    ]);
  });

  it('keeps dates and plain words plain', () => {
    const there = setInput(SMALL, 'farm.winter.end', '2026-05-15');
    expect(diff(SMALL, there).come).toEqual(['  winter: { start: 2025-11-01, end: 2026-05-15 }']);
    expect(setInput(there, 'farm.winter.end', '2026-04-30')).toBe(SMALL);
    expect(diff(SMALL, setInput(SMALL, 'title', "Cows, a bull & the bank's view")).come).toEqual([
      "title: Cows, a bull & the bank's view",
    ]);
    expect(diff(SMALL, setInput(SMALL, 'farm.place.name', 'Here, there')).come).toEqual([
      '  place: { name: "Here, there", latitudeDeg: 57, longitudeDeg: 15 }',
    ]);
  });

  it('puts a new key after the last of its map', () => {
    expect(diff(SMALL, setInput(SMALL, 'farm.weather.rainFactor', 0.1 + 0.2))).toEqual({
      gone: ['  weather: { file: balticHills.csv, year: 2017 }'],
      come: ['  weather: { file: balticHills.csv, year: 2017, rainFactor: 0.3 }'],
    });
    expect(diff(SMALL, setInput(SMALL, 'scenarios.1.shed.eaveM', 5))).toEqual({
      gone: [],
      come: ['    shed: { eaveM: 5 }'],
    });
    expect(diff(SMALL, setInput(SMALL, 'farm.money.interestRate', 0.06))).toEqual({
      gone: [],
      come: ['    interestRate: 0.06'],
    });
    expect(diff(SMALL, setInput(SMALL, 'draws.seed', 7))).toEqual({ gone: [], come: ['draws: { seed: 7 }'] });
    const price = { value: 90, because: 'quote of October' };
    expect(
      diff(SMALL, setInput(SMALL, ['farm', 'money', 'prices', 'materialPricePerTonne.barleyStraw'], price))
        .come,
    ).toEqual([
      '    prices: { materialPricePerTonne.barleyStraw: { value: 90, because: quote of October } }',
    ]);
  });

  it('replaces lists whole, and copies one of the farm before it changes it for a scenario', () => {
    const mix = [
      { material: 'barleyStraw', share: 0.5 },
      { material: 'softwoodChips', share: 0.5 },
    ];
    expect(diff(SMALL, setInput(SMALL, 'scenarios.1.bed.mix', mix)).come).toEqual([
      '    bed: { mix: [{ material: barleyStraw, share: 0.5 }, { material: softwoodChips, share: 0.5 }] }',
    ]);
    const more = read(setInput(SMALL, 'scenarios.1.farm.herd.0.head', 30));
    expect(more.scenarios.map((s) => s.farm.herd.map((g) => g.head))).toEqual([
      [16, 1],
      [30, 1],
    ]);
    expect(more.farm.herd[0].head).toBe(16);
    const block = shipped.find((s) => s.file.startsWith('hill'))?.text as string;
    expect(diff(block, setInput(block, 'scenarios.2.bed.mix', mix)).come).toHaveLength(4);
  });

  it('taken out leaves no empty map behind', () => {
    const there = setInput(SMALL, 'scenarios.1.farm.weather.rainFactor', 1.4);
    expect(diff(SMALL, there).come).toEqual(['    farm: { weather: { rainFactor: 1.4 } }']);
    expect(setInput(there, 'scenarios.1.farm.weather.rainFactor', undefined)).toBe(SMALL);
    expect(setInput(SMALL, 'scenarios.1.farm.weather.rainFactor', undefined)).toBe(SMALL);
  });

  it('writes words that YAML would take for something else in quotes', () => {
    for (const word of [
      'true',
      'null',
      '1e3',
      '12',
      '~',
      'a: b',
      '# no',
      '',
      ' x ',
      '- a',
      "it's",
      'line\nend',
      '2025-01-01',
      'å, ö',
      '{',
      '&a',
      '*a',
      '!x',
      '@',
    ]) {
      const text = setInput(SMALL, 'title', word);
      expect(front(text)).toEqual({ ...front(SMALL), title: word });
      expect(front(setInput(text, 'farm.place.name', word)).farm.place.name).toBe(word);
    }
  });

  it('refuses a text without front matter', () => {
    expect(() => setInput('# Words', 'title', 'x')).toThrow('no front matter');
  });
});

describe('adding and taking out', () => {
  it('a scenario stands after the last and leaves as it came', () => {
    const more = setInput(SMALL, ['scenarios', 2], {
      name: 'Slats',
      system: 'slatted',
      because: 'The neighbours have one',
      slats: { tankDepthM: 2.7 },
    });
    expect(diff(SMALL, more)).toEqual({
      gone: [],
      come: [
        '  - name: Slats',
        '    system: slatted',
        '    because: The neighbours have one',
        '    slats:',
        '      tankDepthM: 2.7',
      ],
    });
    expect(read(more).scenarios.map((s) => s.name)).toEqual(['Paddock', 'Deep bed', 'Slats']);
    expect(setInput(more, ['scenarios', 2], undefined)).toBe(SMALL);
    expect(read(setInput(SMALL, ['scenarios', 0], undefined)).scenarios.map((s) => s.name)).toEqual([
      'Deep bed',
    ]);
    expect(setInput(SMALL, ['scenarios', 0], undefined)).toContain('# the one we hope for');
  });

  it('an own coefficient comes with its reason, changes in place, and goes', () => {
    const one = setOverride(SMALL, { id: 'packDryDensityKgPerM3', value: 2.5, because: 'weighed' });
    expect(diff(SMALL, one)).toEqual({
      gone: [],
      come: ['coefficients:', '  - id: packDryDensityKgPerM3', '    value: 2.5', '    because: weighed'],
    });
    const two = setOverride(one, {
      id: 'nitrogenPricePerKg',
      value: 1.4,
      low: 1.2,
      high: 1.6,
      because: 'merchant',
    });
    const changed = setOverride(two, {
      id: 'packDryDensityKgPerM3',
      value: 2.2,
      because: 'weighed again',
    });
    expect(diff(two, changed)).toEqual({
      gone: ['    value: 2.5', '    because: weighed'],
      come: ['    value: 2.2', '    because: weighed again'],
    });
    expect(read(changed).overrides.map((o) => o.value)).toEqual([2.2, 1.4]);
    expect(removeOverride(removeOverride(changed, 'nitrogenPricePerKg'), 'packDryDensityKgPerM3')).toBe(
      SMALL,
    );
    expect(removeOverride(SMALL, 'nobody')).toBe(SMALL);
  });

  it('a diary grows in the manner it is written', () => {
    const first = addItem(SMALL, 'diary', { date: '2025-11-20', kind: 'depth', depthM: 0.4 });
    const flow = setInput(SMALL, 'diary', [{ date: '2025-11-20', kind: 'depth', depthM: 0.4 }]);
    for (const text of [
      first,
      flow,
      addItem(setInput(SMALL, 'diary', []), 'diary', { date: '2025-11-20', kind: 'depth', depthM: 0.4 }),
    ]) {
      const next = addItem(text, 'diary', { date: '2025-12-01', kind: 'temperature', temperatureC: 30 });
      expect(read(next).diary.map((d) => d.kind)).toEqual(['depth', 'temperature']);
    }
  });
});

describe('any edit', () => {
  const texts = [SMALL, SMALL.replaceAll('\n', '\r\n'), ...shipped.map((s) => s.text)];
  const number = fc.oneof(
    fc.integer({ min: -1000, max: 1000 }),
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }),
  );

  it('is on one line, is what was asked, and can be set back', () => {
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.nat(), fc.oneof(number, fc.string()), (text, pick, value) => {
        const all = leaves(front(text));
        const [path, before] = all[pick % all.length];
        const next = setInput(text, path, value);
        const asked = typeof value === 'number' ? Number(value.toPrecision(12)) + 0 : value;
        const after = leaves(front(next));
        expect(after).toEqual(all.map(([p, v], k) => [p, k === pick % all.length ? asked : v]));
        expect(diff(text, next).gone.length).toBeLessThanOrEqual(1);
        const back = setInput(next, path, before);
        expect(front(back)).toEqual(front(text));
        // Quotes that words needed in between may stay; numbers come back to the byte.
        if (typeof value === typeof before && typeof value === 'number') expect(back).toBe(text);
      }),
      { numRuns: 80, seed: 20251101 },
    );
  });

  it('to what is there already changes no byte', () => {
    for (const text of texts)
      for (const [path, value] of leaves(front(text))) expect(setInput(text, path, value)).toBe(text);
  });

  it('that takes something out takes out nothing else', () => {
    for (const text of [SMALL, shipped[0].text]) {
      const all = leaves(front(text));
      for (const [path] of all.filter((_, k) => k % 5 === 0)) {
        const rest = leaves(front(setInput(text, path, undefined)));
        const key = (leaf: Leaf) => `${leaf[0].filter((p) => typeof p === 'string').join('.')}=${leaf[1]}`;
        expect(rest.map(key)).toEqual(all.filter(([p]) => p !== path).map(key));
      }
    }
  });
});
