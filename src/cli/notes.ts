/** What is worth knowing about an opened notebook though nothing is wrong with it: a line each. */
import { isValue } from '../model/dictionary.ts';
import { lostNotes } from '../notebook/notePlaces.ts';
import { moneyCase } from '../study/moneyCase.ts';
import { readingNotes } from '../study/readingNotes.ts';
import { formatProblem, type Problem } from '../units/problem.ts';
import type { Opened } from './open.ts';

/**
 * Keys that are read over, readers' notes whose place is gone, a depth of frost that is not written, how gaps in the
 * weather were filled, which winters were left out, and money that does not add up.
 */
export function notesOf(opened: Opened): string[] {
  const { notebook, winters, run } = opened;
  const { file, lineOf, scenarios } = notebook;
  const money = scenarios.flatMap(({ name }, k) =>
    moneyCase(run, k).faults.map(({ at, words }): Problem => {
      const place = at.startsWith('finance.') ? `scenarios.${k}.${at}` : `scenarios.${k}`;
      return { what: `${name}: ${words}`, file, line: lineOf(place), key: at };
    }),
  );
  return [...readingNotes(notebook, run), ...lostNotes(notebook, isValue), ...winters.notes, ...money].map(
    formatProblem,
  );
}
