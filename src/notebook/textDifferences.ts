/** What differs between two texts of one notebook, in words: inputs, scenarios, cells, paragraphs. */
import { formatQuantity } from '../units/format.ts';
import { bodyDifferences, type Told } from './bodyDifferences.ts';
import { inputAt, listAt, patternOf } from './catalogue.ts';
import { findFrontMatter, isProblem } from './frontMatter.ts';
import { labelOf, optionWords, unitOf } from './inputWords.ts';
import { isPlain } from './merge.ts';
import type { Path } from './path.ts';
import { readYaml } from './yamlText.ts';

/** Undefined where the front matter of either cannot be read. */
export function textDifferences(before: string, after: string): readonly Told[] | undefined {
  const [was, is] = [frontOf(before), frontOf(after)];
  if (!was || !is) return undefined;
  const money =
    isPlain(is.data.farm) && isPlain(is.data.farm.money) ? is.data.farm.money.currency : undefined;
  const telling: Telling = { currency: typeof money === 'string' ? money : undefined, told: [] };
  // The id tells copies apart and is nothing that a reader would call a difference.
  const { scenarios: oldScenarios, notes: oldNotes, id: _, ...oldRest } = was.data;
  const { scenarios: newScenarios, notes: newNotes, id: __, ...newRest } = is.data;
  walk(telling, oldRest, newRest, [], '');
  scenarioDifferences(telling, rowsOf(oldScenarios), rowsOf(newScenarios));
  noteDifferences(telling, rowsOf(oldNotes), rowsOf(newNotes));
  return [...telling.told, ...bodyDifferences(before, was.bodyFrom, after, is.bodyFrom)];
}

interface Telling {
  readonly currency: string | undefined;
  readonly told: Told[];
}
type Data = Readonly<Record<string, unknown>>;

function frontOf(text: string): { readonly data: Data; readonly bodyFrom: number } | undefined {
  const front = findFrontMatter(text, '');
  if (isProblem(front)) return undefined;
  const { data } = readYaml(front.source, front.firstLine, '');
  return isPlain(data) ? { data, bodyFrom: front.bodyFrom } : undefined;
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
const rowsOf = (value: unknown): readonly Data[] => (Array.isArray(value) ? value.filter(isPlain) : []);
const isRows = (value: unknown): value is readonly Data[] =>
  Array.isArray(value) && value.length > 0 && value.every(isPlain);

function walk(telling: Telling, before: unknown, after: unknown, path: Path, where: string): void {
  if (same(before, after)) return;
  if (isPlain(before ?? after) && isPlain(after ?? before)) {
    const [was, is] = [(before ?? {}) as Data, (after ?? {}) as Data];
    for (const key of new Set([...Object.keys(was), ...Object.keys(is)]))
      walk(telling, was[key], is[key], [...path, key], where);
    return;
  }
  const [olds, news] = [before ?? [], after ?? []];
  if ((isRows(before) || isRows(after)) && Array.isArray(olds) && Array.isArray(news)) {
    rowDifferences(telling, rowsOf(olds), rowsOf(news), path, where);
    return;
  }
  telling.told.push({
    of: 'inputs',
    words: `${where}${labelAt(path)}: ${said(telling, before, path)}, now ${said(telling, after, path)}`,
  });
}

/** What a row of a list is known by. */
const nameOf = (row: Data, index: number): string => {
  for (const key of ['name', 'id', 'feed', 'material', 'line', 'class'])
    if (typeof row[key] === 'string') return optionWords(row[key]);
  return row.date === undefined ? String(index + 1) : [row.date, row.kind].map(String).join(' ');
};

function rowDifferences(
  telling: Telling,
  olds: readonly Data[],
  news: readonly Data[],
  path: Path,
  where: string,
) {
  const list = path[0] === 'diary' ? 'diary' : (listAt(path)?.label ?? labelOf(patternOf(path)));
  const left = news.map((row, k) => ({ row, k, name: nameOf(row, k) }));
  let changed = 0;
  olds.forEach((old, k) => {
    const name = nameOf(old, k);
    // The same row unchanged before another of its name: two groups may be called alike. Then one that was renamed.
    const found =
      left.find(({ row }) => same(row, old)) ??
      left.find((each) => each.name === name) ??
      left.find(({ row }) => same({ ...row, name: '' }, { ...old, name: '' }));
    if (!found) telling.told.push({ of: 'inputs', words: `${where}${list}: “${name}” was taken out` });
    else {
      left.splice(left.indexOf(found), 1);
      if (same(old, found.row)) return;
      changed++;
      walk(telling, old, found.row, [...path, found.k], `${where}${list}, ${name}: `);
    }
  });
  for (const { name } of left)
    telling.told.push({ of: 'inputs', words: `${where}${list}: “${name}” was added` });
  if (left.length === 0 && changed === 0 && olds.length === news.length)
    telling.told.push({ of: 'inputs', words: `${where}${list}: in another order` });
}

function scenarioDifferences(telling: Telling, olds: readonly Data[], news: readonly Data[]): void {
  const tell = (words: string) => telling.told.push({ of: 'scenarios', words });
  const known = (list: readonly Data[], name: unknown) => list.find((each) => each.name === name);
  const rest = ({ name: _, ...more }: Data) => more;
  const gone = olds.filter(({ name }) => !known(news, name));
  const come = news.filter(({ name }) => !known(olds, name));
  const renamed = new Map<Data, Data>();
  for (const old of gone) {
    const found = come.find((each) => same(rest(each), rest(old)) && ![...renamed.values()].includes(each));
    if (found) renamed.set(old, found);
  }
  for (const [old, found] of renamed) tell(`“${String(old.name)}” is now called “${String(found.name)}”`);
  for (const old of gone) if (!renamed.has(old)) tell(`“${String(old.name)}” was taken out`);
  const taken = new Set(renamed.values());
  for (const found of come) if (!taken.has(found)) tell(`“${String(found.name)}” was added`);
  const stays = (list: readonly Data[], other: readonly Data[]) =>
    list.filter(({ name }) => known(other, name)).map(({ name }) => name);
  if (!same(stays(olds, news), stays(news, olds)))
    tell(`in another order: ${news.map(({ name }) => `“${String(name)}”`).join(', ')}`);
  news.forEach((now, k) => {
    const was = known(olds, now.name);
    if (was) walk(telling, was, now, ['scenarios', k], `“${String(now.name)}”, `);
  });
}

/** One taken out keeps its place without words. */
function noteDifferences(telling: Telling, olds: readonly Data[], news: readonly Data[]): void {
  const textOf = (note: Data | undefined) => String(note?.text ?? '');
  const found = (list: readonly Data[], { id }: Data) => list.find((each) => each.id === id);
  const tell = (note: Data, what: string) =>
    telling.told.push({ of: 'notes', words: `${String(note.by)} ${what}` });
  for (const note of news) {
    const [was, is] = [textOf(found(olds, note)), textOf(note)];
    if (was === is) continue;
    if (is === '') tell(note, `took out “${short(was)}”`);
    else tell(note, `${was === '' ? 'noted' : 'now notes'} “${short(is)}”`);
  }
  for (const note of olds)
    if (!found(news, note) && textOf(note) !== '') tell(note, `no longer notes “${short(textOf(note))}”`);
}

const short = (words: string) => (words.length > 80 ? `${words.slice(0, 80)}…` : words);

const labelAt = (path: Path): string => inputAt(path)?.label ?? labelOf(patternOf(path));

function said({ currency }: Telling, value: unknown, path: Path): string {
  if (value === undefined || value === null) return 'not written';
  const input = inputAt(path);
  if (typeof value === 'number') {
    const unit = input?.unit ?? unitOf(patternOf(path));
    // A year and a seed are no amounts: no mark between their thousands.
    if (unit === '') return String(value);
    return formatQuantity(value, unit, { currency, digits: 6 });
  }
  if (typeof value === 'boolean') return optionWords(String(value));
  if (Array.isArray(value))
    return value.length === 0
      ? 'none'
      : value.map((each) => said({ currency, told: [] }, each, path)).join(', ');
  if (isPlain(value)) return Object.keys(value).join(', ') || 'nothing';
  const words = String(value);
  if (input?.options?.includes(words)) return optionWords(words);
  return input?.kind === 'date' ? words : `“${short(words)}”`;
}
