/** One boundary for every system: losses by kind, the ladder between, and greenhouse gases. */
import { quantity } from '../engine/quantity.ts';
import { indirectNitrousKg, manureMethaneKg } from './managed.ts';

/** Molar mass of N2O over that of its nitrogen. */
const NITROUS_PER_NITROGEN = 44 / 28;

const lost = (label: string, places: readonly string[]) =>
  quantity(label, 'kg', `sum of ${places.length} places it is lost`).sum(places);
const kg = (label: string, formula: string) => quantity(label, 'kg', formula);

export const ledger = {
  nitrogenAmmoniaKg: lost('nitrogen lost as ammonia', [
    'yardAmmoniaKg', 'paddockAmmoniaKg', 'houseAmmoniaKg', 'storeAmmoniaKg', 'bedAmmoniaKg', 'heapAmmoniaKg', 'spreadAmmoniaKg',
  ]), // biome-ignore format: one list
  nitrogenNitrousKg: lost('nitrogen lost as nitrous oxide', [
    'paddockNitrousKg', 'storeNitrousKg', 'bedNitrousKg', 'heapNitrousKg', 'soilNitrousKg',
  ]), // biome-ignore format: one list
  nitrogenDinitrogenKg: lost('nitrogen lost as N2 and NO', [
    'paddockDinitrogenKg', 'storeDinitrogenKg', 'bedDinitrogenKg', 'heapDinitrogenKg', 'soilDinitrogenKg',
  ]), // biome-ignore format: one list
  nitrogenLeachedKg: lost('nitrogen leached', [
    'paddockLeachedKg', 'paddockOrganicLeachedKg', 'heapLeachedKg', 'soilLeachedKg', 'soilOrganicLeachedKg',
  ]), // biome-ignore format: one list
  nitrogenRunoffKg: kg('nitrogen in surface run-off', 'run-off from the paddock').same('paddockRunoffKg'),
  nitrogenLostKg: kg(
    'nitrogen lost',
    'as ammonia + as nitrous oxide + as N2 and NO + leached + in surface run-off',
  ).sum([
    'nitrogenAmmoniaKg', 'nitrogenNitrousKg', 'nitrogenDinitrogenKg', 'nitrogenLeachedKg', 'nitrogenRunoffKg',
  ]), // biome-ignore format: one list
  phosphorusLostKg: kg('phosphorus lost', 'run off the paddock + left in the store + lost from the heap').sum(
    ['paddockPhosphorusLostKg', 'slurryPhosphorusLostKg', 'heapPhosphorusLostKg'],
  ),
  potassiumLostKg: kg('potassium lost', 'lost from the paddock + left in the store + lost from the heap').sum(
    ['paddockPotassiumLostKg', 'slurryPotassiumLostKg', 'heapPotassiumLostKg'],
  ),
  nitrogenOutOfHousingKg: kg(
    'nitrogen out of the shed or on the paddock',
    'nitrogen dropped and in wasted feed − ammonia of yard, paddock and slatted house − losses of the bed',
  ).minus('nitrogenInKg', [
    'yardAmmoniaKg', 'paddockAmmoniaKg', 'houseAmmoniaKg', 'bedAmmoniaKg', 'bedNitrousKg', 'bedDinitrogenKg',
  ]), // biome-ignore format: one list
  nitrogenOutOfStoreKg: kg(
    'nitrogen out of store or heap',
    'nitrogen out of the shed − losses of slurry store and heap',
  ).minus('nitrogenOutOfHousingKg', [
    'storeAmmoniaKg', 'storeNitrousKg', 'storeDinitrogenKg', 'heapAmmoniaKg', 'heapNitrousKg', 'heapDinitrogenKg',
    'heapLeachedKg',
  ]), // biome-ignore format: one list
  nitrogenIntoSoilKg: kg(
    'nitrogen into the soil',
    'nitrogen out of the store − ammonia at spreading − run-off from the paddock',
  ).minus('nitrogenOutOfStoreKg', ['spreadAmmoniaKg', 'paddockRunoffKg']),
  methaneKg: quantity(
    'methane of manure',
    'kg',
    'volatile solids × methane they can give × share given on pasture, in the slurry store, in bed and heap; methane from the animals themselves and from bedding is left out',
    { source: ['ipcc2019', 'ipcc2006'] },
  ).of(
    [
      'volatileSolidsKg', 'paddockShare', 'slurryShare', 'packShare', 'methaneCapacityM3PerKg',
      'pastureMethaneCapacityM3PerKg', 'pastureMethaneFraction', 'storeMethaneFraction', 'bedMethaneFraction',
      'compostMethaneFraction',
    ], // biome-ignore format: one list
    (i, solids, paddock, slurry, pack, capacity, capacityPasture, pasture, store, bed, heap) =>
      manureMethaneKg(solids[i] * paddock[i], capacityPasture[i], pasture[i]) +
      manureMethaneKg(solids[i] * slurry[i], capacity[i], store[i]) +
      manureMethaneKg(solids[i] * pack[i], capacity[i], bed[i] + heap[i]),
  ),
  greenhouseGasTonnes: quantity(
    'greenhouse gases of manure, CO2 equivalent',
    't',
    'methane of manure × its warming + (nitrous oxide + nitrous oxide that follows from ammonia and from leaching and run-off) × its warming; methane from the animals, fuel and building are left out',
    { source: ['ipcc2019', 'ipccAr6'] },
  ).of(
    [
      'methaneKg', 'nitrogenNitrousKg', 'nitrogenAmmoniaKg', 'nitrogenLeachedKg', 'nitrogenRunoffKg',
      'indirectAmmoniaFraction', 'indirectLeachedFraction', 'methaneWarmingFactor', 'nitrousWarmingFactor',
    ], // biome-ignore format: one list
    (
      i,
      methane,
      nitrous,
      ammonia,
      leached,
      runoff,
      fromAmmonia,
      fromLeached,
      warmingMethane,
      warmingNitrous,
    ) => {
      const indirect = indirectNitrousKg(ammonia[i], leached[i] + runoff[i], fromAmmonia[i], fromLeached[i]);
      return (
        (methane[i] * warmingMethane[i] +
          (nitrous[i] + indirect) * NITROUS_PER_NITROGEN * warmingNitrous[i]) /
        1000
      );
    },
  ),
};
