/** Something a person can mend: printed without a stack, one line a problem, with an exit code. */
import { formatProblem, type Problem } from '../units/problem.ts';

export class CommandError extends Error {
  readonly exitCode: number;

  constructor(message: string, exitCode = 1) {
    super(message);
    this.exitCode = exitCode;
  }
}

/** Stops with every problem on a line of its own. */
export function refuse(problems: readonly Problem[]): never {
  throw new CommandError(problems.map(formatProblem).join('\n'));
}
