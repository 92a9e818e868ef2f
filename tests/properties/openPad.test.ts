/** A way of wintering nobody drew up in advance: cattle on an open pad of chips, a bed without a roof over it. */
import { beforeAll, describe, expect, it } from 'vitest';
import { readDataFiles } from '../../src/cli/readData.ts';
import { readNotebook } from '../../src/notebook/read.ts';
import { planDrawing, planScene } from '../../src/plots/plan.ts';
import { sceneAt } from '../../src/plots/scene.ts';
import { evaluate, type Run, type ScenarioResult } from '../../src/study/evaluate.ts';
import { billRows, moneyCase } from '../../src/study/moneyCase.ts';
import type { Tables } from '../../src/tables/coefficient.ts';
import { formatProblem } from '../../src/units/problem.ts';
import { tablesOf, winterOf } from '../farm.ts';

const SHED = 'lengthM: 24, depthM: 9, pushWallM: 1.4, stanceDepthM: 3';
const PAD = `
    feeder: barrier
    bed: { mix: [{ material: softwoodChips, share: 1 }] }`;
const TEXT = `---
winterkeep: 1
title: An open pad, on a farm that is invented
invented: true
farm:
  place: { name: Nowhere, latitudeDeg: 57, longitudeDeg: 15 }
  winter: { start: 2025-11-01, end: 2026-04-30 }
  weather: { file: balticHills.csv, year: 2017 }
  soil: { texture: loam }
  herd:
    - { name: cows, class: sucklerCow, head: 16, weightKg: 620 }
  feed:
    - { feed: haylage, share: 1 }
  materials:
    - { material: softwoodChips, tonnes: 200 }
  land: { receivingHa: 20 }
  money: { currency: EUR, year: 2024, labourPerHour: 15 }
scenarios:
  - name: Roofed
    system: deep-bedded
    because: What a bed is as long as nobody says otherwise
    shed: { ${SHED} }${PAD}
  - name: Open pad
    system: deep-bedded
    because: The same bed without a roof
    exposure: windbreak
    shed: { ${SHED}, roofed: false }${PAD}
  - name: Open pad by night
    system: deep-bedded
    because: The same pad for half of the day
    exposure: windbreak
    placement: { bedShare: 0.5, yardShare: 0, pastureShare: 0.5, slatsShare: 0 }
    shed: { ${SHED}, roofed: false }${PAD}
---

# Words
`;

let tables: Tables;
let run: Run;
const winter = winterOf(3);
beforeAll(() => {
  tables = tablesOf(readDataFiles());
  const { notebook, problems } = readNotebook(TEXT, 'pad.md');
  if (!notebook) throw new Error(problems.map(formatProblem).join('\n'));
  run = evaluate(notebook, tables, () => winter);
});

const linesOf = (index: number) =>
  new Map(billRows(run, index).map(({ id, quantity }) => [id, quantity] as const));
const OVERHEAD = [
  'padConcrete', 'postFixings', 'timberBought', 'timberOwn', 'sawing', 'sawmill', 'erection', 'erectionOwn', 'roof', 'cladding', 'gutters', 'waterTank',
]; // biome-ignore format: one list
const UNDERFOOT = ['groundwork', 'slab', 'bedFloor', 'pushWall', 'risingBarrier', 'gates', 'bowls'];
const ROOF_CHECKS = [
  'roofClearance', 'hornClearance', 'mountingClearance', 'snowLoad', 'windLoad', 'frostDepth', 'longestTimber', 'stackAir', 'ridgeSlot', 'inletToOutlet', 'noonSunOnBed',
]; // biome-ignore format: one list
const idsOf = ({ checks }: ScenarioResult) => checks.map(({ id }) => id);

describe('an open pad', () => {
  it('has nothing overhead in its bill, and underfoot all that the roofed bed has', () => {
    const [roofed, open] = [linesOf(0), linesOf(1)];
    expect(OVERHEAD.filter((id) => open.has(id))).toEqual([]);
    expect(OVERHEAD.filter((id) => roofed.has(id)).length).toBeGreaterThan(6);
    for (const id of UNDERFOOT) {
      expect([id, roofed.get(id)]).toEqual([id, expect.any(Number)]);
      expect([id, open.get(id)]).toEqual([id, roofed.get(id)]);
    }
    const [dear, cheap] = run.results.map(({ values }) => values.capitalCost as number);
    expect(cheap).toBeLessThan(0.7 * dear);
    expect(cheap).toBeGreaterThan(0);
    expect(moneyCase(run, 1).timber).toEqual([]);
  });

  it('is built by its roof, not by the share of the day spent on it', () => {
    const [, whole, half] = [0, 1, 2].map(linesOf);
    expect(OVERHEAD.filter((id) => half.has(id))).toEqual([]);
    for (const id of UNDERFOOT) expect([id, half.get(id)]).toEqual([id, whole.get(id)]);
  });

  it('takes the rain of the winter into its bed, all of it and day and night', () => {
    const [roofed, open, half] = run.results.map(({ values }) => values);
    expect(roofed.bedRainKg).toBe(0);
    for (const pad of [open, half]) {
      expect(pad.bedM2).toBe(144);
      expect(pad.bedRainKg).toBeCloseTo((pad.rainMm as number) * 144, 6);
    }
    expect((open.packWaterInKg as number) - (roofed.packWaterInKg as number)).toBeCloseTo(
      open.bedRainKg as number,
      6,
    );
    expect(open.packMoisture as number).toBeGreaterThan(roofed.packMoisture as number);
    // Rain brings no dry matter and no nutrients.
    for (const name of ['packDryMatterInKg', 'packNitrogenInKg', 'packPhosphorusInKg'] as const)
      expect([name, open[name]]).toEqual([name, roofed[name]]);
  });

  it('is asked nothing about a roof, and told what an open bed does that is not counted', () => {
    const [roofed, open, half] = run.results;
    for (const id of ROOF_CHECKS.filter((id) => idsOf(roofed).includes(id)))
      for (const pad of [open, half]) expect(idsOf(pad)).not.toContain(id);
    expect(ROOF_CHECKS.filter((id) => idsOf(roofed).includes(id)).length).toBeGreaterThan(5);
    expect(idsOf(roofed)).not.toContain('openBed');
    for (const pad of [open, half]) {
      const said = pad.checks.find(({ id }) => id === 'openBed');
      expect(said?.status).toMatch(/look|stop/);
      expect(said?.value).toBeCloseTo(
        (pad.values.bedRainKg as number) / 144 / (pad.values.winterDays as number),
        9,
      );
      expect(said?.words).toMatch(/not counted: what is kept stands too high/);
      expect(JSON.stringify(pad.checks)).not.toMatch(/lowest roof member|Snow on the roof|NaN/);
    }
  });

  it('is drawn as a plan without posts, and not cut across', () => {
    const coefficients = tables.coefficients;
    expect(sceneAt({ ...run.results[1], coefficients }, 20)).toBe(
      'The bed lies open: there is no shed to cut across.',
    );
    const partsOf = (index: number) => {
      const scene = planScene({ ...run.results[index], coefficients });
      if (typeof scene === 'string') throw new Error(scene);
      return planDrawing(scene, 680).shapes.map(({ part }) => part);
    };
    expect(partsOf(0)).toContain('post');
    expect(partsOf(1)).not.toContain('post');
  });
});

describe('what is not known without a roof', () => {
  const refused = (change: (text: string) => string) =>
    readNotebook(change(TEXT), 'pad.md').problems.map(formatProblem).join('\n');

  it('is refused: slats that rain falls through', () => {
    const words = refused((text) =>
      text.replace(
        'bedShare: 0.5, yardShare: 0, pastureShare: 0.5, slatsShare: 0',
        'bedShare: 0.5, yardShare: 0, pastureShare: 0, slatsShare: 0.5',
      ),
    );
    expect(words).toMatch(/scenarios\.2\.shed\.roofed: slats without a roof are not known/);
    expect(words).toMatch(/slatsShare 0\.5/);
    expect(words).toMatch(/slats\.openYardM2/);
  });

  it('is refused: an open bed called sheltered by a shed', () => {
    const words = refused((text) =>
      text.replace('exposure: windbreak\n    shed', 'exposure: shed\n    shed'),
    );
    expect(words).toMatch(/scenarios\.1\.exposure: animals on a bed without a roof are not sheltered/);
    expect(words).toMatch(/open, windbreak/);
  });
});
