/** Older formats are lifted, one version at a time, before they are checked; the text itself is left as it is. */
import { isPlain, type Plain } from './merge.ts';
import type { Path } from './path.ts';
import { retiredRow } from './retired.ts';
import { FORMAT_VERSION } from './schema.ts';

/** From the front matter of a version to that of the next. */
export type Migration = (front: Plain) => Plain;

/** By the version they start from. There is one format so far. */
export const MIGRATIONS: Readonly<Record<number, Migration>> = {};

/** Keys of a place that older notebooks hold and no figure needs: passed over, and named once so that they can go. */
const RETIRED_IN_PLACE: Readonly<Record<string, string>> = {
  elevationM: 'no figure depends on the elevation any more',
};

export interface Note {
  readonly at: Path;
  readonly words: string;
}

/** The front matter as it is understood today, and a note for each key that is passed over or read elsewhere. */
export function asToday(front: unknown): { front: unknown; notes: Note[] } {
  const notes: Note[] = [];
  const tidied = withoutRetiredRows(onePriceLevel(withoutRetired(front, notes), notes), notes);
  return { front: tidied, notes };
}

function withoutRetired(front: unknown, notes: Note[]): unknown {
  const tidied = (farm: unknown, at: Path): unknown => {
    if (!isPlain(farm) || !isPlain(farm.place)) return farm;
    const kept = Object.entries(farm.place).filter(([key]) => {
      const words = Object.hasOwn(RETIRED_IN_PLACE, key) ? RETIRED_IN_PLACE[key] : undefined;
      if (words !== undefined) notes.push({ at: [...at, 'place', key], words });
      return words === undefined;
    });
    return { ...farm, place: Object.fromEntries(kept) };
  };
  if (!isPlain(front)) return front;
  const farm = tidied(front.farm, ['farm']);
  const scenarios = Array.isArray(front.scenarios)
    ? front.scenarios.map((s, k) =>
        isPlain(s) ? { ...s, farm: tidied(s.farm, ['scenarios', k, 'farm']) } : s,
      )
    : front.scenarios;
  return notes.length === 0 ? front : { ...front, farm, scenarios };
}

/** Own values for rows that are gone are passed over: nothing would feel them. */
function withoutRetiredRows(front: unknown, notes: Note[]): unknown {
  if (!isPlain(front) || !Array.isArray(front.coefficients)) return front;
  const coefficients = front.coefficients.filter((own: unknown, k: number) => {
    const words = isPlain(own) && typeof own.id === 'string' ? retiredRow(own.id) : undefined;
    if (words !== undefined)
      notes.push({ at: ['coefficients', k, 'id'], words: `this number is used no more: ${words}` });
    return words === undefined;
  });
  return coefficients.length === front.coefficients.length ? front : { ...front, coefficients };
}

/** Keys of a scenario's finance that belong to the whole notebook now, and what they are called there. */
const SHARED_MONEY: Readonly<Record<string, string>> = {
  inflation: 'inflation',
  lifeYears: 'horizonYears',
  incomePerYear: 'incomePerHead',
};

/**
 * Older notebooks gave inflation, years and income in each scenario, and a scenario without its own was held against
 * another price level. The first that is written counts for all; income is divided by the head it was written for.
 */
function onePriceLevel(front: unknown, notes: Note[]): unknown {
  if (!isPlain(front) || !Array.isArray(front.scenarios) || !isPlain(front.farm)) return front;
  const { farm } = front;
  const money: Record<string, unknown> = isPlain(farm.money) ? { ...farm.money } : {};
  let found = false;
  const scenarios = front.scenarios.map((scenario: unknown, k: number) => {
    if (!isPlain(scenario) || !isPlain(scenario.finance)) return scenario;
    const kept: Record<string, unknown> = {};
    for (const [key, value] of Object.entries(scenario.finance)) {
      const name = Object.hasOwn(SHARED_MONEY, key) ? SHARED_MONEY[key] : undefined;
      if (name === undefined || typeof value !== 'number') {
        kept[key] = value;
        continue;
      }
      found = true;
      const head = headOf(isPlain(scenario.farm) ? scenario.farm.herd : undefined) ?? headOf(farm.herd) ?? 1;
      const asked = key === 'incomePerYear' ? value / head : value;
      if (money[name] === undefined) money[name] = asked;
      const used = money[name];
      const same = typeof used === 'number' && Math.abs(used - asked) <= 1e-9 * Math.abs(asked);
      notes.push({
        at: ['scenarios', k, 'finance', key],
        words: same
          ? `${key} stands once for all scenarios now; it is read as farm.money.${name}: ${String(used)}`
          : `${key} stands once for all scenarios now: ${String(asked)} of this one is not used, farm.money.${name} is ${String(used)}`,
      });
    }
    return { ...scenario, finance: kept };
  });
  return found ? { ...front, farm: { ...farm, money }, scenarios } : front;
}

function headOf(herd: unknown): number | undefined {
  if (!Array.isArray(herd)) return undefined;
  const head = herd.reduce<number>(
    (sum, group) => sum + (isPlain(group) && typeof group.head === 'number' ? group.head : 0),
    0,
  );
  return head > 0 ? head : undefined;
}

/** Oldest version that can still be read. */
export function oldestReadable(migrations: Readonly<Record<number, Migration>> = MIGRATIONS): number {
  let version: number = FORMAT_VERSION;
  while (migrations[version - 1]) version--;
  return version;
}

/** The front matter in today's format, with the version it was written in. */
export function migrate(
  front: unknown,
  migrations: Readonly<Record<number, Migration>> = MIGRATIONS,
): unknown {
  if (!isPlain(front)) return front;
  let lifted: Plain = front;
  for (let version = Number(front.winterkeep); version < FORMAT_VERSION && migrations[version]; version++)
    lifted = { ...migrations[version](lifted), winterkeep: version + 1 };
  return lifted;
}
