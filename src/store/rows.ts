/** Rows of a list added, copied and taken out: each one edit of the text, read back like any other. */
import { listAt } from '../notebook/catalogue.ts';
import { optionWords } from '../notebook/inputWords.ts';
import { isPlain } from '../notebook/merge.ts';
import type { Path } from '../notebook/path.ts';
import { addItem, setInput, type Value } from '../notebook/write.ts';
import { nameOf, type Outcome, write, writeText, writtenAt } from './change.ts';
import type { FieldsOf } from './fields.ts';
import { sharing } from './shares.ts';

export interface RowAct {
  readonly act: 'add' | 'copy' | 'remove' | 'asTheFarm';
  /** The list; the row's place in it is `row`. */
  readonly list: Path;
  readonly row?: string | number;
  /** What the new row is, where a list has one of a kind. */
  readonly choice?: string;
}

type Item = Readonly<Record<string, Value>>;

/** A loan one starts from; changed at once by whoever has an offer. Invented. */
const LOAN_YEARS = 10;

export function changeRows(of: FieldsOf, act: RowAct): Outcome {
  const list = listAt(act.list);
  if (!list) return { kind: 'refused', words: 'this list cannot be changed here' };
  const { label } = list;
  if (act.act === 'asTheFarm')
    return write(of, [[act.list, undefined]], `${nameOf(of, act.list, { label })} as the farm`);
  if (list.named) return named(of, act, label);
  const rows = strictRows(of, act.list);
  if (act.act === 'remove') return removed(of, act, label, rows);
  if (rows.length >= list.most)
    return { kind: 'refused', words: `${label}: at most ${list.most}; take one out first` };
  const item = act.act === 'copy' ? copied(of, act) : fresh(of, act, rows);
  if (!item) return { kind: 'refused', words: 'there is nothing left to add here' };
  const what = `${nameOf(of, act.list, { label })}: ${titleOf(item)} ${act.act === 'copy' ? 'copied' : 'added'}`;
  return writeText(of, (text) => appended(text, act.list, item), what);
}

/** A list that a scenario has from the farm is first copied whole, since lists are replaced whole. */
function appended(text: string, list: Path, item: Item): string {
  const own = writtenAt(text, list);
  const farm = list[0] === 'scenarios' && list[2] === 'farm' ? writtenAt(text, list.slice(2)) : undefined;
  return own === undefined && Array.isArray(farm)
    ? setInput(text, list, [...(farm as Value[]), item])
    : addItem(text, list, item);
}

function named(of: FieldsOf, { act, list, row, choice }: RowAct, label: string): Outcome {
  const key = act === 'remove' ? row : choice;
  if (key === undefined || act === 'copy') return { kind: 'refused', words: 'choose which' };
  const value = act === 'remove' ? undefined : 1;
  return write(of, [[[...list, key], value]], `${label}: ${key} ${act === 'remove' ? 'taken out' : 'added'}`);
}

/** What a row gave goes to the others where shares make one whole. */
function removed(of: FieldsOf, { list, row }: RowAct, label: string, rows: readonly Item[]): Outcome {
  const k = Number(row);
  if (!rows[k]) return { kind: 'refused', words: 'that row is not there any more' };
  const what = `${nameOf(of, list, { label })}: ${titleOf(rows[k])} taken out`;
  const shared = ['feed', 'mix'].includes(String(list.at(-1))) && rows.length > 1;
  const shares = rows.map(({ share }) => Number(share));
  const next = shared ? sharing(shares, k, 0) : undefined;
  if (shared && !next) return { kind: 'refused', words: 'the others stand at 0 %: raise one of them first' };
  const balanced = (next ?? []).flatMap((share, j) =>
    j === k || share === shares[j] ? [] : [[[...list, j, 'share'], share] as const],
  );
  return write(of, [...balanced, [[...list, k], undefined]], what);
}

/** The row as it is written, under a name that says it is another. */
function copied(of: FieldsOf, { list, row }: RowAct): Item | undefined {
  const inScenario = list[0] === 'scenarios' && list[2] === 'farm';
  const item =
    writtenAt(of.text, [...list, Number(row)]) ??
    (inScenario ? writtenAt(of.text, [...list.slice(2), Number(row)]) : undefined);
  if (!isPlain(item)) return undefined;
  const name = typeof item.name === 'string' ? { name: `${item.name}, copy` } : {};
  return { ...item, ...name } as Item;
}

/** A row to start from. Shares and amounts begin at nothing, so that no figure moves before the keeper moves it. */
function fresh(
  { notebook, tables }: FieldsOf,
  { list, choice }: RowAct,
  rows: readonly Item[],
): Item | undefined {
  switch (list.at(-1)) {
    case 'herd':
      return {
        name: `group ${rows.length + 1}`,
        class: 'sucklerCow',
        head: 0,
        weightKg: tables.coefficients.get('groupMatureWeightKg.sucklerCow')?.central ?? 650,
      };
    case 'feed':
      return choice ? { feed: choice, share: 0 } : undefined;
    case 'materials':
    case 'amendments':
      return choice ? { material: choice, tonnes: 0 } : undefined;
    case 'mix':
      return choice ? { material: choice, share: rows.length === 0 ? 1 : 0 } : undefined;
    case 'loans':
      return {
        name: `loan ${rows.length + 1}`,
        amount: 0,
        rate: notebook.farm.money.interestRate,
        years: Math.min(LOAN_YEARS, notebook.farm.money.horizonYears),
      };
    case 'lines':
      return choice ? { what: choice, ageYears: 0 } : undefined;
    default:
      return undefined;
  }
}

const titleOf = ({ name, feed, material, line, what, id }: Item) =>
  optionWords(String(name ?? feed ?? material ?? line ?? what ?? id ?? 'a row'));

function strictRows({ notebook }: FieldsOf, list: Path): readonly Item[] {
  const source = list[0] === 'coefficients' ? { coefficients: notebook.overrides } : notebook;
  const rows = list.reduce<unknown>(
    (here, part) => (here as Record<PropertyKey, unknown> | undefined)?.[part],
    source,
  );
  return Array.isArray(rows) ? rows : [];
}
