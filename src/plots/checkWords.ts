/** Checks as they are read: in order of use, the limit beside the value in one format, what is the same said once. */
import type { Check } from '../model/checks/check.ts';
import { ruleName } from '../model/checks/spaceRules.ts';
import { CHECK_GROUPS, type CheckGroup, groupOf, wantsOf } from '../model/checks/titles.ts';
import type { ScenarioResult } from '../study/evaluate.ts';
import { inWords, type Reading, show } from './reading.ts';

/** What a group is called, over its list. */
export const GROUP_TITLES: Readonly<Record<CheckGroup, string>> = {
  stop: 'Does not work as written',
  change: 'What you can change',
  engineer: 'For the engineer',
  local: 'Ask locally',
  caution: 'Whatever the numbers are',
  pass: 'Passes',
};

export type Grouped = Readonly<Record<CheckGroup, readonly Check[]>>;

export function grouped(checks: readonly Check[]): Grouped {
  return Object.fromEntries(
    CHECK_GROUPS.map((group) => [group, checks.filter((check) => groupOf(check) === group)]),
  ) as unknown as Grouped;
}

/** "126 m²; at least 140 m²; from week 5": what was found, what passes, and when it first does not. */
export function limitText(
  { id, status, value, limit, limitHigh, unit, week }: Check,
  reading: Reading,
): string {
  const said = (number: number) => show(number, unit, reading).text;
  // Hundredths at most, as the sentence behind it and the drawings say them: nobody builds by the millimetre.
  const found = (number: number) => show(number, unit, reading, Math.abs(number) < 1 ? 2 : 3).text;
  const wants = wantsOf(id);
  // A limit that is broken by less than is shown would read as one that is kept.
  const broken = [limit, limitHigh].find(
    (each) => each != null && value !== null && said(each) === found(value),
  );
  const near =
    status === 'pass' || broken == null || value === null || value === broken
      ? ''
      : value > broken
        ? 'just over '
        : 'just under ';
  return [
    value === null || unit === 'month' ? '' : `${near}${found(value)}`,
    limit === null || wants === 'told'
      ? ''
      : wants === 'between'
        ? `${show(limit, unit, reading).number} to ${said(limitHigh ?? limit)}`
        : `${wants === 'atLeast' ? 'at least' : 'at most'} ${said(limit)}`,
    week === undefined ? '' : `from week ${week}`,
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** "2 stop, 3 to change, 6 for the engineer": the last two on demand, since a card counts only the first. */
export function countsText(checks: readonly Check[], groups: readonly CheckGroup[]): string {
  const by = grouped(checks);
  const words: Readonly<Record<CheckGroup, string>> = {
    stop: by.stop.length === 1 ? 'stop' : 'stops',
    change: 'to change',
    engineer: 'for the engineer',
    local: 'to ask locally',
    caution: 'to bear in mind',
    pass: 'pass',
  };
  return groups
    .filter((group) => by[group].length > 0)
    .map((group) => `${by[group].length} ${words[group]}`)
    .join(', ');
}

/** "Space is held against common practice …": the sets in use, each with the scenarios it is for where they differ. */
export function rulesInUse(results: readonly ScenarioResult[]): string {
  const sets = new Map<string, string[]>();
  for (const { name, scenario } of results) {
    const said = ruleName(scenario.farm.spaceRules, scenario.farm.place.country?.toUpperCase() ?? null);
    sets.set(said, [...(sets.get(said) ?? []), name]);
  }
  const one = sets.size === 1;
  const space = [...sets].map(([set, names]) =>
    one ? set : `${set} (${inWords(names.map((n) => `“${n}”`))})`,
  );
  return `Space is held against ${inWords(space)}.`;
}
