/** What a new notebook starts from, by country: `data/starts.csv`. Each is a guess to be replaced, and says so. */
import type { Problem } from '../units/problem.ts';
import { basisFault, sourceFault } from './citation.ts';
import type { Basis, Source } from './coefficient.ts';
import { type CsvRecord, readCsv } from './csv.ts';

export const STARTS_FILE = 'data/starts.csv';
/** Rows of this country hold for every country that has none of its own. */
export const EVERYWHERE = 'all';

const COLUMNS = { required: ['country', 'key', 'value', 'unit', 'source', 'where', 'basis', 'note'] };
const COUNTRY = /^([A-Z]{2}|other|all)$/;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)$/;
const MONTH_DAY = /^\d{2}-\d{2}$/;
/** A year without 29 February, so that a start is a day of every year. */
const ANY_YEAR = 2025;

/** What a key may hold. */
export type StartKind =
  | { readonly kind: 'number'; readonly unit: string; readonly min: number; readonly max: number }
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  | { readonly kind: 'monthDay' }
  | { readonly kind: 'words' };

export interface Start {
  readonly value: string;
  readonly unit: string;
  readonly source: string;
  readonly basis: Basis;
  readonly note: string;
}

/** Starts by country, then key; `all` among them. */
export type Starts = ReadonlyMap<string, ReadonlyMap<string, Start>>;

/**
 * Reads the table. Every key of `kinds` must be there for every country, by a row of its own or of `all`; nothing else
 * may be. Never throws.
 */
export function readStarts(
  text: string,
  sources: ReadonlyMap<string, Source>,
  kinds: Readonly<Record<string, StartKind>>,
  file = STARTS_FILE,
): { starts: Starts; problems: Problem[] } {
  const { records, problems: found } = readCsv(file, text, COLUMNS);
  const problems = [...found];
  const starts = new Map<string, Map<string, Start>>();
  for (const record of records) {
    const { country, key, value, unit, source, basis, note } = record.values;
    const wrong = rowFaults(record, sources, kinds);
    if (starts.get(country)?.has(key)) wrong.push({ what: 'start given twice', todo: 'keep one row' });
    problems.push(...wrong.map((fault) => ({ file, line: record.line, key: `${country} ${key}`, ...fault })));
    if (wrong.length > 0) continue;
    const rows = starts.get(country) ?? new Map<string, Start>();
    starts.set(country, rows.set(key, { value, unit, source, basis: basis as Basis, note }));
  }
  if (records.length > 0) problems.push(...gaps(starts, kinds, file));
  return { starts, problems };
}

type Fault = Omit<Problem, 'file' | 'line' | 'key'>;

function rowFaults(
  { values: v }: CsvRecord,
  sources: ReadonlyMap<string, Source>,
  kinds: Readonly<Record<string, StartKind>>,
): Fault[] {
  const out: Fault[] = [];
  if (!COUNTRY.test(v.country))
    out.push({
      what: 'not a country',
      found: v.country || '(empty)',
      allowed: 'a two-letter code, other, all',
    });
  out.push(...[sourceFault(v.source, sources) ?? [], basisFault(v.basis) ?? []].flat());
  if (v.basis === 'published' && ['own', 'commonPractice'].includes(v.source))
    out.push({
      what: 'called published without a publication',
      found: v.source,
      todo: 'name the publication',
    });
  if (!Object.hasOwn(kinds, v.key))
    out.push({ what: 'unknown start', found: v.key || '(empty)', allowed: Object.keys(kinds).join(', ') });
  else out.push(...valueFaults(kinds[v.key], v.value, v.unit));
  return out;
}

function valueFaults(kind: StartKind, value: string, unit: string): Fault[] {
  const out: Fault[] = [];
  const found = value || '(empty)';
  const right = kind.kind === 'number' ? kind.unit : '';
  if (unit !== right) out.push({ what: 'another unit', found: unit || '(none)', allowed: right || 'none' });
  if (kind.kind === 'number') {
    const number = NUMBER.test(value) ? Number(value) : Number.NaN;
    if (!(number >= kind.min && number <= kind.max))
      out.push({ what: 'not a number this start can be', found, allowed: `${kind.min} to ${kind.max}` });
  } else if (kind.kind === 'choice') {
    if (!kind.options.includes(value))
      out.push({ what: 'unknown option', found, allowed: kind.options.join(', ') });
  } else if (kind.kind === 'monthDay') {
    const date = new Date(`${ANY_YEAR}-${value}T00:00:00Z`);
    if (!MONTH_DAY.test(value) || Number.isNaN(date.getTime()) || date.toISOString().slice(5, 10) !== value)
      out.push({ what: 'not a day of every year', found, allowed: 'month and day, like 11-01' });
  } else if (value === '') out.push({ what: 'no words', found, todo: 'write what it is called' });
  return out;
}

function gaps(starts: Starts, kinds: Readonly<Record<string, StartKind>>, file: string): Problem[] {
  const common = starts.get(EVERYWHERE);
  return [...starts].flatMap(([country, rows]) =>
    country === EVERYWHERE
      ? []
      : Object.keys(kinds)
          .filter((key) => !rows.has(key) && !common?.has(key))
          .map((key) => ({
            what: 'a start is missing',
            file,
            key: `${country} ${key}`,
            todo: `add a row for ${country}, or one for ${EVERYWHERE}`,
          })),
  );
}
