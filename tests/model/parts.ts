/** Runs some parts of the model alone: what other parts make is given by the test. */
import { type Columns, familyOf } from '../../src/model/engine/columns.ts';
import { type Plan, planOf } from '../../src/model/engine/plan.ts';
import { run } from '../../src/model/engine/run.ts';
import { CATALOGUE } from '../../src/model/quantities.ts';
import type { PreparedWeather } from '../../src/model/weather/prepared.ts';

const entries = [...CATALOGUE.entries.values()];

/** Names that the parts make, of the width asked for: 1 a row for results. */
export function namesIn(parts: readonly string[], width?: number): string[] {
  const known = new Set(entries.map((e) => e.part));
  for (const part of parts) if (!known.has(part)) throw new Error(`no part is called ${part}`);
  return entries.filter((e) => parts.includes(e.part) && (!width || e.width === width)).map((e) => e.name);
}

/** A plan of these parts alone; daily series only when asked for. */
export function partsPlan(parts: readonly string[], daily = false): Plan {
  const own = new Set(namesIn(parts));
  const given = new Set(entries.filter((e) => !own.has(e.name)).map((e) => e.name));
  const asked = entries.filter((e) => own.has(e.name) && (daily || !e.onDemand)).map((e) => e.name);
  return planOf(CATALOGUE, asked, given);
}

/** Columns the parts must be given, without families, series and resources. */
export const columnsRead = (parts: readonly string[]): string[] =>
  [...partsPlan(parts).inputs].filter(
    (name) => !name.startsWith('@') && !familyOf(name) && (CATALOGUE.entries.get(name)?.width ?? 1) === 1,
  );

/** Families the parts read: `{ group: ['HeadCount', …] }`. */
export function familiesRead(parts: readonly string[]): Record<string, string[]> {
  const out: Record<string, string[]> = {};
  for (const read of partsPlan(parts).inputs) {
    const of = familyOf(read);
    if (!of) continue;
    out[of.family] ??= [];
    out[of.family].push(of.field);
  }
  return out;
}

export function runParts(
  parts: readonly string[],
  columns: Columns,
  rows: number,
  weather: readonly PreparedWeather[] = [],
  daily = false,
): Record<string, Float64Array> {
  return run(partsPlan(parts, daily), (name) => columns[name], rows, { resources: { weather } });
}

/** Whether a name is an amount: shares, factors, rates and temperatures may stand above 0 where there is nothing. */
export const isAmount = (name: string): boolean =>
  !/^(×|fraction|°C|%)$|\//.test(CATALOGUE.entries.get(name)?.made.unit ?? '');
