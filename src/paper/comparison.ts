/** Every figure of every scenario side by side, for files: the same for page and command. */
import { RESULTS } from '../model/dictionary.ts';
import type { Bands } from '../model/quantities.ts';
import type { Run, ScenarioResult } from '../study/evaluate.ts';
import type { Answerer } from './gather.ts';
import type { CaseTable, Cell } from './tables.ts';

export interface Compared {
  readonly currency: string;
  /** With their ranges, where there are draws. */
  readonly scenarios: readonly ScenarioResult[];
}

/** All that is known of the scenarios as JSON text; `shared/results.schema.json` is its contract. */
export function comparisonJson(file: string, { currency, scenarios }: Compared): string {
  const body = {
    notebook: file,
    currency,
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
  return `${JSON.stringify(body, null, 2)}\n`;
}

/** A row for each quantity, a column for each scenario and each of its ranges. */
export function comparisonTable({ currency, scenarios }: Compared): CaseTable {
  const names = ['winterDays', ...RESULTS.map(({ name }) => name)] as const;
  return {
    name: 'figures',
    head: [
      'quantity',
      'unit',
      ...scenarios.flatMap(({ name, bands }) =>
        bands ? [name, `${name} p10`, `${name} p50`, `${name} p90`] : [name],
      ),
    ],
    rows: names.map((name): Cell[] => [
      name,
      RESULTS.find((r) => r.name === name)?.unit.replace('money', currency) ?? 'd',
      ...scenarios.flatMap(({ values, bands }) => [
        values[name] ?? null,
        ...(bands ? [bands.p10[name] ?? null, bands.p50[name] ?? null, bands.p90[name] ?? null] : []),
      ]),
    ]),
  };
}

/** A row for each check of each scenario. */
export function checksTable({ scenarios }: Compared): CaseTable {
  return {
    name: 'checks',
    head: ['scenario', 'check', 'status', 'value', 'limit', 'unit', 'source', 'in words'],
    rows: scenarios.flatMap(({ name, checks }) =>
      checks.map(({ id, status, value, limit, unit, source, words }): Cell[] => [
        name,
        id,
        status,
        value ?? null,
        limit ?? null,
        unit,
        source,
        words,
      ]),
    ),
  };
}

/** Numbers held at once while drawing: some 100 MB. The same draws are made again for each group of results. */
const HELD = 12_000_000;

/** Ranges of every quantity, drawn in passes; undefined where it was stopped. */
export async function allBands(
  run: Run,
  { count, seed }: { readonly count: number; readonly seed: number },
  draws: Answerer['draws'],
): Promise<readonly Bands[] | undefined> {
  const names = RESULTS.map(({ name }) => name);
  const atOnce = Math.max(1, Math.floor(HELD / (count * run.bound.length)));
  // The length of the winter is chosen, not drawn: the same in every draw.
  const all: Bands[] = run.results.map(({ values: { winterDays = null } }) => ({
    p10: { winterDays },
    p50: { winterDays },
    p90: { winterDays },
  }));
  for (let from = 0; from < names.length; from += atOnce) {
    const drawn = await draws({ count, seed, keep: names.slice(from, from + atOnce) });
    if (!drawn) return undefined;
    all.forEach(({ p10, p50, p90 }, k) => {
      const more = drawn.bands[k];
      all[k] = { p10: { ...p10, ...more.p10 }, p50: { ...p50, ...more.p50 }, p90: { ...p90, ...more.p90 } };
    });
  }
  return all;
}
