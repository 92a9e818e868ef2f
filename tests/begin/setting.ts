/** What the tests of a new notebook stand on: the shipped tables, starts and climates. */
import { readFileSync } from 'node:fs';
import { type Answers, NO_ANSWERS } from '../../src/begin/answers.ts';
import type { Setting } from '../../src/begin/begin.ts';
import { START_KINDS } from '../../src/begin/kinds.ts';
import type { Begun } from '../../src/begin/reader.ts';
import { notebookWinters } from '../../src/model/weather/notebookWinters.ts';
import { readStarts, STARTS_FILE } from '../../src/tables/starts.ts';
import { tables } from '../shippedTables.ts';

const at = (path: string) => new URL(`../../${path}`, import.meta.url);
export const startsText = readFileSync(at(STARTS_FILE), 'utf8');
export const { starts, problems: startsProblems } = readStarts(startsText, tables.sources, START_KINDS);

export const setting: Setting = {
  tables,
  winters: (notebook) =>
    notebookWinters(notebook.scenarios, notebook.file, async (name) =>
      readFileSync(at(`data/weather/${name}`), 'utf8'),
    ),
};

export const begun = (answers: Partial<Answers> = {}, home = 'IE'): Begun => ({
  answers: { ...NO_ANSWERS, ...answers },
  starts,
  home,
  today: '2026-11-26',
});
