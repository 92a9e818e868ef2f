/** Which numbers move together in the draws: `data/movements.csv`, named by rows in their column `movesWith`. */
import type { Problem } from '../units/problem.ts';
import { basisFault, sourceFault } from './citation.ts';
import type { Movement, Source } from './coefficient.ts';
import { readCsv } from './csv.ts';

export const MOVEMENTS_FILE = 'data/movements.csv';

const COLUMNS = { required: ['name', 'together', 'source', 'where', 'basis', 'note'] };

/** The groups of one file by name, and what is wrong with the others. */
export function readMovements(
  file: string,
  text: string,
  sources: ReadonlyMap<string, Source>,
): { movements: Map<string, Movement>; problems: Problem[] } {
  const { records, problems: found } = readCsv(file, text, COLUMNS);
  const movements = new Map<string, Movement>();
  const problems = [...found];
  for (const { line, values: v } of records) {
    const before = problems.length;
    const complain = (key: string, what: string, rest: Partial<Problem>) =>
      problems.push({ file, line, key: v.name === '' ? key : `${v.name} ${key}`, what, ...rest });
    if (v.name === '')
      complain('name', 'group without a name', { found: '(empty)', todo: 'name what moves together' });
    else if (movements.has(v.name))
      complain('name', 'group given twice', { found: v.name, todo: 'keep one row' });
    const together = v.together === '' ? Number.NaN : Number(v.together);
    if (!(together > 0 && together <= 1))
      complain('together', 'not a share of the draws', {
        found: v.together || '(empty)',
        allowed: 'above 0, at most 1',
        todo: 'a number that moves alone needs no group',
      });
    const [noSource, noBasis] = [sourceFault(v.source, sources), basisFault(v.basis)];
    if (noSource) complain('source', noSource.what, noSource);
    if (noBasis) complain('basis', noBasis.what, noBasis);
    if (problems.length === before) movements.set(v.name, { name: v.name, together });
  }
  return { movements, problems };
}
