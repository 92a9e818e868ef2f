/** A refusal beside what was tried. */
import type { Problem } from '../../units/problem.ts';

/** Why something was not done, as sentences. */
export function saidProblem({ what, found, allowed, todo }: Problem): string {
  const parts = [what, found ? `found ${found}` : '', allowed ? `allowed ${allowed}` : '', todo ?? ''];
  const said = parts.filter((part) => part !== '').join('; ');
  return `${said[0].toUpperCase()}${said.slice(1)}.`;
}
