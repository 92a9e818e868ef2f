/** How warm a bed ran, as classes and as what methane follows from it. */

/** 0 up to `cold`, 1 at `composting`, 2 from `hot` on, straight lines between; °C. */
export function heatOf(warmestC: number, cold: number, composting: number, hot: number): number {
  if (warmestC <= composting) return Math.max(0, (warmestC - cold) / (composting - cold));
  return 1 + Math.min(1, (warmestC - composting) / (hot - composting));
}

/**
 * Methane of a warmer bed against one of 10 °C or less: straight lines through the factors at 19 and 28 °C, the
 * temperatures of the inventory's table (IPCC 2006, table 10.17), and flat outside them.
 */
export function methaneWarmth(meanC: number, at19: number, at28: number): number {
  if (meanC <= 19) return 1 + (Math.max(0, meanC - 10) / 9) * (at19 - 1);
  return at19 + (Math.min(9, meanC - 19) / 9) * (at28 - at19);
}
