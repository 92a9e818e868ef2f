/** Tables as the sheets of a workbook and as text, for page and command alike. */
import { csvLines } from '../tables/csvLines.ts';
import type { CaseTable, Cell } from './tables.ts';

/** Longest name of a sheet that spreadsheets take. */
const LONGEST_NAME = 31;

/** What a workbook is written from, a sheet for each table; numbers stay numbers, absent cells stay empty. */
export function sheetsOf(tables: readonly CaseTable[]) {
  return tables.map(({ name, head, rows }) => ({
    sheet: name.slice(0, LONGEST_NAME),
    stickyRowsCount: 1,
    columns: head.map((_, k) => ({
      width: widthOf(
        rows.map((row) => row[k]),
        head[k],
      ),
    })),
    data: [
      head.map((value) => ({ value, type: String, fontWeight: 'bold' as const })),
      ...rows.map((row) => row.map(cellOf)),
    ],
  }));
}

function cellOf(value: Cell) {
  if (value === null) return null;
  return typeof value === 'number'
    ? { value, type: Number, format: '#,##0.######' }
    : { value, type: String };
}

const widthOf = (cells: readonly Cell[], head: string) =>
  Math.min(
    44,
    Math.max(head.length, ...cells.map((cell) => (typeof cell === 'string' ? cell.length : 12))) + 2,
  );

/** RFC 4180 with a heading line. */
export function csvText({ head, rows }: CaseTable): string {
  return csvLines([head, ...rows]);
}
