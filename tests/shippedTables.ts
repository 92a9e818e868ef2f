/** The shipped tables, for tests that run with files at hand. */
import { readDataFiles } from '../src/cli/readData.ts';
import { CHOICE_OPTIONS } from '../src/notebook/choiceOptions.ts';
import { loadTables } from '../src/tables/load.ts';

export const { tables } = loadTables(readDataFiles(), CHOICE_OPTIONS);
