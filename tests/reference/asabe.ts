/**
 * ASAE D384.2 (2005), section 4, beef: excretion as intake minus retention. A check on the balance of the
 * excretion stage, never its method: the stage also knows milk, calves to be born and diets of many feeds.
 */

/** Standard reference weight of D384.2, kg. */
const REFERENCE_WEIGHT_KG = 478;

export interface FedAnimal {
  readonly startKg: number;
  readonly endKg: number;
  readonly days: number;
  readonly dryMatterKgPerDay: number;
}

/** The term of retained energy that N and P retention share: weight, stage of growth, rate of gain. */
function growthTerm({ startKg, endKg, days }: FedAnimal): number {
  if (!(days > 0) || !(endKg > startKg)) return 0;
  const meanKg = (startKg + endKg) / 2;
  return (
    days *
    meanKg ** 0.75 *
    (REFERENCE_WEIGHT_KG / (endKg * 0.96)) ** 0.75 *
    ((endKg - startKg) / days) ** 1.097
  );
}

/** Nitrogen retained over the period, kg. */
export function nitrogenRetainedKg(animal: FedAnimal): number {
  return (41.2 * (animal.endKg - animal.startKg) - 0.243 * growthTerm(animal)) / 1000;
}

/** Phosphorus retained over the period, kg. */
export function phosphorusRetainedKg(animal: FedAnimal): number {
  return (10 * (animal.endKg - animal.startKg) - 5.92e-2 * growthTerm(animal)) / 1000;
}

/** Nitrogen excreted over the period, kg; crude protein as a fraction of dry matter. */
export function nitrogenExcretedKg(animal: FedAnimal, crudeProtein: number): number {
  return (animal.dryMatterKgPerDay * animal.days * crudeProtein) / 6.25 - nitrogenRetainedKg(animal);
}

/** Phosphorus excreted over the period, kg; phosphorus as a fraction of dry matter. */
export function phosphorusExcretedKg(animal: FedAnimal, phosphorus: number): number {
  return animal.dryMatterKgPerDay * animal.days * phosphorus - phosphorusRetainedKg(animal);
}
