/** Ground that excreta cover when they fall at random. */

export const M2_PER_HA = 10_000;

/**
 * Hectares covered at least once by patches that fall at random on `groundHa` and sum to `patchHa` if laid side by
 * side: ground × (1 − e^(−patches ÷ ground)), by the Poisson chance of a point staying clear.
 */
export function coveredHa(patchHa: number, groundHa: number): number {
  return groundHa > 0 ? groundHa * -Math.expm1(-patchHa / groundHa) : 0;
}
