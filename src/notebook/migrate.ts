/** Older formats are lifted, one version at a time, before they are checked; the text itself is left as it is. */
import { isPlain, type Plain } from './merge.ts';
import type { Path } from './path.ts';
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
interface Reading {
  readonly at: Path;
  readonly words: string;
  readonly todo: string;
}

/**
 * Covers of a heap were `open` or `covered`. What the second was priced and drawn up as was a breathing fleece, so
 * that is what it is read as.
 */
const COVERED = 'covered';
const COVERED_WORDS =
  'a covered heap is read as one under a breathing fleece, which is what it was priced as';

/** The front matter without retired keys and words, and a note for each with the path it stands at. */
export function withoutRetired(front: unknown): { front: unknown; notes: Reading[] } {
  const notes: Reading[] = [];
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
  const told = (compost: unknown, at: Path): unknown => {
    if (!isPlain(compost) || compost.cover !== COVERED) return compost;
    const todo = 'write cover: fleece, or sheet (tight plastic), roof or open if that is what lies over it';
    notes.push({ at: [...at, 'cover'], words: COVERED_WORDS, todo });
    return { ...compost, cover: 'fleece' };
  };
  const scenarioRead = (scenario: unknown, k: number): unknown => {
    if (!isPlain(scenario)) return scenario;
    const at: Path = ['scenarios', k];
    return {
      ...scenario,
      farm: tidied(scenario.farm, [...at, 'farm']),
      ...(scenario.compost === undefined ? {} : { compost: told(scenario.compost, [...at, 'compost']) }),
    };
  };
  if (!isPlain(front)) return { front, notes };
  const farm = tidied(front.farm, ['farm']);
  const scenarios = Array.isArray(front.scenarios) ? front.scenarios.map(scenarioRead) : front.scenarios;
  return notes.length === 0 ? { front, notes } : { front: { ...front, farm, scenarios }, notes };
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
