/** Wind on a shed as a number for the engineer; never a design. */

export interface WindPlace {
  /** Basic wind speed of the local map, m/s: ten minutes' mean, 10 m above open ground, once in fifty years. */
  readonly basicMPerS: number;
  readonly airKgPerM3: number;
  /** Roughness length of the ground around, m, and the height below which wind counts as at that height. */
  readonly roughnessM: number;
  readonly leastHeightM: number;
}

/**
 * Peak velocity pressure at `heightM` above flat ground, kN per m² (EN 1991-1-4 equations 4.3 to 4.8, turbulence
 * factor 1): qp = (1 + 7·Iv)·½·ρ·vm², vm = kr·ln(z/z0)·vb, Iv = 1/ln(z/z0), kr = 0.19·(z0/0.05)^0.07.
 */
export function peakWindKnPerM2(place: WindPlace, heightM: number): number {
  const { basicMPerS, airKgPerM3, roughnessM, leastHeightM } = place;
  const log = Math.log(Math.max(heightM, leastHeightM) / roughnessM);
  const mean = 0.19 * (roughnessM / 0.05) ** 0.07 * log * Math.max(0, basicMPerS);
  return ((1 + 7 / log) * 0.5 * airKgPerM3 * mean ** 2) / 1000;
}
