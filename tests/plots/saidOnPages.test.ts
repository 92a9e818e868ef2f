/**
 * What whole notebooks say, kind by kind, against the numbers spoken of: the shipped four, a farm of the first steps on
 * wet clay, and the lender's paper. Own arithmetic on the model's figures, so regression checks.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { newNotebook } from '../../src/begin/begin.ts';
import { openNotebook } from '../../src/cli/open.ts';
import { paperReport } from '../../src/cli/paper.ts';
import type { Check } from '../../src/model/checks/check.ts';
import { wantsOf } from '../../src/model/checks/titles.ts';
import { answerLines } from '../../src/paper/answers.ts';
import { budgetOf } from '../../src/paper/budget.ts';
import { cautionsSection } from '../../src/paper/cautions.ts';
import type { Report } from '../../src/paper/report.ts';
import { changeText, stressSection } from '../../src/paper/stress.ts';
import { summarySection } from '../../src/paper/summary.ts';
import { compareFinding } from '../../src/plots/compare.ts';
import { toMarkup } from '../../src/plots/drawing.ts';
import { ledgerFinding } from '../../src/plots/ledger.ts';
import { rainFinding } from '../../src/plots/rain.ts';
import { sceneAt } from '../../src/plots/scene.ts';
import { sectionDrawing, sectionFinding } from '../../src/plots/section.ts';
import { seasonPlan } from '../../src/season/plan.ts';
import type { Run } from '../../src/study/evaluate.ts';
import { formatDifference, readsTheSame } from '../../src/units/format.ts';
import { daysOf } from '../../src/whatif/winterDays.ts';
import { begun, setting } from '../begin/setting.ts';
import { NOTEBOOKS } from '../cli/run.ts';

const reading = { currency: 'EUR', year: 2024, system: 'metric' } as const;
const runs = new Map<string, Run>();
let coast: Awaited<ReturnType<typeof openNotebook>>;

const plain = (text: unknown) =>
  String(text)
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/gu, ' ');
const all = () => [...runs].flatMap(([of, run]) => run.scenarios.map((scenario) => ({ of, run, scenario })));
const checks = () =>
  all().flatMap(({ of, scenario }) => scenario.checks.map((check) => ({ of, scenario, check })));

beforeAll(async () => {
  for (const file of NOTEBOOKS) {
    const opened = await openNotebook(file);
    if (file.includes('coast')) coast = opened;
    runs.set(file, opened.run);
  }
  const clay = await newNotebook(
    begun({
      ground: { texture: 'clay' },
      herd: [{ class: 'sucklerCow', head: '22' }, { class: 'bull', head: '1' }],
    }),
    setting,
  ); // biome-ignore format: one farm
  if (!clay.run) throw new Error('no notebook');
  runs.set('clay', clay.run);
}, 60_000);

describe('a check', () => {
  it('passes inside its limit and is open outside it, in the direction its words have', () => {
    const wrong = checks().flatMap(({ of, scenario, check }) => {
      const { id, status, value, limit, limitHigh } = check;
      // Timber that can be had whole stays open: longer spans are the engineer's.
      if (value === null || limit === null || check.foreign || check.theme === 'loads') return [];
      const [low, high] =
        wantsOf(id) === 'atLeast'
          ? [limit, Number.POSITIVE_INFINITY]
          : wantsOf(id) === 'atMost'
            ? [Number.NEGATIVE_INFINITY, limit]
            : [limit, limitHigh ?? limit];
      if (wantsOf(id) === 'told') return [];
      const inside = value >= low - 1e-9 && value <= high + 1e-9;
      return inside === (status === 'pass')
        ? []
        : [`${of}, ${scenario.name}: ${id} ${status}, ${value} of ${low} to ${high}`];
    });
    expect(wrong).toEqual([]);
  });

  it('quotes the limits it is held against', () => {
    const between = checks().filter(({ check }) => wantsOf(check.id) === 'between' && check.limit !== null);
    expect(between.length).toBeGreaterThan(3);
    for (const { check } of between)
      for (const end of [check.limit, check.limitHigh])
        expect(check.words, check.id).toContain(String(Number((end ?? 0).toPrecision(3))));
  });

  it('of another country says that it is for comparison', () => {
    const swedish = checks().filter(({ check }) => /Swed/.test(check.words));
    expect(swedish.length).toBeGreaterThan(3);
    for (const { check } of swedish) expect(check.words, check.id).toMatch(/for comparison/);
  });

  it('speaks of a stance only where there is one, and of no area a head of a feed that is moved', () => {
    for (const { scenario, check } of checks()) {
      if (scenario.system === 'slatted') expect(check.words).not.toMatch(/on the stance/);
      if (check.id === 'feedingPlaces') expect(check.words).not.toMatch(/\b0 m²/);
    }
  });

  it('names the ground it is about where that is not the one its limit is for', () => {
    const of = checks().filter(({ check }) => check.id === 'paddockSward');
    expect(of.length).toBeGreaterThan(2);
    for (const { scenario, check } of of) {
      const { texture } = scenario.scenario.farm.soil;
      expect(check.words.includes('(here '), texture).toBe(texture !== 'loam');
    }
  });

  it('says that timber can be had in one piece only where it can', () => {
    const timber = checks().filter(({ check }) => check.id === 'longestTimber');
    expect(timber.length).toBeGreaterThan(3);
    for (const { check } of timber)
      expect(check.words.includes('can be had in one piece')).toBe((check.value ?? 0) >= (check.limit ?? 0));
  });

  it('of a closed period has one where the tables do', () => {
    const closed = checks().filter(({ check }) => check.id === 'closedPeriod');
    const known = (check: Check) => !check.words.includes('hold no closed period');
    for (const { of, scenario, check } of closed)
      expect(known(check), of).toBe(scenario.scenario.farm.place.country === 'IE');
    expect(closed.some(({ check }) => known(check))).toBe(true);
  });
});

describe('the season', () => {
  it('tells each turn its own warmth, brings nothing that is delivered, spreads not before it may', () => {
    let turns = 0;
    for (const { run, scenario } of all()) {
      const plan = seasonPlan(scenario, run.tables.coefficients);
      for (const { words, own } of plan.stacks) {
        if (!own) expect(words).not.toMatch(/to (make|bring|make and bring)\b/);
      }
      const track = scenario.tracks.weekHeapTemperatureC;
      for (const { words, day } of plan.heap?.turns ?? []) {
        const week = Math.floor(
          (Date.parse(day) - Date.parse(scenario.scenario.farm.winter.start)) / 86_400_000 - 1,
        );
        const mean = track?.[Math.floor(week / 7)];
        expect(words).toContain(`about ${Math.round(mean ?? Number.NaN)} °C inside`);
        turns++;
      }
      if (plan.spreading && plan.heap) expect(plan.spreading.earliest >= plan.heap.spreadFrom).toBe(true);
    }
    expect(turns).toBeGreaterThan(5);
  });
});

describe('a drawing of the bed', () => {
  it('says of the starting layer that it was laid so, though it has sunk since', () => {
    const of = coast.run.scenarios.find(({ name }) => name === 'Deep bed');
    const scene = of && sceneAt({ ...of, coefficients: coast.run.tables.coefficients }, 1);
    if (!scene || typeof scene === 'string') throw new Error('no scene');
    expect(scene.bedM).toBeLessThan(0.3);
    expect(scene.startM).toBe(scene.bedM);
    expect(plain(toMarkup(sectionDrawing(scene, 1248, 'said'), 'said'))).toContain(
      'starting layer, 0.30 m when laid',
    );
    expect(sectionFinding(scene)).toContain(`the bed stands ${scene.bedM.toFixed(2)} m above the floor`);
    expect(scene.lowM).toBeLessThan(scene.bedM);
    expect(scene.highM).toBeGreaterThan(scene.bedM);
  });
});

describe('names', () => {
  it('with a comma in them stand in quotes wherever several are listed', () => {
    const { run } = coast;
    const name = 'Deep bed, no grant';
    const said = [
      compareFinding(run.scenarios, 'nitrogenKeptKg', reading),
      compareFinding(run.scenarios, 'slurryM3', reading),
      ledgerFinding(run.scenarios, 'phosphorus', reading),
    ];
    expect(said.join(' ')).toContain(`“${name}”`);
    for (const text of said) expect(text.replaceAll(`“${name}”`, '')).not.toContain(name);
  });
});

describe('the weather', () => {
  it('counts no weeks of snow where none lies', () => {
    for (const [of, run] of runs) {
      const said = rainFinding(daysOf(run, 0), reading);
      expect(said, of).toMatch(/Snow lies at the end of (no week|[1-9]\d* of \d+ weeks)\.$/);
    }
  });
});

describe('the lender’s paper', () => {
  let report: Report;
  beforeAll(async () => {
    report = await paperReport(coast, { day: '1 January 2026', draws: 200 });
  }, 60_000);

  it('tells own money once, and what of it is for the lines and what for the unforeseen', () => {
    const { own, unforeseen } = budgetOf(report);
    const said = plain(answerLines(report)[0].words);
    const spaced = (value: number) => String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, ' ');
    expect(said).toContain(
      `own money of CAD ${spaced(own ?? 0)}, of it CAD ${spaced((own ?? 0) - (unforeseen ?? 0))} for the lines of the bill`,
    );
    expect(said).toContain(`of it CAD ${spaced(unforeseen ?? 0)} for the unforeseen`);
  });

  it('moves the net cost of a bad time as the two figures shown do', () => {
    let tried = 0;
    for (const { outcomes } of report.stress)
      for (const outcome of outcomes) {
        const said = changeText(outcome, report.reading);
        if (outcome.lacks !== null) expect(said).toBe('–');
        if (outcome.lacks !== null || outcome.netCost === null || outcome.netCostChange === null) continue;
        const usual = outcome.netCost - outcome.netCostChange;
        if (readsTheSame(usual, outcome.netCost, 'money')) expect(said).toMatch(/^(about )?0$/);
        else {
          tried++;
          expect(said.slice(1)).toBe(formatDifference(usual, outcome.netCost, ''));
          expect(said.startsWith('+')).toBe(outcome.netCostChange > 0);
        }
      }
    expect(tried).toBeGreaterThan(5);
    expect(plain(stressSection(report).markup)).not.toMatch(/even with (?!“)/);
  });

  it('says of the dearest bad time itself where it turns, and no span of rates that was searched', () => {
    const said = plain(summarySection(report).markup);
    expect(said).toMatch(/costs most: CAD [\d ]+ more a year; (“Deep bed”|at) /);
    expect(said).not.toMatch(/−99 %|1000 %/);
  });

  it('names the scenarios a caution is about', () => {
    const said = plain(cautionsSection(report).markup);
    expect(said).toMatch(/Check the local rule\. \(“As it is”\)/);
    expect(said).toMatch(/cut face\..*\(“Deep bed” and “Deep bed, no grant”\)/);
  });
});
