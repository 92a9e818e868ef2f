/**
 * Metric units as the model writes them, and the United States customary unit each is shown in. A unit may be
 * composite (`kg/ha`, `EUR/t`, `kg N/ha`, `L/head/d`); what follows the first slash divides.
 * Factors: NIST Special Publication 811, appendix B, recalled; each is exact by definition of yard, pound and gallon.
 */
export type UnitSystem = 'metric' | 'us';

export interface Quantity {
  readonly value: number;
  readonly unit: string;
}

const FOOT_M = 0.3048;
const INCH_MM = 25.4;
const POUND_KG = 0.453_592_37;
const GALLON_L = 3.785_411_784;
const STANDARD_GRAVITY = 9.806_65;
const YARD3_M3 = (3 * FOOT_M) ** 3;
const ACRE_HA = (FOOT_M ** 2 * 43_560) / 10_000;
const POUND_FORCE_KN = (POUND_KG * STANDARD_GRAVITY) / 1000;

/** Metric unit → its customary unit and how many metric units that holds. */
const CUSTOMARY: Readonly<Record<string, readonly [unit: string, holds: number]>> = {
  kg: ['lb', POUND_KG],
  t: ['short ton', (2000 * POUND_KG) / 1000],
  m: ['ft', FOOT_M],
  cm: ['in', INCH_MM / 10],
  mm: ['in', INCH_MM],
  'm²': ['ft²', FOOT_M ** 2],
  'm³': ['yd³', YARD3_M3],
  ha: ['ac', ACRE_HA],
  L: ['gal', GALLON_L],
  kN: ['lbf', POUND_FORCE_KN],
  kNm: ['lbf·ft', POUND_FORCE_KN * FOOT_M],
  km: ['mi', (5280 * FOOT_M) / 1000],
  // A difference of temperatures, in which the two zeros do not matter.
  K: ['°F', 1 / 1.8],
  // The one composite that has a name of its own.
  'm/s': ['mph', (5280 * FOOT_M) / 3600],
};

/** Units without a customary twin in which a composite unit is left as it is: g/kg is not g/lb. */
const METRIC_ONLY = new Set(['g', 'mg', 'MJ', 'kPa', 'W', 'ppm']);
const FAHRENHEIT_PER_CELSIUS = 1.8;
const FAHRENHEIT_OF_ZERO = 32;

/** A quantity in the units a person reads; metric quantities and units without a twin come back unchanged. */
export function toSystem(value: number, unit: string, system: UnitSystem): Quantity {
  if (system === 'metric') return { value, unit };
  if (unit === '°C') return { value: value * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_OF_ZERO, unit: '°F' };
  const named = CUSTOMARY[unit];
  if (named) return { value: value / named[1], unit: named[0] };
  const { factor, unit: to } = customary(unit);
  return { value: value * factor, unit: to };
}

/** Factor and customary name of a metric unit: 1 `unit` is `factor` of the returned unit. */
function customary(unit: string): { factor: number; unit: string } {
  const parts = unit.split('/').map((part) => part.trim());
  if (parts.some((part) => METRIC_ONLY.has(part.split(' ')[0]))) return { factor: 1, unit };
  let factor = 1;
  const names = parts.map((part, k) => {
    const { factor: f, name } = token(part);
    factor *= k === 0 ? f : 1 / f;
    return name;
  });
  return { factor, unit: names.join('/') };
}

/** One token, perhaps with a substance after it (`kg N`) or a count before it (`100 kg`). */
function token(part: string): { factor: number; name: string } {
  if (part === '°C') return { factor: FAHRENHEIT_PER_CELSIUS, name: '°F' };
  const [, count, base, substance] = /^(\d+ )?(\S+)(.*)$/.exec(part) ?? [];
  const twin = base === undefined ? undefined : CUSTOMARY[base];
  if (!twin) return { factor: 1, name: part };
  return { factor: 1 / twin[1], name: `${count ?? ''}${twin[0]}${substance}` };
}
