import { isResult, RESULTS } from '../model/dictionary.ts';
import { COMPARISONS } from '../model/measures.ts';
import { nearest } from '../notebook/nearest.ts';
import { resultIn } from '../study/rows.ts';
import { csvLines } from '../tables/csvLines.ts';
import { stepsBetween, sweep } from '../whatif/sweep.ts';
import { HERD_DEFAULT, HERD_MEANINGS, turnNames, turnOf } from '../whatif/turn.ts';
import { turnLimits } from '../whatif/turnLimits.ts';
import { argumentsOf, plainNumber, wholeNumber } from './arguments.ts';
import { CommandError } from './error.ts';
import { openNotebook } from './open.ts';

export const usage = `sweep FILE --over INPUT --from A --to B [--steps N] [--herd built|stays] [--results NAME,NAME…]
Turns one input over a range for every scenario and prints CSV, a line for each step and scenario. A herd that is
turned has shed and yards built to match; with --herd stays they stay as they are.`;

export async function run(args: readonly string[], out: (text: string) => void): Promise<void> {
  const { values, positionals } = argumentsOf(args, usage, 1, 1, {
    over: { type: 'string' },
    from: { type: 'string' },
    to: { type: 'string' },
    steps: { type: 'string', default: '21' },
    herd: { type: 'string', default: HERD_DEFAULT },
    results: { type: 'string' },
  });
  if (values.over === undefined)
    throw new CommandError(`--over: says which input to turn; found nothing\nUsage: winterkeep ${usage}`, 2);
  const [from, to] = [plainNumber(values.from, 'from'), plainNumber(values.to, 'to')];
  const steps = wholeNumber(values.steps, 'steps', 1, 10_000);
  const herd = HERD_MEANINGS.find((meaning) => meaning === values.herd);
  if (!herd)
    throw new CommandError(
      `--herd: what becomes of the shed when the herd is turned; found ${values.herd}; allowed ${HERD_MEANINGS.join(', ')}\nUsage: winterkeep ${usage}`,
      2,
    );
  const { run: evaluated } = await openNotebook(positionals[0]);
  const turn = turnOf(evaluated, values.over, herd);
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
  const asked = values.results?.split(',').map((name) => {
    if (isResult(name)) return name;
    throw new CommandError(
      `--results: no quantity of that name; found ${name}; did you mean ${nearest(name, known).join(', ')}?`,
    );
  });
  const names = asked ?? COMPARISONS.map((c) => c.name);
  const at = stepsBetween(from, to, steps);
  const { results, scenarios } = sweep(evaluated, turn, at, names);
  const rows = at.flatMap((value, step) =>
    evaluated.results.map(({ name }, k) => {
      const row = names.map((n) => resultIn(results, n)[step * scenarios + k]);
      return [value, name, ...row.map((v) => (Number.isFinite(v) ? v : null))];
    }),
  );
  out(csvLines([[turn.name, 'scenario', ...names], ...rows]));
}
