import { RESULTS } from '../model/dictionary.ts';
import { COMPARISONS } from '../model/measures.ts';
import { nearest } from '../notebook/nearest.ts';
import { stepsBetween, sweep, turnLimits, turnNames, turnOf } from '../whatif/sweep.ts';
import { argumentsOf, plainNumber, wholeNumber } from './arguments.ts';
import { csvField } from './csv.ts';
import { CommandError } from './error.ts';
import { openNotebook } from './open.ts';

export const usage = `sweep FILE --over INPUT --from A --to B [--steps N] [--results NAME,NAME…]
Turns one input over a range for every scenario and prints CSV, a line for each step and scenario.`;

export async function run(args: readonly string[], out: (text: string) => void): Promise<void> {
  const { values, positionals } = argumentsOf(args, usage, 1, 1, {
    over: { type: 'string' },
    from: { type: 'string' },
    to: { type: 'string' },
    steps: { type: 'string', default: '21' },
    results: { type: 'string' },
  });
  if (values.over === undefined)
    throw new CommandError(`--over: says which input to turn; found nothing\nUsage: winterkeep ${usage}`, 2);
  const [from, to] = [plainNumber(values.from, 'from'), plainNumber(values.to, 'to')];
  const steps = wholeNumber(values.steps, 'steps', 1, 10_000);
  const { run: evaluated } = await openNotebook(positionals[0]);
  const turn = turnOf(evaluated, values.over);
  if (!turn)
    throw new CommandError(
      `--over: no input of that name; found ${values.over}; did you mean ${nearest(values.over, turnNames(evaluated)).join(', ')}?`,
    );
  const limits = turnLimits(evaluated, turn);
  for (const [option, value] of [
    ['from', from],
    ['to', to],
  ] as const)
    if (!limits.holds(value))
      throw new CommandError(
        `--${option}: ${turn.name} cannot stand there; found ${value}; allowed ${limits.words}`,
      );
  const known = RESULTS.map((r) => r.name);
  const names = values.results?.split(',') ?? COMPARISONS.map((c) => c.name);
  for (const name of names)
    if (!known.includes(name))
      throw new CommandError(
        `--results: no quantity of that name; found ${name}; did you mean ${nearest(name, known).join(', ')}?`,
      );
  const at = stepsBetween(from, to, steps);
  const { results, scenarios } = sweep(evaluated, turn, at, names);
  out(`${[turn.name, 'scenario', ...names].map(csvField).join(',')}\n`);
  at.forEach((value, step) => {
    evaluated.results.forEach(({ name }, k) => {
      const row = names.map((n) => results[n][step * scenarios + k]);
      out(`${[value, name, ...row.map((v) => (Number.isFinite(v) ? v : null))].map(csvField).join(',')}\n`);
    });
  });
}
