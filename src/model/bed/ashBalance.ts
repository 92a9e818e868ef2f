/**
 * Losses read off two ash analyses: ash neither burns nor flies, so what gained ash lost everything else.
 * All fractions of dry matter. Standard ash balance of composting trials.
 */

/** Share of dry matter lost. */
export function dryMatterLoss(ashBefore: number, ashAfter: number): number {
  return 1 - ashBefore / ashAfter;
}

/** Share of organic matter lost. */
export function organicMatterLoss(ashBefore: number, ashAfter: number): number {
  return 1 - (ashBefore * (1 - ashAfter)) / (ashAfter * (1 - ashBefore));
}

/** Share lost of an element given as a fraction of dry matter before and after. */
export function elementLoss(before: number, after: number, ashBefore: number, ashAfter: number): number {
  return 1 - (after * ashBefore) / (before * ashAfter);
}
