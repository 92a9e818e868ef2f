/** What a number can be at all: wider than its plausible range, narrower than any number. */
import { scenarioSchema } from '../notebook/schema.ts';
import { allowedWords, numberLimits, schemaAt } from '../notebook/schemaAt.ts';
import type { Coefficient } from '../tables/coefficient.ts';
import { unitSpan } from '../tables/unitSpans.ts';

export interface Limits {
  readonly holds: (value: number) => boolean;
  /** "a number from 0 to 1" */
  readonly words: string;
}

/** A number so many times what the tables go to was meant in another unit. */
const SLIP = 100;

/**
 * Limits of a row of the tables: below zero only where the table itself goes there or where the unit has no zero
 * of its own, a share of something at most the whole, and nothing a hundred times beyond the table.
 */
export function rowLimits({ low, high, unit }: Pick<Coefficient, 'low' | 'high' | 'unit'>): Limits {
  const span = unitSpan(unit);
  const signed = low < 0 || unit === '°C';
  const beyond = SLIP * Math.max(Math.abs(low), Math.abs(high));
  const narrow = span.high < 1e9;
  const most = narrow || beyond === 0 ? span.high : Math.min(span.high, beyond);
  const least = signed
    ? Math.max(span.low, narrow || beyond === 0 ? span.low : -beyond)
    : Math.max(0, span.low);
  const why = narrow ? span.because : 'a hundred times what the table goes to is another unit';
  return {
    holds: (value) => value >= least && value <= most,
    words: `a number from ${plain(least)} to ${plain(most)}${least === 0 && most === 1 ? '' : `: ${why}`}`,
  };
}

const plain = (value: number) => String(Number(value.toPrecision(6)));

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
