/** What is kept between changes is what a fresh run would make, to the bit, whatever changed and in which order. */
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openNotebook } from '../../src/cli/open.ts';
import { toTable } from '../../src/model/bind.ts';
import { compute, computing } from '../../src/model/compute.ts';
import { ALWAYS, DAILY } from '../../src/model/quantities.ts';
import { repeatScenarios } from '../../src/study/rows.ts';
import { drawAll, startBlocks, uncertainIn } from '../../src/uncertainty/monteCarlo.ts';
import { FARMS, farmRun, NOTEBOOKS } from '../snapshot/figures.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const runs = [
  ...(await Promise.all(
    NOTEBOOKS.map(async (name) => (await openNotebook(`${ROOT}/notebooks/${name}.md`)).run),
  )),
  ...(await Promise.all(Array.from({ length: FARMS }, (_, k) => farmRun(k + 1)))),
];
const EVERY = [...ALWAYS, ...DAILY];

/** The first name and row where two results differ; nothing where they agree to the bit. */
function firstDifference(
  a: Readonly<Record<string, Float64Array>>,
  b: Readonly<Record<string, Float64Array>>,
): string | undefined {
  for (const name of Object.keys(b)) {
    const row = b[name].findIndex((value, k) => !Object.is(value, a[name]?.[k]));
    if (row >= 0) return `${name} in row ${row}: kept ${a[name]?.[row]}, fresh ${b[name][row]}`;
  }
  return undefined;
}

const names = fc.oneof(
  { weight: 1, arbitrary: fc.constant(EVERY) },
  { weight: 3, arbitrary: fc.subarray(EVERY, { minLength: 1, maxLength: 12 }) },
);
const change = fc.record({ column: fc.nat(), factor: fc.double({ min: 0.5, max: 2, noNaN: true }) });
const changes = fc.array(fc.array(change, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 8 });

describe('results kept while columns change', () => {
  it('are those of a fresh run, for any farm, any question and any changes', () => {
    fc.assert(
      fc.property(fc.nat(runs.length - 1), names, changes, (which, asked, series) => {
        const { bound, weather, weatherIndex } = runs[which];
        const columns: Record<string, Float64Array> = {
          ...toTable(bound.map((one, k) => ({ bound: one, weatherIndex: weatherIndex[k] }))),
        };
        const turnable = Object.keys(columns).filter((name) => name !== 'weatherIndex');
        const baselines = bound.map((_, k) => (k === 0 ? -1 : 0));
        const again = computing(asked, columns, weather, baselines);
        let kept = again();
        for (const set of series) {
          const moved = new Set<string>();
          for (const { column, factor } of set) {
            const name = turnable[column % turnable.length];
            moved.add(name);
            columns[name] = columns[name].map((value) => value * factor);
          }
          kept = again([...moved]);
          expect(firstDifference(kept, compute(asked, columns, weather, baselines))).toBeUndefined();
        }
      }),
      { numRuns: 60 },
    );
  });

  it('hold more rows than a chunk, with draws in them', () => {
    const [setting] = runs;
    const block = startBlocks(setting, 120, 7, ['netCost', 'nitrogenKeptKg', 'packDepthM']).next(0, 120);
    const { columns } = block;
    const again = computing(block.names, columns, setting.weather);
    again();
    for (const [column, factor] of [
      ['labourPricePerHour', 1.5],
      ['labourPricePerHour', 0.7],
      ['rainFactor', 1.3],
      ['labourPricePerHour', 2],
      ['group1HeadCount', 2],
      ['rainFactor', 0.9],
    ] as const) {
      expect(columns).toHaveProperty(column);
      columns[column] = columns[column].map((value) => value * factor);
      const fresh = compute(block.names, columns, setting.weather);
      expect(firstDifference(again([column]), fresh)).toBeUndefined();
    }
  });

  it('give the same draws while inputs are dragged as without having been dragged', () => {
    const [setting] = runs;
    const asked = {
      count: 64,
      seed: 3,
      keep: ['netCost', 'internalRateOfReturn', 'nitrogenKeptKg'],
    } as const;
    const drags = [
      new Map(),
      new Map([['rainFactor', 1.4]]),
      new Map([
        ['rainFactor', 1.4],
        ['labourPricePerHour', 31],
      ]),
      new Map([['labourPricePerHour@1', 9]]),
      new Map(),
    ];
    for (const changed of drags) {
      const dragged = drawAll(setting, { ...asked, changes: changed }).results;
      // Another list of bound scenarios holds nothing kept.
      const apart = { ...setting, bound: [...setting.bound] };
      const fresh = drawAll(apart, { ...asked, changes: changed }).results;
      expect(firstDifference(dragged, fresh)).toBeUndefined();
    }
  });

  it('leave what does not hang on a change as it is', () => {
    const [setting] = runs;
    expect(uncertainIn(setting).length).toBeGreaterThan(0);
    const { columns, names: kept } = repeatScenarios(setting, 1, ['packDepthM', 'netCost']);
    const again = computing(kept, columns, setting.weather);
    const before = again();
    columns.labourPricePerHour = columns.labourPricePerHour.map((value) => value + 1);
    const after = again(['labourPricePerHour']);
    expect(after.packDepthM).toBe(before.packDepthM);
    expect([...after.netCost]).not.toEqual([...before.netCost]);
  });
});
