/**
 * Nitrogen of managed manure by the 2019 Refinement to the IPCC Guidelines, volume 4, chapters 10 and 11. The
 * fractions are of total nitrogen and cover house and store together; they are never chained with EMEP factors.
 */
export interface ManagedSystem {
  /** Share lost as ammonia and nitrogen oxides. */
  readonly gas: number;
  readonly leached: number;
  /** Share lost as nitrous oxide, EF3. */
  readonly nitrous: number;
  /** N2 lost for each kg of nitrous oxide N, 3 in equation 10.34A. */
  readonly dinitrogenRatio: number;
}

/** Equation 10.34: nitrogen left for the land, kg; bedding nitrogen is added whole. */
export function managedNitrogenKg(nitrogenKg: number, system: ManagedSystem, beddingKg = 0): number {
  const lost = system.gas + system.leached + system.nitrous * (1 + system.dinitrogenRatio);
  return nitrogenKg * Math.max(0, 1 - lost) + beddingKg;
}

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
