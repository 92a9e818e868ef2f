import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readNotebook } from '../../src/notebook/read.ts';
import { formatProblem } from '../../src/units/problem.ts';
import { startWork } from '../workedMs.ts';

const FOLDER = new URL('../broken/notebooks/', import.meta.url);

/** File → the line its message must name (null: the file as a whole), then words the message must hold. */
const BROKEN: Readonly<Record<string, readonly [number | null, ...string[]]>> = {
  'a-picture': [null, 'not text'],
  anchor: [9, 'anchors', '&s'],
  'bad-yaml': [18, 'not valid YAML'],
  'baseline-nobody': [26, 'scenarios.1.finance.baseline', '"Padock"', 'Paddock'],
  'slats-larger-than-shed': [
    27,
    'scenarios.1.slats.areaM2',
    '160 m² of slats; allowed at most 154.8 m², the shed of 19.2 × 9 m, less 18 m² of calving pens',
  ],
  'bed-without-bedding': [23, 'scenarios.1.bed', 'no bedding'],
  'cell-bad-option': [34, 'ledger.element', '"nitrate"', 'nitrogen, phosphorus, potassium'],
  'cell-bad-yaml': [35, 'not valid YAML'],
  'cell-mistyped': [33, 'you wrote `legder`', 'did you mean `ledger`?'],
  'cell-unknown-option': [34, 'ledger.elements', 'not known'],
  'cell-unknown-scenario': [34, 'ledger.scenarios', '"Deep bad"', 'Deep bed'],
  'cell-without-measure': [34, 'compare.measure', 'measure is missing'],
  'custom-tag': [3, 'tag'],
  'dates-cross': [7, 'farm.winter.end', 'ends before it starts', 'after 2025-11-01'],
  'day-shares': [26, 'scenarios.1.placement', 'do not sum to 1', '1.15'],
  'decimal-comma': [17, 'farm.land.5', 'a point, not a comma'],
  'deep-nest': [3, 'nested too deep'],
  'diary-other-winter': [20, 'diary.0.date', 'not of this winter', '2024-11-20'],
  'diary-unknown-kind': [20, 'diary.0.kind', '"lode"', 'load'],
  'duplicate-key': [10, 'farm.soil', 'twice', 'lines 9 and 10'],
  'duplicate-scenario': [23, 'scenarios.1.name', 'same name', '"Paddock"'],
  'eleven-months': [8, 'farm.weather.monthly.rainMm', 'list of 12'],
  empty: [null, 'empty'],
  'empty-value': [18, 'farm.money.labourPerHour', 'nothing is written'],
  'feed-shares': [12, 'farm.feed', 'do not sum to 1', 'found 0.9', '0.1 is missing'],
  'fraction-as-percent': [14, 'farm.feed.1.share', 'from 0 to 1', 'write 0.4 for 40 %'],
  'front-is-a-list': [2, 'not a map of keys', 'a list of 1'],
  'grace-as-long-as-loan': [26, 'graceYears', 'as long as the loan'],
  'head-with-unit': [11, 'farm.herd.0.head', '"16 cows"', 'write 16', 'unit stands in the key'],
  'inline-expression': [31, 'not a value by name', 'never calculates'],
  'inline-unknown-scenario': [31, 'no scenario', '"Slats"'],
  'latin-one': [null, 'not text', 'UTF-8'],
  'merge-key': [10, '<<', 'no meaning'],
  'missing-herd': [5, 'farm.herd', 'herd is missing'],
  'mix-not-on-hand': [26, 'scenarios.1.bed.mix.0.material', "farm's materials", 'barleyStraw'],
  'mix-shares': [26, 'scenarios.1.bed.mix', 'do not sum to 1', '0.2 is missing'],
  'mix-unknown-material': [26, 'barlyStraw', 'nearest: barleyStraw'],
  'negative-head': [11, 'farm.herd.0.head', 'too small', '-16', '0 to 100000'],
  'newer-version': [2, 'newer format', 'found 7'],
  'no-because': [20, 'scenarios.0.because', 'because is missing'],
  'no-front-matter': [1, 'no front matter', '"# Only words"'],
  'no-scenario': [19, 'scenarios', 'too short', 'list of 1 to 24'],
  'no-such-day': [7, 'farm.winter.end', 'not a date', '2026-04-31'],
  'no-version': [2, 'format version is missing', 'winterkeep: 1'],
  'no-weather': [8, 'farm.weather', 'no weather'],
  'not-closed': [1, 'not closed'],
  'only-marks': [2, 'not a map of keys'],
  'override-no-reason': [20, 'coefficients.0.because', 'because is missing'],
  'override-out-of-order': [20, 'coefficients.0.value', 'not in order', 'low 4'],
  'percent-share': [26, 'rateKgPer100Kg', 'too large', 'from 0 to 5'],
  'prototype-key': [4, '__proto__', 'no meaning'],
  'scenario-dates-cross': [26, 'scenarios.1.farm.winter.end', 'ends before it starts'],
  'scenario-is-a-word': [20, 'scenarios.0', 'map of keys'],
  'scenarios-missing': [2, 'scenarios is missing'],
  'tab-indent': [9, 'not valid YAML', 'spaces'],
  'unknown-key': [6, 'latitudeDeg is missing', 'write latitudeDeg'],
  'unknown-system': [24, 'scenarios.1.system', '"deepbedded"', 'deep-bedded'],
  'unknown-top-key': [4, 'invention', 'not known', 'nearest invented'],
  'version-zero': [2, 'format version is not known', 'found 0'],
  'weight-quoted': [11, 'farm.herd.0.weightKg', '"620"', 'without quotes'],
  'winter-over-a-year': [7, 'farm.winter.end', 'longer than a year', '545 days'],
  'wrong-unit-key': [11, 'weightKg is missing'],
  'yaml-bomb': [3, 'anchors and aliases are not used', '&a'],
  'zero-bytes': [3, 'not text', 'zero byte'],
};

const files = readdirSync(FOLDER);

describe('broken notebooks', () => {
  it('are all listed here, and all here are files', () => {
    expect(files.map((file) => file.replace(/\.md$/, '')).sort()).toEqual(Object.keys(BROKEN).sort());
  });

  it.each(Object.entries(BROKEN))('%s', (name, [line, ...words]) => {
    const { ok, notebook, problems } = readNotebook(
      readFileSync(new URL(`${name}.md`, FOLDER)),
      `${name}.md`,
    );
    const said = problems.map(formatProblem);
    expect(ok).toBe(false);
    const hit = problems.findIndex(
      (p, k) => (p.line ?? null) === line && words.every((word) => said[k].includes(word)),
    );
    expect(hit, said.join('\n')).toBeGreaterThanOrEqual(0);
    expect(said.every((text) => text.startsWith(`${name}.md`) && !text.includes('\n'))).toBe(true);
    // Only what is wrong in the body leaves a notebook to show.
    expect(notebook === undefined).toBe(!/^(cell|inline)-/.test(name));
  });

  it('of 50 MB are refused before they are parsed', () => {
    const workedMs = startWork();
    const { problems } = readNotebook(new Uint8Array(50_000_000).fill(97), 'huge.md');
    expect(formatProblem(problems[0])).toContain(
      'too large to be a notebook; found 50.0 MB; allowed at most 2 MB',
    );
    expect(workedMs()).toBeLessThan(1000);
  });

  it('cannot hold the reader up: each within the size limits is done with in seconds', () => {
    const fill = (yaml: string) => `---\n${yaml.slice(0, 149_000)}\n---\n`;
    const hostile = [
      fill('['.repeat(149_000)),
      fill(Array.from({ length: 20_000 }, (_, k) => `k${k}: 1`).join('\n')),
      fill('? '.repeat(99_000)),
      fill('a: b: c\n'.repeat(20_000)),
      fill('&a '.repeat(60_000)),
      `---\nwinterkeep: 1\n---\n${'`=a` '.repeat(150_000)}`,
      `---\nwinterkeep: 1\n---\n${'```ledger\n'.repeat(150_000)}`,
    ];
    for (const text of hostile) {
      const workedMs = startWork();
      const { problems } = readNotebook(text, 'hostile.md');
      expect(problems.length).toBeGreaterThan(0);
      expect(problems.length).toBeLessThanOrEqual(101);
      expect(workedMs(), text.slice(0, 40)).toBeLessThan(15_000);
    }
  });
});
