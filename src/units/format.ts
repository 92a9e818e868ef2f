/** Numbers as people read them on the page, in plots and in the terminal: three figures, a unit, no false zero. */
import { toSystem, type UnitSystem } from './quantities.ts';

export interface FormatOptions {
  readonly system?: UnitSystem;
  /** BCP 47 tag; without one, thousands are parted by a narrow space and the decimal mark is a point. */
  readonly locale?: string;
  /** Currency that `money` stands for, like EUR. */
  readonly currency?: string;
  /** Year of the money, said after amounts when `showYear` is on. */
  readonly year?: number;
  readonly showYear?: boolean;
  /** Significant figures; three, because hardly any result is better known. */
  readonly digits?: number;
  /** Plain spaces and hyphens, for terminals and files. */
  readonly plain?: boolean;
}

/** What stands where a scenario has no such quantity. */
export const ABSENT = '—';
const MINUS = '\u2212';
const NARROW_SPACE = '\u202F';
const DIGITS = 3;
/** Things that are counted: shown whole however many. */
const COUNTED = new Set(['head', 'bowls', 'turns', 'd', 'days', 'year', 'day of year']);
/** Amounts of these below the smallest shown are said to be less than it, not spelt to the microgram. */
const AMOUNTS = new Set(['kg', 't', 'm³', 'h', 'mm', 'ha', 'lb', 'yd³', 'ton', 'in', 'ac', 'money']);
const SMALLEST = 0.01;

/** "1 240 kg", "EUR 95.2/t", "71 %"; `—` for null, NaN and infinities. `unit` is the model's metric unit. */
export function formatQuantity(
  value: number | null | undefined,
  unit: string,
  options: FormatOptions = {},
): string {
  if (!known(value)) return ABSENT;
  const shown = toSystem(value, unit, options.system ?? 'metric');
  return dress(formatNumber(shown.value, shown.unit, options), shown.unit, options);
}

/**
 * How far two figures stand apart as a reader finds it who subtracts what is shown of them: 571 and 392 kg are 179 kg
 * apart, though 570.6 and 391.9 are not. Without a sign; 0 where both read the same.
 */
export function formatDifference(a: number, b: number, unit: string, options: FormatOptions = {}): string {
  const { value, unit: shown } = shownDifference(a, b, unit, options);
  return dress(formatNumber(value, shown, options), shown, options);
}

/** Whether two figures read the same as they are shown. */
export function readsTheSame(a: number, b: number, unit: string, options: FormatOptions = {}): boolean {
  return shownDifference(a, b, unit, options).value === 0;
}

function shownDifference(a: number, b: number, unit: string, options: FormatOptions) {
  const { digits = DIGITS, system = 'metric' } = options;
  const [first, second] = [a, b].map((value) => toSystem(value, unit, system));
  const asShown = (value: number) =>
    COUNTED.has(first.unit) ? Math.round(value * 10) / 10 : Number(value.toPrecision(digits));
  return { value: Math.abs(asShown(first.value) - asShown(second.value)), unit: first.unit };
}

/** "1 240 to 1 610 kg"; one figure with "about" where both ends read the same. Ends are put in order. */
export function formatRange(
  from: number | null | undefined,
  to: number | null | undefined,
  unit: string,
  options: FormatOptions = {},
): string {
  if (!known(from) || !known(to)) return ABSENT;
  const system = options.system ?? 'metric';
  const ends = [Math.min(from, to), Math.max(from, to)].map((value) => toSystem(value, unit, system));
  const [low, high] = ends.map((end) => formatNumber(end.value, end.unit, options));
  return low === high
    ? `about ${dress(low, ends[0].unit, options)}`
    : dress(`${low} to ${high}`, ends[0].unit, options);
}

/** The unit a quantity is shown in, for headings and axes: "lb/ac", "EUR", "%". */
export function unitLabel(unit: string, { system = 'metric', currency }: FormatOptions = {}): string {
  if (unit === 'fraction') return '%';
  return withCurrency(toSystem(1, unit, system).unit, currency);
}

/** The bare figure, in the unit it is already in; shares as percent. */
export function formatNumber(value: number, unit: string, options: FormatOptions = {}): string {
  const { digits = DIGITS, locale, plain } = options;
  const figure = unit === 'fraction' ? value * 100 : value;
  if (AMOUNTS.has(unit) && figure !== 0 && Math.abs(figure) < SMALLEST / 2)
    return `${figure < 0 ? '> -' : '< '}${SMALLEST}`;
  const whole = COUNTED.has(unit);
  const written = writer(locale ?? 'en', whole, digits).format(figure === 0 ? 0 : figure);
  if (locale !== undefined) return plain ? written.replace(/\s/gu, ' ') : written;
  return written.replace(/[,-]/g, (mark) =>
    mark === ',' ? (plain ? ' ' : NARROW_SPACE) : plain ? '-' : MINUS,
  );
}

/** A count or a sum in whole units, thousands parted as everywhere: "10 000". */
export const formatWhole = (value: number, options: Pick<FormatOptions, 'locale' | 'plain'> = {}): string =>
  formatNumber(Math.round(value) + 0, '', { ...options, digits: 15 });

/** Making a number format costs more than using it, and a slider step writes hundreds of numbers. */
const writers = new Map<string, Intl.NumberFormat>();

function writer(locale: string, whole: boolean, digits: number): Intl.NumberFormat {
  const key = `${locale} ${whole} ${digits}`;
  let found = writers.get(key);
  if (!found) {
    found = new Intl.NumberFormat(locale, {
      ...(whole ? { maximumFractionDigits: 1 } : { maximumSignificantDigits: digits }),
      useGrouping: true,
    });
    writers.set(key, found);
  }
  return found;
}

const known = (value: number | null | undefined): value is number =>
  typeof value === 'number' && Number.isFinite(value);

const withCurrency = (unit: string, currency = 'money') => unit.replace(/^money\b/, currency);

/** Puts figure and unit together: money in front with its currency, everything else behind. */
function dress(figure: string, unit: string, { currency, year, showYear }: FormatOptions): string {
  if (unit === 'fraction') return `${figure} %`;
  const named = withCurrency(unit, currency);
  const money = /^([A-Z]{3}|money)(\/.*)?$/.exec(named);
  if (money) {
    const per = money[2] ?? '';
    const when = showYear && year !== undefined ? ` (${year})` : '';
    return `${money[1]} ${figure}${per}${when}`;
  }
  return named === '' || named === '–' || named === '-' ? figure : `${figure} ${named}`;
}
