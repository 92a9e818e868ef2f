/** What water over the surface takes out of dung, urine and trampled feed. */

/**
 * Share washed off: near `fraction` when the run-off equals the reference, in proportion below, and levelling
 * off so that it never exceeds all there is: 1 − e^(−fraction·run-off/reference). Grows less than the water.
 */
export function washedFraction(runoffMm: number, fraction: number, referenceMm: number): number {
  return referenceMm > 0 && runoffMm > 0 ? -Math.expm1((-fraction * runoffMm) / referenceMm) : 0;
}
