/** The root zone as a daily bucket: FAO-56 chapter 8 with everything above field capacity draining. */

/**
 * Water taken by grass and soil in a day, mm. Full demand while the depletion is below the readily available
 * part, then in proportion to what is left above the wilting point, and never more than that.
 * `perMm` is 1/((1 − p)·(FC − WP)); 0 where the soil holds no available water.
 */
export function takenMm(demandMm: number, availableMm: number, perMm: number): number {
  const share = availableMm * perMm;
  const taken = share < 1 ? demandMm * share : demandMm;
  return Math.min(taken, availableMm);
}

/** 1/((1 − p)·(FC − WP)), or 0 where nothing is available; water in mm, p the readily available fraction. */
export function stressPerMm(
  fieldCapacityMm: number,
  wiltingPointMm: number,
  readilyAvailableFraction: number,
): number {
  const span = (1 - readilyAvailableFraction) * (fieldCapacityMm - wiltingPointMm);
  return span > 0 ? 1 / span : fieldCapacityMm > wiltingPointMm ? Number.POSITIVE_INFINITY : 0;
}
