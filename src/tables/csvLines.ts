import { csvFormatRows } from 'd3-dsv';

type Field = string | number | null | undefined;

/**
 * Lines of CSV by RFC 4180, each with its end; absent is an empty field. Text that a spreadsheet would take for a
 * formula is set off by an apostrophe.
 */
export function csvLines(rows: readonly (readonly Field[])[]): string {
  // The library writes numbers and absent fields as we want them; its types know only text.
  return rows.length === 0 ? '' : `${csvFormatRows(rows.map((row) => row.map(inert)) as string[][])}\n`;
}

const inert = (field: Field): Field =>
  typeof field === 'string' && /^[=+\-@\t\r]/.test(field) && !/^[+-]?\d*\.?\d+$/.test(field)
    ? `'${field}`
    : field;
