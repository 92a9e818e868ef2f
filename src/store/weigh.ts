/** A number weighed before it is kept: whether it can be at all, and whether the tables have seen the like. */
import type { Usual } from '../model/usual.ts';
import { type TypedAs, typedForm, typedUnit } from '../units/typed.ts';

interface Weighable {
  readonly label: string;
  readonly unit: string;
  readonly limits?: { readonly low: number; readonly above: boolean; readonly high: number };
  readonly usual?: Usual | undefined;
}

/** A value with the unit it is shown in. */
export function shownValue(value: number, unit: string, as: TypedAs): string {
  const shown = typedUnit(unit, as);
  return `${typedForm(value, unit, as)}${shown === '' ? '' : ` ${shown}`}`;
}

/** Why a number cannot stand here, in the shown unit, and what to type where a slip is likely. */
export function limitWords(field: Weighable, value: number, as: TypedAs): string | undefined {
  const { limits, usual, unit, label } = field;
  const ends = limits ?? { low: Number.NEGATIVE_INFINITY, above: false, high: Number.POSITIVE_INFINITY };
  const { low, above, high } = ends;
  const inside = (above ? value > low : value >= low) && value <= high;
  const known = (end: number) => Math.abs(end) < 1e9;
  const shown = (end: number) => shownValue(end, unit, as);
  if (!inside) {
    const least = known(low) ? `${above ? 'above' : 'at least'} ${shown(low)}` : '';
    const most = known(high) ? `at most ${shown(high)}` : 'less than a thousand million';
    const range = [least, most].filter((part) => part !== '').join(', ');
    return `${label} cannot be ${shown(value)}: it is ${range}${slipWords(field, value, as)}`;
  }
  if (usual && !usual.holds(value))
    return `${label} cannot be ${shown(value)}: it is ${usual.allowed}${slipWords(field, value, as)}`;
  return undefined;
}

/** A share typed as a bare number of per cent, the likeliest slip. */
function slipWords({ unit, usual, limits }: Weighable, value: number, as: TypedAs): string {
  if (unit === 'fraction' || !(value > 1 && value <= 100)) return '';
  const meant = value / 100;
  const part = usual ? !usual.holds(value) && usual.holds(meant) : limits?.high === 1;
  return part && /\//.test(unit) ? `; for ${value} % type ${shownValue(meant, unit, as)}, or ${value} %` : '';
}

/** Asked where a value lies outside what the tables have; nothing where it does not, or where they have nothing. */
export function questionOf(
  { usual, unit, label }: Weighable,
  value: number,
  as: TypedAs,
): string | undefined {
  if (!usual || !(usual.low < usual.high)) return undefined;
  if (value >= usual.low * (1 - 1e-9) && value <= usual.high * (1 + 1e-9)) return undefined;
  const shown = (v: number) => shownValue(v, unit, as);
  const meant = value * 100;
  const slip =
    unit === 'fraction' && meant >= usual.low && meant <= usual.high
      ? ` Was ${typedForm(meant, unit, as)} % meant?`
      : '';
  const times =
    value > 0 && usual.high > 0 && value > 5 * usual.high
      ? `, ${Math.round(value / usual.high)} times the highest`
      : '';
  return `${shown(value)} is outside what the tables have seen for ${label}: ${shown(usual.low)} to ${shown(usual.high)}${times}.${slip} Keep it?`;
}
