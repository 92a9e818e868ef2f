/**
 * Recipes: moisture and C:N of a mix, and how much of a second and third material meets a target. Carbon and
 * nitrogen are summed apart and divided once; averaging the ratios is wrong unless every material holds equal
 * nitrogen. Sources: NRAES-54 On-Farm Composting Handbook (1992) ch. 3; USDA AWMFH/NEH 637 (same algebra).
 */

/** What a recipe needs to know of a material; fractions 0..1, carbon and nitrogen of dry matter. */
export interface Stuff {
  readonly moistureFraction: number;
  readonly carbonFraction: number;
  readonly nitrogenFraction: number;
  /** Share of the carbon that microbes can use within a season. */
  readonly availableCarbonFraction?: number;
}

/** A wet mass of a material, kg. */
export interface Part extends Stuff {
  readonly massKg: number;
}

const dryKg = (part: Part): number => part.massKg * (1 - part.moistureFraction);

function sum(parts: readonly Part[], of: (part: Part) => number): number {
  let total = 0;
  for (const part of parts) total += of(part);
  return total;
}

/** Moisture of a mix, fraction of wet mass; NaN for an empty mix. */
export function mixMoisture(parts: readonly Part[]): number {
  return sum(parts, (part) => part.massKg * part.moistureFraction) / sum(parts, (part) => part.massKg);
}

/** Total C:N of a mix: all carbon over all nitrogen. NaN or infinite without nitrogen. */
export function mixCarbonNitrogen(parts: readonly Part[]): number {
  return (
    sum(parts, (part) => dryKg(part) * part.carbonFraction) /
    sum(parts, (part) => dryKg(part) * part.nitrogenFraction)
  );
}

/** C:N of a mix that counts only the carbon a season can use; a part without a share counts all of it. */
export function mixAvailableCarbonNitrogen(parts: readonly Part[]): number {
  return (
    sum(parts, (part) => dryKg(part) * part.carbonFraction * (part.availableCarbonFraction ?? 1)) /
    sum(parts, (part) => dryKg(part) * part.nitrogenFraction)
  );
}

/**
 * Wet kg of `second` that bring `first` to a moisture, or null when the target is not between the two, where
 * no amount does it.
 */
export function secondForMoisture(first: Part, second: Stuff, moistureFraction: number): number | null {
  const massKg =
    (first.massKg * (moistureFraction - first.moistureFraction)) /
    (second.moistureFraction - moistureFraction);
  return amount(massKg);
}

/** Wet kg of `second` that bring `first` to a total C:N, or null when the target is not between the two. */
export function secondForCarbonNitrogen(first: Part, second: Stuff, carbonNitrogen: number): number | null {
  return amount(
    shortOfCarbon(first, carbonNitrogen) /
      (carbonOver(second, carbonNitrogen) * (1 - second.moistureFraction)),
  );
}

/** The same for available C:N. */
export function secondForAvailableCarbonNitrogen(
  first: Part,
  second: Stuff,
  carbonNitrogen: number,
): number | null {
  return secondForCarbonNitrogen(availableOnly(first), availableOnly(second), carbonNitrogen);
}

/**
 * Wet kg of two materials that bring `first` to a moisture and a C:N at once, or null when no such amounts
 * exist: a negative answer means that the two targets cannot both be met with these materials.
 */
export function twoForMoistureAndCarbonNitrogen(
  first: Part,
  second: Stuff,
  third: Stuff,
  moistureFraction: number,
  carbonNitrogen: number,
): readonly [number, number] | null {
  const wet = (stuff: Stuff) => stuff.moistureFraction - moistureFraction;
  const carbon = (stuff: Stuff) => (1 - stuff.moistureFraction) * carbonOver(stuff, carbonNitrogen);
  const determinant = wet(second) * carbon(third) - wet(third) * carbon(second);
  const drying = -first.massKg * wet(first);
  const feeding = shortOfCarbon(first, carbonNitrogen);
  const x = amount((drying * carbon(third) - wet(third) * feeding) / determinant);
  const y = amount((wet(second) * feeding - drying * carbon(second)) / determinant);
  return x === null || y === null ? null : [x, y];
}

/** Water to add to a mix that is too dry, kg; negative when it is already wetter. */
export function waterToAdd(parts: readonly Part[], moistureFraction: number): number {
  return sum(parts, dryKg) / (1 - moistureFraction) - sum(parts, (part) => part.massKg);
}

/** Carbon above what a C:N asks for the nitrogen there is, per kg dry matter. */
const carbonOver = (stuff: Stuff, carbonNitrogen: number) =>
  stuff.carbonFraction - carbonNitrogen * stuff.nitrogenFraction;

const shortOfCarbon = (part: Part, carbonNitrogen: number) => -dryKg(part) * carbonOver(part, carbonNitrogen);

function availableOnly<T extends Stuff>(stuff: T): T {
  return { ...stuff, carbonFraction: stuff.carbonFraction * (stuff.availableCarbonFraction ?? 1) };
}

const amount = (kg: number): number | null => (Number.isFinite(kg) && kg >= 0 ? kg : null);
