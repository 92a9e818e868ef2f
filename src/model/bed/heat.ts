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
