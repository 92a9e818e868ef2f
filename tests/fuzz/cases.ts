/** The cases of the fuzz: each a kind, a seed and a number, made and sent through; what is found comes back. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readDataFiles } from '../../src/cli/readData.ts';
import { CHOICE_OPTIONS } from '../../src/notebook/choiceOptions.ts';
import { type ReadResult, readNotebook } from '../../src/notebook/read.ts';
import { fromLink, toLink } from '../../src/store/link.ts';
import { loadTables } from '../../src/tables/load.ts';
import { readWeather, writeWeather } from '../../src/tables/weather.ts';
import { anEdit } from '../notebook/randomEdits.ts';
import { readNotebookCases, shipped } from '../notebook/shipped.ts';
import { SMALL } from '../notebook/small.ts';
import { type Chance, chanceOf } from './chance.ts';
import { damagedBytes, damagedCsv, damagedInputs, damagedTokens, damagedValues } from './mutate.ts';
import { sayings, through } from './through.ts';

export const KINDS = ['bytes', 'tokens', 'values', 'inputs', 'edits', 'tables', 'weather', 'links'] as const;
export type Kind = (typeof KINDS)[number];

/** Longer than this is a hang, by the command: of the process's own time, so that a busy machine is no fault. */
const MOST_MS = 2000;

const files = readDataFiles();
const { tables } = loadTables(files, CHOICE_OPTIONS);
const WEATHER = fileURLToPath(new URL('../../data/weather/', import.meta.url));
const kept = new Map<string, string>();
/** Three years of a shipped climate are as good as twenty here, and read faster. */
function weatherOf(name: string): string | undefined {
  const before = kept.get(name);
  if (before !== undefined || !/^[a-zA-Z]+\.csv$/.test(name)) return before;
  try {
    const lines = readFileSync(`${WEATHER}${name}`, 'utf8').split('\n');
    kept.set(name, lines.join('\n'));
  } catch {
    return undefined;
  }
  return kept.get(name);
}

const texts = [...shipped, ...readNotebookCases()].map(({ text }) => text);

export interface Found {
  readonly kind: Kind;
  readonly seed: number;
  readonly ms: number;
  readonly to: string;
  readonly faults: readonly string[];
}

/** Makes the case and sends it through. Never throws: an exception is a fault, and so is more than `mostMs`. */
export async function tryCase(kind: Kind, seed: number, mostMs = MOST_MS): Promise<Found> {
  const chance = chanceOf(seed, kind);
  const start = process.cpuUsage();
  let to = 'refused';
  let faults: readonly string[] = [];
  try {
    const went = await DO[kind](chance);
    to = went.to;
    faults = went.faults;
  } catch (error) {
    const { stack = String(error) } = error as Error;
    faults = [`exception: ${stack.split('\n').slice(0, 4).join(' | ')}`];
  }
  const { user, system } = process.cpuUsage(start);
  const ms = (user + system) / 1000;
  return { kind, seed, ms, to, faults: ms > mostMs ? [...faults, `took ${Math.round(ms)} ms`] : faults };
}

const MAKE: { readonly [K in Kind]?: (chance: Chance) => string | Uint8Array } = {
  bytes: (chance) => damagedBytes(chance.one(texts), chance),
  tokens: (chance) => damagedTokens(chance.one(texts), chance),
  values: (chance) => damagedValues(chance.one(texts), chance),
  inputs: (chance) => {
    const text = chance.one(texts);
    const { notebook } = readNotebook(text, 'fuzz.md');
    return damagedInputs(text, chance, (pattern) =>
      pattern === 'scenarios'
        ? (notebook?.scenarios.length ?? 1)
        : pattern.endsWith('herd')
          ? (notebook?.farm.herd.length ?? 1)
          : 1,
    );
  },
  edits: edited,
};

const paperSometimes = (chance: Chance) => ({ paper: chance.maybe(0.06) });
const notebookCase = (kind: Kind) => async (chance: Chance) => {
  const text = (MAKE[kind] as (chance: Chance) => string | Uint8Array)(chance);
  return through(text, tables, weatherOf, paperSometimes(chance));
};

const DO: Record<Kind, (chance: Chance) => Promise<{ to: string; faults: readonly string[] }>> = {
  bytes: notebookCase('bytes'),
  tokens: notebookCase('tokens'),
  values: notebookCase('values'),
  inputs: notebookCase('inputs'),
  edits: notebookCase('edits'),
  async tables(chance) {
    const name = chance.one([...files.keys()]);
    const damaged = new Map(files).set(name, damagedCsv(files.get(name) as string, chance));
    const loaded = loadTables(damaged, CHOICE_OPTIONS);
    const faults = sayings(loaded.problems);
    if (loaded.problems.length > 0) return { to: 'refused', faults };
    const went = await through(chance.one(shipped).text, loaded.tables, weatherOf, { paper: false });
    return { to: went.to, faults: [...faults, ...went.faults] };
  },
  async weather(chance) {
    const name = chance.one(['balticHills.csv', 'atlanticGrassland.csv', 'maritimeCoast.csv']);
    const lines = (weatherOf(name) as string).split('\n');
    const from = chance.upTo(lines.length - 900);
    const text = damagedCsv([lines[0], ...lines.slice(from, from + 900)].join('\n'), chance);
    const read = readWeather(name, text, { bad: chance.one(['refuse', 'bridge', 'leaveOut'] as const) });
    const faults = [...sayings(read.problems), ...sayings(read.notes)];
    if (!read.series) return { to: 'refused', faults };
    for (const { date, rainMm, minC, meanC, maxC } of read.series.days)
      if (!(minC <= maxC && rainMm >= 0 && Number.isFinite(rainMm + minC + meanC + maxC)))
        faults.push(`${date}: ${rainMm} mm, ${minC} to ${maxC}`);
    const again = readWeather(name, writeWeather(read.series));
    if (!again.series || again.problems.length > 0)
      faults.push(`written and read: ${again.problems.map(({ what }) => what)[0]}`);
    const went = await through(SMALL_BY_FILE, tables, () => text, { paper: false });
    return { to: went.to, faults: [...faults, ...went.faults] };
  },
  async links(chance) {
    const text = chance.one(shipped).text;
    const link = toLink(text);
    const at = chance.upTo(link.length);
    const damaged = chance.one([
      () => link.slice(0, at),
      () =>
        link.slice(0, at) + chance.one(['A', '-', '_', '%', '\u00e9', '=', '#', ' ']) + link.slice(at + 1),
      () => link + link.slice(0, at),
      () => `n1.${link.slice(3)}`,
      () => `${link.slice(0, 3)}${link.slice(at)}`,
    ])();
    const opened = fromLink(`#${damaged}`);
    if (!opened || 'problem' in opened) return { to: 'refused', faults: [] };
    if (damaged.startsWith('n2.') && opened.text !== text)
      return { to: 'read', faults: ['another text came out of a link'] };
    return through(opened.text, tables, weatherOf, { paper: false });
  },
};

const SMALL_BY_FILE = shipped.find(({ file }) => file === 'hill-farm-own-chips.md')?.text as string;

/** A sequence of edits as the page makes them, on a small notebook. */
function edited(chance: Chance): string {
  let text = SMALL;
  const read = (source: string, file: string): ReadResult => readNotebook(source, file);
  for (let k = 1 + chance.upTo(6); k > 0; k--) {
    const { notebook } = read(text, 'fuzz.md');
    if (!notebook) throw new Error('an edit left a notebook that cannot be read');
    const done = anEdit({ text, file: 'fuzz.md', read }, notebook, () => chance.between(0, 1));
    if ('text' in done) text = done.text;
    else if (/could not be written/.test(done.refused.what))
      throw new Error(`an edit could not be written: ${done.refused.found}`);
  }
  return text;
}
