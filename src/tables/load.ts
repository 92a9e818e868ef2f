/** All tables from the text of their files, and everything that is wrong with them. */
import type { Problem } from '../units/problem.ts';
import type { Coefficient, Source, Tables } from './coefficient.ts';
import { type ChoiceOptions, readCoefficients } from './coefficients.ts';
import { MEASURING_FILE, readMeasuring } from './measuring.ts';
import { MOVEMENTS_FILE, readMovements } from './movements.ts';
import { countryKey, INDICES_FILE, readIndices } from './priceIndex.ts';
import { readSources } from './sources.ts';

export const SOURCES_FILE = 'data/sources.csv';
const COEFFICIENT_FILE = /^data\/(materials|coefficients\/[^/]+)\.csv$/;
const PRICE_FILE = /^data\/prices\/[^/]+\.csv$/;

/**
 * `files` holds path → text, paths as in the repository: data/sources.csv, movements.csv, measuring.csv, materials.csv,
 * data/coefficients/*.csv, data/prices/*.csv; others are passed over. `choices` lists the options a row may
 * hang on. Rows that are refused are not in the tables. Never throws.
 */
export function loadTables(
  files: ReadonlyMap<string, string>,
  choices: ChoiceOptions,
): { tables: Tables; problems: Problem[] } {
  const problems: Problem[] = [];
  const sources = loadSources(files, problems);
  const { movements, problems: wrongGroups } = readMovements(
    MOVEMENTS_FILE,
    files.get(MOVEMENTS_FILE) ?? 'name,together,source,where,basis,note',
    sources,
  );
  const { measuring, problems: wrongAdvice } = readMeasuring(
    MEASURING_FILE,
    files.get(MEASURING_FILE) ?? 'id,words',
  );
  problems.push(...wrongGroups, ...wrongAdvice);
  const coefficients = new Map<string, Coefficient>();
  const prices = new Map<string, Map<string, Coefficient>>();
  for (const [file, text] of [...files].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const kind = COEFFICIENT_FILE.test(file) ? 'coefficient' : PRICE_FILE.test(file) ? 'price' : undefined;
    if (!kind) continue;
    const read = readCoefficients(file, text, { sources, choices, movements, measuring, kind });
    problems.push(...read.problems);
    for (const row of read.rows) {
      const into =
        row.currency === undefined
          ? coefficients
          : tableOf(prices, row.country ? countryKey(row.currency, row.country) : row.currency);
      const before = into.get(row.id);
      if (before) problems.push(twice(row, before));
      else into.set(row.id, row);
    }
  }
  for (const table of prices.values())
    for (const row of table.values()) {
      const before = coefficients.get(row.id);
      if (before) problems.push(twice(row, before));
    }
  // A table of one country holds what is known there; the rest stands in that of its currency.
  const whole = [...prices].filter(([key]) => !key.includes('-')).map(([, table]) => table);
  for (const table of [coefficients, ...whole]) problems.push(...choiceGaps(table, choices));
  const { indices, problems: wrongIndices } = readIndices(
    INDICES_FILE,
    files.get(INDICES_FILE) ?? 'currency,year,value,name,source,where,basis,note',
    sources,
  );
  problems.push(...wrongIndices);
  return { tables: { coefficients, prices, indices, sources }, problems };
}

function loadSources(files: ReadonlyMap<string, string>, problems: Problem[]): Map<string, Source> {
  const text = files.get(SOURCES_FILE);
  if (text === undefined) {
    problems.push({ what: 'the table of sources is missing', file: SOURCES_FILE, todo: 'put it back' });
    return new Map();
  }
  const read = readSources(SOURCES_FILE, text);
  problems.push(...read.problems);
  return read.sources;
}

function tableOf(prices: Map<string, Map<string, Coefficient>>, currency: string): Map<string, Coefficient> {
  const table = prices.get(currency) ?? new Map<string, Coefficient>();
  prices.set(currency, table);
  return table;
}

const twice = (row: Coefficient, before: Coefficient): Problem => ({
  what: 'id given twice',
  file: row.at.file,
  line: row.at.line,
  key: row.id,
  found: `also at ${before.at.file}:${before.at.line}`,
  todo: 'keep one row, or give the other a name that says how it differs',
});

/** A name that hangs on a choice must have a row for every option, and hang on one choice only. */
function choiceGaps(table: ReadonlyMap<string, Coefficient>, choices: ChoiceOptions): Problem[] {
  const byName = new Map<string, Coefficient[]>();
  for (const row of table.values()) byName.set(row.name, [...(byName.get(row.name) ?? []), row]);
  const problems: Problem[] = [];
  for (const [name, rows] of byName) {
    const [first] = rows;
    const at = { file: first.at.file, line: first.at.line, key: name };
    const used = [...new Set(rows.map((row) => row.choice ?? 'no choice'))];
    if (used.length > 1)
      problems.push({
        ...at,
        what: 'one name hangs on two choices',
        found: used.join(', '),
        todo: 'use two names',
      });
    if (first.choice === undefined) continue;
    const missing = choices[first.choice].filter((option) => !rows.some((row) => row.option === option));
    if (missing.length > 0)
      problems.push({
        ...at,
        what: `rows are missing for some options of ${first.choice}${first.currency ? ` in ${first.currency}` : ''}`,
        found: rows.map((row) => row.option).join(', '),
        allowed: choices[first.choice].join(', '),
        todo: `add a row for ${missing.join(', ')}`,
      });
  }
  return problems;
}
