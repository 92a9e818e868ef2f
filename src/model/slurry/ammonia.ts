/** Steps of the nitrogen mass flow that house, store, yard and field share. TAN is total ammoniacal nitrogen. */

import { exponential } from '../../units/exponential.ts';

/**
 * How much faster ammonia leaves at `temperatureC` than at `referenceC`: exponential in temperature, fitted to
 * 102 and 430 mg/m²/h at 4 and 30 °C on a bench of cattle manure (`lithuania2013`), 0.0553 per °C.
 */
export function temperatureFactor(temperatureC: number, perC: number, referenceC: number): number {
  return exponential(perC * (temperatureC - referenceC));
}

/** The slope between two measured rates, per °C. */
export function temperatureSlopePerC(
  coldC: number,
  coldRate: number,
  warmC: number,
  warmRate: number,
): number {
  return Math.log(warmRate / coldRate) / (warmC - coldC);
}

/** EMEP/EEA 2019 chapter 3.B step 9: TAN after a fraction of the organic nitrogen has turned into TAN, kg. */
export function mineralisedTanKg(tanKg: number, nitrogenKg: number, fraction: number): number {
  return tanKg + fraction * Math.max(0, nitrogenKg - tanKg);
}

/** Factor that keeps the sum of loss fractions from taking more TAN than there is; 1 in all sensible cases. */
export function lossLimit(sumOfFractions: number): number {
  return sumOfFractions > 1 ? 1 / sumOfFractions : 1;
}

/** The second of two published forms weighed against the first; a draw takes one, the best guess the weighted mean. */
export function weighed(second: number, first: number, other: number): number {
  return first + second * (other - first);
}

/** What of a lagging body stays at its old temperature over `days`: e^(−days ÷ `followDays`); 0 where it follows at once. */
export function staysFraction(days: number, followDays: number): number {
  return followDays > 0 ? exponential(-days / followDays) : 0;
}

/**
 * Response of a fouled floor to temperature against that at `referenceC`: exponential (Schrade 2012), a straight line
 * (Sanchis 2019) or a power of the temperature in °C (Elzing and Monteny 1997), weighed by `other` and `power`. Frost
 * counts as 0 °C in the power.
 */
export function houseResponse(
  temperatureC: number,
  referenceC: number,
  perC: number,
  linearPerC: number,
  linearLeast: number,
  exponent: number,
  other: number,
  power: number,
): number {
  const first = other < 1 ? temperatureFactor(temperatureC, perC, referenceC) : 0;
  if (!(other > 0)) return first;
  const straight = Math.max(linearLeast, 1 + linearPerC * (temperatureC - referenceC));
  const raised =
    power > 0 && referenceC > 0 && temperatureC > 0
      ? exponential(exponent * Math.log(temperatureC / referenceC))
      : 0;
  return weighed(other, first, weighed(power, straight, raised));
}
