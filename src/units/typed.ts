/** A number as a person types it, with or without its unit, and as it stands in a field: shares as per cent, either system of units. */
import { unitLabel } from './format.ts';
import { toSystem, type UnitSystem } from './quantities.ts';

export interface TypedAs {
  readonly system: UnitSystem;
  /** Currency that `money` stands for. */
  readonly currency?: string;
}

export type Typed = { readonly value: number } | { readonly refused: string };

/** A part of the same thing: kg N/kg N, kg/kg DM, m³/m³. Such a number can be said in per cent. */
const ratio = (unit: string) =>
  unit === 'fraction' || /^(kg|m|m²|m³)( [\w]+)?\/\1( [\w]+)?(\/d)?$/.test(unit);

/** Figures a converted number keeps in a field. */
const SHOWN_DIGITS = 5;
/** Figures kept of a number typed in other units than the model's. */
const KEPT_DIGITS = 8;
/** Binary sums leave tails behind. */
const tidy = (value: number, digits = 12) => Number(value.toPrecision(digits));

/** The value as it stands in a field, without its unit. */
export function typedForm(value: number, unit: string, { system }: TypedAs): string {
  if (unit === 'fraction') return String(tidy(value * 100));
  const shown = toSystem(value, unit, system);
  return String(shown.unit === unit ? tidy(value) : tidy(shown.value, SHOWN_DIGITS));
}

/** What stands beside the field. */
export const typedUnit = (unit: string, { system, currency }: TypedAs): string =>
  unitLabel(unit, { system, currency });

/** What was typed, in the model's unit; a refusal says what to type. */
export function readTyped(text: string, unit: string, as: TypedAs): Typed {
  const found = /^([-+\u2212]?\s*[\d.,\u2019'\u00A0\u2009\u202F ]*\d[.,]?|[-+\u2212]?[.,]\d+)\s*(.*)$/u.exec(
    text.trim(),
  );
  const shownUnit = typedUnit(unit, as);
  const such = shownUnit === '' ? '12.5' : `12.5 ${shownUnit}`;
  if (!found) return { refused: `"${text.trim()}" is not a number: type one, such as ${such}` };
  const figure = plainNumber(found[1]);
  if (typeof figure === 'string') return { refused: figure };
  const said = found[2].trim();
  if (said === '' || sameUnit(said, shownUnit)) return { value: fromShown(figure, unit, as.system) };
  if (said === '%' && ratio(unit)) return { value: tidy(figure / 100) };
  if (sameUnit(said, unit.replace(/^money/, as.currency ?? 'money'))) return { value: figure };
  if (sameUnit(said, toSystem(1, unit, 'us').unit)) return { value: fromShown(figure, unit, 'us') };
  const wanted = shownUnit === '' ? 'it has no unit: type the number alone' : `type it in ${shownUnit}`;
  return { refused: `"${said}" is not a unit of this number: ${wanted}` };
}

/** Digits with a decimal point or comma and marks between thousands; words where they can be read in two ways. */
function plainNumber(typed: string): number | string {
  const bare = typed.replace(/[\u2019'\u00A0\u2009\u202F ]/gu, '').replace('\u2212', '-');
  if (/^[-+]?[1-9]\d{0,2},\d{3}$/.test(bare))
    return `"${typed.trim()}" can be read in two ways: type ${bare.replace(',', '')} or ${bare.replace(',', '.')}`;
  // Thousands parted by one mark and a decimal behind the other, thousands alone, or a decimal alone.
  const grouped =
    /^([-+]?\d{1,3}(?:,\d{3})+)(?:\.(\d*))?$|^([-+]?\d{1,3}(?:\.\d{3})+),(\d*)$|^([-+]?\d{1,3}(?:\.\d{3}){2,})$/.exec(
      bare,
    );
  const digits = grouped
    ? `${(grouped[1] ?? grouped[3] ?? grouped[5]).replace(/[.,]/g, '')}.${grouped[2] ?? grouped[4] ?? ''}`
    : bare.replace(',', '.');
  const value = /^[-+]?(\d+\.?\d*|\.\d+)$/.test(digits) ? Number(digits) : Number.NaN;
  return Number.isFinite(value) ? value : `"${typed.trim()}" is not a number: type one, such as 12.5`;
}

function fromShown(figure: number, unit: string, system: UnitSystem): number {
  if (unit === 'fraction') return tidy(figure / 100);
  const [zero, one] = [toSystem(0, unit, system), toSystem(1, unit, system)];
  if (one.unit === unit) return figure;
  return tidy((figure - zero.value) / (one.value - zero.value), KEPT_DIGITS);
}

/** Units as people type them: spaces, superscripts and "per" do not matter. */
function sameUnit(said: string, unit: string): boolean {
  const plain = (words: string) =>
    words
      .toLowerCase()
      .replace(/²/g, '2')
      .replace(/³/g, '3')
      .replace(/\s*(per|\/)\s*/g, '/')
      .replace(/\s+/g, '')
      .replace(/^(tonnes?)$/, 't')
      .replace(/^(hectares?)$/, 'ha')
      .replace(/^(days?)$/, 'd')
      .replace(/^(years?)$/, 'yr')
      .replace(/^(metres?|meters?)$/, 'm');
  return unit !== '' && plain(said) === plain(unit);
}
