/** How a keeper can find out a number: `data/measuring.csv`, named by rows in their column `measureBy`. */
import type { Problem } from '../units/problem.ts';
import { readCsv } from './csv.ts';

export const MEASURING_FILE = 'data/measuring.csv';

const COLUMNS = { required: ['id', 'words'] };
const ID = /^[a-z][A-Za-z0-9]*$/;
/** Where the words name the row's option: "Weigh three bales of {option}". */
const OPTION = '{option}';

/** Instructions of one file by id, as written, and what is wrong with the others. */
export function readMeasuring(
  file: string,
  text: string,
): { measuring: Map<string, string>; problems: Problem[] } {
  const { records, problems: found } = readCsv(file, text, COLUMNS);
  const measuring = new Map<string, string>();
  const problems = [...found];
  for (const { line, values } of records) {
    const { id, words } = values;
    const complain = (key: string, what: string, rest: Partial<Problem>) =>
      problems.push({ file, line, key, what, ...rest });
    if (!ID.test(id))
      complain('id', 'not an id', { found: id || '(empty)', allowed: 'camelCase, like weighBales' });
    else if (measuring.has(id)) complain('id', 'advice given twice', { found: id, todo: 'keep one row' });
    else if (words === '')
      complain(id, 'advice without words', { found: '(empty)', todo: 'write what to do, as an instruction' });
    else if (/[{}]/.test(words.replaceAll(OPTION, '')))
      complain(id, 'unknown blank in the words', { found: words, allowed: OPTION });
    else measuring.set(id, words);
  }
  return { measuring, problems };
}

/** True where the words can only be said of a row that hangs on a choice. */
export const namesOption = (words: string): boolean => words.includes(OPTION);

/** The words for one row: its option spelt as a person does, `softwoodChips` as "softwood chips". */
export function measuringWords(words: string, option: string | undefined): string {
  const spelt = (option ?? '').replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.replaceAll(OPTION, spelt);
}
