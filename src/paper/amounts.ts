/** Amounts as a lender reads them: estimates with few digits, agreed sums whole, bills to the cent. */

import { type Reading, show } from '../plots/reading.ts';
import { formatRange, formatWhole } from '../units/format.ts';

const MINUS = '−';

/** "294 343": a sum that is agreed or added up, in whole units; a dash where there is none. */
export function whole(value: number | null | undefined): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return '–';
  return formatWhole(value);
}

/** "13 426.56", for lines that must add up. */
export function cents(value: number): string {
  const [units, part] = Math.abs(value).toFixed(2).split('.');
  return `${value < 0 ? MINUS : ''}${formatWhole(Number(units))}.${part}`;
}

/** An estimate with its currency, three digits. */
export const about = (value: number | null | undefined, reading: Reading) =>
  show(value, 'money', reading).text;

/** A whole sum with its currency. */
export const sum = (value: number | null | undefined, { currency }: Reading) =>
  value === null || value === undefined || !Number.isFinite(value) ? '–' : `${currency} ${whole(value)}`;

/** "81 000 to 98 000", or nothing where there is no span. */
export function span(
  low: number | null | undefined,
  high: number | null | undefined,
  unit: string,
  { system }: Reading,
): string {
  if (typeof low !== 'number' || typeof high !== 'number') return '';
  const said = formatRange(low, high, unit, { system, currency: '' });
  return said.startsWith('about') ? '' : said.trim();
}

/** "6.2 %". */
export const percent = (fraction: number) => `${Number((fraction * 100).toFixed(2))} %`;
