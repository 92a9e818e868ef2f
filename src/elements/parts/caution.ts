/** Warnings that hold whatever the numbers are: said once together, not among the limits. */
import type { Check } from '../../model/checks/check.ts';
import { groupOf } from '../../model/checks/titles.ts';
import type { ScenarioResult } from '../../study/evaluate.ts';

const isCaution = (check: Check) => groupOf(check) === 'caution';

/** Each warning once, with the scenarios it is about. */
export function cautionsOf(
  results: readonly ScenarioResult[],
): { readonly check: Check; readonly names: readonly string[] }[] {
  const found = new Map<string, { check: Check; names: string[] }>();
  for (const { name, checks } of results)
    for (const check of checks.filter(isCaution)) {
      const entry = found.get(check.id) ?? { check, names: [] };
      entry.names.push(name);
      found.set(check.id, entry);
    }
  return [...found.values()];
}
