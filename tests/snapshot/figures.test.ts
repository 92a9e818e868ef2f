import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { allFigures, type Figures } from './figures.ts';
import { changelogRow, HEADLINES, headlinesMoved, inWords, type Moved, unsaid } from './headlines.ts';

/** Figures that were wrong and are mended on purpose: their paths may differ, every other path may not. */
const EXCEPTIONS: readonly { readonly path: RegExp; readonly reason: string }[] = [];

/** Sums may be taken in another order; nothing else may move. */
const TOLERANCE = 1e-12;
const SHOWN = 20;

/** Figures here go by names of quantities, and a new quantity is no moved figure. Anything else that is new is. */
const BY_NAME = /\/(values|p10|p50|p90|tracks|traces)\/[^/]+$/;

interface Differing {
  readonly path: string;
  readonly words: string;
}

function differing(held: Figures | undefined, fresh: Figures | undefined, path = ''): Differing[] {
  if (held === undefined) return BY_NAME.test(path) ? [] : [{ path, words: 'is new' }];
  if (fresh === undefined) return [{ path, words: 'is absent now' }];
  if (isTree(held) && isTree(fresh))
    return [...new Set([...Object.keys(held), ...Object.keys(fresh)])].flatMap((name) =>
      differing(held[name], fresh[name], `${path}/${name}`),
    );
  return same(held, fresh) ? [] : [{ path, words: `was ${words(held)}, is ${words(fresh)}` }];
}

type Tree = { readonly [name: string]: Figures };
const isTree = (figures: Figures): figures is Tree => typeof figures === 'object' && figures !== null;
const words = (figures: Figures) => (isTree(figures) ? 'several figures' : JSON.stringify(figures));

function same(a: Figures, b: Figures): boolean {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= TOLERANCE * Math.max(1, Math.abs(a), Math.abs(b));
  return a === b;
}

/** What a keeper would see first, then the rest. */
function report(found: readonly Differing[], headlines: readonly Moved[]): string {
  const lines = found.slice(0, SHOWN).map((one) => `${one.path} ${one.words}`);
  const told =
    headlines.length === 0
      ? ['no headline moved by half a per cent']
      : [
          `${headlines.length} HEADLINES of the shipped notebooks moved; where it is meant, CHANGELOG.md has to say each and why (npx tsx tests/snapshot/make.ts prints the rows):`,
          ...headlines.map(inWords),
        ];
  return [...told, `${found.length} figures differ`, ...lines].join('\n');
}

function leaves(figures: Figures): number {
  return isTree(figures) ? Object.values(figures).reduce<number>((sum, each) => sum + leaves(each), 0) : 1;
}

describe('every figure', () => {
  it('is what it was', async () => {
    const held: Figures = JSON.parse(
      gunzipSync(readFileSync(new URL('./figures.json.gz', import.meta.url))).toString(),
    );
    // An empty file would agree with anything.
    expect(leaves(held)).toBeGreaterThan(50_000);
    const fresh = await allFigures(fileURLToPath(new URL('../..', import.meta.url)));
    const all = differing(held, fresh);
    const excused = (one: Differing) => EXCEPTIONS.some(({ path }) => path.test(one.path));
    const moved = all.filter((one) => !excused(one));
    if (moved.length > 0) throw new Error(report(moved, headlinesMoved(held, fresh)));
    // An exception that excuses nothing would hide the next figure that moves there.
    const idle = EXCEPTIONS.filter(({ path }) => !all.some((one) => path.test(one.path)));
    expect(idle).toEqual([]);
  });
});

describe('the comparison', () => {
  const held = { a: { values: { x: 1000, y: 0, z: null }, checks: { one: { status: 'pass' } } } };
  const now = (values: Tree, checks: Tree = held.a.checks) =>
    differing(held, { a: { values, checks } }).map(({ path, words }) => `${path} ${words}`);

  it('lets rounding pass, and new names', () => {
    expect(now({ x: 1000 * (1 + 1e-13), y: 1e-13, z: null, more: 1 })).toEqual([]);
  });

  it('sees what moved, what is gone, what has lost its figure and what was never asked', () => {
    expect(now({ x: 1000 * (1 + 1e-11), z: 0 })).toEqual([
      expect.stringMatching(/^\/a\/values\/x was 1000, is 1000\.0000000\d+$/),
      '/a/values/y is absent now',
      '/a/values/z was null, is 0',
    ]);
    expect(now(held.a.values, { one: { status: 'stop' }, two: { status: 'pass' } })).toEqual([
      '/a/checks/one/status was "pass", is "stop"',
      '/a/checks/two is new',
    ]);
  });
});

describe('headlines', () => {
  const tree = (values: Tree): Figures => ({ notebooks: { hill: { scenarios: { Bed: { values } } } } });
  const held = tree({ nitrogenKeptKg: 313, netCost: 22_669, compostTonnes: null, soilAshKg: 4, slurryM3: 0 });

  it('are named with before, after and share from half a per cent on, and nothing else is', () => {
    const fresh = { nitrogenKeptKg: 313 * 1.0051, netCost: 22_669 * 0.9949, compostTonnes: 91.5 };
    expect(headlinesMoved(held, tree({ ...fresh, soilAshKg: 9, slurryM3: 0.004 })).map(inWords)).toEqual([
      'hill, Bed: nitrogen kept, kg 313 → 314.6 (+0.5 %)',
      'hill, Bed: compost, t – → 91.5',
      'hill, Bed: yearly cost less value kept 22 670 → 22 550 (−0.5 %)',
    ]);
    expect(
      headlinesMoved(held, tree({ nitrogenKeptKg: 313 * 1.0049, netCost: 22_669, slurryM3: 0 })),
    ).toEqual([]);
  });

  it('are unsaid until the changelog holds the row under what is not released', () => {
    const moved = headlinesMoved(held, tree({ nitrogenKeptKg: 320, netCost: 22_669, slurryM3: 0 }));
    const [row] = moved.map(changelogRow);
    expect(row).toBe('| hill, Bed | nitrogen kept, kg | 313 → 320 |');
    expect(unsaid(moved, `# Changelog\n\n## Unreleased\n\n${row}\n\n## 0.1\n`)).toEqual([]);
    expect(unsaid(moved, `# Changelog\n\n## Unreleased\n\nnothing\n\n## 0.1\n\n${row}\n`)).toEqual([row]);
  });

  it('are held for every shipped notebook', async () => {
    const { notebooks } = JSON.parse(
      gunzipSync(readFileSync(new URL('./figures.json.gz', import.meta.url))).toString(),
    );
    for (const [name, { scenarios }] of Object.entries<{ scenarios: Record<string, { values: Tree }> }>(
      notebooks,
    ))
      for (const [scenario, { values }] of Object.entries(scenarios))
        expect(
          HEADLINES.filter((each) => !(each in values)),
          `${name}, ${scenario}`,
        ).toEqual([]);
  });
});
