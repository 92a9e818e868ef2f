/**
 * The tables as a page is sent them: columns in place of text, numbers first and words later, since the first figures
 * need no citation. `pack.ts` makes them from tables that were read and found whole.
 */
import type { Basis, Coefficient, Movement, PriceTerms, Source, Tables, VatState } from './coefficient.ts';

/** Each row's place in a list of the values that occur; 0 stands for none. */
export interface Coded {
  readonly values: readonly string[];
  readonly at: readonly number[];
}

export interface PackedNumbers {
  /** Currency, or currency and country, of each table and its count of rows; '' for the coefficients, which come first. */
  readonly tables: readonly (readonly [key: string, rows: number])[];
  /** Parted by a space. */
  readonly ids: string;
  readonly low: readonly number[];
  readonly central: readonly number[];
  readonly high: readonly number[];
  readonly unit: Coded;
  readonly choice: Coded;
  readonly source: Coded;
  readonly basis: Coded;
  readonly movesWith: Coded;
  /** Of each value of `movesWith`, but none. */
  readonly together: readonly number[];
  readonly year: Coded;
  readonly country: Coded;
  readonly vat: Coded;
  readonly terms: Coded;
  /** What the rows apply to whose words a check says, by the row's place. */
  readonly said: readonly (readonly [row: number, appliesTo: string])[];
  /** Means that sources give, by the row's place. */
  readonly means: readonly (readonly [row: number, mean: NonNullable<Coefficient['mean']>])[];
  readonly indices: readonly (readonly [
    currency: string,
    name: string,
    byYear: readonly (readonly [number, number])[],
  ])[];
}

export interface PackedWords {
  readonly appliesTo: readonly string[];
  readonly where: readonly string[];
  readonly note: readonly string[];
  readonly measureBy: Coded;
  readonly file: Coded;
  readonly line: readonly number[];
  /** Id, author, title, year. */
  readonly sources: readonly (readonly [string, string, string, string])[];
}

const value = ({ values, at }: Coded, row: number): string | undefined =>
  at[row] === 0 ? undefined : values[at[row] - 1];

/** Rows whose words are left out until they come: what is computed with them is the same. */
export function numbersOf(packed: PackedNumbers): Tables {
  return assemble(packed);
}

/** The tables whole, to the letter as they were read. */
export function tablesOf(packed: PackedNumbers, words: PackedWords): Tables {
  return assemble(packed, words);
}

function assemble(packed: PackedNumbers, words?: PackedWords): Tables {
  const ids = packed.ids.split(' ');
  const movements = packed.movesWith.values.map(
    (name, k): Movement => ({ name, together: packed.together[k] }),
  );
  const [said, means] = [new Map(packed.said), new Map(packed.means)];
  const prices = new Map<string, Map<string, Coefficient>>();
  let coefficients = new Map<string, Coefficient>();
  let row = 0;
  for (const [key, count] of packed.tables) {
    const table = new Map<string, Coefficient>();
    for (const end = row + count; row < end; row++)
      table.set(ids[row], rowAt(packed, row, { id: ids[row], key, movements, said, means, words }));
    if (key === '') coefficients = table;
    else prices.set(key, table);
  }
  const indices = new Map(
    packed.indices.map(([currency, name, byYear]) => [currency, { name, byYear: new Map(byYear) }]),
  );
  const sources = new Map(
    (words?.sources ?? []).map(([id, author, title, year]): [string, Source] => [
      id,
      { id, author, title, year },
    ]),
  );
  return { coefficients, prices, indices, sources };
}

interface Of {
  readonly id: string;
  /** Of its table. */
  readonly key: string;
  readonly movements: readonly Movement[];
  readonly said: ReadonlyMap<number, string>;
  readonly means: ReadonlyMap<number, NonNullable<Coefficient['mean']>>;
  readonly words: PackedWords | undefined;
}

function rowAt(
  packed: PackedNumbers,
  row: number,
  { id, key, movements, said, means, words }: Of,
): Coefficient {
  const [name, option] = id.split('.') as [string, string | undefined];
  const moves = packed.movesWith.at[row];
  const [year, country, vat, terms] = [packed.year, packed.country, packed.vat, packed.terms].map((coded) =>
    value(coded, row),
  );
  const mean = means.get(row);
  const measureBy = words && value(words.measureBy, row);
  return {
    id,
    name,
    option,
    choice: value(packed.choice, row),
    low: packed.low[row],
    central: packed.central[row],
    high: packed.high[row],
    unit: value(packed.unit, row) ?? '',
    appliesTo: words ? words.appliesTo[row] : (said.get(row) ?? ''),
    source: value(packed.source, row) ?? '',
    where: words?.where[row] ?? '',
    basis: value(packed.basis, row) as Basis,
    note: words?.note[row] ?? '',
    at: { file: (words && value(words.file, row)) ?? '', line: words?.line[row] ?? 0 },
    ...(mean && { mean }),
    ...(moves > 0 && { movesWith: movements[moves - 1] }),
    ...(measureBy !== undefined && { measureBy }),
    ...(key !== '' && {
      currency: key.slice(0, 3),
      year: Number(year),
      ...(country !== undefined && { country }),
      ...(vat !== undefined && { vat: vat as VatState }),
      ...(terms !== undefined && { terms: terms as PriceTerms }),
    }),
  };
}
