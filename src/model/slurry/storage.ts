/** Room that manure needs. Storage months, freeboard and buffers are local law: check the local rule. */

/** What a rule of volume a head and week asks for, plus what else runs in, with a buffer, m³. */
export function storeNeededM3(ruleM3: number, washM3: number, rainM3: number, buffer: number): number {
  return (ruleM3 + washM3 + rainM3) * (1 + buffer);
}

/**
 * Agricultural waste management field handbook, chapter 10: volume of bedded manure. Only the share `filled` of
 * loose bedding's volume counts, because manure fills the rest. Any units of mass and volume that agree.
 */
export function beddedVolume(
  manureVolume: number,
  beddingMass: number,
  beddingDensity: number,
  filled: number,
): number {
  return manureVolume + (filled * beddingMass) / beddingDensity;
}
