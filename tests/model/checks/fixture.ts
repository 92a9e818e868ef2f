/** The invented shed judged by the shipped tables. */
import { readDataFiles } from '../../../src/cli/readData.ts';
import type { Check } from '../../../src/model/checks/check.ts';
import { CHOICE_OPTIONS } from '../../../src/notebook/choiceOptions.ts';
import { loadTables } from '../../../src/tables/load.ts';
import { type Changes, type Patch, resultFrom, type ShedCase } from './shedCase.ts';

export { bedTrack, type Patch, scenarioWith } from './shedCase.ts';

const loaded = loadTables(readDataFiles(), CHOICE_OPTIONS);
export const { problems } = loaded;
export const { coefficients } = loaded.tables;

export function resultWith(patch: Patch = {}, cmPerDay = 0.5, values: Changes = {}): ShedCase {
  return resultFrom(coefficients, patch, cmPerDay, values);
}

export function checksOf(patch: Patch = {}, cmPerDay = 0.5, values: Changes = {}): Check[] {
  return [...resultWith(patch, cmPerDay, values).checks];
}

export function checkOf(id: string, patch: Patch = {}, cmPerDay = 0.5, values: Changes = {}): Check {
  const found = checksOf(patch, cmPerDay, values).find((check) => check.id === id);
  if (!found) throw new Error(`no check: ${id}`);
  return found;
}
