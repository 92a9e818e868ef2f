/** The inputs of the farm, or of one scenario, as they stand: value, where it came from, what is usual, what differs. */
import { COMPARISONS } from '../model/measures.ts';
import { rowOf, type Usual, usualAt, usualOfRow } from '../model/usual.ts';
import {
  CATALOGUE_OF_INPUTS,
  CATALOGUE_OF_LISTS,
  type Input,
  type InputList,
  inputAt,
  SUBJECTS,
  type Subject,
} from '../notebook/catalogue.ts';
import { optionWords } from '../notebook/inputWords.ts';
import { isPlain } from '../notebook/merge.ts';
import type { Path } from '../notebook/path.ts';
import type { Notebook } from '../notebook/read.ts';
import type { Scenario } from '../notebook/schema.ts';
import { SYSTEMS } from '../notebook/systems.ts';
import { written } from '../notebook/write.ts';
import type { Tables } from '../tables/coefficient.ts';

/** Whose inputs: those of the farm and the notebook, or the scenario at that place. */
export type Scope = 'farm' | number;

export type Origin = 'written' | 'farm' | 'system' | 'default' | 'tables' | 'none';

export interface Field extends Omit<Input, 'options'> {
  readonly at: Path;
  readonly value: unknown;
  readonly origin: Origin;
  readonly options?: readonly { readonly value: string; readonly words: string }[];
  readonly usual?: Usual;
  /** In a scenario: written here though the farm says it too. `farmValue` is what the farm says. */
  readonly differs: boolean;
  readonly farmValue?: unknown;
}

export interface Row {
  readonly at: Path;
  readonly title: string;
  readonly fields: readonly Field[];
}

export interface Rows extends InputList {
  readonly at: Path;
  readonly rows: readonly Row[];
  /** In a scenario: the scenario has a list of its own in place of the farm's. */
  readonly differs: boolean;
  readonly ofFarm: boolean;
  readonly canAdd: boolean;
  /** What a new row may be, where it is one of a kind: feeds and materials not yet listed, results not yet weighed. */
  readonly choices?: NonNullable<Field['options']>;
}

export interface SubjectInputs {
  readonly subject: Subject;
  readonly fields: readonly Field[];
  readonly lists: readonly Rows[];
  /** How many of them differ from the farm. */
  readonly differing: number;
  /** Why no figure of the scenario feels them; absent where they count. */
  readonly idle?: string;
}

export interface FieldsOf {
  readonly notebook: Notebook;
  /** The text the notebook was read from. */
  readonly text: string;
  readonly tables: Tables;
}

/** Rows that are asked for elsewhere: where a line or a row of the tables is looked at. */
const ADDED_ELSEWHERE = /(^coefficients|prices|finance\.quotes)$/;

const at = (data: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (here, part) =>
      here !== null && typeof here === 'object' ? (here as Record<PropertyKey, unknown>)[part] : undefined,
    data,
  );

/** The strict parts of a notebook, laid out as the front matter is. */
const whole = (notebook: Notebook) => ({
  ...notebook,
  coefficients: notebook.overrides,
  title: notebook.title,
});

const starred = (pattern: string, scope: Scope): Path | undefined => {
  const parts = pattern.split('.');
  if (scope === 'farm') return parts[0] === 'scenarios' ? undefined : parts;
  return parts[0] === 'scenarios' ? ['scenarios', scope, ...parts.slice(2)] : undefined;
};

/** Everything that can be changed in a scope, by subject; subjects with nothing are left out. */
export function inputsOf(of: FieldsOf, scope: Scope): SubjectInputs[] {
  const raw = written(of.text);
  const parts = whole(of.notebook);
  const fields = CATALOGUE_OF_INPUTS.flatMap((input) => {
    const path = starred(input.pattern, scope);
    return path && !path.includes('*') ? (fieldAt(of, raw, parts, input, path) ?? []) : [];
  });
  const lists = CATALOGUE_OF_LISTS.flatMap((list) => {
    const path = starred(list.pattern, scope);
    return path ? [rowsAt(of, raw, parts, list, path)] : [];
  });
  return SUBJECTS.map((subject) => {
    const mine = fields.filter((field) => field.subject === subject);
    const rows = lists.filter((list) => list.subject === subject);
    return {
      subject,
      fields: mine,
      lists: rows,
      differing: [...mine, ...rows].filter(({ differs }) => differs).length,
      ...(scope === 'farm' ? {} : idleWords(of.notebook.scenarios[scope], subject)),
    };
  }).filter(({ fields: mine, lists: rows }) => mine.length + rows.length > 0);
}

/** Where nobody stands on a bed or on slats, what is built for them moves nothing. */
function idleWords({ placement }: Scenario, subject: Subject): { idle?: string } {
  const { bedShare, slatsShare, yardShare, yardTo } = placement;
  const slurry = slatsShare > 0 || (yardShare > 0 && yardTo === 'slurry');
  if (subject === 'shed' && bedShare + slatsShare + yardShare === 0)
    return { idle: 'No animals stand in a shed in this scenario, so it has none.' };
  if (subject === 'slats and slurry' && !slurry)
    return { idle: 'No dung goes to slurry in this scenario, so nothing here counts.' };
  if (subject === 'compost' && bedShare === 0)
    return { idle: 'No animals stand on a bed in this scenario, so there is no heap.' };
  return {};
}

/** The field at one place, for a working that ends there; undefined where no field may write. */
export function fieldOf(of: FieldsOf, input: Input, path: Path): Field | undefined {
  return fieldAt(of, written(of.text), whole(of.notebook), input, path);
}

function fieldAt(of: FieldsOf, raw: unknown, parts: object, input: Input, path: Path): Field | undefined {
  // Monthly normals are a whole: they are begun as one, then changed month by month.
  const monthly = path.indexOf('monthly');
  if (monthly > 0 && at(parts, path.slice(0, monthly + 1)) === undefined) return undefined;
  if (
    path.at(-1) === 'seed' &&
    path.includes('weather') &&
    at(parts, [...path.slice(0, -1), 'monthly']) === undefined
  )
    return undefined;
  const value = at(parts, path);
  const own = at(raw, path);
  const inFarm = path[0] === 'scenarios' && path[2] === 'farm';
  const scenario = path[0] === 'scenarios' ? of.notebook.scenarios[Number(path[1])] : undefined;
  const usual = usualFor(of, path);
  const farmValue = inFarm ? at(parts, path.slice(2)) : undefined;
  const origin: Origin =
    own !== undefined
      ? 'written'
      : inFarm
        ? 'farm'
        : scenario && at(SYSTEMS[scenario.system].defaults, path.slice(2)) !== undefined
          ? 'system'
          : value !== undefined
            ? 'default'
            : usual
              ? 'tables'
              : 'none';
  const options = optionsFor(of, input, path);
  const { options: _, ...rest } = input;
  const unit = usual && input.unit === '' && input.kind === 'number' ? usual.unit : input.unit;
  return {
    ...rest,
    unit,
    at: path,
    value,
    origin,
    ...(options ? { kind: 'choice', options } : {}),
    ...(input.kind === 'several' && input.options
      ? { kind: 'several', options: input.options.map(said) }
      : {}),
    ...(usual ? { usual } : {}),
    differs: inFarm && own !== undefined && JSON.stringify(value) !== JSON.stringify(farmValue),
    ...(inFarm ? { farmValue } : {}),
  };
}

const said = (value: string) => ({ value, words: optionWords(value) });

/** Options of a choice; of names that stand elsewhere in the notebook too. */
function optionsFor({ notebook, tables }: FieldsOf, input: Input, path: Path): Field['options'] | undefined {
  if (input.kind === 'choice') {
    if (input.key === 'material' && path.includes('scenarios')) {
      const { materials } = notebook.scenarios[Number(path[1])].farm;
      if (!path.includes('materials')) return materials.map(({ material }) => said(material));
    }
    return input.options?.map(said);
  }
  if (input.pattern === 'scenarios.*.finance.baseline')
    return notebook.scenarios
      .filter((_, k) => k !== path[1])
      .map(({ name }) => ({ value: name, words: name }));
  if (input.pattern === 'farm.money.currency')
    return [...tables.prices.keys()].map((value) => ({ value, words: value }));
  return undefined;
}

/** What the tables say of a place; a replaced row's own, for an own number. */
function usualFor({ notebook, tables }: FieldsOf, path: Path): Usual | undefined {
  const { currency } = notebook.farm.money;
  const inRow = (id: string) => {
    const row = rowOf(tables, currency, id);
    return row && usualOfRow(row);
  };
  const number = ['value', 'low', 'high'].includes(String(path.at(-1)));
  if (path[0] === 'coefficients')
    return number ? inRow(notebook.overrides[Number(path[1])]?.id ?? '') : undefined;
  const prices = path.indexOf('prices');
  if (prices > 0) return number ? inRow(String(path[prices + 1])) : undefined;
  if (path[0] === 'scenarios') {
    const scenario = notebook.scenarios[Number(path[1])];
    return scenario && usualAt(path.slice(2), scenario.farm, tables);
  }
  return usualAt(path, notebook.farm, tables);
}

function rowsAt(of: FieldsOf, raw: unknown, parts: object, list: InputList, path: Path): Rows {
  const value = at(parts, path);
  const ofFarm = path[0] === 'scenarios' && path[2] === 'farm';
  const own = at(raw, path);
  const keys: (string | number)[] = Array.isArray(value)
    ? value.map((_, k) => k)
    : isPlain(value)
      ? Object.keys(value)
      : [];
  const inputs = CATALOGUE_OF_INPUTS.filter(
    ({ pattern }) => pattern === `${list.pattern}.*` || pattern.startsWith(`${list.pattern}.*.`),
  );
  const rows = keys.map((key): Row => {
    const place = [...path, key];
    const below = inputs.flatMap(
      (input) =>
        fieldAt(of, raw, parts, input, [
          ...place,
          ...input.pattern
            .slice(list.pattern.length + 2)
            .split('.')
            .filter((part) => part !== ''),
        ]) ?? [],
    );
    return { at: place, title: rowTitle(of, at(parts, place), key), fields: below };
  });
  const choices = choicesFor(of, list, path, value);
  return {
    ...list,
    at: path,
    rows,
    ofFarm,
    differs:
      ofFarm && own !== undefined && JSON.stringify(value) !== JSON.stringify(at(parts, path.slice(2))),
    canAdd: !ADDED_ELSEWHERE.test(path.join('.')) && rows.length < list.most && choices?.length !== 0,
    ...(choices ? { choices } : {}),
  };
}

/** Rows of which a list has one of a kind, and the kinds it has not. */
function choicesFor({ notebook }: FieldsOf, list: InputList, path: Path, rows: unknown): Rows['choices'] {
  if (list.pattern === 'decide.weights')
    return COMPARISONS.filter(({ name, better }) => better && !(isPlain(rows) && name in rows)).map(
      ({ name, short }) => ({ value: name, words: short }),
    );
  const key = { feed: 'feed', materials: 'material', mix: 'material', amendments: 'material', lines: 'what' }[
    String(path.at(-1))
  ];
  if (key === undefined || !Array.isArray(rows)) return undefined;
  const taken = rows.map((row) => row[key]);
  const known =
    path.at(-1) === 'mix' || path.at(-1) === 'amendments'
      ? notebook.scenarios[Number(path[1])].farm.materials.map(({ material }) => material)
      : (inputAt([...path, 0, key])?.options ?? []);
  return known.filter((name) => !taken.includes(name)).map(said);
}

function rowTitle({ tables, notebook }: FieldsOf, item: unknown, key: string | number): string {
  const row = (id: string) => rowOf(tables, notebook.farm.money.currency, id)?.appliesTo ?? id;
  if (!isPlain(item)) return COMPARISONS.find(({ name }) => name === key)?.short ?? String(key);
  if (typeof item.name === 'string') return item.name;
  for (const choice of ['feed', 'material', 'what'])
    if (typeof item[choice] === 'string') return optionWords(item[choice]);
  if (typeof item.line === 'string') return item.line;
  return row(typeof item.id === 'string' ? item.id : String(key));
}
