/** Nitrous oxide, nitrogen gas and nitric oxide of manure in the soil, each asked for as a share of the nitrogen. */

/** Nitrogen gas and nitric oxide asked for, kg N. */
export function dinitrogenAskedKg(
  nitrogenKg: number,
  nitrousFraction: number,
  dinitrogenPerNitrous: number,
  nitricFraction: number,
): number {
  return nitrogenKg * nitrousFraction * dinitrogenPerNitrous + nitrogenKg * nitricFraction;
}

/** Factor that keeps all these gases together from taking more than the `thereIsKg`; 1 in all sensible cases. */
export function gasLimit(
  nitrogenKg: number,
  thereIsKg: number,
  nitrousFraction: number,
  dinitrogenPerNitrous: number,
  nitricFraction: number,
): number {
  const asked =
    nitrogenKg * nitrousFraction +
    dinitrogenAskedKg(nitrogenKg, nitrousFraction, dinitrogenPerNitrous, nitricFraction);
  return asked > thereIsKg ? thereIsKg / asked : 1;
}
