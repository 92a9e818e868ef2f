/** What a number can be at all: wider than its plausible range, narrower than any number. */
import { scenarioSchema } from '../notebook/schema.ts';
import { allowedWords, numberLimits, schemaAt } from '../notebook/schemaAt.ts';
import type { Coefficient } from '../tables/coefficient.ts';

export interface Limits {
  readonly holds: (value: number) => boolean;
  /** "a number from 0 to 1" */
  readonly words: string;
}

/** Units of a part of a whole: nitrogen of nitrogen, a feed's protein of its dry matter, dry matter eaten of an animal's weight. */
const PART = /^(fraction|(kg|m³)( \w+)?\/\2 (DM|LW|N|P|K|C|TAN)(\/d)?|kg DM\/kg|m³\/m³)$/;

/**
 * Limits of a row of the tables: below zero only where the table itself goes there or where the unit has no zero
 * of its own, and a share of something is at most the whole.
 */
export function rowLimits({ low, high, unit }: Pick<Coefficient, 'low' | 'high' | 'unit'>): Limits {
  const least = low < 0 || unit === '°C' ? Number.NEGATIVE_INFINITY : 0;
  const most = PART.test(unit) && least === 0 && high <= 1 ? 1 : Number.POSITIVE_INFINITY;
  return {
    holds: (value) => value >= least && value <= most,
    words: most === 1 ? 'a number from 0 to 1' : least === 0 ? 'a number of 0 or more' : 'a number',
  };
}

/** Limits of an input by its place in a scenario; undefined where no single number stands there. */
export function inputLimits(path: string): Limits | undefined {
  const schema = schemaAt(scenarioSchema, path.split('.'));
  const limits = schema && numberLimits(schema);
  if (!schema || !limits) return undefined;
  const { low, above, high } = limits;
  return {
    holds: (value) => (above ? value > low : value >= low) && value <= high,
    words: allowedWords(schema),
  };
}
