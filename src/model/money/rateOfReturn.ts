/** The rate at which flows are worth nothing today: none, one or several of them. */
import { netPresentValue } from './presentValue.ts';

export interface RateOfReturn {
  /** The rate when there is exactly one between −99 % and 1000 %, else null. */
  readonly rate: number | null;
  /** All rates found, ascending. */
  readonly rates: readonly number[];
  /** Why there is no single rate, in words a keeper can follow; empty when there is one. */
  readonly why: string;
}

const LOWEST = Math.log(0.01);
const HIGHEST = Math.log(11);
const STEPS = 600;

/**
 * Brackets every change of sign of the present value on an even grid of ln(1 + rate), then halves each
 * bracket. Roots that only touch zero without crossing it are not counted.
 */
export function rateOfReturn(flows: readonly number[]): RateOfReturn {
  const none = (why: string): RateOfReturn => ({ rate: null, rates: [], why });
  if (flows.some((flow) => !Number.isFinite(flow))) return none('a yearly amount is missing');
  if (!flows.some((flow) => flow < 0)) return none('no year costs money, so no rate balances it');
  if (!flows.some((flow) => flow > 0)) return none('no year brings money in, so nothing is ever paid back');
  const worth = (x: number) => netPresentValue(Math.exp(x) - 1, flows);
  const rates: number[] = [];
  let x0 = LOWEST;
  let y0 = worth(x0);
  for (let step = 1; step <= STEPS; step++) {
    const x1 = LOWEST + ((HIGHEST - LOWEST) * step) / STEPS;
    const y1 = worth(x1);
    if (y0 !== 0 && (y1 === 0 || y0 > 0 !== y1 > 0)) rates.push(Math.exp(halve(worth, x0, x1, y0)) - 1);
    x0 = x1;
    y0 = y1;
  }
  if (rates.length === 0)
    return none(
      worth(0) < 0
        ? 'at any rate of interest more goes out than comes back'
        : 'at any rate of interest more comes back than goes out',
    );
  if (rates.length === 1) return { rate: rates[0], rates, why: '' };
  const list = rates.map((rate) => `${(rate * 100).toFixed(1)} %`).join(', ');
  return {
    rate: null,
    rates,
    why: `several rates fit because the flows change sign more than once: ${list}`,
  };
}

function halve(worth: (x: number) => number, low: number, high: number, atLow: number): number {
  let a = low;
  let b = high;
  // 60 halvings shrink any bracket of the grid below the spacing of doubles.
  for (let k = 0; k < 60; k++) {
    const middle = (a + b) / 2;
    const value = worth(middle);
    if (value === 0) return middle;
    if (value > 0 === atLow > 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}
