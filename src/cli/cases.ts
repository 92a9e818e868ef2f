/** The shipped cases: pairs of a notebook and what was measured, read, joined and evaluated. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Case, caseOf } from '../calibrate/case.ts';
import { readMeasurements } from '../notebook/measurements.ts';
import type { Problem } from '../units/problem.ts';
import { CommandError, refuse } from './error.ts';
import { openNotebook, shippedTables } from './open.ts';
import { findRoot } from './readData.ts';

export const CASES = 'data/cases';

/** Every case of a folder. Throws `CommandError` with every problem of every file. */
export async function openCases(folder = join(findRoot(), CASES)): Promise<Case[]> {
  // A fault of the tables is said once, and not for each case.
  shippedTables();
  const ids = readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.slice(0, -'.yaml'.length))
    .sort();
  const problems: Problem[] = [];
  const said: string[] = [];
  const cases: Case[] = [];
  for (const id of ids) {
    const file = join(folder, `${id}.yaml`);
    const notebook = join(folder, `${id}.md`);
    if (!existsSync(notebook)) {
      problems.push({
        what: 'the notebook of the case is missing',
        file,
        todo: `write ${id}.md beside it`,
      });
      continue;
    }
    const { measurements, problems: wrong } = readMeasurements(readFileSync(file), file);
    problems.push(...wrong);
    try {
      const opened = await openNotebook(notebook);
      if (!measurements) continue;
      const joined = caseOf(id, opened.notebook.title, measurements, opened.run);
      problems.push(...joined.problems);
      if (joined.case) cases.push(joined.case);
    } catch (error) {
      if (!(error instanceof CommandError)) throw error;
      said.push(error.message);
    }
  }
  if (said.length > 0) throw new CommandError(said.join('\n'));
  if (problems.length > 0) refuse(problems);
  return cases;
}
