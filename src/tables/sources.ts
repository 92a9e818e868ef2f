/** Where numbers come from: `data/sources.csv`. */
import type { Problem } from '../units/problem.ts';
import type { Source } from './coefficient.ts';
import { readCsv } from './csv.ts';

const COLUMNS = { required: ['id', 'author', 'title', 'year'], optional: ['note'] };
const ID = /^[a-z][A-Za-z0-9]*$/;

/** The sources of one file by id. Sources are cited by author, title and year; a web address is refused. */
export function readSources(
  file: string,
  text: string,
): { sources: Map<string, Source>; problems: Problem[] } {
  const { records, problems: found } = readCsv(file, text, COLUMNS);
  const sources = new Map<string, Source>();
  const problems = [...found];
  for (const { line, values } of records) {
    const { id, author, title, year } = values;
    const complain = (key: string, what: string, rest: Partial<Problem>) =>
      problems.push({ file, line, key, what, ...rest });
    if (!ID.test(id))
      complain('id', 'not a source id', { found: id || '(empty)', allowed: 'camelCase, like fao56' });
    else if (sources.has(id)) complain('id', 'source given twice', { found: id, todo: 'keep one row' });
    for (const key of ['author', 'title', 'year'] as const)
      if (values[key] === '')
        complain(key, `source without ${key}`, { found: '(empty)', todo: 'cite author, title and year' });
    if (/https?:|www\./i.test(`${author}${title}${values.note}`))
      complain('title', 'a web address is not a source', {
        found: title,
        todo: 'cite author, title and year',
      });
    if (!sources.has(id)) sources.set(id, { id, author, title, year });
  }
  return { sources, problems };
}
