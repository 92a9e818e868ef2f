/** What declared quantities read: typed columns, one number a row (or `width` numbers a row for a series). */

/** What a run is given beside columns, read as `@name`; whoever has such a thing adds it here by declaration merging. */
// biome-ignore lint/suspicious/noEmptyInterface: filled by the rooms that have something to give
export interface Resources {}

/** Columns by name, all of one number of rows. */
export type Columns = Readonly<Record<string, Float64Array>>;

/**
 * What a read hands over: a column; for `item*Field` the columns `item1Field`, `item2Field` … in order; for `@name`
 * the resource of that name.
 */
export type ColumnOf<Name extends string> = Name extends `@${infer Resource extends keyof Resources}`
  ? Resources[Resource]
  : Name extends `${string}*${string}`
    ? readonly Float64Array[]
    : Float64Array;

/** The same for a list of reads, in order. */
export type ColumnsOf<Reads extends readonly string[]> = { [K in keyof Reads]: ColumnOf<Reads[K]> };

/** The same for a list of reads, by name. */
export type ReadsOf<Name extends string> = { readonly [K in Name]: ColumnOf<K> };

/** `group*HeadCount` → `group` and `HeadCount`; null for a read that is no family. */
export function familyOf(read: string): { readonly family: string; readonly field: string } | null {
  const star = read.indexOf('*');
  return star < 0 ? null : { family: read.slice(0, star), field: read.slice(star + 1) };
}

/** The pattern a column of a family falls under: `group12HeadCount` → `group*HeadCount`; itself where it is none. */
export function patternOf(column: string): string {
  // Only the first number in a column's name counts the items of a family.
  return column.replace(/^([a-z]+)\d+/, '$1*');
}
