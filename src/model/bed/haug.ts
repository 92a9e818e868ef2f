/**
 * How temperature, moisture, air space and oxygen slow composting, each a multiplier on the rate constant.
 * All constants are those of Haug, The Practical Handbook of Compost Engineering (1993).
 */

/** Relative to 20 °C; falls away above 70 °C, never below 0. */
export function haugTemperatureFactor(temperatureC: number): number {
  return Math.max(0, 1.066 ** (temperatureC - 20) - 1.21 ** (temperatureC - 60));
}

/** Moisture as a fraction of wet mass. */
export function haugMoistureFactor(moistureFraction: number): number {
  return 1 / (Math.exp(-17.684 * moistureFraction + 7.0622) + 1);
}

/** Free air space as a fraction of volume. */
export function haugAirSpaceFactor(freeAirSpaceFraction: number): number {
  return 1 / (Math.exp(-23.675 * freeAirSpaceFraction + 3.4945) + 1);
}

/** Oxygen in the pores, per cent by volume. */
export function haugOxygenFactor(oxygenPercent: number): number {
  return oxygenPercent / (2 + oxygenPercent);
}
