import { COMPARISONS } from '../model/measures.ts';
import type { ResultName } from '../model/quantities.ts';
import { allBands, comparisonJson, comparisonTable } from '../paper/comparison.ts';
import { answerHere } from '../paper/gather.ts';
import { csvText } from '../paper/sheets.ts';
import { withBands } from '../study/evaluate.ts';
import { CHANCE_RESULTS } from '../uncertainty/chances.ts';
import { drawAll } from '../uncertainty/monteCarlo.ts';
import { bandsOf } from '../uncertainty/percentiles.ts';
import { argumentsOf, wholeNumber } from './arguments.ts';
import { comparisonText } from './compareText.ts';
import { CommandError } from './error.ts';
import { notesOf } from './notes.ts';
import { openNotebook } from './open.ts';
import { tell } from './printed.ts';

export const usage = `compare FILE [--format text|json|csv] [--draws N --seed S]
Computes every scenario of a notebook side by side; with --draws also P10, P50 and P90 of every figure.`;

const FORMATS = ['text', 'json', 'csv'] as const;

export async function run(args: readonly string[], out: (text: string) => void): Promise<void> {
  const { values, positionals } = argumentsOf(args, usage, 1, 1, {
    format: { type: 'string', default: 'text' },
    draws: { type: 'string' },
    seed: { type: 'string' },
  });
  const format = FORMATS.find((f) => f === values.format);
  if (!format)
    throw new CommandError(`--format: unknown; found ${values.format}; allowed ${FORMATS.join(', ')}`, 2);
  const opened = await openNotebook(positionals[0]);
  const { notebook, run: evaluated } = opened;
  const seed = wholeNumber(values.seed ?? String(notebook.draws.seed), 'seed', 0, 2 ** 31 - 1);
  const count = values.draws === undefined ? 0 : wholeNumber(values.draws, 'draws', 1, 1_000_000);
  for (const note of notesOf(opened)) tell(`note: ${note}\n`);
  if (format === 'text') {
    const keep: ResultName[] = [...COMPARISONS.map((c) => c.name), 'packDepthM', ...CHANCE_RESULTS];
    const draws = count > 0 ? drawAll(evaluated, { count, seed, keep }) : undefined;
    const bands = evaluated.bound.map((_, k) => draws && bandsOf(draws, k));
    const scenarios = withBands(evaluated.results, evaluated.bound, bands);
    out(comparisonText(notebook, { ...evaluated, scenarios }, draws));
    return;
  }
  const bands = count > 0 ? await allBands(evaluated, { count, seed }, answerHere(evaluated).draws) : [];
  const scenarios = withBands(evaluated.results, evaluated.bound, bands ?? []);
  const compared = { currency: evaluated.currency, scenarios };
  out(format === 'json' ? comparisonJson(positionals[0], compared) : csvText(comparisonTable(compared)));
}
