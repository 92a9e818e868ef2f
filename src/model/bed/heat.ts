/**
 * Will it heat? A points rule of thumb, derived and uncalibrated: a point each for moisture, air, available
 * C:N, loosening and depth inside their spans. Five points compost, three or four are warm, fewer stay cold.
 */
export interface HeatSpans {
  readonly moistureLow: number;
  readonly moistureHigh: number;
  readonly airSpace: number;
  readonly availableCarbonNitrogenLow: number;
  readonly availableCarbonNitrogenHigh: number;
  readonly depthM: number;
}

export interface HeatSigns {
  /** Span of moisture the mass passes through. */
  readonly driest: number;
  readonly wettest: number;
  readonly airSpace: number;
  readonly availableCarbonNitrogen: number;
  readonly loosened: boolean;
  readonly depthM: number;
}

/** 0 cold, 1 warm, 2 composting. */
export function heatClass(signs: HeatSigns, spans: HeatSpans): 0 | 1 | 2 {
  const points =
    Number(signs.driest <= spans.moistureHigh && signs.wettest >= spans.moistureLow) +
    Number(signs.airSpace > spans.airSpace) +
    Number(
      signs.availableCarbonNitrogen >= spans.availableCarbonNitrogenLow &&
        signs.availableCarbonNitrogen <= spans.availableCarbonNitrogenHigh,
    ) +
    Number(signs.loosened) +
    Number(signs.depthM > spans.depthM);
  return points === 5 ? 2 : points >= 3 ? 1 : 0;
}

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
