import { describe, expect, it } from 'vitest';
import { checkNames } from '../../src/notebook/names.ts';
import { type Notebook, readNotebook } from '../../src/notebook/read.ts';
import { formatProblem } from '../../src/units/problem.ts';
import { shipped } from './shipped.ts';
import { SMALL } from './small.ts';

const read = (text: string): Notebook => {
  const { notebook, problems } = readNotebook(text, 'small.md');
  expect(problems.map(formatProblem)).toEqual([]);
  return notebook as Notebook;
};

describe('reading', () => {
  it.each(shipped)('takes $file without a problem, and says that its farm is invented', ({ file, text }) => {
    const { notebook, problems } = readNotebook(text, file);
    expect(problems.map(formatProblem)).toEqual([]);
    expect(notebook?.invented).toBe(true);
    expect(notebook?.scenarios.length).toBeGreaterThanOrEqual(3);
    expect(notebook?.text).toBe(text);
  });

  it('has the three demo farms, one with more than three scenarios', () => {
    const notebooks = shipped.map(({ file, text }) => readNotebook(text, file).notebook as Notebook);
    expect(notebooks.map(({ farm }) => [farm.herd[0].head, farm.money.currency])).toEqual(
      expect.arrayContaining([
        [16, 'EUR'],
        [60, 'CAD'],
        [32, 'EUR'],
      ]),
    );
    expect(Math.max(...notebooks.map((n) => n.scenarios.length))).toBeGreaterThan(3);
    // The letter about chips compares two beds with the paddock; the others show every system.
    const systems = notebooks.map(({ scenarios }) => new Set(scenarios.map((s) => s.system)).size);
    expect(systems.sort()).toEqual([2, 3, 3, 3]);
  });

  it('types no figure into the prose of a shipped notebook that the model computes', () => {
    for (const { file, text } of shipped) {
      const { notebook } = readNotebook(text, file);
      const prose = (notebook as Notebook).blocks
        .flatMap((b) => (b.type === 'prose' ? [b.text] : []))
        .join('\n');
      expect(
        prose.replace(/`[^`]*`/g, '').match(/\d[\d.,]*\s*(kg|t|tonnes|m3|m³|hours|h|EUR|CAD|mm|%)\b/g),
      ).toBeNull();
      expect(prose.match(/`=/g)?.length).toBeGreaterThan(3);
    }
  });

  it('keeps bytes it does not understand the order of: mark, line ends, no last line end', () => {
    const odd = `\uFEFF${SMALL.replaceAll('\n', '\r\n').trimEnd()}`;
    expect(read(odd).text).toBe(odd);
    expect(read(odd).scenarios).toEqual(read(SMALL).scenarios);
    expect(readNotebook(new TextEncoder().encode(odd), 'small.md').notebook?.text).toBe(odd);
  });

  it('gives the line of a path, or of the nearest part that is written', () => {
    const { lineOf } = read(SMALL);
    expect(lineOf('farm.herd.1.weightKg')).toBe(12);
    expect(lineOf(['scenarios', 1, 'because'])).toBe(31);
    expect(lineOf('scenarios.1.shed.eaveM')).toBe(29);
    expect(lineOf('draws.seed')).toBe(2);
  });
});

describe('defaults', () => {
  it('lays the system beneath the scenario', () => {
    const [paddock, bed] = read(SMALL).scenarios;
    expect(paddock).toMatchObject({
      feeder: 'ring',
      exposure: 'open',
      placement: { pastureShare: 1, bedShare: 0 },
    });
    expect(bed).toMatchObject({
      feeder: 'barrier',
      exposure: 'shed',
      placement: { bedShare: 0.75, yardShare: 0.25 },
    });
    expect(bed.bed).toEqual({
      startDepthM: 0.3,
      stirredPerWeek: 0,
      mix: [{ material: 'barleyStraw', share: 1 }],
    });
    const own = read(SMALL.replace('because: As it is', 'because: As it is\n    feeder: cone')).scenarios[0];
    expect(own.feeder).toBe('cone');
  });

  it('lays the farm beneath: maps join, lists are replaced whole', () => {
    const text = SMALL.replace(
      '    bed: {',
      '    farm: { weather: { rainFactor: 1.3 }, herd: [{ name: cows, class: sucklerCow, head: 20, weightKg: 620 }] }\n    bed: {',
    );
    const { farm, scenarios } = read(text);
    expect(scenarios[1].farm.weather).toEqual({ ...farm.weather, rainFactor: 1.3 });
    expect(scenarios[1].farm.herd.map((g) => g.head)).toEqual([20]);
    expect(scenarios[0].farm).toEqual(farm);
  });

  it('fills draws, units and what is weighed', () => {
    const { draws, units, decide, diary, overrides, version } = read(SMALL);
    expect({ draws, units, decide, diary, overrides, version }).toEqual({
      draws: { count: 10_000, seed: 1 },
      units: 'metric',
      decide: { weights: {} },
      diary: [],
      overrides: [],
      version: 1,
    });
  });

  it('reads a diary', () => {
    const text = SMALL.replace(
      'scenarios:',
      'diary:\n  - { date: 2025-11-20, kind: depth, depthM: 0.4 }\n  - { date: 2025-12-20, kind: temperature, temperatureC: 31 }\nscenarios:',
    );
    expect(read(text).diary).toEqual([
      { date: '2025-11-20', kind: 'depth', depthM: 0.4 },
      { date: '2025-12-20', kind: 'temperature', temperatureC: 31, atDepthM: 0.2 },
    ]);
  });
});

describe('names only the tables and the model know', () => {
  it('are checked against what the caller knows, with lines', () => {
    const text = SMALL.replace(
      'scenarios:',
      'coefficients:\n  - { id: packDryDensity, value: 1, because: measured }\nscenarios:',
    );
    const known = {
      coefficients: ['packDryDensityKgPerM3'],
      results: ['nitrogenKeptKg', 'netCost'],
      quantities: ['nitrogenKeptKg', 'netCost'],
      inputs: ['rainFactors'],
    };
    expect(checkNames(read(text), known).map(formatProblem)).toEqual([
      'small.md:25 coefficients.0.id: no row of the tables has this id; found "packDryDensity"; allowed nearest packDryDensityKgPerM3',
      'small.md:40: no result has this name; found "nitrogenExcretedKg"; allowed nearest nitrogenKeptKg, netCost',
      'small.md:56 sweep.over: no input has this name; found "rainFactor"; allowed nearest rainFactors',
    ]);
  });

  it('let prose name an input, and a figure only a result', () => {
    const text = `${SMALL}\n\`=rainFactor of Paddock\`\n\n\`\`\`compare\nmeasure: rainFactor\n\`\`\`\n`;
    const known = {
      coefficients: [],
      results: ['nitrogenKeptKg', 'nitrogenExcretedKg', 'netCost'],
      quantities: ['nitrogenKeptKg', 'nitrogenExcretedKg', 'netCost', 'rainFactor'],
      inputs: ['rainFactor'],
    };
    expect(checkNames(read(text), known).map(({ key, what, found }) => [key, what, found])).toEqual([
      ['compare.measure', 'no result has this name', '"rainFactor"'],
    ]);
  });
});
