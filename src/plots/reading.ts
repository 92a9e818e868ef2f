/** Numbers as they are read: few digits, a unit, currency and year where it is money, "–" where there is none. */
import { describe } from '../model/dictionary.ts';
import { formatNumber, formatQuantity, unitLabel } from '../units/format.ts';
import { toSystem } from '../units/quantities.ts';

/** How this reader wants numbers. */
export interface Reading {
  readonly currency: string;
  readonly year: number;
  readonly system: 'metric' | 'us';
  /** Plain spaces and hyphens, for terminals and files. */
  readonly plain?: boolean;
  /** All scenarios of the notebook in order: a scenario keeps its colour where only some are shown. */
  readonly order?: readonly string[];
  /** For each scenario of the notebook the quantities that rest on a number of the keeper's own. */
  readonly own?: readonly ReadonlySet<string>[];
  /** The same of quantities that a reader has noted something on. */
  readonly noted?: readonly ReadonlySet<string>[];
}

export interface Shown {
  readonly number: string;
  /** Empty where the number carries its unit, as money and percent do. */
  readonly unit: string;
  /** Both together. */
  readonly text: string;
}

/** `value` in `unit` for this reader, to `digits` significant digits; absent values as a dash. */
export function show(value: number | null | undefined, unit: string, reading: Reading, digits = 3): Shown {
  const options = {
    system: reading.system,
    currency: reading.currency,
    plain: reading.plain,
    digits: unit === 'fraction' ? Math.min(digits, 2) : digits,
  };
  const text = formatQuantity(value, unit, options);
  if (
    value === null ||
    value === undefined ||
    !Number.isFinite(value) ||
    unit === 'fraction' ||
    unit.startsWith('money')
  )
    return { number: text, unit: '', text };
  const shown = toSystem(value, unit, reading.system);
  return { number: formatNumber(shown.value, shown.unit, options), unit: unitLabel(unit, options), text };
}

/** Short words for sentences and axes where the dictionary's label explains. */
const SHORT: Readonly<Record<string, string>> = { netCost: 'net cost a year' };

/** What a quantity is called: the dictionary's label, or its name spelt out. */
export function labelOf(name: string): string {
  return (
    SHORT[name] ?? describe(name)?.label ?? name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`)
  );
}

/** The unit a quantity is counted in: the dictionary's, or what its name ends in. */
export function unitOf(name: string): string {
  const known = describe(name)?.unit;
  if (known !== undefined) return known;
  const ends: readonly (readonly [RegExp, string])[] = [
    [/Kg$/, 'kg'],
    [/Tonnes$/, 't'],
    [/M3$/, 'm³'],
    [/Mm$/, 'mm'],
    [/M$/, 'm'],
    [/Hours$/, 'h'],
    [/Days$/, 'd'],
    [/(Cost|Value|Charge)$/, 'money'],
    [/CostPerHead$/, 'money/head'],
    [/Moisture$/, 'fraction'],
  ];
  return ends.find(([end]) => end.test(name))?.[1] ?? '';
}

/** "EUR of 2024". */
export const moneyOf = (reading: Reading) => `${reading.currency} of ${reading.year}`;

/** A list in words: "a", "a and b", "a, b and c". */
export function inWords(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
