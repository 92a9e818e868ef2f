import { csvFormatRows } from 'd3-dsv';

/** Lines of CSV by RFC 4180, each with its end; absent is an empty field. */
export function csvLines(rows: readonly (readonly (string | number | null | undefined)[])[]): string {
  // The library writes numbers and absent fields as we want them; its types know only text.
  return rows.length === 0 ? '' : `${csvFormatRows(rows as readonly string[][])}\n`;
}
