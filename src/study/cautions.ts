/** Warnings that hold whatever the numbers are: said once together, not among the limits. */
import type { Check } from '../model/checks/check.ts';
import type { ScenarioResult } from './evaluate.ts';

/** Each check that `warns` once, with the quoted names of the scenarios it is about. */
export function cautionsOf(
  results: readonly ScenarioResult[],
  warns: (check: Check) => boolean,
): readonly { readonly check: Check; readonly names: readonly string[] }[] {
  const found = new Map<string, { check: Check; names: string[] }>();
  for (const { name, checks } of results)
    for (const check of checks.filter(warns)) {
      const entry = found.get(check.id) ?? { check, names: [] };
      entry.names.push(`“${name}”`);
      found.set(check.id, entry);
    }
  return [...found.values()];
}
