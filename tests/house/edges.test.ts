import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const SRC = fileURLToPath(new URL('../../src', import.meta.url));

/** Rooms each room may import from: arrows point one way. */
const BASE = ['notebook', 'tables', 'units'] as const;
const QUESTIONS = ['uncertainty', 'whatif', 'bedmix', 'season', 'study', 'model', ...BASE] as const;
const ALLOWED: Record<string, readonly string[]> = {
  units: [],
  tables: ['units'],
  notebook: ['tables', 'units'],
  model: [...BASE],
  study: ['model', ...BASE],
  bedmix: ['study', 'model', ...BASE],
  season: ['study', 'model', ...BASE],
  begin: ['study', 'model', ...BASE],
  uncertainty: ['study', 'model', ...BASE],
  whatif: ['uncertainty', 'study', 'model', ...BASE],
  calibrate: [...QUESTIONS],
  worker: [...QUESTIONS],
  store: ['worker', ...QUESTIONS],
  plots: [...QUESTIONS],
  paper: ['plots', ...QUESTIONS],
  elements: ['begin', 'paper', 'plots', 'store', 'worker', ...QUESTIONS],
  app: ['elements', 'begin', 'paper', 'plots', 'store', 'worker', ...QUESTIONS],
  cli: ['paper', 'plots', 'worker', 'calibrate', ...QUESTIONS],
};

/**
 * Inside a room with floors of its own: what each folder may import of its neighbours. Files that stand directly in
 * the room join the folders and may import them all.
 */
const FLOORS: Record<string, readonly string[]> = {
  'model/engine': [],
  'elements/parts': [],
  'elements/cells': ['elements/parts'],
  'elements/page': ['elements/cells', 'elements/parts'],
};

/** Each library has one door: the rooms that may import it. */
const DOORS: Record<string, readonly string[]> = {
  '@observablehq/plot': ['plots'],
  d3: ['plots'],
  'd3-array': ['plots', 'uncertainty', 'whatif', 'calibrate'],
  'd3-dsv': ['tables'],
  lit: ['elements', 'app'],
  '@codemirror/autocomplete': ['elements'],
  '@codemirror/commands': ['elements'],
  '@codemirror/lang-yaml': ['elements'],
  '@codemirror/language': ['elements'],
  '@codemirror/lint': ['elements'],
  '@codemirror/state': ['elements'],
  '@codemirror/view': ['elements'],
  '@lezer/highlight': ['elements'],
  '@lezer/markdown': ['elements'],
  'markdown-it': ['notebook'],
  yaml: ['notebook'],
  zod: ['notebook'],
  '@preact/signals-core': ['store', 'worker', 'elements'],
  'idb-keyval': ['store'],
  fflate: ['store'],
  yalps: ['bedmix'],
  suncalc: ['model'],
  'ical-generator': ['season'],
  'write-excel-file': ['cli', 'elements'],
  'apache-arrow': ['cli'],
  tsx: ['cli'],
  'playwright-core': ['cli'],
  vite: ['cli'],
};

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.(ts|mjs)$/.test(file) && !file.endsWith('.d.ts'))
  .map((file) => file.replaceAll('\\', '/'));

interface Edge {
  readonly from: string;
  readonly to: string;
  readonly typeOnly: boolean;
}

const edges: Edge[] = [];
const libraries: { from: string; library: string }[] = [];
for (const file of files) {
  const text = readFileSync(join(SRC, file), 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');
  const imports = [
    ...text.matchAll(/^\s*(import|export)\s+(type\s+)?(?:[^'";]*?\sfrom\s+)?['"]([^'"]+)['"]/gm),
    ...[...text.matchAll(/\bimport\(\s*['"]([^'"]+)['"]\s*\)/g)].map((m) => [m[0], '', '', m[1]]),
    ...[...text.matchAll(/new URL\(\s*['"](\.[^'"]+\.ts)['"]\s*,\s*import\.meta\.url/g)].map((m) => [
      m[0],
      '',
      '',
      m[1],
    ]),
  ];
  for (const [, , typeOnly, target] of imports) {
    if (target.startsWith('.')) {
      const to = relative(SRC, resolve(SRC, dirname(file), target.replace(/\?.*$/, ''))).replaceAll(
        '\\',
        '/',
      );
      if (!to.startsWith('..')) edges.push({ from: file, to, typeOnly: Boolean(typeOnly) });
    } else if (!target.startsWith('node:') && !target.startsWith('virtual:')) {
      libraries.push({
        from: file,
        library: target
          .split('/')
          .slice(0, target.startsWith('@') ? 2 : 1)
          .join('/'),
      });
    }
  }
}
const room = (file: string) => file.split('/')[0];
const floor = (file: string) => file.split('/').slice(0, 2).join('/');

describe('the house', () => {
  it('has only the rooms it says', () => {
    expect([...new Set(files.map(room))].filter((r) => !(r in ALLOWED))).toEqual([]);
  });

  it('reads some imports', () => {
    expect(edges.length).toBeGreaterThan(50);
  });

  it('keeps to the allowed edges', () => {
    const bad = edges
      .filter(({ from, to }) => room(from) !== room(to) && !ALLOWED[room(from)]?.includes(room(to)))
      .map(({ from, to }) => `${from} -> ${to}`);
    expect(bad).toEqual([]);
  });

  it('keeps to the floors inside a room', () => {
    const bad = edges
      .filter(({ from, to }) => room(from) === room(to) && floor(from) !== floor(to))
      .filter(({ from, to }) => FLOORS[floor(from)] && !FLOORS[floor(from)].includes(floor(to)))
      .map(({ from, to }) => `${from} -> ${to}`);
    expect(bad).toEqual([]);
  });

  it('has one door for each library', () => {
    const bad = libraries
      .filter(({ from, library }) => !DOORS[library]?.includes(room(from)))
      .map(({ from, library }) => `${from} -> ${library}`);
    expect(bad).toEqual([]);
  });

  it('has no import cycle', () => {
    const next = new Map<string, string[]>();
    for (const { from, to, typeOnly } of edges)
      if (!typeOnly) next.set(from, [...(next.get(from) ?? []), to]);
    const state = new Map<string, 'open' | 'done'>();
    const cycles: string[] = [];
    const walk = (file: string, path: readonly string[]) => {
      if (state.get(file) === 'done') return;
      if (state.get(file) === 'open') {
        cycles.push([...path.slice(path.indexOf(file)), file].join(' -> '));
        return;
      }
      state.set(file, 'open');
      for (const to of next.get(file) ?? []) walk(to, [...path, file]);
      state.set(file, 'done');
    };
    for (const file of files) walk(file, []);
    expect(cycles).toEqual([]);
  });
});
