/** A number as a person types it: a comma or a point, thousands parted or not, with a unit or in the one shown. */
import { toSystem, type UnitSystem } from '../units/quantities.ts';

export interface Span {
  /** Metric unit of the answer; shares are `fraction` and typed in percent. */
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
}

/** In the metric unit; or what is wrong with it, for the person who typed it. */
export type Typed = { readonly value: number } | { readonly fault: string };

/** Other ways to write the units that are shown. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  kg: ['kilogram', 'kilograms', 'kilo', 'kilos'],
  lb: ['lbs', 'pound', 'pounds'],
  ha: ['hectare', 'hectares'],
  ac: ['acre', 'acres'],
  t: ['tonne', 'tonnes'],
  'short ton': ['ton', 'tons', 'short tons'],
  m: ['metre', 'metres', 'meter', 'meters'],
  ft: ['foot', 'feet'],
  '%': ['percent'],
};

const PARTS = /^([+\-−]?[\d.,\s\u202f\u00a0'’]*\d[.,]?)\s*(.*)$/u;

/** The unit a person sees beside the field. */
export function shownUnit(unit: string, system: UnitSystem): string {
  return unit === 'fraction' ? '%' : toSystem(1, unit, system).unit;
}

/** A metric value as it is shown in the field. */
export function shownNumber(value: number, unit: string, system: UnitSystem): string {
  const shown = unit === 'fraction' ? value * 100 : toSystem(value, unit, system).value;
  return String(Number(shown.toPrecision(3)));
}

export function readTyped(text: string, span: Span, system: UnitSystem): Typed {
  const parts = PARTS.exec(text.trim());
  const shown = shownUnit(span.unit, system);
  if (!parts)
    return { fault: `“${text.trim()}” is not a number. Write figures${shown ? `, in ${shown}` : ''}.` };
  const number = plainNumber(parts[1]);
  if (typeof number === 'string') return { fault: number };
  const of = systemOf(parts[2].trim(), span.unit, system);
  if (of === undefined)
    return {
      fault: `“${parts[2].trim()}” is not a unit known here. Write ${shown === '' ? 'the number alone' : shown}.`,
    };
  const value = span.unit === 'fraction' ? number / 100 : number / toSystem(1, span.unit, of).value;
  if (span.whole && !Number.isInteger(value)) return { fault: `${text.trim()} is not a whole number.` };
  if (value < span.min || value > span.max)
    return {
      fault: `${text.trim()} is outside what this can be: ${shownNumber(span.min, span.unit, system)} to ${shownNumber(span.max, span.unit, system)}${shown ? ` ${shown}` : ''}.`,
    };
  return { value: Number(value.toPrecision(12)) };
}

/** The same answer when another system of units is shown: a bare number keeps the unit it was typed in. */
export function withUnitSaid(text: string, unit: string, was: UnitSystem): string {
  const parts = PARTS.exec(text.trim());
  const convertible = shownUnit(unit, 'metric') !== shownUnit(unit, 'us');
  return parts && parts[2] === '' && convertible ? `${text.trim()} ${shownUnit(unit, was)}` : text;
}

function plainNumber(written: string): number | string {
  const tight = written.replace(/[\s\u202f\u00a0'’]/gu, '').replace('−', '-');
  const [whole, point, rest] = partsOf(tight);
  if (point === ',' && rest.length === 3 && whole !== '0')
    return `${tight} can be read in two ways. Write ${whole}${rest} or ${whole}.${rest}.`;
  const value = point === '' ? Number(whole) : Number(`${whole || '0'}.${rest}`);
  return Number.isFinite(value) ? value : `${tight} is not a number. Write figures, like 22 or 6.5.`;
}

/** What stands before and behind the decimal mark: the last mark, unless all marks are alike and part thousands. */
function partsOf(tight: string): readonly [whole: string, point: string, rest: string] {
  const marks = tight.match(/[.,]/g) ?? [];
  const thousands = marks.length > 1 && new Set(marks).size === 1;
  if (marks.length === 0 || thousands) return [tight.replace(/[.,](?=\d{3}(\D|$))/g, ''), '', ''];
  const last = Math.max(tight.lastIndexOf('.'), tight.lastIndexOf(','));
  return [tight.slice(0, last).replace(/[.,](?=\d{3}([.,]|$))/g, ''), tight[last], tight.slice(last + 1)];
}

function systemOf(said: string, unit: string, system: UnitSystem): UnitSystem | undefined {
  if (said === '') return system;
  const lower = said.toLowerCase();
  const is = (name: string) => name.toLowerCase() === lower || ALSO[name]?.includes(lower);
  if (is(shownUnit(unit, system))) return system;
  return (['metric', 'us'] as const).find((each) => is(shownUnit(unit, each)));
}
