/**
 * Nitrogen that microbes take up while they eat a bedding: what they build (carbon eaten × yield, at their own
 * C:N) less the nitrogen set free from what they eat. Kirchmann & Witter 1989 and EMEP/EEA 3.B give the yearly
 * figure for straw that this reproduces.
 */
export interface Microbes {
  /** Share of the carbon eaten that becomes microbe. */
  readonly yieldFraction: number;
  readonly carbonNitrogen: number;
}

/** kg N bound per kg dry matter of bedding, not below 0; fractions of dry matter and of its carbon. */
export function immobilisedPerKg(
  carbonFraction: number,
  nitrogenFraction: number,
  availableCarbonFraction: number,
  { yieldFraction, carbonNitrogen }: Microbes,
): number {
  const demand = (carbonFraction * availableCarbonFraction * yieldFraction) / carbonNitrogen;
  return Math.max(0, demand - nitrogenFraction * availableCarbonFraction);
}

/**
 * Share of volatile solids that can degrade at all, by lignin (fraction of volatile solids): a long-term upper
 * bound. Chandler et al. 1980; the slope stands per fraction, 2.8, where the paper's is per cent.
 */
export function degradableByLignin(ligninFraction: number, intercept: number, slope: number): number {
  return Math.max(0, intercept - slope * ligninFraction);
}
