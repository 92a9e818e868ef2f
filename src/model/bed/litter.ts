/**
 * The solid-manure line of EMEP/EEA 2019 chapter 3.B, tier 2, for a shed with litter, a heap and spreading. The
 * second method beside the deep bed, which follows the bed by week; kept to see where the two differ.
 */
export interface LitterFactors {
  readonly house: number;
  /** TAN turned into organic nitrogen, kg N per kg straw. */
  readonly immobilisedPerStraw: number;
  readonly nitrogenInStraw: number;
  readonly storeAmmonia: number;
  readonly storeNitrous: number;
  readonly storeNitricOxide: number;
  readonly storeDinitrogen: number;
  readonly spreadAmmonia: number;
}

export interface LitterFlow {
  readonly houseAmmoniaKg: number;
  readonly immobilisedKg: number;
  readonly tanToStoreKg: number;
  readonly nitrogenToStoreKg: number;
  readonly storeAmmoniaKg: number;
  readonly storeNitrousKg: number;
  readonly storeNitricOxideKg: number;
  readonly storeDinitrogenKg: number;
  readonly tanToSpreadKg: number;
  readonly nitrogenToSpreadKg: number;
  readonly spreadAmmoniaKg: number;
  readonly nitrogenToSoilKg: number;
  readonly ammoniaKg: number;
}

/** Steps 6 to 13 for one class and period, kg N. Immobilisation never takes more TAN than the house has left. */
export function litterFlow(
  nitrogenKg: number,
  tanKg: number,
  strawKg: number,
  factors: LitterFactors,
): LitterFlow {
  const houseAmmoniaKg = tanKg * factors.house;
  const immobilisedKg = Math.min(strawKg * factors.immobilisedPerStraw, tanKg - houseAmmoniaKg);
  const tanToStoreKg = tanKg - houseAmmoniaKg - immobilisedKg;
  const nitrogenToStoreKg = nitrogenKg - houseAmmoniaKg + strawKg * factors.nitrogenInStraw;
  const storeAmmoniaKg = tanToStoreKg * factors.storeAmmonia;
  const storeNitrousKg = tanToStoreKg * factors.storeNitrous;
  const storeNitricOxideKg = tanToStoreKg * factors.storeNitricOxide;
  const storeDinitrogenKg = tanToStoreKg * factors.storeDinitrogen;
  const lost = storeAmmoniaKg + storeNitrousKg + storeNitricOxideKg + storeDinitrogenKg;
  const tanToSpreadKg = tanToStoreKg - lost;
  const nitrogenToSpreadKg = nitrogenToStoreKg - lost;
  const spreadAmmoniaKg = tanToSpreadKg * factors.spreadAmmonia;
  return {
    houseAmmoniaKg,
    immobilisedKg,
    tanToStoreKg,
    nitrogenToStoreKg,
    storeAmmoniaKg,
    storeNitrousKg,
    storeNitricOxideKg,
    storeDinitrogenKg,
    tanToSpreadKg,
    nitrogenToSpreadKg,
    spreadAmmoniaKg,
    nitrogenToSoilKg: nitrogenToSpreadKg - spreadAmmoniaKg,
    ammoniaKg: houseAmmoniaKg + storeAmmoniaKg + spreadAmmoniaKg,
  };
}
