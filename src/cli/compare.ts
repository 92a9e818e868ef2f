import { RESULTS } from '../model/dictionary.ts';
import { COMPARISONS } from '../model/measures.ts';
import type { Bands, ResultName } from '../model/quantities.ts';
import { type Run, withBands } from '../study/evaluate.ts';
import { CHANCE_RESULTS } from '../uncertainty/chances.ts';
import { drawAll } from '../uncertainty/monteCarlo.ts';
import { bandsOf } from '../uncertainty/percentiles.ts';
import { argumentsOf, wholeNumber } from './arguments.ts';
import { comparisonText } from './compareText.ts';
import { csvLines } from './csv.ts';
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
  const names = RESULTS.map((r) => r.name);
  for (const note of notesOf(opened)) tell(`note: ${note}\n`);
  if (format === 'text') {
    const keep: ResultName[] = [...COMPARISONS.map((c) => c.name), 'packDepthM', ...CHANCE_RESULTS];
    const draws = count > 0 ? drawAll(evaluated, { count, seed, keep }) : undefined;
    const bands = evaluated.bound.map((_, k) => draws && bandsOf(draws, k));
    const scenarios = withBands(evaluated.results, evaluated.bound, bands);
    out(comparisonText(notebook, { ...evaluated, scenarios }, draws));
    return;
  }
  const bands = count > 0 ? bandsInPasses(evaluated, names, count, seed) : [];
  const scenarios = withBands(evaluated.results, evaluated.bound, bands);
  if (format === 'json') {
    const body = {
      notebook: positionals[0],
      currency: evaluated.currency,
      scenarios: scenarios.map(({ name, system, values: results, checks, bands }) => ({
        name,
        system,
        values: results,
        checks: checks.map(({ id, status, value, limit, unit, source, words, week }) => ({
          id,
          status,
          value,
          limit,
          unit,
          source,
          words,
          ...(week === undefined ? {} : { week }),
        })),
        ...(bands ?? {}),
      })),
    };
    out(`${JSON.stringify(body, null, 2)}\n`);
  } else {
    const columns = [
      'quantity',
      'unit',
      ...scenarios.flatMap((s) =>
        s.bands ? [s.name, `${s.name} p10`, `${s.name} p50`, `${s.name} p90`] : [s.name],
      ),
    ];
    const rows = (['winterDays', ...names] as const).map((name) => [
      name,
      RESULTS.find((r) => r.name === name)?.unit.replace('money', evaluated.currency) ?? 'd',
      ...scenarios.flatMap((s) => [
        s.values[name],
        ...(s.bands ? [s.bands.p10[name], s.bands.p50[name], s.bands.p90[name]] : []),
      ]),
    ]);
    out(csvLines([columns, ...rows]));
  }
}

/** Numbers held at once while drawing: some 100 MB. The same draws are made again for each group of results. */
const HELD = 12_000_000;

function bandsInPasses(run: Run, names: readonly ResultName[], count: number, seed: number): Bands[] {
  const atOnce = Math.max(1, Math.floor(HELD / (count * run.bound.length)));
  // The length of the winter is chosen, not drawn: the same in every draw.
  const all: Bands[] = run.results.map(({ values: { winterDays = null } }) => ({
    p10: { winterDays },
    p50: { winterDays },
    p90: { winterDays },
  }));
  for (let from = 0; from < names.length; from += atOnce) {
    const draws = drawAll(run, { count, seed, keep: names.slice(from, from + atOnce) });
    all.forEach((before, k) => {
      const { p10, p50, p90 } = bandsOf(draws, k);
      all[k] = {
        p10: { ...before.p10, ...p10 },
        p50: { ...before.p50, ...p50 },
        p90: { ...before.p90, ...p90 },
      };
    });
  }
  return all;
}
