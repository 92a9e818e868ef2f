/** The cases of data/cases scored at best guesses. */
import { type Scored, scoreCase } from '../../src/calibrate/score.ts';
import { openCases } from '../../src/cli/cases.ts';

/** No draw moves a verdict; the score wants some. */
const DRAWS = { count: 20, seed: 1 };

export const scoredCases = async (): Promise<Scored[]> =>
  (await openCases()).flatMap((one) => scoreCase(one, DRAWS));

/** What an output is called in the list of misses. */
export const keyOf = (row: Scored): string => `${row.case}: ${row.output}`;
