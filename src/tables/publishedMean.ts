/**
 * The shape behind a published mean and the two ends that hold 95 of 100 of what was measured. The mean of a lopsided
 * spread is not its middle: the best guess is the middle, draws keep the mean and both ends.
 */

/** 97.5 of 100 of a normal distribution lie below. */
const Z = 1.959963985;

/**
 * A normal distribution (`bend` 0), or one bent to a side as a shifted logarithmic normal (Johnson's first system,
 * 1949): at the point `z` of a normal distribution the value is `middle + reach × (exp(bend z) − 1) ÷ bend`.
 */
export interface MeanShape {
  readonly middle: number;
  readonly reach: number;
  /** Above 0 the longer side is the upper one. */
  readonly bend: number;
}

/** Value of the shape at the normal point `z`. */
export const shapeAt = ({ middle, reach, bend }: MeanShape, z: number): number =>
  middle + reach * (bend === 0 ? z : Math.expm1(bend * z) / bend);

/** Where between the two ends the mean lies, 0 to 1, at a bend. */
const meanPlace = (bend: number): number =>
  bend === 0
    ? 0.5
    : (Math.exp((bend * bend) / 2) - Math.exp(-bend * Z)) / (Math.exp(bend * Z) - Math.exp(-bend * Z));

/** Beyond this the mean comes no nearer to the short end. */
const MOST_BEND = 1.9;
/** Bends below it are none: the two ends differ by less than their last digit. */
const LEAST_BEND = 1e-6;
const HALVINGS = 60;

/** How near to an end, as a share of the span, a mean may lie for a shape of this kind to exist. */
export const LEAST_PLACE: number = meanPlace(MOST_BEND);

/**
 * The shape with this mean, 2.5 of 100 below `low` and 2.5 above `high`, in their unit; null where the mean lies so near
 * to an end that none of this kind has it.
 */
export function shapeOfMean(low: number, mean: number, high: number): MeanShape | null {
  const place = (mean - low) / (high - low);
  if (!(place >= LEAST_PLACE && place <= 1 - LEAST_PLACE)) return null;
  // The longer side is the upper one where the mean lies nearer to the lower end.
  const wanted = Math.min(place, 1 - place);
  let [from, to] = [0, MOST_BEND];
  for (let k = 0; k < HALVINGS; k++) {
    const bend = (from + to) / 2;
    if (meanPlace(bend) > wanted) from = bend;
    else to = bend;
  }
  const bend = (place > 0.5 ? -1 : 1) * from;
  if (Math.abs(bend) < LEAST_BEND)
    return { middle: (low + high) / 2, reach: (high - low) / (2 * Z), bend: 0 };
  const reach = ((high - low) * bend) / (Math.exp(bend * Z) - Math.exp(-bend * Z));
  return { middle: low - (reach * Math.expm1(-bend * Z)) / bend, reach, bend };
}

/** "0.006 kg N/kg N is the published mean, the figure here the middle of what is drawn": beside such a row. */
export const meanWords = (mean: number, unit: string): string =>
  `${mean} ${unit} is the published mean, the figure here the middle of what is drawn`;
