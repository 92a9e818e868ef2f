/** Greenhouse gas of managed manure by the 2019 Refinement to the IPCC Guidelines, volume 4, chapters 10 and 11. */

/** Equations 10.27, 10.29 and 11.9 to 11.11: nitrous oxide N that follows from what is volatilised and leached, kg. */
export function indirectNitrousKg(
  volatilisedKg: number,
  leachedKg: number,
  ef4: number,
  ef5: number,
): number {
  return volatilisedKg * ef4 + leachedKg * ef5;
}

/** Equation 10.23: methane of manure, kg. 0.67 kg/m³ is the density of methane in the guidelines. */
export function manureMethaneKg(
  volatileSolidsKg: number,
  capacityM3PerKg: number,
  conversion: number,
): number {
  return volatileSolidsKg * capacityM3PerKg * 0.67 * conversion;
}
