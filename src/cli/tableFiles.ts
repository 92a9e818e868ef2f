/** Tables as one spreadsheet and as text files. */
import writeExcelFile from 'write-excel-file/node';
import type { CaseTable, Cell } from '../paper/tables.ts';
import { csvLines } from './csv.ts';

/** A workbook with a sheet for each table; numbers stay numbers, absent cells stay empty. */
export function workbook(tables: readonly CaseTable[]): Promise<Uint8Array> {
  return writeExcelFile(
    tables.map(({ name, head, rows }) => ({
      sheet: name,
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
    })),
  ).toBuffer();
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
