// The wintering paddock: every number of its checks against the model's, and what is said to pass does pass.

import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { openNotebook } from '../../../src/cli/open.ts';
import { readDataFiles } from '../../../src/cli/readData.ts';
import { RULES } from '../../../src/model/checks/index.ts';
import { groupOf, TITLED, titleOf } from '../../../src/model/checks/titles.ts';
import { CHOICE_OPTIONS } from '../../../src/notebook/choiceOptions.ts';
import { readNotebook } from '../../../src/notebook/read.ts';
import { evaluate, type Run, type ScenarioResult } from '../../../src/study/evaluate.ts';
import { loadTables } from '../../../src/tables/load.ts';
import { checkOf, checksOf } from './fixture.ts';

const OUT = { system: 'outwintered' } as const;
const { tables } = loadTables(readDataFiles(), CHOICE_OPTIONS);

let wet: Run;
beforeAll(async () => {
  wet = (await openNotebook('notebooks/atlantic-rain-and-herd.md')).run;
});

/** The wet farm with its paddock changed. */
function out(change: (text: string) => string): ScenarioResult {
  const text = change(readFileSync('notebooks/atlantic-rain-and-herd.md', 'utf8'));
  const { notebook, problems } = readNotebook(text, 'changed.md');
  if (!notebook) throw new Error(JSON.stringify(problems));
  return evaluate(notebook, tables, () => wet.weather[0]).results[0];
}
const found = (result: ScenarioResult, id: string) => {
  const check = result.checks.find((each) => each.id === id);
  if (!check) throw new Error(`no check ${id}`);
  return check;
};
const withHectares = (hectares: number) =>
  out((text) => text.replace(/paddock: \{ areaHa: [\d.]+/, `paddock: { areaHa: ${hectares}`));

describe('a wintering paddock', () => {
  it('passes with the hectares it says, and not with a tenth less', () => {
    const now = out((text) => text);
    for (const id of ['paddockWet', 'paddockSward', 'paddockLoad']) {
      const check = found(now, id);
      expect(check.status, id).toBe('look');
      const hectares = Number(/([\d.]+) ha/.exec(check.passesWith ?? '')?.[1]);
      const limitKept = (h: number) => {
        const { value, limit } = found(withHectares(h), id);
        return Number(value) <= Number(limit) + 1e-9;
      };
      expect(limitKept(hectares + 0.05), `${id} at ${hectares}`).toBe(true);
      expect(limitKept(hectares * 0.9), `${id} below ${hectares}`).toBe(false);
    }
  });

  it('is looked at on wet clay even where little growth is lost', () => {
    const few = { restTreadingLoss: 0.02, wetDays: 90 };
    const on = (texture: string) => checkOf('paddockWet', { ...OUT, farm: { soil: { texture } } }, 0.5, few);
    expect(on('clay')).toMatchObject({ status: 'look' });
    expect(on('clay').words).toContain('wet on 90 of 189 days');
    expect(on('sandyLoam').status).toBe('pass');
    expect(
      checkOf('paddockWet', { ...OUT, farm: { soil: { texture: 'clay' } } }, 0.5, {
        restTreadingLoss: 0.7,
        wetDays: 90,
      }).status,
    ).toBe('stop');
  });

  it('says its own numbers: water by head, run-off, nitrate in what drains', () => {
    const result = wet.scenarios[0];
    const { values, scenario } = result;
    const head = scenario.farm.herd.reduce((sum, group) => sum + group.head, 0);
    const litres = tables.coefficients.get('commonPracticeWaterNeedLPerDay')?.central ?? 0;
    expect(found(result, 'paddockWater').value).toBeCloseTo((head * litres) / 1000, 9);
    expect(found(result, 'paddockFrozen').value).toBeCloseTo(100 * Number(values.paddockWashedFraction), 9);
    // Own arithmetic: 1 kg/ha in 1 mm (10 000 L/ha) is 100 mg/L; nitrate weighs 62/14 of its nitrogen.
    const kgPerHa =
      (Number(values.paddockLeachedKg) - Number(values.paddockLaterLeachedKg)) / scenario.paddock.areaHa;
    const mgPerL = ((kgPerHa * 1e6) / (Number(values.drainageMm) * 10_000)) * (62 / 14);
    expect(found(result, 'paddockDrainage').value).toBeCloseTo(mgPerL, 1);
  });

  it('has as many things to see to as are there: none of them for a herd that stays in', () => {
    expect(checksOf({ system: 'slatted' }).filter(({ id }) => id.startsWith('paddock'))).toEqual([]);
    expect(found(wet.scenarios[0], 'paddockShelter')).toMatchObject({ status: 'look' });
    expect(
      found(
        out((text) => text.replace('system: outwintered', 'system: outwintered\n    exposure: windbreak')),
        'paddockShelter',
      ).status,
    ).toBe('pass');
  });
});

describe('every check', () => {
  it('has a name and a side of its limit', () => {
    const ids = [...RULES.map(({ id }) => id), 'weeksThatFit'];
    expect(ids.filter((id) => !TITLED.includes(id))).toEqual([]);
    expect(TITLED.filter((id) => !ids.includes(id))).toEqual([]);
    expect(new Set(ids.map(titleOf)).size).toBe(new Set(ids).size);
  });

  it('of loads is for the engineer, of a rule without a country to be asked, and only the rest is the keeper’s', () => {
    const checks = checksOf({ place: { country: 'FR' } });
    for (const check of checks) {
      const group = groupOf(check);
      if (check.theme === 'loads') expect(group, check.id).toBe('engineer');
      if (group === 'change') expect(check.words, check.id).not.toContain('for the engineer');
    }
    expect(groupOf(checkOf('closedPeriod', { place: { country: 'FR' } }))).toBe('local');
  });

  it('names no other country’s rule without saying that it is for comparison', () => {
    for (const country of ['EE', 'CA', 'IE', undefined])
      for (const system of ['outwintered', 'slatted', 'deep-bedded'] as const)
        for (const { id, words } of checksOf({ system, place: { country } }, 0.5, {
          areaForPhosphorusHa: 31,
        }))
          if (/Swed/.test(words)) expect(words, `${id} ${country}`).toMatch(/comparison/);
  });

  it('gives what would pass where a shed is too small, and it passes', () => {
    const small = { shed: { lengthM: 14, depthM: 9 } };
    const { passesWith } = checkOf('lyingArea', small);
    const [, long] = /shed ([\d.]+) m long/.exec(passesWith ?? '') ?? [];
    expect(checkOf('lyingArea', { shed: { ...small.shed, lengthM: Number(long) } }).status).toBe('pass');
    const bowls = /(\d+) bowls/.exec(
      checkOf('waterPoints', { shed: { waterBowls: 0 } }).passesWith ?? '',
    )?.[1];
    expect(checkOf('waterPoints', { shed: { waterBowls: Number(bowls) } }).status).toBe('pass');
    const wall = { shed: { pushWallM: 1 } };
    const metres = /wall of ([\d.]+) m/.exec(checkOf('pushWallHeight', wall).passesWith ?? '')?.[1];
    expect(checkOf('pushWallHeight', { shed: { pushWallM: Number(metres) } }).status).toBe('pass');
    const store = { system: 'slatted' } as const;
    const deep = /tank ([\d.]+) m/.exec(checkOf('slurryStore', store).passesWith ?? '')?.[1];
    expect(checkOf('slurryStore', { ...store, slats: { tankDepthM: Number(deep) + 0.01 } }).status).toBe(
      'pass',
    );
  });
});
