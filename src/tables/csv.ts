/** Strict reading of a table: the columns it must have, nothing else, and the line each record stands on. */
import { csvParseRows } from 'd3-dsv';
import type { Problem } from '../units/problem.ts';

export interface CsvRecord {
  /** 1-based line the record starts on, also where quoted fields hold line breaks. */
  readonly line: number;
  /** Trimmed text by column; a column left out of an optional set is ''. */
  readonly values: Readonly<Record<string, string>>;
}

export interface CsvColumns {
  readonly required: readonly string[];
  readonly optional?: readonly string[];
}

export interface CsvTable {
  readonly records: readonly CsvRecord[];
  readonly problems: readonly Problem[];
}

/**
 * Reads comma-separated text (RFC 4180) with a header line. A header that is not exactly the known columns
 * gives problems and no records; a record of the wrong length gives a problem and is left out. Never throws.
 */
export function readCsv(file: string, text: string, { required, optional = [] }: CsvColumns): CsvTable {
  const rows = linedRows(text.replace(/^\uFEFF/, ''));
  const header = rows[0]?.fields ?? [];
  const allowed = [...required, ...optional].join(',');
  const problems: Problem[] = headerProblems(file, header, required, optional);
  if (problems.length > 0) return { records: [], problems };
  const unclosed = (text.match(/"/g)?.length ?? 0) % 2 === 1;
  const records: CsvRecord[] = [];
  for (const { line, fields } of rows.slice(1)) {
    if (fields.length === 1 && fields[0] === '') continue;
    if (fields.length !== header.length) {
      problems.push({
        what: 'the row has not as many fields as the header',
        file,
        line,
        found: `${fields.length} fields`,
        allowed: `${header.length} fields: ${allowed}`,
        todo: 'quote fields that hold a comma, and close every quote before the next comma',
      });
      continue;
    }
    const values: Record<string, string> = Object.fromEntries(optional.map((name) => [name, '']));
    header.forEach((name, k) => {
      values[name] = fields[k].trim();
    });
    records.push({ line, values });
  }
  if (unclosed && problems.length === 0)
    problems.push({
      what: 'a quote is opened and never closed',
      file,
      line: rows[rows.length - 1].line,
      allowed: 'quotes in pairs; a quote inside a field is written twice',
      todo: 'close the quote',
    });
  return { records, problems };
}

function linedRows(text: string): { line: number; fields: string[] }[] {
  let line = 1;
  return csvParseRows(text).map((fields) => {
    const row = { line, fields };
    for (const field of fields) line += field.match(/\r\n|\n|\r/g)?.length ?? 0;
    line += 1;
    return row;
  });
}

function headerProblems(
  file: string,
  header: readonly string[],
  required: readonly string[],
  optional: readonly string[],
): Problem[] {
  const known = [...required, ...optional];
  const at = { file, line: 1, allowed: known.join(',') };
  if (header.length === 0)
    return [{ ...at, what: 'the table is empty', todo: 'write the header line first' }];
  const problems: Problem[] = [];
  header.forEach((name, k) => {
    if (!known.includes(name))
      problems.push({
        ...at,
        what: 'unknown column',
        key: name,
        found: name || '(no name)',
        todo: 'remove or rename it',
      });
    else if (header.indexOf(name) < k)
      problems.push({ ...at, what: 'column given twice', key: name, todo: 'keep one' });
  });
  for (const name of required)
    if (!header.includes(name))
      problems.push({ ...at, what: 'missing column', key: name, todo: 'add it to the header' });
  return problems;
}
