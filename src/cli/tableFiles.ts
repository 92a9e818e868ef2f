/** Tables as one spreadsheet file. */
import writeExcelFile from 'write-excel-file/node';
import { sheetsOf } from '../paper/sheets.ts';
import type { CaseTable } from '../paper/tables.ts';

/** A workbook with a sheet for each table. */
export const workbook = (tables: readonly CaseTable[]): Promise<Uint8Array> =>
  writeExcelFile(sheetsOf(tables)).toBuffer();
