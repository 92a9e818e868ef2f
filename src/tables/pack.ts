/** Tables that were read and found whole, as columns: what a build does with them, so that a page reads no CSV. */
import type { Coefficient, Tables } from './coefficient.ts';
import type { Coded, PackedNumbers, PackedWords } from './packed.ts';

/** Rows that a check quotes beside a figure: limits set by a law or a code. */
const SAID = 'data/coefficients/law.csv';

/** Gives what `packed.ts` puts together again. */
export function packTables({ coefficients, prices, indices, sources }: Tables): {
  readonly numbers: PackedNumbers;
  readonly words: PackedWords;
} {
  const tables: (readonly [string, ReadonlyMap<string, Coefficient>])[] = [['', coefficients], ...prices];
  const rows = tables.flatMap(([, table]) => [...table.values()]);
  const all = <T>(of: (row: Coefficient) => T): T[] => rows.map(of);
  const movesWith = coded(all((row) => row.movesWith?.name));
  const numbers: PackedNumbers = {
    tables: tables.map(([key, table]) => [key, table.size]),
    ids: all((row) => row.id).join(' '),
    low: all((row) => row.low),
    central: all((row) => row.central),
    high: all((row) => row.high),
    unit: coded(all((row) => row.unit)),
    choice: coded(all((row) => row.choice)),
    source: coded(all((row) => row.source)),
    basis: coded(all((row) => row.basis)),
    movesWith,
    together: movesWith.values.map(
      (name) => rows.find((row) => row.movesWith?.name === name)?.movesWith?.together ?? 0,
    ),
    year: coded(all((row) => (row.year === undefined ? undefined : String(row.year)))),
    country: coded(all((row) => row.country)),
    vat: coded(all((row) => row.vat)),
    terms: coded(all((row) => row.terms)),
    said: rows.flatMap((row, k) => (row.at.file === SAID ? [[k, row.appliesTo] as const] : [])),
    means: rows.flatMap((row, k) => (row.mean ? [[k, row.mean] as const] : [])),
    indices: [...indices].map(([currency, { name, byYear }]) => [currency, name, [...byYear]]),
  };
  return {
    numbers,
    words: {
      appliesTo: all((row) => row.appliesTo),
      where: all((row) => row.where),
      note: all((row) => row.note),
      measureBy: coded(all((row) => row.measureBy)),
      file: coded(all((row) => row.at.file)),
      line: all((row) => row.at.line),
      sources: [...sources.values()].map(({ id, author, title, year }) => [id, author, title, year]),
    },
  };
}

function coded(each: readonly (string | undefined)[]): Coded {
  const values = [...new Set(each.filter((one) => one !== undefined))];
  const places = new Map(values.map((one, k) => [one, k + 1]));
  return { values, at: each.map((one) => (one === undefined ? 0 : (places.get(one) ?? 0))) };
}
