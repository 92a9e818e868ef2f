import { argumentsOf } from './arguments.ts';
import { CommandError } from './error.ts';
import { notesOf } from './notes.ts';
import { openNotebook } from './open.ts';
import { tell } from './printed.ts';

export const usage = `check FILE…
Reads and validates notebooks only: nothing is printed of results, nothing is written. Exit 1 when any is wrong.
Gaps in the weather and money that does not add up are named on standard error.`;

export async function run(args: readonly string[], out: (text: string) => void): Promise<void> {
  const { positionals } = argumentsOf(args, usage, 1, 10_000, {});
  const wrong: string[] = [];
  for (const file of positionals) {
    try {
      const opened = await openNotebook(file);
      const { scenarios, overrides, blocks } = opened.notebook;
      const cells = blocks.filter((block) => block.type === 'cell').length;
      out(
        `${file}: ${scenarios.length} scenarios, ${overrides.length} own coefficients, ${cells} cells; nothing wrong\n`,
      );
      for (const note of notesOf(opened)) tell(`note: ${note}\n`);
    } catch (error) {
      if (!(error instanceof CommandError)) throw error;
      wrong.push(error.message);
    }
  }
  if (wrong.length > 0) throw new CommandError(wrong.join('\n'));
}
