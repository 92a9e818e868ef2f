import { argumentsOf } from './arguments.ts';
import { openNotebook } from './open.ts';

export const usage = `check FILE…
Reads and validates notebooks only: nothing is computed, nothing is written. Exit 1 when any is wrong.`;

export async function run(args: readonly string[], out: (text: string) => void): Promise<void> {
  const { positionals } = argumentsOf(args, usage, 1, 10_000, {});
  for (const file of positionals) {
    const { notebook } = await openNotebook(file);
    const { scenarios, overrides, blocks } = notebook;
    const cells = blocks.filter((block) => block.type === 'cell').length;
    out(
      `${file}: ${scenarios.length} scenarios, ${overrides.length} own coefficients, ${cells} cells; nothing wrong\n`,
    );
  }
}
