/** Point `z` of the standard normal distribution, by the rational forms of Wichura's AS 241 (1988), good to seven digits. */

const NEAR = 0.425;
const A = [3.3871327179, 50.434271938, 159.29113202, 59.10937472];
const B = [1, 17.895169469, 78.757757664, 67.1875636];
const C = [1.4234372777, 2.75681539, 1.3067284816, 0.17023821103];
const D = [1, 0.7370016425, 0.12021132975];
const E = [6.657905115, 3.081226386, 0.42868294337, 0.017337203997];
const F = [1, 0.24197894225, 0.012258202635];

const polynomial = (terms: readonly number[], x: number): number =>
  terms.reduceRight((sum, term) => sum * x + term, 0);

/** `z` below which the share `u` of a standard normal lies; `u` in 0 … 1, −∞ and ∞ at its ends. */
export function normalAt(u: number): number {
  const q = u - 0.5;
  if (Math.abs(q) <= NEAR) {
    const r = NEAR * NEAR - q * q;
    return (q * polynomial(A, r)) / polynomial(B, r);
  }
  const tail = Math.min(u, 1 - u);
  if (!(tail > 0)) return q * Number.POSITIVE_INFINITY;
  const r = Math.sqrt(-Math.log(tail));
  const z =
    r <= 5 ? polynomial(C, r - 1.6) / polynomial(D, r - 1.6) : polynomial(E, r - 5) / polynomial(F, r - 5);
  return q < 0 ? -z : z;
}
