/**
 * Nitrogen of managed manure by the 2019 Refinement to the IPCC Guidelines, volume 4, chapters 10 and 11: a check on
 * the chain of stages, never its method. The fractions are of total nitrogen and cover house and store together; they
 * are never chained with EMEP factors.
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
