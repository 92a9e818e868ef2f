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

/** What is read another way than it is written: where it stands, what is meant now, what the keeper can do. */
export interface Note {
  readonly at: Path;
  readonly words: string;
  readonly todo?: string;
}

/** The front matter as it is understood today, and a note for each key that is passed over or read elsewhere. */
export function asToday(front: unknown): { front: unknown; notes: Note[] } {
  const notes: Note[] = [];
  const money = onePriceLevel(withoutRetired(front, notes), notes);
  const tidied = withoutRetiredRows(heapCovers(coverPrice(money, notes), notes), notes);
  return { front: tidied, notes };
}

function withoutRetired(front: unknown, notes: Note[]): unknown {
  const tidied = (farm: unknown, at: Path): unknown => {
    if (!isPlain(farm) || !isPlain(farm.place)) return farm;
    const kept = Object.entries(farm.place).filter(([key]) => {
      const words = Object.hasOwn(RETIRED_IN_PLACE, key) ? RETIRED_IN_PLACE[key] : undefined;
      if (words !== undefined)
        notes.push({ at: [...at, 'place', key], words, todo: 'the line may be taken out' });
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

/** An own price of the cover of a heap was that of the fleece; it is read as that. */
function coverPrice(front: unknown, notes: Note[]): unknown {
  if (!isPlain(front) || !isPlain(front.farm) || !isPlain(front.farm.money)) return front;
  const { farm } = front;
  const money = front.farm.money;
  const { heapCoverPricePerM2: own, ...others } = isPlain(money.prices) ? money.prices : {};
  if (own === undefined) return front;
  notes.push({
    at: ['farm', 'money', 'prices', 'heapCoverPricePerM2'],
    words: 'each cover of a heap has its own price now; this one is read as heapCoverPricePerM2.fleece',
    todo: 'write heapCoverPricePerM2.fleece, or .sheet if it is one',
  });
  const prices = { 'heapCoverPricePerM2.fleece': own, ...others };
  return { ...front, farm: { ...farm, money: { ...money, prices } } };
}

/**
 * Covers of a heap were `open` or `covered`. What the second was priced and drawn up as was a breathing fleece, so
 * that is what it is read as.
 */
function heapCovers(front: unknown, notes: Note[]): unknown {
  if (!isPlain(front) || !Array.isArray(front.scenarios)) return front;
  let found = false;
  const scenarios = front.scenarios.map((scenario: unknown, k: number) => {
    if (!isPlain(scenario) || !isPlain(scenario.compost) || scenario.compost.cover !== 'covered')
      return scenario;
    found = true;
    notes.push({
      at: ['scenarios', k, 'compost', 'cover'],
      words: 'a covered heap is read as one under a breathing fleece, which is what it was priced as',
      todo: 'write cover: fleece, or sheet (tight plastic), roof or open if that is what lies over it',
    });
    return { ...scenario, compost: { ...scenario.compost, cover: 'fleece' } };
  });
  return found ? { ...front, scenarios } : front;
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
