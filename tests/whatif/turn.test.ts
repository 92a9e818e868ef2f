import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import { type Notebook, readNotebook } from '../../src/notebook/read.ts';
import { changesOf } from '../../src/store/strip.ts';
import { edited } from '../../src/store/stripEdit.ts';
import { evaluate, evaluateBound, type Run } from '../../src/study/evaluate.ts';
import { resultIn } from '../../src/study/rows.ts';
import type { Tables } from '../../src/tables/coefficient.ts';
import { breakEvens } from '../../src/whatif/breakEven.ts';
import { sweep, sweepTwo } from '../../src/whatif/sweep.ts';
import { changesAt, columnsAt, HERD_MEANINGS, headByGroup, turnIn, turnOf } from '../../src/whatif/turn.ts';
import { work } from '../../src/worker/job.ts';
import { tablesOf, winterOf } from '../farm.ts';

const TEXT = readFileSync('notebooks/hill-farm-choice.md', 'utf8');
/** The same farm, with everything that a herd can be built for, a sum given and animals that part unevenly. */
const FULL = TEXT.replace(
  'slats: { areaM2: 60, tankDepthM: 3, store: underSlats }',
  'slats: { areaM2: 60, tankDepthM: 3, store: crust, openStoreM2: 40, openYardM2: 33.3 }',
).replace('exits: 2, calvingPensM2: 18', 'exits: 2, calvingPensM2: 18, hardStandingM2: 25, inletM2: 21');
const winter = winterOf(3);
let tables: Tables;
let notebook: Notebook;
let run: Run;

function read(text: string): Notebook {
  const { notebook: found, problems } = readNotebook(text, 'test.md');
  if (!found) throw new Error(JSON.stringify(problems, null, 2));
  return found;
}
const evaluated = (of: Notebook) => evaluate(of, tables, () => winter);
const close = (found: readonly number[], expected: readonly number[]) =>
  found.forEach((value, k) => {
    expect(Math.abs(value / expected[k] - 1), `scenario ${k}: ${value} and ${expected[k]}`).toBeLessThan(
      1e-12,
    );
  });

beforeAll(() => {
  tables = tablesOf(readDataFiles());
  notebook = read(FULL);
  run = evaluated(notebook);
});

describe.each(HERD_MEANINGS)('a herd that is turned, shed %s', (herd) => {
  it.each([9, 16, 17, 20, 34, 51])('to %i head costs the same to build however it is turned', (head) => {
    const of = { notebook, tables, setting: run, herd };
    const slider = evaluateBound(
      run.bound,
      tables,
      run.weather,
      run.weatherIndex,
      changesOf(of, new Map([['head', head]])),
    ).results.map(({ values }) => values.capitalCost as number);
    expect(slider.every((cost) => cost > 0)).toBe(true);
    const turn = turnOf(run, 'headCount', herd);
    if (!turn) throw new Error('no herd');

    const swept = sweep(run, turn, [5, head], ['capitalCost']).results.capitalCost;
    close([...swept.slice(3)], slider);

    const rain = turnOf(run, 'rainFactor');
    if (!rain) throw new Error('no rain');
    const map = sweepTwo(run, [rain, [0.5, 1]], [turn, [5, head]], ['capitalCost']).results.capitalCost;
    close([...map.slice(9)], slider);

    // Let go of: what is written and read again costs what the slider said.
    const { text } = edited(FULL, of, 'head', head);
    close(
      evaluated(read(text)).results.map(({ values }) => values.capitalCost as number),
      slider,
    );
  });

  it('is turned in a flip as by the slider, in whichever order the two stand', () => {
    const turn = turnOf(run, 'headCount', herd);
    if (!turn) throw new Error('no herd');
    const flips = (
      [
        ['netCost', 0, 1],
        ['netCost', 1, 0],
        ['nitrogenRemainingKg', 2, 0],
        ['capitalCost', 1, 2],
        ['netCostPerHead', 2, 1],
        ['nutrientValue', 1, 2],
        ['labourHours', 0, 1],
        ['labourHours', 2, 0],
      ] as const
    ).map(([measure, a, b]) => breakEvens(run, turn, [1, 60], measure, a, b));
    expect(flips.flatMap(({ ties }) => ties).length).toBeGreaterThan(0);
    for (const { ties, measure } of flips)
      for (const { at, moreBelow, moreAbove } of ties) {
        const held = (value: number) =>
          evaluateBound(
            run.bound,
            tables,
            run.weather,
            run.weatherIndex,
            changesAt(turn, value, 3),
          ).results.map(({ values }) => values[measure] as number);
        // A thousandth of a head is more than the cent to which works are counted.
        const [below, above] = [held(at - 1e-3), held(at + 1e-3)];
        expect(below[moreBelow]).toBeGreaterThan(below[moreAbove]);
        expect(above[moreAbove]).toBeGreaterThan(above[moreBelow]);
      }
    // What a flip runs: the two alone, in their order.
    const pair = { bound: [run.bound[2], run.bound[1]], weather: run.weather, weatherIndex: [0, 0] };
    const alone = sweep(pair, turnIn(turn, [2, 1]), [34], ['capitalCost']).results.capitalCost;
    const slider = sweep(run, turn, [34], ['capitalCost']).results.capitalCost;
    close([...alone], [slider[2], slider[1]]);
  });

  it('answers as the worker does', () => {
    const job = work(run, {
      kind: 'sweep',
      over: 'headCount',
      from: 34,
      to: 34.5,
      steps: 2,
      names: ['capitalCost'],
      herd,
    });
    let step = job.next();
    while (!step.done) step = job.next();
    const turn = turnOf(run, 'headCount', herd);
    if (!turn || !step.value || !('results' in step.value)) throw new Error('no answer');
    expect(step.value.results.capitalCost).toEqual(
      sweep(run, turn, [34, 34.5], ['capitalCost']).results.capitalCost,
    );
  });
});

describe('the two meanings', () => {
  it('part for a roofed herd, and leave the notebook’s own herd as it stands', () => {
    const [built, stays] = HERD_MEANINGS.map((herd) => {
      const turn = turnOf(run, 'headCount', herd);
      if (!turn) throw new Error('no herd');
      return sweep(run, turn, [17, 34], ['capitalCost']).results.capitalCost;
    });
    const now = run.results.map(({ values }) => values.capitalCost as number);
    close([...built.slice(0, 3)], now);
    close([...stays.slice(0, 3)], now);
    expect(built[4]).toBeGreaterThan(1.2 * stays[4]);
    expect(built[5]).toBeGreaterThan(1.2 * stays[5]);
  });

  it('write what they mean: the works with the herd, or the herd alone', () => {
    const [built, stays] = HERD_MEANINGS.map((herd) =>
      edited(FULL, { notebook, tables, setting: run, herd }, 'head', 34),
    );
    expect(built.what).toBe('Animals to 34 head, shed is built to match');
    expect(read(built.text).scenarios[2].shed).toMatchObject({
      lengthM: 48,
      depthM: 10.5,
      waterBowls: 6,
      calvingPensM2: 36,
    });
    expect(read(built.text).scenarios[1]).toMatchObject({
      slats: { areaM2: 120, openStoreM2: 80, openYardM2: 66.6 },
      shed: { lengthM: 38.4, hardStandingM2: 50, inletM2: 42 },
    });
    // A paddock has no shed to write.
    expect(built.text).not.toMatch(/name: Paddock[^-]*shed:/);
    expect(stays.what).toBe('Animals to 34 head, the shed stays');
    expect(stays.text).toBe(FULL.replace('head: 16', 'head: 32').replace('head: 1,', 'head: 2,'));
  });

  it('are the same for the herd’s factor', () => {
    const [factor, heads] = ['herdFactor', 'headCount'].map((name) => turnOf(run, name, 'built'));
    if (!factor || !heads) throw new Error('no herd');
    close(
      [...sweep(run, factor, [2], ['capitalCost']).results.capitalCost],
      [...sweep(run, heads, [34], ['capitalCost']).results.capitalCost],
    );
  });

  it('start from a herd that the slider holds', () => {
    const changes = changesOf({ notebook, tables, setting: run, herd: 'built' }, new Map([['head', 34]]));
    const job = work(
      run,
      { kind: 'sweep', over: 'headCount', from: 17, to: 17.5, steps: 2, names: ['capitalCost'] },
      changes,
    );
    let step = job.next();
    while (!step.done) step = job.next();
    if (!step.value || !('results' in step.value)) throw new Error('no answer');
    close(
      [...resultIn(step.value.results, 'capitalCost').slice(0, 3)],
      run.results.map(({ values }) => values.capitalCost as number),
    );
  });
});

describe('slats whose area nobody wrote', () => {
  const UNWRITTEN = FULL.replace('slats: { areaM2: 60, ', 'slats: { ');
  const SLATS = 1;
  const slatsAt = (of: Run, at: Run) => [of, at].map(({ results }) => results[SLATS].values);

  it('stay as the notebook’s own herd needs them where the shed stays, and grow where it is built', () => {
    const open = read(UNWRITTEN);
    const own = evaluated(open);
    const turned = (herd: (typeof HERD_MEANINGS)[number], head: number) =>
      evaluateBound(
        own.bound,
        tables,
        own.weather,
        own.weatherIndex,
        changesOf({ notebook: open, tables, setting: own, herd }, new Map([['head', head]])),
      );
    for (const head of [8, 34, 51]) {
      const [before, stays] = slatsAt(own, turned('stays', head));
      expect(stays.headCount).toBe(head);
      expect(Math.abs((stays.slatsUsedM2 as number) - (before.slatsUsedM2 as number))).toBeLessThan(0.005);
      expect(stays.billSlatsM2).toBe(stays.slatsUsedM2);
      expect(turned('built', head).results[SLATS].values.slatsUsedM2).toBeCloseTo(
        ((before.slatsUsedM2 as number) * head) / 17,
        0,
      );
      // What is slid, swept and written is the same shed.
      const turn = turnOf(own, 'headCount', 'stays');
      if (!turn) throw new Error('no herd');
      const swept = sweep(own, turn, [head], ['slatsUsedM2', 'capitalCost']).results;
      expect(swept.slatsUsedM2[SLATS]).toBe(stays.slatsUsedM2);
      const written = edited(
        UNWRITTEN,
        { notebook: open, tables, setting: own, herd: 'stays' },
        'head',
        head,
      );
      const [again] = [evaluated(read(written.text)).results[SLATS].values];
      expect(again.slatsUsedM2).toBe(stays.slatsUsedM2);
      close(
        [again.capitalCost as number, swept.capitalCost[SLATS]],
        [stays.capitalCost as number, stays.capitalCost as number],
      );
      const factor = turnOf(own, 'herdFactor', 'stays');
      if (!factor) throw new Error('no factor');
      expect(sweep(own, factor, [head / 17], ['slatsUsedM2']).results.slatsUsedM2[SLATS]).toBe(
        stays.slatsUsedM2,
      );
    }
    // The herd as it stands changes nothing.
    const [before, same] = slatsAt(own, turned('stays', 17));
    expect(same).toEqual(before);
    expect(edited(UNWRITTEN, { notebook: open, tables, setting: own, herd: 'stays' }, 'head', 17).text).toBe(
      UNWRITTEN,
    );
  });
});

describe('every input of the strip', () => {
  it.each([
    ['winterDays', 'winterDays', 120],
    ['rainFactor', 'rainFactor', 1.5],
    ['beddingRate', 'beddingRateKgPer100Kg', 2],
    ['labour', 'labourPricePerHour', 30],
    ['materialPrice', 'material1PricePerTonne', 180],
  ])('%s goes through the turn of %s, and is read back as it was turned', (id, name, value) => {
    const of = { notebook, tables, setting: run, herd: 'built' } as const;
    const turn = turnOf(run, name);
    if (!turn) throw new Error(name);
    const slider = evaluateBound(
      run.bound,
      tables,
      run.weather,
      run.weatherIndex,
      changesOf(of, new Map([[id, value]])),
    );
    const net = slider.results.map(({ values }) => values.netCost as number);
    close([...sweep(run, turn, [value], ['netCost']).results.netCost], net);
    const written = evaluated(read(edited(FULL, of, id, value).text));
    close(
      written.results.map(({ values }) => values.netCost as number),
      net,
    );
    expect(net).not.toEqual(run.results.map(({ values }) => values.netCost));
  });
});

describe('whole animals', () => {
  it('sum to what is asked, and between two whole herds to what lies between', () => {
    expect(headByGroup([16, 1], 20)).toEqual([19, 1]);
    expect(headByGroup([14, 4], 9)).toEqual([7, 2]);
    const turn = turnOf(run, 'headCount', 'stays');
    if (!turn) throw new Error('no herd');
    for (const total of [0, 0.3, 1, 11.4, 33.999])
      expect(
        columnsAt(turn, total)
          .filter(({ scenario }) => scenario === 0)
          .reduce((sum, { value }) => sum + value, 0),
      ).toBeCloseTo(total, 12);
  });
});
